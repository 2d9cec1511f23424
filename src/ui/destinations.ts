/** Where one can go by typing: an address, a name, a worksheet. Knows no screen. */

import { findWorksheet, resolveName, worksheetTitled } from '../document/index.ts';
import type { Block, Notebook } from '../document/index.ts';
import { addressText, parse, titleText } from '../expression/index.ts';

export interface Destination {
  /** As it stands in formulas. */
  readonly label: string;
  readonly detail: string;
  /** Id. */
  readonly worksheet: string;
  readonly block: Block;
  /** The worksheet itself is meant, not its first cell. */
  readonly whole?: true;
}

const MOST = 12;
const FIRST: Block = { row: 0, column: 0, rows: 1, columns: 1 };

const blockWords = ({ row, column, rows, columns }: Block): string =>
  rows === 1 && columns === 1
    ? addressText(column, row)
    : `${addressText(column, row)}:${addressText(column + columns - 1, row + rows - 1)}`;

/** The place that a text means exactly: B7, B3:C9, fz, Feeds.B7, 'Tool trial'.fz. */
export function written(notebook: Notebook, here: string, text: string): Destination | undefined {
  const { tree } = parse(`=${text.trim()}`);
  if (tree?.type !== 'cell' && tree?.type !== 'range' && tree?.type !== 'name') return undefined;
  const on = tree.worksheet === undefined ? undefined : worksheetTitled(notebook, tree.worksheet);
  if (tree.worksheet !== undefined && !on) return undefined;
  const home = on ?? findWorksheet(notebook, here);
  if (!home) return undefined;
  if (tree.type === 'name') {
    const found = on
      ? { worksheet: on, defined: on.names.find(({ name }) => name === tree.name) }
      : resolveName(notebook, here, tree.name);
    return found?.defined && named(notebook, here, found.worksheet.id, found.defined);
  }
  const [start, end] = tree.type === 'cell' ? [tree, tree] : [tree.start, tree.end];
  const row = Math.min(start.row, end.row);
  const column = Math.min(start.column, end.column);
  const lastRow = Math.max(start.row, end.row);
  const lastColumn = Math.max(start.column, end.column);
  if (lastRow >= home.rowCount || lastColumn >= home.columnCount) return undefined;
  const block = { row, column, rows: lastRow - row + 1, columns: lastColumn - column + 1 };
  const where = home.id === here ? '' : `${titleText(home.title)}.`;
  return { label: `${where}${blockWords(block)}`, detail: `on ${home.title}`, worksheet: home.id, block };
}

function named(
  notebook: Notebook,
  here: string,
  worksheet: string,
  { name, target }: { readonly name: string; readonly target: Block },
): Destination {
  const title = findWorksheet(notebook, worksheet)?.title ?? '';
  const label = worksheet === here ? name : `${titleText(title)}.${name}`;
  return { label, detail: `${blockWords(target)} on ${title}`, worksheet, block: target };
}

/** What the text may mean, the exact one first, then names and worksheets that begin with it or hold it. */
export function destinations(notebook: Notebook, here: string, text: string): readonly Destination[] {
  const wanted = text.trim().toLowerCase();
  const exact = wanted === '' ? undefined : written(notebook, here, text);
  const names = notebook.worksheets.flatMap((worksheet) =>
    worksheet.names.map((defined) => named(notebook, here, worksheet.id, defined)),
  );
  const sheets = notebook.worksheets.map(({ id, title }): Destination => ({
    label: title,
    detail: 'worksheet',
    worksheet: id,
    block: FIRST,
    whole: true,
  }));
  const rank = ({ label, worksheet }: Destination): number => {
    const lower = label.toLowerCase();
    const home = worksheet === here ? 0 : 0.5;
    return lower.startsWith(wanted) ? home : lower.includes(wanted) ? 1 + home : 9;
  };
  const fitting = [...names, ...sheets]
    .filter((each) => rank(each) < 9 && each.label !== exact?.label)
    .toSorted((a, b) => rank(a) - rank(b) || a.label.localeCompare(b.label));
  return [...(exact ? [exact] : []), ...fitting].slice(0, MOST);
}
