/** Finding a text in the contents of a notebook, and putting another in its place. Knows no screen. */

import { cellAt, enterMany, findWorksheet, forEachCell } from '../document/index.ts';
import type { EnteredMany, Notebook } from '../document/index.ts';
import type { CellAddress } from '../calculation/index.ts';
import { editedText, typing } from './number-locale.ts';

export interface Query {
  readonly text: string;
  readonly matchCase: boolean;
  /** The whole content, not a part of it. */
  readonly whole: boolean;
  /** Formulas too. */
  readonly formulas: boolean;
  /** Id of the one worksheet to look at; absent: all of them. */
  readonly worksheet?: string;
}

/** What is looked for, as a pattern; undefined where nothing is. */
function pattern({ text, matchCase, whole }: Query): RegExp | undefined {
  if (text === '') return undefined;
  const plain = text.replaceAll(/[\\^$.*+?()[\]{}|/]/g, String.raw`\$&`);
  return new RegExp(whole ? `^${plain}$` : plain, matchCase ? 'gu' : 'giu');
}

/** Content as the user reads it here: with the decimal mark of the place; the apostrophe of a text is none of it. */
const readable = (content: string, currency: string): string =>
  content.startsWith("'") ? content.slice(1) : editedText(content, currency);

/** All cells that hold it, in the order of worksheets, rows and columns. */
export function find(notebook: Notebook, query: Query): readonly CellAddress[] {
  const wanted = pattern(query);
  if (!wanted) return [];
  const found: CellAddress[] = [];
  for (const worksheet of notebook.worksheets) {
    if (query.worksheet !== undefined && worksheet.id !== query.worksheet) continue;
    forEachCell(worksheet, ({ content }, row, column) => {
      if (content.startsWith('=') && !query.formulas) return;
      wanted.lastIndex = 0;
      if (wanted.test(readable(content, notebook.currency)))
        found.push({ worksheet: worksheet.id, row, column });
    });
  }
  return found;
}

/** The contents with `by` in place of what was found: one step; what can not be changed is left and named. */
export function replace(
  notebook: Notebook,
  query: Query,
  by: string,
  places: readonly CellAddress[],
): EnteredMany {
  const wanted = pattern(query);
  const entries = places.flatMap((place) => {
    const worksheet = findWorksheet(notebook, place.worksheet);
    const content = worksheet && cellAt(worksheet, place.row, place.column)?.content;
    if (!wanted || content === undefined) return [];
    const typed = readable(content, notebook.currency).replaceAll(wanted, () => by);
    // A text goes on being a text, whatever it reads like.
    return [{ ...place, typed: content.startsWith("'") && typed !== '' ? `'${typed}` : typed }];
  });
  return enterMany(notebook, entries, `replace ${query.text} by ${by}`, typing());
}

/** The place after (or before) another in the order of the list, round its end; -1 where there is none. */
export function nextOf(
  notebook: Notebook,
  places: readonly CellAddress[],
  from: CellAddress,
  step: 1 | -1,
): number {
  const order = new Map(notebook.worksheets.map(({ id }, k) => [id, k]));
  const rank = ({ worksheet, row, column }: CellAddress): number =>
    (order.get(worksheet) ?? 0) * 2 ** 17 + row * 64 + column;
  const here = rank(from);
  if (places.length === 0) return -1;
  if (step === 1)
    return Math.max(
      0,
      places.findIndex((place) => rank(place) > here),
    );
  const before = places.findLastIndex((place) => rank(place) < here);
  return before < 0 ? places.length - 1 : before;
}
