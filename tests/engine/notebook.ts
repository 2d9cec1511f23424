/** Notebooks for the tests, written as worksheet titles with cells by address. */

import { emptyNotebook, emptyWorksheet, withCells } from '../../src/document/index.ts';
import type { Cell, CellWrite, Change, DefinedName, Notebook, Worksheet } from '../../src/document/index.ts';
import { readAddress } from '../../src/expression/index.ts';
import type { CellAddress } from '../../src/calculation/index.ts';
import { createEngine } from '../../src/engine/index.ts';
import type { Engine } from '../../src/engine/index.ts';
import { functionTable } from '../../src/catalogue.ts';

export type Cells = Readonly<Record<string, string | Cell>>;

export interface Page {
  readonly title: string;
  readonly cells: Cells;
  readonly names?: Readonly<Record<string, string>>;
  readonly common?: boolean;
}

const place = (address: string): { row: number; column: number } => {
  const corner = readAddress(address);
  if (!corner) throw new RangeError(`${address} is no address`);
  return { row: corner.row, column: corner.column };
};

const definedName = (name: string, target: string): DefinedName => {
  const [start = '', end = start] = target.split(':');
  const from = place(start);
  const to = place(end);
  return { name, target: { ...from, rows: to.row - from.row + 1, columns: to.column - from.column + 1 } };
};

export function worksheet(id: string, page: Page): Worksheet {
  const writes: CellWrite[] = Object.entries(page.cells).map(([address, cell]) => ({
    ...place(address),
    cell: typeof cell === 'string' ? { content: cell } : cell,
  }));
  return {
    ...withCells({ ...emptyWorksheet(id, page.title), rowCount: 2000, columnCount: 64 }, writes),
    common: page.common ?? false,
    names: Object.entries(page.names ?? {}).map(([name, target]) => definedName(name, target)),
  };
}

export function notebookOf(pages: readonly Page[], settings: Partial<Notebook> = {}): Notebook {
  return {
    ...emptyNotebook({ id: 'n1' }),
    worksheets: pages.map((page, index) => worksheet(`w${index + 1}`, page)),
    ...settings,
  };
}

export const at = (address: string, worksheetId = 'w1'): CellAddress => ({
  worksheet: worksheetId,
  ...place(address),
});

/** An engine with all functions and one worksheet of these cells open. */
export function opened(cells: Cells, settings: Partial<Notebook> = {}, names: Page['names'] = {}): Engine {
  return openedPages([{ title: 'Sheet', cells, names }], settings);
}

export function openedPages(pages: readonly Page[], settings: Partial<Notebook> = {}): Engine {
  const engine = createEngine({ functions: functionTable() });
  engine.open(notebookOf(pages, settings));
  return engine;
}

/** A change of one cell; an empty text clears it. */
export function typed(address: string, to: string | Cell, worksheetId = 'w1'): Change {
  const cell = typeof to === 'string' ? { content: to } : to;
  return { type: 'cell', ...at(address, worksheetId), ...(cell.content !== '' && { to: cell }) };
}
