/** A log of a machine or an instrument read into a recording: piece by piece, so that whoever reads it can pause in between. */

import Papa from 'papaparse';
import { asName, PART_LIMITS } from '../document/index.ts';
import type { Recording, Refusal } from '../document/index.ts';
import { pointNumber } from './decimal-mark.ts';
import { FILE_LIMITS } from './guarded-json.ts';
import { understandTable } from './import-table.ts';
import type { TableOptions, UnderstoodTable } from './import-table.ts';

export interface RecordingOptions extends Omit<TableOptions, 'formulas' | 'keepsBlankLines'> {
  /** Every so many rows one is kept, the first included; 1 where left out. */
  readonly every?: number;
}

/** Lines that tell how the log is written. */
const HEAD_LINES = 200;
/** Lines read between two pauses. */
const PIECE_LINES = 5000;

/** The text up to so many line ends from a place on, never inside quotation marks. */
function pieceEnd(text: string, from: number, lines: number): number {
  let at = from;
  let quotes = 0;
  let seen = 0;
  while (at < text.length) {
    const end = text.indexOf('\n', at);
    const line = text.slice(at, end < 0 ? text.length : end);
    for (let quote = line.indexOf('"'); quote >= 0; quote = line.indexOf('"', quote + 1)) quotes += 1;
    at = end < 0 ? text.length : end + 1;
    seen += 1;
    if (seen >= lines && quotes % 2 === 0) break;
  }
  return at;
}

const plainText = (text: string): string => text.replace(/^\ufeff/, '').replaceAll(/\r\n?/g, '\n');

/** How the log is written, from its first lines: for the question and the preview. */
export function understandRecording(text: string, options: RecordingOptions = {}): UnderstoodTable | Refusal {
  if (text.length > FILE_LIMITS.file)
    return { message: 'The log is larger than 40 MB, the most that is read.' };
  const plain = plainText(text.slice(0, 2_000_000));
  return understandTable(plain.slice(0, pieceEnd(plain, 0, HEAD_LINES)), options);
}

export interface ReadRecording {
  /** Without its title; `freeRecordingTitle` makes one of the file's name. */
  readonly columns: Recording['columns'];
  readonly rows: number;
  /** Headers of columns that hold no numbers, and so were left out. */
  readonly leftOut: readonly string[];
  /** Fields in the columns taken that are no numbers: they count as missing. */
  readonly missing: number;
}

const POINT = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?$/;
const COMMA = /^[+-]?(?:\d+,?\d*|,\d+)(?:[eE][+-]?\d{1,3})?$/;

function numberIn(field: string, decimalMark: '.' | ','): number | null {
  const text = field.trim();
  if (text === '') return null;
  if (decimalMark === '.' && POINT.test(text)) return finite(Number(text));
  if (decimalMark === ',' && COMMA.test(text)) return finite(Number(text.replace(',', '.')));
  const point = pointNumber(text, decimalMark);
  return point === undefined ? null : finite(Number(point));
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** Names of columns from their headers: each a name, each once. */
function columnNames(table: UnderstoodTable): string[] {
  const names: string[] = [];
  for (const [at, { header }] of table.columns.entries()) {
    const plain = asName(header, `column_${at + 1}`);
    let name = plain;
    for (let number = 2; names.includes(name); number += 1) name = `${plain}_${number}`;
    names.push(name);
  }
  return names;
}

function refusalOf(table: UnderstoodTable): Refusal | undefined {
  if (table.asksDecimalMark) {
    const { text = '', readings = [] } = table.example ?? {};
    return { message: `${text} can be read in two ways: say which is the decimal mark.`, readings };
  }
  const unknown = table.columns.find(({ unknownUnit }) => unknownUnit);
  if (unknown)
    return { message: `The unit ${unknown.unit} of the column ${unknown.header} is not known: choose one.` };
  if (table.columns.length > PART_LIMITS.recordingColumns)
    return {
      message: `The log has ${table.columns.length} columns; ${PART_LIMITS.recordingColumns} is the most.`,
    };
  return undefined;
}

/**
 * Reads the whole log. Yields the number of rows read after every few thousand, so that a page can breathe; returns the
 * columns, or why they can not be had: too many rows, a unit or a decimal mark that has to be chosen first.
 */
export function* readRecording(
  text: string,
  options: RecordingOptions = {},
): Generator<number, ReadRecording | Refusal, void> {
  const table = understandRecording(text, options);
  if ('message' in table) return table;
  const refused = refusalOf(table);
  if (refused) return refused;
  const { every = 1 } = options;
  const { delimiter, decimalMark, headerLines, columns } = table;
  const plain = plainText(text);
  const values: (number | null)[][] = columns.map(() => []);
  const numbers = columns.map(() => 0);
  let from = 0;
  for (let skipped = 0; skipped < headerLines;) {
    const to = pieceEnd(plain, from, 1);
    if (plain.slice(from, to).trim() !== '') skipped += 1;
    from = to;
  }
  let line = 0;
  let rows = 0;
  while (from < plain.length) {
    const to = pieceEnd(plain, from, PIECE_LINES);
    const { data } = Papa.parse<string[]>(plain.slice(from, to), { delimiter, skipEmptyLines: 'greedy' });
    for (const fields of data) {
      line += 1;
      if ((line - 1) % every !== 0) continue;
      if (rows >= PART_LIMITS.recordingRows) {
        return {
          message: `The log has more than ${PART_LIMITS.recordingRows} rows, the most that is kept: keep every second row, or fewer.`,
        };
      }
      rows += 1;
      for (const [at, list] of values.entries()) {
        const value = numberIn(fields[at] ?? '', decimalMark);
        if (value !== null) numbers[at] = (numbers[at] ?? 0) + 1;
        list.push(value);
      }
    }
    from = to;
    yield rows;
  }
  const names = columnNames(table);
  const taken = [...columns.keys()].filter((at) => (numbers[at] ?? 0) * 2 > rows);
  if (taken.length === 0) return { message: 'The log holds no column of numbers.' };
  return {
    columns: taken.map((at) => {
      const unit = columns[at]?.unit ?? '';
      return { name: names[at] ?? '', ...(unit !== '' && { unit }), values: values[at] ?? [] };
    }),
    rows,
    leftOut: [...columns.keys()]
      .filter((at) => !taken.includes(at))
      .map((at) => columns[at]?.header || `column ${at + 1}`),
    missing: taken.reduce((sum, at) => sum + rows - (numbers[at] ?? 0), 0),
  };
}

/** Carries work out piece by piece with a pause after each; `told` hears how far it is. */
export async function inPieces<Progress, Result>(
  work: Generator<Progress, Result, void>,
  pause: () => Promise<void>,
  told: (progress: Progress) => void = () => undefined,
): Promise<Result> {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    told(step.value);
    await pause();
  }
}
