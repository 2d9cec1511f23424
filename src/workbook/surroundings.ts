/** What surrounds every formula of a notebook. */

import type { Notebook } from '../document/index.ts';
import type { FunctionTable } from '../expression/index.ts';
import type { Cells, CellState } from './cells.ts';

export interface Surroundings {
  readonly cells: Cells;
  readonly notebook: Notebook;
  readonly functions: FunctionTable;
  /** Display unit of a cell, "" for none. */
  unitOf(state: CellState): string;
}
