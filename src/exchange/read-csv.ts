/** Tables coming back: a grid as texts to be entered, a list as cells with their places. */

import Papa from 'papaparse';
import { ROLES, readContent } from '../document/index.ts';
import type { Refusal, Role } from '../document/index.ts';
import { addressPlace } from './address-place.ts';
import { pointNumber } from './decimal-mark.ts';
import { FILE_LIMITS } from './guarded-json.ts';
import type { CsvGridOptions } from './write-csv.ts';
import { LIST_HEADERS } from './write-csv.ts';

export interface CsvReading {
  /** Found from the text where left out. */
  readonly delimiter?: string;
}

export interface ListReading extends CsvReading {
  /** Of its numbers, where another program wrote them; the list itself has the point. */
  readonly decimalMark?: '.' | ',';
  /** Units that were chosen in place of those in the list; "" for none. */
  readonly units?: ReadonlyMap<string, string>;
}

/** The fields of a table line by line; refused where a quotation mark is not closed. */
export function readLines(text: string, { delimiter }: CsvReading): string[][] | Refusal {
  if (text.length > FILE_LIMITS.table)
    return { message: 'The table is larger than 10 MB, the most that is read.' };
  const plain = text.replace(/^\ufeff/, '');
  const { data, errors } = Papa.parse<string[]>(plain, {
    ...(delimiter !== undefined && { delimiter }),
    skipEmptyLines: false,
  });
  const [broken] = errors.filter(({ type }) => type === 'Quotes');
  if (broken)
    return {
      message: `The table is damaged in line ${(broken.row ?? 0) + 1}: a quotation mark is not closed.`,
    };
  const last = data.at(-1);
  return last?.length === 1 && last[0] === '' ? data.slice(0, -1) : data;
}

const bare = (text: string): string => (text.startsWith("'") ? text.slice(1) : text);

/** A value with its unit as it is entered; one that carries its own (or a 1 that keeps it plain) goes without the column's. */
function joined(value: string, unit: string): string {
  if (value.startsWith("'")) return textContent(value.slice(1));
  if (value.endsWith(' 1')) return value.slice(0, -2);
  if (unit === '' || value.includes(' ') || readContent(value).type !== 'number') return value;
  return `${value} ${unit}`;
}

/** Text as canonical content: the apostrophe stays where it would read as something else without. */
function textContent(text: string): string {
  return /^[=']/.test(text) || readContent(text).type !== 'text' ? `'${text}` : text;
}

/** The texts of a grid as canonical contents, ready to be entered from a cell on; units put back behind their numbers. */
export function readCsvGrid(
  text: string,
  { units = 'row', ...reading }: CsvReading & Pick<CsvGridOptions, 'units'> = {},
): readonly (readonly string[])[] | Refusal {
  const lines = readLines(text, reading);
  if ('message' in lines) return lines;
  if (units === 'columns') {
    return lines.map((line) =>
      Array.from({ length: Math.ceil(line.length / 2) }, (_, column) =>
        joined(line[column * 2] ?? '', bare(line[column * 2 + 1] ?? '')),
      ),
    );
  }
  const [row = [], ...rest] = lines;
  return rest.map((line) => line.map((value, column) => joined(value, bare(row[column] ?? ''))));
}

export interface ListedCell {
  /** Title. */
  readonly worksheet: string;
  readonly row: number;
  readonly column: number;
  /** Canonical: the formula where there is one, else the value with its unit. */
  readonly content: string;
  readonly name?: string;
  readonly symbol?: string;
  readonly label?: string;
  readonly role?: Role;
}

/** The cells of a list; refused with the line where a column or an address is missing, or a cell stands twice. */
export function readCsvList(text: string, reading: ListReading = {}): readonly ListedCell[] | Refusal {
  const { decimalMark = '.', units } = reading;
  const lines = readLines(text, reading);
  if ('message' in lines) return lines;
  const [headers = [], ...rest] = lines;
  const missing = LIST_HEADERS.filter((header) => !headers.includes(header));
  if (missing.length > 0) return { message: `The list lacks ${missing.join(', ')}.` };
  const cells: ListedCell[] = [];
  const seen = new Set<string>();
  const inPoints = (value: string): string =>
    decimalMark === '.' ? value : (pointNumber(value, decimalMark) ?? value);
  for (const [index, line] of rest.entries()) {
    if (line.every((field) => field.trim() === '')) continue;
    const field = (header: (typeof LIST_HEADERS)[number]): string => line[headers.indexOf(header)] ?? '';
    const place = addressPlace(field('cell'));
    if (!place) return { message: `Line ${index + 2} names no cell: "${field('cell').slice(0, 20)}".` };
    const key = `${place.row} ${place.column} ${field('worksheet')}`;
    if (seen.has(key)) return { message: `Line ${index + 2} names ${field('cell')} a second time.` };
    seen.add(key);
    const unit = bare(field('unit'));
    const formula = bare(field('formula'));
    const role = ROLES.find((each) => each === field('role'));
    const [name, symbol, label] = [field('name'), bare(field('symbol')), bare(field('label'))];
    cells.push({
      worksheet: bare(field('worksheet')),
      ...place,
      content: formula === '' ? joined(inPoints(field('value')), units?.get(unit) ?? unit) : formula,
      ...(name !== '' && { name }),
      ...(symbol !== '' && { symbol }),
      ...(label !== '' && { label }),
      ...(role && { role }),
    });
  }
  return cells;
}
