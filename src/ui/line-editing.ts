/** What the hands do to whole rows and columns: carrying them along, widths, what stays in sight; and pulling a block on. */

import { COLUMN_WIDTHS, fill, isRefusal, moveLines, setHeads, setWidth } from '../document/index.ts';
import type { Block, FillDirection } from '../document/index.ts';
import { selectedBlock } from './editing.ts';
import type { Direction } from './keymap.ts';
import type { Session } from './session.ts';

/** Moves the selected rows or columns by one place; the selection goes with them. */
export function carryLines(session: Session, direction: Direction): void {
  const { row, column, rows, columns } = selectedBlock(session);
  const { worksheet, selection, notebook } = session;
  const axis = direction === 'up' || direction === 'down' ? 'row' : 'column';
  const [at, count, all] =
    axis === 'row' ? [row, rows, worksheet.rowCount] : [column, columns, worksheet.columnCount];
  const by = direction === 'down' || direction === 'right' ? 1 : -1;
  if (at + by < 0 || at + by + count > all) return;
  const to = by > 0 ? at + count + 1 : at - 1;
  const answer = moveLines(notebook, { worksheet: worksheet.id, axis, at, count, to });
  const { row: r, column: c, toRow, toColumn } = selection;
  const selectionAfter =
    axis === 'row'
      ? { ...selection, row: r + by, toRow: toRow + by }
      : { ...selection, column: c + by, toColumn: toColumn + by };
  session.run(isRefusal(answer) ? answer : { ...answer, selectionAfter });
}

/** One press of the key that makes columns wider, in CSS pixels. */
const STEP = 12;

/** Makes the selected columns wider or narrower; `widths` are those in sight. */
export function widenColumns(session: Session, by: 1 | -1, widths: readonly number[]): void {
  const { column, columns } = selectedBlock(session);
  const now = widths[column] ?? COLUMN_WIDTHS.least;
  const width = Math.min(COLUMN_WIDTHS.most, Math.max(COLUMN_WIDTHS.least, now + by * STEP));
  setColumns(session, { column, columns, width });
}

export function setColumns(
  session: Session,
  args: { readonly column: number; readonly columns: number; readonly width?: number },
): void {
  session.run(setWidth(session.notebook, { worksheet: session.worksheet.id, ...args }));
}

export function toggleHead(session: Session, which: 'headRow' | 'headColumn'): void {
  const { worksheet, notebook } = session;
  session.run(setHeads(notebook, { worksheet: worksheet.id, [which]: worksheet[which] !== true }));
}

/** Where pulling the fill handle of a block to a cell leads, and which way: the one that is furthest. */
export function pulledBlock(
  block: Block,
  row: number,
  column: number,
): { readonly block: Block; readonly direction: FillDirection } | undefined {
  const ways = [
    ['down', row - (block.row + block.rows - 1)],
    ['right', column - (block.column + block.columns - 1)],
    ['up', block.row - row],
    ['left', block.column - column],
  ] as const;
  const [direction, by] = ways.reduce((furthest, way) => (way[1] > furthest[1] ? way : furthest));
  if (by <= 0) return undefined;
  const pulled = {
    down: { ...block, rows: block.rows + by },
    right: { ...block, columns: block.columns + by },
    up: { ...block, row, rows: block.rows + by },
    left: { ...block, column, columns: block.columns + by },
  };
  return { block: pulled[direction], direction };
}

/** Fills on from the row or column of the block at the edge that was pulled; all of it is selected then. */
export function fillTo(
  session: Session,
  from: Block,
  { block, direction }: NonNullable<ReturnType<typeof pulledBlock>>,
): void {
  const { worksheet, notebook } = session;
  const { row, column, rows, columns } = block;
  const target = {
    down: { ...block, row: from.row + from.rows - 1, rows: rows - from.rows + 1 },
    right: { ...block, column: from.column + from.columns - 1, columns: columns - from.columns + 1 },
    up: { ...block, rows: rows - from.rows + 1 },
    left: { ...block, columns: columns - from.columns + 1 },
  };
  const answer = fill(notebook, { worksheet: worksheet.id, block: target[direction], direction });
  const selectionAfter = {
    worksheet: worksheet.id,
    row,
    column,
    toRow: row + rows - 1,
    toColumn: column + columns - 1,
  };
  session.run(isRefusal(answer) ? answer : { ...answer, selectionAfter });
}
