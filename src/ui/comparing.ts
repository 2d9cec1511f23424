/** A notebook that came back, laid beside one's own: differences in words, who made them, and results that come out differently. */

import {
  apply,
  cellAt,
  findWorksheet,
  forEachCell,
  isRefusal,
  isSame,
  labelOf,
  transactionTo,
} from '../document/index.ts';
import type {
  AnyPart,
  Cell,
  CellPlace,
  Notebook,
  PartName,
  Refusal,
  Transaction,
  Worksheet,
} from '../document/index.ts';
import {
  NO_RESULTS,
  compareNotebooks,
  laidBeside,
  placeKey,
  shownValue,
  takeDifferences,
} from '../exchange/index.ts';
import type { Difference, ReadNotebook, StoredResult, StoredResults } from '../exchange/index.ts';
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

/** Both notebooks laid upon one another line by line, as far as a comparison needs it. */
export interface Comparison {
  /** Ours, with room for lines that only theirs has: nothing of it is committed yet. */
  readonly ours: Notebook;
  readonly theirs: Notebook;
  /** Stored results of theirs at the places of `theirs`. */
  readonly results: StoredResults;
  readonly base: Notebook | undefined;
}

/** Stored results where their cells stand after they were laid out; the order of filled cells tells which is which. */
function movedResults(from: Notebook, to: Notebook, results: StoredResults): StoredResults {
  const moved = new Map<string, ReadonlyMap<string, StoredResult>>();
  for (const [k, worksheet] of to.worksheets.entries()) {
    const before = from.worksheets[k];
    const stored = before && results.get(before.id);
    if (!before || !stored) continue;
    if (before.rows === worksheet.rows) {
      moved.set(worksheet.id, stored);
      continue;
    }
    const [old, now] = [addressesOf(before), addressesOf(worksheet)];
    if (old.length !== now.length) continue;
    const pairs = now.flatMap((address, at): [string, StoredResult][] => {
      const result = stored.get(old[at] ?? '');
      return result ? [[address, result]] : [];
    });
    moved.set(worksheet.id, new Map(pairs));
  }
  return moved;
}

function addressesOf(worksheet: Worksheet): string[] {
  const found: string[] = [];
  forEachCell(worksheet, (_, row, column) => found.push(addressText(column, row)));
  return found;
}

/** Lays what came back beside our notebook; refused where there is no room. */
export function comparison(
  notebook: Notebook,
  received: ReadNotebook,
  base: Notebook | undefined,
): Comparison | Refusal {
  const beside = laidBeside(notebook, received.notebook, base);
  if (isRefusal(beside.room)) return beside.room;
  return {
    ours: apply(notebook, beside.room.changes),
    theirs: beside.theirs,
    results: movedResults(received.notebook, beside.theirs, received.results),
    base: beside.base,
  };
}

