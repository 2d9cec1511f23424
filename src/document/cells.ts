/** Looking at cells of the frozen notebook, and making a new worksheet that shares what did not change. */

import { LIMITS } from './notebook.ts';
import type { Block, Cell, Notebook, Row, Worksheet } from './notebook.ts';

export type { CellPlace } from './place.ts';

/** A cell to be put (or taken away, where `cell` is undefined). */
export interface CellWrite {
  readonly row: number;
  readonly column: number;
  readonly cell: Cell | undefined;
}

export function findWorksheet(notebook: Notebook, id: string): Worksheet | undefined {
  return notebook.worksheets.find((worksheet) => worksheet.id === id);
}

/** The worksheet with this id; throws where there is none. */
export function worksheetOf(notebook: Notebook, id: string): Worksheet {
  const found = findWorksheet(notebook, id);
  if (!found) {
    throw new RangeError(
      `no worksheet ${id}; there are ${notebook.worksheets.map((each) => each.id).join(', ')}`,
    );
  }
  return found;
}

/** The worksheet with exactly this title. */
export function worksheetTitled(notebook: Notebook, title: string): Worksheet | undefined {
  return notebook.worksheets.find((worksheet) => worksheet.title === title);
}

/** The cell at a place, undefined where it is empty. */
export function cellAt(worksheet: Worksheet, row: number, column: number): Cell | undefined {
  return worksheet.rows[row]?.[column];
}

/** Calls back for every filled cell, row by row. */
export function forEachCell(
  worksheet: Worksheet,
  visit: (cell: Cell, row: number, column: number) => void,
): void {
  for (let row = 0; row < worksheet.rows.length; row++) {
    const cells = worksheet.rows[row];
    if (!cells) continue;
    for (let column = 0; column < cells.length; column++) {
      const cell = cells[column];
      if (cell) visit(cell, row, column);
    }
  }
}

const filledInRow = new WeakMap<Row, number>();

/** How many cells of the worksheet are filled. */
export function filledCells(worksheet: Worksheet): number {
  let sum = 0;
  for (const row of worksheet.rows) {
    if (!row) continue;
    let count = filledInRow.get(row);
    if (count === undefined) {
      count = row.reduce((total, cell) => (cell ? total + 1 : total), 0);
      filledInRow.set(row, count);
    }
    sum += count;
  }
  return sum;
}

/** Number of rows and columns up to the last filled cell. */
export function usedExtent(worksheet: Worksheet): { readonly rows: number; readonly columns: number } {
  return {
    rows: worksheet.rows.length,
    columns: worksheet.rows.reduce((most, row) => Math.max(most, row?.length ?? 0), 0),
  };
}

/** The same list without undefined at its end: the one form in which sparse lists are kept. */
export function trimmed<T>(list: readonly (T | undefined)[]): readonly (T | undefined)[] {
  let length = list.length;
  while (length > 0 && list[length - 1] === undefined) length--;
  return Object.freeze(list.slice(0, length));
}

/** A row of these cells, undefined where none is filled. */
export function tidyRow(cells: readonly (Cell | undefined)[]): Row | undefined {
  const row = trimmed(cells);
  return row.length > 0 ? row : undefined;
}

/** Sets a place of a sparse list, filling the gap before it with undefined (never holes). */
export function setSparse<T>(list: (T | undefined)[], index: number, value: T | undefined): void {
  while (list.length < index) list.push(undefined);
  list[index] = value;
}

/** The worksheet with these cells; rows that are not touched are shared. */
export function withCells(worksheet: Worksheet, writes: Iterable<CellWrite>): Worksheet {
  const touched = new Map<number, (Cell | undefined)[]>();
  for (const { row, column, cell } of writes) {
    let draft = touched.get(row);
    if (!draft) {
      draft = [...(worksheet.rows[row] ?? [])];
      touched.set(row, draft);
    }
    setSparse(draft, column, cell);
  }
  if (touched.size === 0) return worksheet;
  const rows = [...worksheet.rows];
  for (const [row, draft] of touched) setSparse(rows, row, tidyRow(draft));
  return Object.freeze({ ...worksheet, rows: trimmed(rows) });
}

export function isInBlock(block: Block, row: number, column: number): boolean {
  return (
    row >= block.row &&
    row < block.row + block.rows &&
    column >= block.column &&
    column < block.column + block.columns
  );
}

/** True where the inner block lies in the outer one, edges included. */
export function isBlockWithin(inner: Block, outer: Block): boolean {
  return (
    isInBlock(outer, inner.row, inner.column) &&
    isInBlock(outer, inner.row + inner.rows - 1, inner.column + inner.columns - 1)
  );
}

export function doBlocksMeet(a: Block, b: Block): boolean {
  return (
    a.row < b.row + b.rows &&
    b.row < a.row + a.rows &&
    a.column < b.column + b.columns &&
    b.column < a.column + a.columns
  );
}

/** Throws where a block does not lie in the largest worksheet there can be. */
export function checkBlock(block: Block): void {
  const { row, column, rows, columns } = block;
  const whole = [row, column, rows, columns].every(Number.isInteger);
  if (
    !whole ||
    row < 0 ||
    column < 0 ||
    rows < 1 ||
    columns < 1 ||
    row + rows > LIMITS.rows ||
    column + columns > LIMITS.columns
  ) {
    throw new RangeError(
      `block ${JSON.stringify(block)} lies outside ${LIMITS.rows} rows x ${LIMITS.columns} columns`,
    );
  }
}
