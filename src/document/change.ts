/** Changes as values: every edit is a list of these, each able to go back. */

import type { Cell, Notebook, Worksheet } from './notebook.ts';
import type { AnyPart, PartName } from './parts.ts';

export interface CellChange {
  readonly type: 'cell';
  readonly worksheet: string;
  readonly row: number;
  readonly column: number;
  readonly from?: Cell;
  readonly to?: Cell;
}

/** A worksheet replaced whole (rows inserted, names defined, title changed), added (no `from`) or removed (no `to`). */
export interface WorksheetChange {
  readonly type: 'worksheet';
  /** Place in the order of worksheets, before and after. */
  readonly index: number;
  readonly from?: Worksheet;
  readonly to?: Worksheet;
}

/** Order of worksheets, by id. */
export interface OrderChange {
  readonly type: 'order';
  readonly from: readonly string[];
  readonly to: readonly string[];
}

export type Settings = Pick<Notebook, 'title' | 'display' | 'currency'>;

export interface SettingsChange {
  readonly type: 'settings';
  readonly from: Settings;
  readonly to: Settings;
}

/** A record of one of the notebook's lists replaced (same id), added (no `from`) or removed (no `to`). */
export interface PartChange {
  readonly type: 'part';
  readonly part: PartName;
  /** Place in its list. */
  readonly index: number;
  readonly from?: AnyPart;
  readonly to?: AnyPart;
}

export type Change = CellChange | WorksheetChange | OrderChange | SettingsChange | PartChange;

/** Where the selection stands: the active cell and the far corner of the block. */
export interface Selection {
  readonly worksheet: string;
  readonly row: number;
  readonly column: number;
  readonly toRow: number;
  readonly toColumn: number;
}

export interface Transaction {
  readonly changes: readonly Change[];
  /** Words for the history: "enter B3", "insert 2 rows". */
  readonly description: string;
  /** What the user should be told besides: "B3 is now worked". */
  readonly notice?: string;
  readonly origin: 'user' | 'undo' | 'redo' | 'replay' | 'remote';
  readonly selectionBefore?: Selection;
  readonly selectionAfter?: Selection;
}
