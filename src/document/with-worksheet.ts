/** Notebooks made from notebooks: the steps commands are made of. */

import { withCells, worksheetOf } from './cells.ts';
import type { CellWrite } from './cells.ts';
import type { Notebook, Worksheet } from './notebook.ts';

/** The notebook with the worksheet of the same id replaced. */
export function withWorksheet(notebook: Notebook, worksheet: Worksheet): Notebook {
  return {
    ...notebook,
    worksheets: notebook.worksheets.map((each) =>
      each.id === worksheet.id ? Object.freeze(worksheet) : each,
    ),
  };
}

/** The notebook with these cells on one worksheet, which grows to hold them. */
export function withWrites(notebook: Notebook, worksheetId: string, writes: readonly CellWrite[]): Notebook {
  const worksheet = withCells(worksheetOf(notebook, worksheetId), writes);
  let { rowCount, columnCount } = worksheet;
  for (const { row, column, cell } of writes) {
    if (!cell) continue;
    rowCount = Math.max(rowCount, row + 1);
    columnCount = Math.max(columnCount, column + 1);
  }
  const grown = rowCount > worksheet.rowCount || columnCount > worksheet.columnCount;
  return withWorksheet(notebook, grown ? { ...worksheet, rowCount, columnCount } : worksheet);
}

/** An id that no worksheet of the notebook has: one above the highest. */
export function freshWorksheetId(notebook: Notebook): string {
  const numbers = notebook.worksheets.map(({ id }) => Number(/^w(\d+)$/.exec(id)?.[1] ?? 0));
  return `w${Math.max(0, ...numbers) + 1}`;
}
