/** A list of cells that comes back, from this program or by way of another: how its columns are parted and its numbers are written. */

import type { Refusal } from '../document/index.ts';
import { findDecimalMark } from './decimal-mark.ts';
import type { FoundMark } from './decimal-mark.ts';
import { readCsvList, readLines } from './read-csv.ts';
import type { ListedCell, ListReading } from './read-csv.ts';
import { LIST_HEADERS } from './write-csv.ts';

export interface UnderstoodList extends FoundMark {
  readonly cells: readonly ListedCell[];
  /** True where the decimal mark could be read either way and was not chosen: nothing may be taken before. */
  readonly asksDecimalMark: boolean;
}

const DELIMITERS = [',', ';', '\t', '|'];

/** What parts the columns: with it the first line has all headers of a list. */
function listDelimiter(text: string): string | undefined {
  const [first = ''] = text.replace(/^\ufeff/, '').split(/\r?\n/, 1);
  return DELIMITERS.find((delimiter) => {
    const headers = first.split(delimiter).map((field) => field.replace(/^"(.*)"$/, '$1'));
    return LIST_HEADERS.every((header) => headers.includes(header));
  });
}

/** True for a text whose first line has the headers of a list of cells. */
export const isCellList = (text: string): boolean => listDelimiter(text) !== undefined;

/** Its own lists have commas between columns and points in numbers; a program that parts otherwise may write numbers otherwise, too. */
function markOf(lines: readonly (readonly string[])[], delimiter: string): FoundMark {
  const [headers = [], ...rest] = lines;
  const [value, formula] = [headers.indexOf('value'), headers.indexOf('formula')];
  const values = rest.flatMap((line) => (line[formula] ? [] : [line[value] ?? '']));
  if (delimiter === ',' && !values.some((text) => /^[-+\d., ]*,[-+\d., ]*$/.test(text)))
    return { decimalMark: '.' };
  return findDecimalMark(values);
}

/** Understands a list. Refused where it can not be read at all; the question of the decimal mark stands in the answer. */
export function understandList(text: string, options: ListReading = {}): UnderstoodList | Refusal {
  const delimiter = options.delimiter ?? listDelimiter(text) ?? ',';
  const lines = readLines(text, { delimiter });
  if ('message' in lines) return lines;
  const found = markOf(lines, delimiter);
  const decimalMark = options.decimalMark ?? found.decimalMark;
  const cells = readCsvList(text, { ...options, delimiter, decimalMark });
  if ('message' in cells) return cells;
  return {
    ...found,
    cells,
    decimalMark,
    asksDecimalMark: found.example !== undefined && options.decimalMark === undefined,
  };
}
