/** A notebook file from outside, checked into fresh frozen objects; one clear sentence where it can not be opened. */

import * as v from 'valibot';
import {
  checkColumns,
  checkName,
  LIMITS,
  mostRecords,
  PART_NAMES,
  setSparse,
  tidyCell,
  tidyRow,
  trimmed,
} from '../document/index.ts';
import type {
  AnyPart,
  Cell,
  DefinedName,
  Kept,
  Notebook,
  Parts,
  Refusal,
  Row,
  Worksheet,
} from '../document/index.ts';
import { columnLetters, readAddress } from '../expression/index.ts';
import { addressPlace, blockPlace } from './address-place.ts';
import { complaintWords, shownShort } from './complaint-words.ts';
import {
  CellSchema,
  NameSchema,
  NotebookSchema,
  ResultSchema,
  WidthSchema,
  WorksheetSchema,
} from './file-schema.ts';
import { guardedJson } from './guarded-json.ts';
import { PART_SCHEMAS } from './part-schema.ts';
import { NO_RESULTS, type StoredResult, type StoredResults } from './stored-result.ts';
import { FORMAT } from './write-notebook.ts';

export interface ReadNotebook {
  readonly notebook: Notebook;
  readonly results: StoredResults;
  /** Version of the program that computed the results. */
  readonly program?: string;
  /** Written by a newer program: to be shown with its stored results, not to be changed. */
  readonly newer?: true;
}

/** Complaint about a place in the file; caught at the border, never seen outside. */
class Complaint extends Error {}

function checked<const Schema extends v.GenericSchema>(
  schema: Schema,
  value: unknown,
  where: string,
): v.InferOutput<Schema> {
  const result = v.safeParse(schema, value, { abortEarly: true });
  if (result.success) return result.output;
  const [issue] = result.issues;
  const path = v.getDotPath(issue);
  throw new Complaint(
    `${where}${path === null ? '' : `, ${shownShort(path, 60)}`}: ${complaintWords(issue)}`,
  );
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The value, frozen through and through. */
function frozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null) return value;
  for (const each of Object.values(value)) frozen(each);
  return Object.freeze(value);
}

/** The keys of a level that this format does not know. */
function keptOf(value: unknown, schema: { readonly entries: object }): Kept {
  if (!isObject(value)) return {};
  const unknown = Object.entries(value).filter(([key]) => !Object.hasOwn(schema.entries, key));
  return unknown.length > 0 ? { kept: Object.freeze(Object.fromEntries(unknown)) } : {};
}

function readRows(cells: object, where: string): readonly (Row | undefined)[] {
  const drafts: ((Cell | undefined)[] | undefined)[] = [];
  for (const [address, value] of Object.entries(cells)) {
    const place = addressPlace(address);
    if (!place) throw new Complaint(`${where}: "${address.slice(0, 20)}" is no cell`);
    const read = checked(CellSchema, value, `${where}, ${address}`);
    const draft = drafts[place.row] ?? [];
    if (!drafts[place.row]) setSparse(drafts, place.row, draft);
    setSparse(draft, place.column, tidyCell({ ...read, ...keptOf(value, CellSchema) }));
  }
  return trimmed(drafts.map((draft) => draft && tidyRow(draft)));
}

function readName(value: unknown, where: string): DefinedName {
  const { name, target, symbol } = checked(NameSchema, value, where);
  const refusal = checkName(name);
  if (refusal) throw new Complaint(`${where}: ${refusal.message}`);
  const block = blockPlace(target);
  if (!block) throw new Complaint(`${where}, name ${name}: "${target.slice(0, 20)}" is no block`);
  return Object.freeze({
    name,
    target: block,
    ...(symbol !== undefined && { symbol }),
    ...keptOf(value, NameSchema),
  });
}

function readWidths(widths: object, where: string): readonly (number | undefined)[] {
  const list: (number | undefined)[] = [];
  for (const [letters, value] of Object.entries(widths)) {
    const corner = readAddress(`${letters}1`);
    if (!corner || columnLetters(corner.column) !== letters) {
      throw new Complaint(`${where}: "${letters.slice(0, 20)}" is no column`);
    }
    setSparse(list, corner.column, checked(WidthSchema, value, `${where}, width of ${letters}`));
  }
  return trimmed(list);
}

/** Refuses a second one of what has to be unique. */
function unique(texts: readonly string[], what: string, where: string): void {
  const seen = new Set<string>();
  for (const text of texts) {
    if (seen.has(text)) throw new Complaint(`${where}: ${what} ${text} stands twice`);
    seen.add(text);
  }
}

function readWorksheet(value: unknown, number: number): Worksheet {
  const read = checked(WorksheetSchema, value, `worksheet ${number}`);
  const where = `worksheet ${read.title}`;
  const rows = readRows(read.cells, where);
  const names = read.names.map((each) => readName(each, where));
  unique(
    names.map(({ name }) => name),
    'the name',
    where,
  );
  const { id, title, common } = read;
  return Object.freeze({
    id,
    title,
    common,
    rowCount: Math.max(read.rows, rows.length),
    ...(read.headRow && { headRow: read.headRow }),
    ...(read.headColumn && { headColumn: read.headColumn }),
    columnCount: rows.reduce((most, row) => Math.max(most, row?.length ?? 0), read.columns),
    widths: readWidths(read.widths, where),
    rows,
    names: Object.freeze(names),
    ...keptOf(value, WorksheetSchema),
  });
}

