/** One cell for a table: number in its shown unit, text guarded against being taken for a formula. */

import { cellAt, contentOf, isoDate, readContent } from '../document/index.ts';
import type { Notebook, Worksheet } from '../document/index.ts';
import { addressText } from '../expression/index.ts';
import { fromSI, isUnknownUnit, parseUnit } from '../quantity/index.ts';
import type { StoredResult, StoredResults } from './stored-result.ts';

export interface CsvValue {
  /** As it stands in the table: digits, guarded text, TRUE, ISO date, error name; "" for a blank. */
  readonly value: string;
  /** Unit of the number; "" for anything else. */
  readonly unit: string;
}

const NOTHING: CsvValue = { value: '', unit: '' };

const DANGEROUS = /^[=+\-@\t\r']/;

/** A unit, symbol or error name with a leading apostrophe where a table program could take it for a formula. */
export function guardedWord(text: string): string {
  return DANGEROUS.test(text) ? `'${text}` : text;
}

/** With a leading apostrophe where a table program could take the text for a formula, or this program for something else than text. */
export function guardedText(text: string): string {
  return DANGEROUS.test(text) || (text !== '' && readContent(text).type !== 'text') ? `'${text}` : text;
}

function numberText(value: number, unit: string, kind: string, currency: string): CsvValue {
  if (kind === 'date' && Number.isInteger(value)) return { value: isoDate(value), unit: '' };
  const parsed = unit === '' ? undefined : parseUnit(unit, currency);
  if (!parsed || isUnknownUnit(parsed)) return { value: String(value), unit };
  return { value: String(fromSI(value, parsed)), unit };
}

function resultText(result: StoredResult, currency: string): CsvValue {
  if (result.error) return { value: guardedWord(result.error.code), unit: '' };
  const { value, unit, kind } = result;
  if (value === null) return NOTHING;
  if (typeof value === 'number') return numberText(value, unit, kind, currency);
  return { value: typeof value === 'boolean' ? String(value).toUpperCase() : guardedText(value), unit: '' };
}

/** The value of a cell: what was typed where the cell holds no formula, else its result. */
export function csvValue(
  notebook: Notebook,
  worksheet: Worksheet,
  row: number,
  column: number,
  results: StoredResults,
): CsvValue {
  const { currency } = notebook;
  const cell = cellAt(worksheet, row, column);
  const content = cell ? contentOf(cell, currency) : undefined;
  const result = results.get(worksheet.id)?.get(addressText(column, row));
  switch (content?.type) {
    case undefined:
    case 'formula':
      return result ? resultText(result, currency) : NOTHING;
    case 'quantity':
      return cell?.unit === undefined || cell.unit === content.unitText
        ? { value: content.digits, unit: content.unitText }
        : numberText(content.si, cell.unit, content.kind.name, currency);
    case 'number':
      return { value: content.digits, unit: '' };
    case 'logical':
      return { value: content.value ? 'TRUE' : 'FALSE', unit: '' };
    case 'date':
      return { value: isoDate(content.day), unit: '' };
    case 'unknownUnit':
      return { value: content.digits, unit: content.unknown };
    case 'text':
      // A lone apostrophe is the empty text: not the same as an empty cell.
      return { value: content.text === '' ? "'" : guardedText(content.text), unit: '' };
    case 'empty':
      return NOTHING;
  }
}
