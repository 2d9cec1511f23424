/** What crosses the border between page and worker: plain data only. */

import type { Change, Notebook } from '../document/index.ts';

/** A cell's address: worksheet id, row and column from 0. */
export interface CellAddress {
  readonly worksheet: string;
  readonly row: number;
  readonly column: number;
}

export interface ResultError {
  /** OpenFormula name or one of ours (#UNIT!, #CIRCLE!, #OCCUPIED!, #LIMIT!). */
  readonly code: string;
  readonly message: string;
  /** Where the trouble began, if elsewhere. */
  readonly root?: CellAddress;
  /** Cells of a cycle, in order. */
  readonly path?: readonly CellAddress[];
}

export interface ResultCaution {
  readonly key: string;
  readonly text: string;
  /** 'caution' marks the cell; 'assumed' is the note of F15; 'breach' is a limit passed. */
  readonly type: 'caution' | 'assumed' | 'breach';
  readonly acknowledged?: string;
  /** The reading that may be meant instead: it stands for the formula's text from `from` to `to` (F7a). */
  readonly replacement?: string;
  readonly from?: number;
  readonly to?: number;
}

/** All that is known of one filled cell. */
export interface CellResult {
  /** Coherent SI for numbers; text, logical; null for a blank or an error. */
  readonly value: number | string | boolean | null;
  /** Name of the quantity kind, or "text", "logical", "blank", "error". */
  readonly kind: string;
  /** Unit in which it is shown; "" for plain numbers and texts. */
  readonly unit: string;
  readonly error?: ResultError;
  readonly cautions: readonly ResultCaution[];
}

/** One value of a formula that gives several (F26), shown in the cell below or beside. */
export interface SpilledFrom {
  readonly origin: CellAddress;
}

export type ToEngine =
  | {
      readonly type: 'open';
      readonly notebook: Notebook;
      readonly revision: number;
      /** Formula cells that are not computed, because the worker fell silent in them: they show #LIMIT!. */
      readonly aside?: readonly CellAddress[];
    }
  | { readonly type: 'apply'; readonly changes: readonly Change[]; readonly revision: number }
  /** Evaluates a formula as if it stood in the cell, without changing anything (preview while typing, "what does it need"). */
  | {
      readonly type: 'preview';
      readonly request: number;
      readonly address: CellAddress;
      readonly content: string;
    }
  /** Steps, values of operands, where from, where to. */
  | { readonly type: 'explain'; readonly request: number; readonly address: CellAddress };

/** Numbers that changed while unit, error and cautions stayed: columns, transferable. */
export interface ChangedNumbers {
  /** worksheetIndex * 2^17 + row * 64 + column, worksheetIndex counting in the order of `worksheets`. */
  readonly addresses: Uint32Array;
  readonly values: Float64Array;
}

export interface ChangedResult {
  readonly address: CellAddress;
  /** Absent: the cell has become empty. */
  readonly result?: CellResult & Partial<SpilledFrom>;
}

export interface ExplainedStep {
  readonly symbol: string;
  readonly meaning: string;
  readonly value: number | string | boolean | null;
  readonly kind: string;
  readonly unit: string;
}

export interface Explanation {
  /** Steps of each domain function called in the formula, outermost last. */
  readonly calls: readonly {
    readonly function: string;
    readonly steps: readonly ExplainedStep[];
    readonly result: number | string | boolean | null;
  }[];
  /** Values of what the formula refers to, by the text of the reference. */
  readonly operands: readonly {
    readonly text: string;
    readonly value: number | string | boolean | null;
    readonly kind: string;
    readonly unit: string;
  }[];
  readonly precedents: readonly CellAddress[];
  readonly dependents: readonly CellAddress[];
}

export type FromEngine =
  | { readonly type: 'ready'; readonly build: string }
  | {
      readonly type: 'results';
      readonly revision: number;
      readonly worksheets: readonly string[];
      readonly numbers: ChangedNumbers;
      readonly results: readonly ChangedResult[];
      /** True for the answer to 'open': everything that is not listed is empty. */
      readonly complete: boolean;
      /** A piece of a long answer: the others follow, with the same revision. */
      readonly more?: true;
    }
  /** A message could not be carried out: the page opens the notebook anew. */
  | { readonly type: 'failed'; readonly revision: number; readonly message: string }
  | { readonly type: 'previewed'; readonly request: number; readonly result: CellResult }
  | { readonly type: 'explained'; readonly request: number; readonly explanation: Explanation }
  /** Heavy function about to run in this cell: the watchdog's clue. */
  | { readonly type: 'started'; readonly address: CellAddress };
