/** Where a key takes the selection: by one cell, by a page, to the edge of what is filled. Knows no element. */

import { cellAt } from '../document/index.ts';
import type { Selection, Worksheet } from '../document/index.ts';
import type { Move } from './keymap.ts';

const PAGE = 20;

/** Row and column to go to, perhaps outside the worksheet; from the far corner where the block is extended. */
export function moved(
  { row, column, toRow, toColumn }: Selection,
  worksheet: Worksheet,
  move: Move,
  extend: boolean,
): readonly [number, number] {
  const [r, c] = extend ? [toRow, toColumn] : [row, column];
  const last = worksheet.columnCount - 1;
  const place: Record<Move, readonly [number, number]> = {
    up: [r - 1, c],
    down: [r + 1, c],
    left: [r, c - 1],
    right: [r, c + 1],
    pageUp: [r - PAGE, c],
    pageDown: [r + PAGE, c],
    home: [r, 0],
    end: [r, last],
    first: [0, 0],
    last: [worksheet.rowCount - 1, last],
  };
  return place[move];
}

/** The edge of the filled cells in a direction, or the next filled one. */
export function jumped(
  { row, column, toRow, toColumn }: Selection,
  worksheet: Worksheet,
  move: 'up' | 'down' | 'left' | 'right',
  extend: boolean,
): readonly [number, number] {
  let [r, c] = extend ? [toRow, toColumn] : [row, column];
  const [dr, dc] = { up: [-1, 0], down: [1, 0], left: [0, -1], right: [0, 1] }[move] as [number, number];
  const inside = (): boolean =>
    r + dr >= 0 && c + dc >= 0 && r + dr < worksheet.rowCount && c + dc < worksheet.columnCount;
  const filled = (row_: number, column_: number): boolean => Boolean(cellAt(worksheet, row_, column_));
  const run = inside() && filled(r, c) && filled(r + dr, c + dc);
  while (inside()) {
    if (run && !filled(r + dr, c + dc)) break;
    r += dr;
    c += dc;
    if (!run && filled(r, c)) break;
  }
  return [r, c];
}

/** The selection with both corners on the worksheet. */
export function kept({ row, column, toRow, toColumn }: Selection, worksheet: Worksheet): Selection {
  const inside = (value: number, count: number): number => Math.min(Math.max(value, 0), count - 1);
  return {
    worksheet: worksheet.id,
    row: inside(row, worksheet.rowCount),
    column: inside(column, worksheet.columnCount),
    toRow: inside(toRow, worksheet.rowCount),
    toColumn: inside(toColumn, worksheet.columnCount),
  };
}
