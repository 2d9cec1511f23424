/** A recording as a table for other programs: RFC 4180, a header with the unit for each column, numbers in full precision. */

import Papa from 'papaparse';
import type { Recording } from '../document/index.ts';
import { guardedWord } from './csv-cell.ts';
import type { CsvOptions } from './write-csv.ts';

/** Missing readings are empty fields. */
export function writeRecordingCsv({ columns }: Recording, { bom = true }: CsvOptions = {}): string {
  const headers = columns.map(({ name, unit }) =>
    guardedWord(unit === undefined ? name : `${name} [${unit}]`),
  );
  const lines = [Papa.unparse([headers], { newline: '\r\n' })];
  const rows = columns.reduce((most, { values }) => Math.max(most, values.length), 0);
  for (let row = 0; row < rows; row++) {
    lines.push(columns.map(({ values }) => values[row] ?? '').join(','));
  }
  return `${bom ? '\ufeff' : ''}${lines.join('\r\n')}\r\n`;
}
