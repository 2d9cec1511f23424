/** Putting an understood table into the notebook: from a cell on, or on a worksheet of its own. One step. */

import {
  addWorksheet,
  apply,
  cellAt,
  enter,
  findWorksheet,
  freeTitle,
  isRefusal,
  transactionTo,
} from '../document/index.ts';
import type { Notebook, Refusal, Transaction } from '../document/index.ts';
import type { CellAddress } from '../calculation/index.ts';

type Contents = readonly (readonly string[])[];

/** From a cell on. */
export const takenAt = (notebook: Notebook, at: CellAddress, contents: Contents): Transaction | Refusal =>
  enter(notebook, { ...at, typed: contents });

/** How many filled cells would be written over. */
export function overwritten(notebook: Notebook, at: CellAddress, contents: Contents): number {
  const worksheet = findWorksheet(notebook, at.worksheet);
  if (!worksheet) return 0;
  let count = 0;
  contents.forEach((line, down) =>
    line.forEach((_, right) => {
      if (cellAt(worksheet, at.row + down, at.column + right)?.content) count += 1;
    }),
  );
  return count;
}

/** On a new worksheet, which is selected then; `name` may be that of a file. */
export function takenAnew(notebook: Notebook, name: string, contents: Contents): Transaction | Refusal {
  const wanted = name
    .replace(/\.[^.]*$/, '')
    .replaceAll(/[\p{Cc}'[\]]/gu, ' ')
    .trim()
    .slice(0, 60);
  const title = freeTitle(notebook, wanted === '' ? 'Table' : wanted);
  const added = addWorksheet(notebook, { title });
  if (isRefusal(added)) return added;
  const withSheet = apply(notebook, added.changes);
  const worksheet = withSheet.worksheets.at(-1)?.id ?? '';
  const filled = enter(withSheet, { worksheet, row: 0, column: 0, typed: contents });
  if (isRefusal(filled)) return filled;
  const selectionAfter = { worksheet, row: 0, column: 0, toRow: 0, toColumn: 0 };
  return transactionTo(notebook, apply(withSheet, filled.changes), `add ${title}`, { selectionAfter });
}
