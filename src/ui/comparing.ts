/** A notebook that came back, laid beside one's own: differences in words, who made them, and results that come out differently. */

import { cellAt, findWorksheet, forEachCell, isSame, labelOf, worksheetTitled } from '../document/index.ts';
import type { Cell, CellPlace, Notebook, Worksheet } from '../document/index.ts';
import { compareNotebooks, shownValue } from '../exchange/index.ts';
import type { Difference, ReadNotebook, StoredResults } from '../exchange/index.ts';
import { addressText } from '../expression/index.ts';
import { resultsFor } from './export-results.ts';
import { editedText } from './number-locale.ts';
import type { Session } from './session.ts';

/** Who changed it since the state both had: told only where that state is known. */
export type Author = 'there' | 'here' | 'both' | 'unknown';

export interface Side {
  /** Value with its unit, or the words for what stands there; "" where there is nothing. */
  readonly value: string;
  /** Formula and properties, a line each. */
  readonly lines: readonly string[];
}

export interface ComparedPlace {
  readonly key: string;
  readonly difference: Difference;
  readonly where: string;
  /** The cell, where it is one. */
  readonly place: CellPlace | undefined;
  readonly author: Author;
  readonly ours: Side;
  readonly theirs: Side;
}

const placeOf = (difference: Difference): CellPlace | undefined =>
  difference.type === 'cell'
    ? { worksheet: difference.worksheet, row: difference.row, column: difference.column }
    : undefined;

/** The same place has the same key whichever two states are compared. */
function keyOf(difference: Difference): string {
  const { ours: _ours, theirs: _theirs, ...place } = difference;
  const side = difference.ours ?? difference.theirs;
  const id = typeof side === 'object' && 'id' in side ? side.id : undefined;
  return JSON.stringify([place, difference.type === 'worksheet' ? id : undefined]);
}

/** Of the states that were handed over, the one nearest to what came back. */
export function ancestorOf(
  received: Notebook,
  states: readonly { readonly at: number; readonly notebook: Notebook }[],
): { readonly at: number; readonly notebook: Notebook } | undefined {
  const ranked = states.map((state) => ({ state, count: compareNotebooks(state.notebook, received).length }));
  return ranked.sort((a, b) => a.count - b.count)[0]?.state;
}

const NOTHING: Side = { value: '', lines: [] };

/** The properties of a cell in which two cells differ, in words. */
function propertyLines(cell: Cell, other: Cell | undefined): string[] {
  return Object.entries(cell).flatMap(([key, value]: [string, unknown]): string[] => {
    const before: unknown = other && Object.entries(other).find(([name]) => name === key)?.[1];
    if (key === 'content' || isSame(value, before)) return [];
    return [`${key}: ${typeof value === 'string' ? value : JSON.stringify(value)}`];
  });
}

function cellSide(
  notebook: Notebook,
  worksheet: Worksheet | undefined,
  { row, column }: CellPlace,
  results: StoredResults,
  other: Cell | undefined,
): Side {
  const cell = worksheet && cellAt(worksheet, row, column);
  if (!worksheet || !cell) return NOTHING;
  const { text } = shownValue(notebook, worksheet, row, column, results);
  const formula = cell.content.startsWith('=') ? [editedText(cell.content, notebook.currency)] : [];
  const value = cell.content.startsWith('=') ? text : editedText(cell.content, notebook.currency);
  return { value, lines: [...formula, ...propertyLines(cell, other)] };
}

const counterpart = (ours: Notebook, theirs: Notebook, worksheet: Worksheet): Worksheet | undefined =>
  (ours.id === theirs.id ? findWorksheet(theirs, worksheet.id) : undefined) ??
  worksheetTitled(theirs, worksheet.title);

const words = (text: string): Side => ({ value: text, lines: [] });
const cellsOf = ({ rows }: Worksheet): number =>
  rows.reduce((sum, row) => sum + (row?.filter(Boolean).length ?? 0), 0);