function resultsOf(results: object, worksheets: readonly Worksheet[]): StoredResults {
  const known = new Set(worksheets.map(({ id }) => id));
  const all = new Map<string, ReadonlyMap<string, StoredResult>>();
  for (const [id, cells] of Object.entries(results)) {
    if (!known.has(id) || !isObject(cells)) continue;
    const entries = Object.entries(cells).map(([address, value]): [string, StoredResult] => {
      if (!addressPlace(address)) throw new Complaint(`results: "${address.slice(0, 20)}" is no cell`);
      return [address, Object.freeze(checked(ResultSchema, value, `result of ${address}`))];
    });
    all.set(id, new Map(entries));
  }
  return all;
}

/** A recording is read in formulas by its title and the names of its columns: they have to be such. */
function checkRecordings({ recordings = [] }: Parts, titles: readonly string[]): void {
  unique([...titles, ...recordings.map(({ title }) => title)], 'the title', 'recordings');
  for (const { title, columns } of recordings) {
    const wrong = checkName(title) ?? checkColumns(columns);
    if (wrong) throw new Complaint(`recording ${title}: ${wrong.message}`);
  }
}

/** The lists beside the worksheets; lists this format does not know are kept unread. */
function readParts(value: object, titles: readonly string[]): Parts | undefined {
  const given = new Map<string, unknown>(Object.entries(value));
  const lists = PART_NAMES.flatMap((name): [string, readonly AnyPart[]][] => {
    const list = given.get(name);
    if (list === undefined) return [];
    if (!Array.isArray(list)) throw new Complaint(`${name}: it is no list`);
    if (list.length === 0) return [];
    const most = mostRecords(name);
    if (list.length > most) throw new Complaint(`it has ${list.length} ${name}; ${most} is the most`);
    const schema = PART_SCHEMAS[name];
    const records = list.map((each: unknown, index) => ({
      ...checked(schema, each, `${name}, number ${index + 1}`),
      ...keptOf(each, schema),
    }));
    unique(
      records.map(({ id }) => id),
      'the id',
      name,
    );
    return [[name, records]];
  });
  const { kept } = keptOf(value, { entries: PART_SCHEMAS });
  if (lists.length === 0 && !kept) return undefined;
  const parts: Parts = { ...Object.fromEntries(lists), ...(kept && { kept }) };
  checkRecordings(parts, titles);
  return parts;
}

function readChecked(value: unknown): ReadNotebook {
  const read = checked(NotebookSchema, value, 'notebook');
  const worksheets = read.worksheets.map((each, index) => readWorksheet(each, index + 1));
  unique(
    worksheets.map(({ id }) => id),
    'the worksheet id',
    'notebook',
  );
  unique(
    worksheets.map(({ title }) => title),
    'the title',
    'notebook',
  );
  const filled = worksheets.reduce(
    (sum, { rows }) => sum + rows.reduce((row, cells) => row + (cells?.filter(Boolean).length ?? 0), 0),
    0,
  );
  if (filled > LIMITS.filledCells) {
    throw new Complaint(`it has ${filled} filled cells; ${LIMITS.filledCells} is the most`);
  }
  const { id, title, reading, display, currency } = read;
  const parts =
    read.parts &&
    readParts(
      read.parts,
      worksheets.map((each) => each.title),
    );
  return {
    notebook: Object.freeze({
      id,
      title,
      reading,
      display,
      currency,
      worksheets: Object.freeze(worksheets),
      ...(parts && { parts }),
      ...keptOf(value, NotebookSchema),
    }),
    results: resultsOf(read.results ?? {}, worksheets),
    ...(read.program !== undefined && { program: read.program }),
    ...(read.format > FORMAT && { newer: true }),
  };
}

/** Results as `writeResults` wrote them; none where the text is damaged. */
export function readResults(text: string, { worksheets }: Notebook): StoredResults {
  const json = guardedJson(text);
  try {
    return 'value' in json && isObject(json.value) ? resultsOf(json.value, worksheets) : NO_RESULTS;
  } catch (error) {
    if (!(error instanceof Complaint)) throw error;
    return NO_RESULTS;
  }
}

/** Reads the text of a file. Nothing in it is trusted. A text that the program kept itself may be larger than a file. */
export function readNotebook(text: string, from: 'file' | 'own' = 'file'): ReadNotebook | Refusal {
  const json = guardedJson(text, from === 'own');
  if ('message' in json) return json;
  const format = isObject(json.value) ? json.value['format'] : undefined;
  if (typeof format !== 'number') return { message: 'The file is not a notebook: it names no format.' };
  try {
    return frozen(readChecked(json.value));
  } catch (error) {
    if (!(error instanceof Complaint)) throw error;
    if (format > FORMAT) {
      return {
        message: `The file was written by a newer version of the program (format ${format}; this one reads ${FORMAT}): update the program to open it.`,
      };
    }
    return { message: `The file is not opened: ${shownShort(error.message, 350).replace(/\.$/, '')}.` };
  }
}
