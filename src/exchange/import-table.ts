/** A table of another program understood: separator, decimal mark, headers and units found, shown before anything is entered, nothing guessed. */

import Papa from 'papaparse';
import { LIMITS, canonicalContent, isRefusal, readContent } from '../document/index.ts';
import type { Refusal, TypingLocale } from '../document/index.ts';
import { isUnknownUnit, parseUnit } from '../quantity/index.ts';
import { findDecimalMark, pointNumber } from './decimal-mark.ts';
import { FILE_LIMITS } from './guarded-json.ts';

export interface TableOptions {
  /** Found from the text where left out: comma, semicolon, tab or bar. */
  readonly delimiter?: string;
  /** Found from the numbers where left out; needed where they have two readings. */
  readonly decimalMark?: '.' | ',';
  /** Whether the first line holds headers; found where left out. */
  readonly headers?: boolean;
  /** Units that the user chose, by column; "" for none. */
  readonly units?: ReadonlyMap<number, string>;
  /** The notebook's currency code. */
  readonly currency?: string;
  /** Lines without anything in them hold their places (what was copied); left out they are dropped (a file). */
  readonly keepsBlankLines?: boolean;
  /** How formulas are written; where left out a formula in a table is text. */
  readonly formulas?: TypingLocale;
}

export interface TableColumn {
  /** Without its unit. */
  readonly header: string;
  /** As written; "" where the column has none. */
  readonly unit: string;
  /** True where the unit is not known: the user has to choose one, or none. */
  readonly unknownUnit: boolean;
  /** Near units, for the choice. */
  readonly near: readonly string[];
  /** How many of the filled fields are numbers. */
  readonly numbers: number;
  readonly filled: number;
}

export interface UnderstoodTable {
  readonly delimiter: string;
  readonly decimalMark: '.' | ',';
  /** True where the decimal mark could be read either way and was not chosen: nothing may be entered before. */
  readonly asksDecimalMark: boolean;
  /** A number with its two readings, for the question. */
  readonly example?: { readonly text: string; readonly readings: readonly string[] };
  readonly columns: readonly TableColumn[];
  /** Canonical contents line by line, headers first where there are any; numbers with the unit of their column. */
  readonly contents: readonly (readonly string[])[];
  readonly headerLines: number;
}

/** "VB [um]", "VB (um)", "VB / um": the words and the unit. */
const HEADER_UNIT = /^(.*?)\s*(?:\[([^[\]]+)\]|\(([^()]+(?:\([^()]*\)[^()]*)?)\)|\s\/\s(\S+))$/;

const isKnown = (unit: string, currency: string | undefined): boolean =>
  !isUnknownUnit(parseUnit(unit, currency));

function headerParts(text: string, currency: string | undefined): { header: string; unit: string } {
  const [, header = '', bracketed, rounded, after] = HEADER_UNIT.exec(text.trim()) ?? [];
  const unit = bracketed ?? rounded ?? after;
  // Only square brackets say for certain that a unit is meant; "(left)" is a word.
  if (unit === undefined || (bracketed === undefined && !isKnown(unit.trim(), currency))) {
    return { header: text.trim(), unit: '' };
  }
  return { header: header.trim(), unit: unit.trim() };
}

/** A line of nothing but units and blanks: "mm", "[um]", "(1/min)". */
function unitsLine(line: readonly string[], currency: string | undefined): readonly string[] | undefined {
  const units = line.map((field) => field.trim().replace(/^[[(](.*)[\])]$/, '$1'));
  const named = units.filter((unit) => unit !== '' && unit !== '-');
  const fits = named.length > 0 && named.every((unit) => !/^\d+$/.test(unit) && isKnown(unit, currency));
  return fits ? units.map((unit) => (unit === '-' ? '' : unit)) : undefined;
}