function sidesOf(
  session: Session,
  { notebook: theirs, results }: ReadNotebook,
  difference: Difference,
): { readonly where: string; readonly ours: Side; readonly theirs: Side } {
  const { notebook } = session;
  const home = 'worksheet' in difference ? findWorksheet(notebook, difference.worksheet) : undefined;
  switch (difference.type) {
    case 'cell': {
      const { row, column, ours, theirs: other } = difference;
      const there = home && counterpart(notebook, theirs, home);
      const label = (home && labelOf(home, row, column)) || (there ? labelOf(there, row, column) : '');
      const at = `${home?.title ?? ''} ${addressText(column, row)}`;
      return {
        where: label === '' ? at : `${at} · ${label}`,
        ours: cellSide(notebook, home, difference, resultsFor(session), other),
        theirs: cellSide(theirs, there, difference, results, ours),
      };
    }
    case 'worksheet': {
      const side = (worksheet: Worksheet | undefined): Side =>
        worksheet ? words(`${worksheet.title}: ${cellsOf(worksheet)} filled cells`) : NOTHING;
      const title = difference.ours?.title ?? difference.theirs?.title ?? '';
      return { where: `Worksheet ${title}`, ours: side(difference.ours), theirs: side(difference.theirs) };
    }
    case 'setting':
      return {
        where: `Notebook: ${difference.key}`,
        ours: words(difference.ours),
        theirs: words(difference.theirs),
      };
    default: {
      const side = (value: unknown): Side => (value === undefined ? NOTHING : words(brief(value)));
      const name = 'name' in difference ? difference.name : '';
      return {
        where: [home?.title ?? '', difference.type, name].filter((text) => text !== '').join(' '),
        ours: side(difference.ours),
        theirs: side(difference.theirs),
      };
    }
  }
}

const MOST_LETTERS = 160;

/** Any record on one line: its title where it has one. */
function brief(value: unknown): string {
  if (typeof value === 'string') return value;
  const text = JSON.stringify(value);
  return text.length <= MOST_LETTERS ? text : `${text.slice(0, MOST_LETTERS)}…`;
}

/** Everything that differs now, in the order of our worksheets. */
export function comparedPlaces(
  session: Session,
  received: ReadNotebook,
  base: Notebook | undefined,
): readonly ComparedPlace[] {
  const { notebook } = session;
  const changed = (other: Notebook): ReadonlySet<string> | undefined =>
    base && new Set(compareNotebooks(base, other).map(keyOf));
  const [here, there] = [changed(notebook), changed(received.notebook)];
  return compareNotebooks(notebook, received.notebook).map((difference) => {
    const key = keyOf(difference);
    const author: Author =
      !here || !there ? 'unknown' : there.has(key) ? (here.has(key) ? 'both' : 'there') : 'here';
    return { key, difference, place: placeOf(difference), author, ...sidesOf(session, received, difference) };
  });
}

export interface DifferingResult {
  readonly place: CellPlace;
  readonly where: string;
  readonly ours: string;
  readonly theirs: string;
}

/** Relative difference below which two results are the same number. */
const SAME = 1e-9;

/** Formulas that stand on both sides alike and give something else: what the changed values do. */
export function differingResults(session: Session, received: ReadNotebook): readonly DifferingResult[] {
  const { notebook } = session;
  const own = resultsFor(session);
  const found: DifferingResult[] = [];
  for (const worksheet of notebook.worksheets) {
    const there = counterpart(notebook, received.notebook, worksheet);
    if (!there) continue;
    forEachCell(worksheet, ({ content }, row, column) => {
      if (!content.startsWith('=') || cellAt(there, row, column)?.content !== content) return;
      const address = addressText(column, row);
      const [here, other] = [
        own.get(worksheet.id)?.get(address),
        received.results.get(there.id)?.get(address),
      ];
      if (!here || !other || isSameResult(here, other)) return;
      const label = labelOf(worksheet, row, column);
      found.push({
        place: { worksheet: worksheet.id, row, column },
        where: `${worksheet.title} ${address}${label === '' ? '' : ` · ${label}`}`,
        ours: shownValue(notebook, worksheet, row, column, own).text,
        theirs: shownValue(received.notebook, there, row, column, received.results).text,
      });
    });
  }
  return found;
}

function isSameResult(
  a: { readonly value: unknown; readonly error?: unknown },
  b: { readonly value: unknown; readonly error?: unknown },
): boolean {
  if ((a.error === undefined) !== (b.error === undefined)) return false;
  if (typeof a.value === 'number' && typeof b.value === 'number')
    return Math.abs(a.value - b.value) <= SAME * Math.max(Math.abs(a.value), Math.abs(b.value));
  return a.value === b.value;
}
