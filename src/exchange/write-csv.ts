/** Tables for other programs: RFC 4180, UTF-8, a worksheet as a grid or all filled cells as a list. */

import Papa from 'papaparse';
import { forEachCell, labelOf, roleOf, worksheetOf } from '../document/index.ts';
import type { DefinedName, Notebook, Worksheet } from '../document/index.ts';
import { addressText } from '../expression/index.ts';
import { fromSI, isUnknownUnit, parseUnit, toSI } from '../quantity/index.ts';
import { addressPlace } from './address-place.ts';
import { csvValue, guardedText, guardedWord } from './csv-cell.ts';
import type { CsvValue } from './csv-cell.ts';
import { NO_RESULTS } from './stored-result.ts';
import type { StoredResults } from './stored-result.ts';

export interface CsvOptions {
  /** A byte order mark in front, by which table programs know UTF-8; on where left out. */
  readonly bom?: boolean;
}

export interface CsvGridOptions extends CsvOptions {
  /** 'row': a first line with the unit of each column; 'columns': a unit column beside each column. */
  readonly units?: 'row' | 'columns';
}

/** A line that begins with # is a comment to some readers (it is where a CSVW dialect does not say otherwise): quoted it is none. */
const quotes = (value: unknown, column: number): boolean => column === 0 && String(value).startsWith('#');

function csv(lines: readonly (readonly string[])[], { bom = true }: CsvOptions): string {
  const text = Papa.unparse(
    lines.map((line) => [...line]),
    { newline: '\r\n', quotes },
  );
  return `${bom ? '\ufeff' : ''}${text}${text === '' ? '' : '\r\n'}`;
}

/** All places of a worksheet that hold something: cells, and values that a formula puts into others. */
function grid(
  notebook: Notebook,
  worksheet: Worksheet,
  results: StoredResults,
): readonly (readonly CsvValue[])[] {
  let rows = 0;
  let columns = 0;
  const reach = (row: number, column: number): void => {
    rows = Math.max(rows, row + 1);
    columns = Math.max(columns, column + 1);
  };
  forEachCell(worksheet, (_cell, row, column) => reach(row, column));
  for (const address of results.get(worksheet.id)?.keys() ?? []) {
    const place = addressPlace(address);
    if (place) reach(place.row, place.column);
  }
  return Array.from({ length: rows }, (_row, row) =>
    Array.from({ length: columns }, (_column, column) => csvValue(notebook, worksheet, row, column, results)),
  );
}

/** The number in another unit; undefined where it can not be converted, or would not come back as exactly the same value. */
function inUnit({ value, unit }: CsvValue, wanted: string, currency: string): string | undefined {
  if (unit === wanted) return value;
  const [from, to] = [parseUnit(unit, currency), parseUnit(wanted, currency)];
  if (isUnknownUnit(from) || isUnknownUnit(to) || from.kind.dimension !== to.kind.dimension) return undefined;
  const si = toSI(value, from);
  const number = fromSI(si, to);
  const text = String(number);
  return Number.isFinite(number) && toSI(text, to) === si ? text : undefined;
}

/** A worksheet as it stands. In the row form a column has the unit of its first quantity; what does not fit carries its own. */
export function writeCsvGrid(
  notebook: Notebook,
  worksheetId: string,
  results: StoredResults = NO_RESULTS,
  options: CsvGridOptions = {},
): string {
  const cells = grid(notebook, worksheetOf(notebook, worksheetId), results);
  if (options.units === 'columns') {
    return csv(
      cells.map((line) => line.flatMap(({ value, unit }) => [value, guardedWord(unit)])),
      options,
    );
  }
  const width = cells[0]?.length ?? 0;
  const units = Array.from(
    { length: width },
    (_, column) => cells.find((line) => line[column]?.unit)?.[column]?.unit ?? '',
  );
  const lines = cells.map((line) =>
    line.map((cell, column) => {
      const unit = units[column] ?? '';
      if (unit === '' || cell.value === '') return cell.value;
      if (cell.unit !== '') return inUnit(cell, unit, notebook.currency) ?? `${cell.value} ${cell.unit}`;
      return isPlainNumber(cell.value) ? `${cell.value} 1` : cell.value;
    }),
  );
  return csv(width > 0 ? [units.map(guardedWord), ...lines] : [], options);
}

const isPlainNumber = (text: string): boolean => text.trim() !== '' && Number.isFinite(Number(text));

export const LIST_HEADERS = [
  'worksheet',
  'cell',
  'name',
  'symbol',
  'label',
  'value',
  'unit',
  'UCUM code',
  'role',
  'formula',
] as const;

function ucumCode(unit: string, currency: string): string {
  if (unit === '') return '';
  const parsed = parseUnit(unit, currency);
  return isUnknownUnit(parsed) ? '' : parsed.ucum;
}

/** The name of exactly this cell. */
function nameAt(worksheet: Worksheet, row: number, column: number): DefinedName | undefined {
  return worksheet.names.find(
    ({ target }) =>
      target.row === row && target.column === column && target.rows === 1 && target.columns === 1,
  );
}

/** Every filled cell of the notebook on a line of its own, under the headers of LIST_HEADERS. */
export function writeCsvList(
  notebook: Notebook,
  results: StoredResults = NO_RESULTS,
  options: CsvOptions = {},
): string {
  const lines: string[][] = [[...LIST_HEADERS]];
  for (const worksheet of notebook.worksheets) {
    forEachCell(worksheet, (cell, row, column) => {
      const { value, unit } = csvValue(notebook, worksheet, row, column, results);
      const named = nameAt(worksheet, row, column);
      lines.push([
        guardedText(worksheet.title),
        addressText(column, row),
        named?.name ?? '',
        guardedWord(named?.symbol ?? ''),
        guardedText(labelOf(worksheet, row, column)),
        value,
        guardedWord(unit),
        guardedWord(ucumCode(unit, notebook.currency)),
        roleOf(cell),
        cell.content.startsWith('=') ? guardedText(cell.content) : '',
      ]);
    });
  }
  return csv(lines, options);
}