function parsed(
  text: string,
  { delimiter, keepsBlankLines }: TableOptions,
): { lines: string[][]; delimiter: string } | Refusal {
  if (text.length > FILE_LIMITS.table) {
    return { message: 'The table is larger than 10 MB, the most that is read.' };
  }
  const { data, errors, meta } = Papa.parse<string[]>(text.replace(/^\ufeff/, ''), {
    ...(delimiter !== undefined && { delimiter }),
    delimitersToGuess: [';', '\t', ',', '|'],
    skipEmptyLines: keepsBlankLines ? false : 'greedy',
  });
  // The end of the last line is no line of its own.
  if (keepsBlankLines && data.length > 1 && data.at(-1)?.join('') === '') data.pop();
  const broken = errors.find(({ type }) => type === 'Quotes');
  if (broken) {
    return {
      message: `The table is damaged in line ${(broken.row ?? 0) + 1}: a quotation mark is not closed.`,
    };
  }
  if (data.length === 0) return { message: 'The table is empty.' };
  const width = data.reduce((most, line) => Math.max(most, line.length), 0);
  if (data.length > LIMITS.rows || width > LIMITS.columns) {
    return {
      message: `The table has ${data.length} lines and ${width} columns; a worksheet holds ${LIMITS.rows} and ${LIMITS.columns}.`,
    };
  }
  return {
    lines: data.map((line) => Array.from({ length: width }, (_, at) => line[at] ?? '')),
    delimiter: meta.delimiter,
  };
}

/** What a field is stored as: a number with its column's unit; text that could be taken for something else with an apostrophe. */
function fieldContent(field: string, unit: string, options: TableOptions): string {
  const { decimalMark = '.', currency, formulas } = options;
  const text = field.trim();
  if (text.startsWith("'")) return text;
  if (text.startsWith('=')) {
    const canonical = formulas && canonicalContent(text, formulas);
    return canonical && !isRefusal(canonical) ? canonical.content : `'${text}`;
  }
  const number = pointNumber(text, decimalMark);
  if (number !== undefined) return unit === '' ? number : `${number} ${unit}`;
  const [, digits = '', behind = ''] = /^(\S+)[ \u00a0\u202f]+([^\d\s]\S*)$/.exec(text) ?? [];
  const own = pointNumber(digits, decimalMark);
  if (own !== undefined) return `${own} ${behind}`;
  const canonical = canonicalContent(text, { decimalMark, ...(currency !== undefined && { currency }) });
  return isRefusal(canonical) ? text : canonical.content;
}

/** Understands the text of a table. Refused only where it can not be read at all; questions stand in the answer. */
export function understandTable(text: string, options: TableOptions = {}): UnderstoodTable | Refusal {
  const read = parsed(text, options);
  if ('message' in read) return read;
  const { lines, delimiter } = read;
  const { currency } = options;
  const found = findDecimalMark(lines.flat());
  const decimalMark = options.decimalMark ?? found.decimalMark;
  const reading = { ...options, decimalMark };

  const isNumber = (field: string): boolean => pointNumber(field, decimalMark) !== undefined;
  const isValue = (field: string): boolean =>
    isNumber(field) || ['quantity', 'date', 'formula'].includes(readContent(field.trim(), currency).type);
  const [first = [], second] = lines;
  const leading = unitsLine(first, currency);
  const hasHeaders =
    options.headers ??
    (leading !== undefined || (first.some((field) => field.trim() !== '') && !first.some(isValue)));
  // A units line stands under the headers, or over them as this program writes it.
  const units = hasHeaders ? (leading ?? (second && unitsLine(second, currency))) : undefined;
  const headerLine = !hasHeaders ? [] : !leading ? first : second && !second.some(isValue) ? second : [];
  const headerLines = (units ? 1 : 0) + (headerLine.length > 0 ? 1 : 0);
  const body = lines.slice(headerLines);

  const columns = first.map((_, column): TableColumn => {
    const { header, unit: inHeader } = headerParts(headerLine[column] ?? '', currency);
    const written = units?.[column] || inHeader;
    const unit = options.units?.get(column) ?? written;
    const understood = unit === '' ? undefined : parseUnit(unit, currency);
    const unknown = understood !== undefined && isUnknownUnit(understood);
    const fields = body.map((line) => line[column] ?? '').filter((field) => field.trim() !== '');
    return {
      header,
      unit,
      unknownUnit: unknown,
      near: unknown ? understood.near : [],
      numbers: fields.filter(isNumber).length,
      filled: fields.length,
    };
  });
  const contents = body.map((line) =>
    line.map((field, column) => fieldContent(field, columns[column]?.unit ?? '', reading)),
  );
  const headers = columns.map(({ header }) => fieldContent(header, '', reading));
  return {
    delimiter,
    decimalMark,
    asksDecimalMark: found.example !== undefined && options.decimalMark === undefined,
    ...(found.example && { example: found.example }),
    columns,
    contents: headerLine.length > 0 ? [headers, ...contents] : contents,
    headerLines,
  };
}