/** One step on our notebook that takes over what stands in the chosen places. */
export function taking(
  notebook: Notebook,
  { ours }: Comparison,
  places: readonly ComparedPlace[],
): Transaction | Refusal {
  const taken = takeDifferences(
    ours,
    places.map(({ difference }) => difference),
  );
  if (isRefusal(taken)) return taken;
  return transactionTo(notebook, apply(ours, taken.changes), taken.description);
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

/** A property of a cell in words. */
function propertyWords(cell: Cell, key: string, value: unknown): string {
  if (key === 'changed' && cell.changed) {
    const { by, at, from, reason } = cell.changed;
    const why = reason === undefined ? '' : `; limit passed: ${reason}`;
    return `set at the machine by ${by}, ${at.slice(0, 16).replace('T', ' ')}; before: ${from}${why}`;
  }
  if (key === 'limits' && cell.limits) {
    const { low, high } = cell.limits;
    return `limits: ${[low && `at least ${low}`, high && `at most ${high}`].filter(Boolean).join(', ')}`;
  }
  if (key === 'acknowledged' && cell.acknowledged)
    return `acknowledged: ${cell.acknowledged.map(({ reason }) => reason).join('; ')}`;
  return `${key}: ${brief(value)}`;
}

/** The properties of a cell in which two cells differ, in words. */
function propertyLines(cell: Cell, other: Cell | undefined): string[] {
  const before = new Map<string, unknown>(Object.entries(other ?? {}));
  return Object.entries(cell).flatMap(([key, value]: [string, unknown]): string[] =>
    key === 'content' || isSame(value, before.get(key)) ? [] : [propertyWords(cell, key, value)],
  );
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

const words = (text: string): Side => ({ value: text, lines: [] });
const cellsOf = ({ rows }: Worksheet): number =>
  rows.reduce((sum, row) => sum + (row?.filter(Boolean).length ?? 0), 0);

function sidesOf(
  session: Session,
  { ours: notebook, theirs, results }: Comparison,
  difference: Difference,
): { readonly where: string; readonly ours: Side; readonly theirs: Side } {
  const home = 'worksheet' in difference ? findWorksheet(notebook, difference.worksheet) : undefined;
  switch (difference.type) {
    case 'cell': {
      const { row, column, ours, theirs: other } = difference;
      const there = findWorksheet(theirs, difference.worksheet);
      const label = (home && labelOf(home, row, column)) || (there ? labelOf(there, row, column) : '');
      const at = `${home?.title ?? ''} ${addressText(column, row)}`;
      // Where room is still to be made, our results stand elsewhere.
      const own =
        home === findWorksheet(session.notebook, difference.worksheet) ? resultsFor(session) : NO_RESULTS;
      return {
        where: label === '' ? at : `${at} · ${label}`,
        ours: cellSide(notebook, home, difference, own, other),
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
    case 'part': {
      const { part, id, ours, theirs: other } = difference;
      const title = [ours, other].map((each) => each && titleOf(each)).find((text) => text !== undefined);
      return { where: `${PARTS[part]}: ${title ?? id}`, ours: partSide(ours), theirs: partSide(other) };
    }
    default: {
      const side = (value: unknown): Side => (value === undefined ? NOTHING : words(brief(value)));
      const name = 'name' in difference ? difference.name : 'title';
      return {
        where: [home?.title ?? '', difference.type === 'name' ? 'name' : '', name]
          .filter((text) => text !== '')
          .join(' '),
        ours: side(difference.ours),
        theirs: side(difference.theirs),
      };
    }
  }
}

const PARTS: Readonly<Record<PartName, string>> = {
  variants: 'Variant',
  watched: 'Row of the variants',
  spreads: 'Spread',
  studies: 'Study',
  figures: 'Figure',
  recordings: 'Recording',
  photographs: 'Photograph',
  trials: 'Trial',
  reviews: 'Review',
};

function titleOf(record: AnyPart): string | undefined {
  if ('title' in record) return record.title;
  if ('words' in record) return record.words;
  return 'place' in record ? addressText(record.place.column, record.place.row) : undefined;
}

function partSide(record: AnyPart | undefined): Side {
  if (!record) return NOTHING;
  if ('passes' in record) return words(`${record.passes.length} passes of ${record.runs.length} runs`);
  if ('initials' in record) return { value: `ticked by ${record.initials}`, lines: [record.content] };
  if ('columns' in record) return words(`${record.columns[0]?.values.length ?? 0} rows`);
  if ('data' in record) return words(`${record.width} x ${record.height}`);
  return words(brief(record));
}

const MOST_LETTERS = 160;

/** Any record on one line: its title where it has one. */
function brief(value: unknown): string {
  if (typeof value === 'string') return value;
  const text = JSON.stringify(value);
  return text.length <= MOST_LETTERS ? text : `${text.slice(0, MOST_LETTERS)}…`;
}

/** Everything that differs now, in the order of our worksheets. */
export function comparedPlaces(session: Session, compared: Comparison): readonly ComparedPlace[] {
  const { ours, theirs, base } = compared;
  const changed = (other: Notebook): ReadonlySet<string> | undefined =>
    base && new Set(compareNotebooks(base, other).map(placeKey));
  const [here, there] = [changed(ours), changed(theirs)];
  return compareNotebooks(ours, theirs).map((difference) => {
    const key = placeKey(difference);
    const known = here !== undefined && there !== undefined;
    const both = known && there.has(key) && here.has(key);
    const author: Author = !known ? 'unknown' : both ? 'both' : there.has(key) ? 'there' : 'here';
    return { key, difference, place: placeOf(difference), author, ...sidesOf(session, compared, difference) };
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
export function differingResults(
  session: Session,
  { theirs, results }: Comparison,
): readonly DifferingResult[] {
  const { notebook } = session;
  const own = resultsFor(session);
  const found: DifferingResult[] = [];
  for (const worksheet of notebook.worksheets) {
    const there = findWorksheet(theirs, worksheet.id);
    if (!there) continue;
    forEachCell(worksheet, ({ content }, row, column) => {
      if (!content.startsWith('=') || cellAt(there, row, column)?.content !== content) return;
      const address = addressText(column, row);
      const [here, other] = [own.get(worksheet.id)?.get(address), results.get(there.id)?.get(address)];
      if (!here || !other || isSameResult(here, other)) return;
      const label = labelOf(worksheet, row, column);
      found.push({
        place: { worksheet: worksheet.id, row, column },
        where: `${worksheet.title} ${address}${label === '' ? '' : ` · ${label}`}`,
        ours: shownValue(notebook, worksheet, row, column, own).text,
        theirs: shownValue(theirs, there, row, column, results).text,
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
