/** The block that would be sorted, whether it has a head, and the sorting by what the cells show. */

import { cellAt, contentOf, sort } from '../document/index.ts';
import type { Block, Refusal, SortKey, SortValue, Transaction } from '../document/index.ts';
import { selectedBlock } from './editing.ts';
import type { Session } from './session.ts';

/** The selected block; from a single cell on the filled block around it. Whole rows and columns end where the filled cells do. */
export function sortBlock(session: Session): Block {
  const { worksheet } = session;
  const chosen = selectedBlock(session);
  const filled = (row: number, column: number): boolean => cellAt(worksheet, row, column) !== undefined;
  let [top, left] = [chosen.row, chosen.column];
  let [bottom, right] = [chosen.row + chosen.rows - 1, chosen.column + chosen.columns - 1];
  const rowFilled = (row: number): boolean => {
    for (let column = left; column <= right; column += 1) if (filled(row, column)) return true;
    return false;
  };
  const columnFilled = (column: number): boolean => {
    for (let row = top; row <= bottom; row += 1) if (filled(row, column)) return true;
    return false;
  };
  if (chosen.rows === 1 && chosen.columns === 1) {
    for (let grown = true; grown;) {
      grown = true;
      if (top > 0 && rowFilled(top - 1)) top -= 1;
      else if (bottom + 1 < worksheet.rowCount && rowFilled(bottom + 1)) bottom += 1;
      else if (left > 0 && columnFilled(left - 1)) left -= 1;
      else if (right + 1 < worksheet.columnCount && columnFilled(right + 1)) right += 1;
      else grown = false;
    }
  }
  while (bottom > top && !rowFilled(bottom)) bottom -= 1;
  while (right > left && !columnFilled(right)) right -= 1;
  return { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

/** The first row is all text (or the row that stays in sight) while something below it is not. */
export function looksLikeHead(session: Session, { row, column, rows, columns }: Block): boolean {
  const { worksheet, notebook } = session;
  if (rows < 2) return false;
  if (row === 0 && worksheet.headRow) return true;
  const isText = (r: number, c: number): boolean => {
    const cell = cellAt(worksheet, r, c);
    return !cell || ['text', 'empty'].includes(contentOf(cell, notebook.currency).type);
  };
  const all = Array.from({ length: columns }, (_, k) => column + k);
  return all.every((each) => isText(row, each)) && !all.every((each) => isText(row + 1, each));
}

/** The rows of the block in order; refused with the cell named where a formula refers to another row of it. */
export function sortedRows(session: Session, keys: readonly SortKey[], head: boolean): Transaction | Refusal {
  const block = sortBlock(session);
  const body = head ? { ...block, row: block.row + 1, rows: block.rows - 1 } : block;
  if (body.rows < 2) return { message: 'There is only one row to sort.' };
  const { id } = session.worksheet;
  const resultOf = (row: number, column: number): SortValue => {
    const result = session.results.at(id, row, column);
    return result && !result.error ? result.value : null;
  };
  return sort(session.notebook, { worksheet: id, block: body, keys, resultOf });
}
