/** Filling a block from the row or column at one of its edges; references shift as in copies. */

import { canonicalContent } from '../canonical-content.ts';
import { cellAt, checkBlock, worksheetOf } from '../cells.ts';
import type { CellWrite } from '../cells.ts';
import type { Transaction } from '../change.ts';
import { transactionTo } from '../changes-between.ts';
import { contentOf } from '../content.ts';
import { blockText, shiftedContent } from '../formula-references.ts';
import { LIMITS } from '../notebook.ts';
import type { Cell, Notebook } from '../notebook.ts';
import { isRefusal } from '../refusal.ts';
import type { Refusal } from '../refusal.ts';
import { tidyCell } from '../tidy-cell.ts';
import { withWrites } from '../with-worksheet.ts';
import { withProperty } from './properties.ts';
import type { CellsArgs } from './properties.ts';

/**
 * What a copy of a cell is in another place: its references shifted; own label, place at the machine and
 * acknowledgements stay with the original; a plain number without a unit takes that of the place (F1a).
 */
export function copiedCell(
  original: Cell,
  place: Cell | undefined,
  rows: number,
  columns: number,
  currency: string,
): Cell | undefined {
  const { label: _label, machine: _machine, acknowledged: _acknowledged, ...copy } = original;
  const plain = original.unit === undefined && contentOf(original, currency).type === 'number';
  if (plain && place) {
    const canonical = canonicalContent(original.content, { currency }, place);
    if (!isRefusal(canonical) && canonical.content !== original.content) {
      return tidyCell({ ...withProperty(copy, 'unit', place.unit), content: canonical.content });
    }
  }
  return tidyCell({ ...copy, content: shiftedContent(original, rows, columns) });
}

export type FillDirection = 'down' | 'right' | 'up' | 'left';

/** Fills the block from its first row (down), first column (right), last row (up) or last column (left). */
export function fill(
  notebook: Notebook,
  { worksheet, block, direction }: CellsArgs & { readonly direction: FillDirection },
): Transaction | Refusal {
  checkBlock(block);
  const sheet = worksheetOf(notebook, worksheet);
  const isUpright = direction === 'down' || direction === 'up';
  const edge = {
    row: direction === 'up' ? block.row + block.rows - 1 : block.row,
    column: direction === 'left' ? block.column + block.columns - 1 : block.column,
  };
  const writes: CellWrite[] = [];
  for (let row = block.row; row < block.row + block.rows; row++) {
    for (let column = block.column; column < block.column + block.columns; column++) {
      const from = isUpright ? { row: edge.row, column } : { row, column: edge.column };
      if (from.row === row && from.column === column) continue;
      const original = cellAt(sheet, from.row, from.column);
      const place = cellAt(sheet, row, column);
      if (!original && !place) continue;
      const cell =
        original && copiedCell(original, place, row - from.row, column - from.column, notebook.currency);
      if (cell && cell.content.length > LIMITS.contentLength) {
        return { message: `A formula would be longer than ${LIMITS.contentLength} characters.` };
      }
      writes.push({ row, column, cell });
    }
  }
  const after = withWrites(notebook, worksheet, writes);
  return transactionTo(notebook, after, `fill ${direction} ${blockText(block)}`);
}
