/** The notebook as frozen plain data. Results are not part of it; the structure is shared between versions. */

import type { UnitSystem } from '../expression/index.ts';
import type { Kept } from './kept.ts';
import type { Parts } from './parts.ts';
import type { Block } from './place.ts';

export type { Block, Kept, UnitSystem };

/** How a cell's number is written. */
export type NumberFormat =
  | { readonly type: 'significant'; readonly digits: number }
  | { readonly type: 'decimals'; readonly digits: number }
  /** Fraction of an inch with this largest denominator (a power of 2 up to 128). */
  | { readonly type: 'fraction'; readonly denominator: number };

export const ROLES = ['given', 'worked', 'measured', 'choice', 'note'] as const;
export type Role = (typeof ROLES)[number];

/** Limits of a value, each a quantity as typed, with its own words ("holder's highest speed"). */
export interface Limits {
  readonly low?: string;
  readonly lowText?: string;
  readonly high?: string;
  readonly highText?: string;
}

/** Place of a cell on the machine-side page. */
export type MachinePlace =
  | { readonly place: 'changed'; readonly step?: string }
  | { readonly place: 'shown' };

/** A caution that was seen and accepted: falls when the formula or the values it was about change (F23). */
export interface Acknowledgement {
  readonly key: string;
  readonly reason: string;
  /** The caution's words when it was acknowledged: they carry the values of its condition. */
  readonly text: string;
  readonly content: string;
}

/** One filled cell. `content` is canonical text as typed (F1); everything else is optional and absent where not set. */
export interface Cell extends Kept {
  readonly content: string;
  /** Display unit, the cell's own choice (F19). */
  readonly unit?: string;
  readonly format?: NumberFormat;
  /** Set by the user; otherwise guessed from the content. */
  readonly role?: Role;
  /** Texts to pick from, for the choice role. */
  readonly choices?: readonly string[];
  readonly limits?: Limits;
  /** Where a given value comes from. */
  readonly source?: string;
  /** Own label; otherwise the nearest text to the left, else above. */
  readonly label?: string;
  /** A remark of the user, shown with the cell and printed. */
  readonly note?: string;
  readonly machine?: MachinePlace;
  readonly acknowledged?: readonly Acknowledgement[];
  /** Set at the machine: by whom, when, what stood there, and why where a limit was passed. */
  readonly changed?: {
    readonly by: string;
    /** ISO 8601. */
    readonly at: string;
    readonly from: string;
    readonly reason?: string;
  };
}

/** Columns of one row, sparse: index = column from 0. */
export type Row = readonly (Cell | undefined)[];

export interface DefinedName extends Kept {
  readonly name: string;
  /** What the name stands for on its own worksheet. */
  readonly target: Block;
  /** How it is shown: "a_e" for a with index e, "kappa_r" for a Greek letter (F24). */
  readonly symbol?: string;
}

export interface Worksheet extends Kept {
  /** Never changes and never repeats in a notebook: "w1", "w2". */
  readonly id: string;
  readonly title: string;
  /** Its names are found from every worksheet (F6a). */
  readonly common: boolean;
  readonly rowCount: number;
  readonly columnCount: number;
  /** The first row or column stays in sight while the rest scrolls. */
  readonly headRow?: true;
  readonly headColumn?: true;
  /** Widths in CSS pixels, sparse by column. */
  readonly widths: readonly (number | undefined)[];
  /** Rows, sparse by index from 0; a row without cells is undefined. */
  readonly rows: readonly (Row | undefined)[];
  /** In order of definition; names are unique on a worksheet. */
  readonly names: readonly DefinedName[];
}

export interface Notebook extends Kept {
  /** Never changes: which notebook this is on every device. */
  readonly id: string;
  readonly title: string;
  /** Unit system in which plain numbers are read: fixed when the notebook is made (F15). */
  readonly reading: UnitSystem;
  readonly display: UnitSystem;
  /** ISO 4217 code. */
  readonly currency: string;
  readonly worksheets: readonly Worksheet[];
  readonly parts?: Parts;
}

export const LIMITS = Object.freeze({
  rows: 2000,
  columns: 64,
  filledCells: 50_000,
  contentLength: 2048,
  titleLength: 100,
  worksheets: 100,
  rangeCells: 20_000,
});
