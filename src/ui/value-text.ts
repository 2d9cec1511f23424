/** Values as the reader sees them: number in the display unit, unit in print form, words for errors. */

import type { CellResult } from '../calculation/index.ts';
import { contentOf as contentOfCell } from '../document/index.ts';
import type { Cell, Notebook } from '../document/index.ts';
import { formatNumber, fromSI, isUnknownUnit, parseUnit, speakUnit } from '../quantity/index.ts';
import { decimalMark, inWords } from './number-locale.ts';

export interface ValueText {
  readonly number: string;
  readonly unit: string;
}

const MARKS = new Map([
  ['deg', '°'],
  ['degC', '°C'],
  ['degF', '°F'],
]);

/** A unit as printed: cm3/min as cm³/min, um as µm. */
export function unitText(unit: string): string {
  const mark = MARKS.get(unit);
  if (mark) return mark;
  return unit
    .replaceAll(/([a-zµ])2(?![0-9])/g, '$1²')
    .replaceAll(/([a-zµ])3(?![0-9])/g, '$1³')
    .replaceAll(/([a-zµ])4(?![0-9])/g, '$1⁴')
    .replaceAll(/(^|[^a-z])um(?![a-z])/g, '$1µm')
    .replaceAll(/(^|[^a-z])uin(?![a-z])/g, '$1µin')
    .replaceAll('*', '·');
}

/** A number in coherent SI, shown in a unit ("" for plain numbers). */
export function numberText(
  value: number,
  unit: string,
  notebook: Pick<Notebook, 'currency'>,
  format?: Cell['format'],
): ValueText {
  const parsed = unit === '' ? undefined : parseUnit(unit, notebook.currency);
  const shown = parsed && !isUnknownUnit(parsed) ? fromSI(value, parsed) : value;
  return {
    number: formatNumber(shown, format, decimalMark()).replaceAll(' ', '\u202f'),
    unit: unitText(unit),
  };
}

/** Any result on one line, for lists and announcements. */
export function resultText(
  result: Pick<CellResult, 'value' | 'unit'> & Partial<Pick<CellResult, 'error' | 'kind'>>,
  notebook: Pick<Notebook, 'currency'>,
  format?: Cell['format'],
): string {
  if (result.error) return `${result.error.code} ${inWords(result.error.message)}`;
  const { value } = result;
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (typeof value === 'string') return value;
  if (result.kind === 'date') return dateText(value);
  const { number, unit } = numberText(value, result.unit, notebook, format);
  return unit ? `${number} ${unit}` : number;
}

/** As a screen reader says it: "0.12 millimetres". */
export function spokenText(
  result: Pick<CellResult, 'value' | 'unit'> & Partial<Pick<CellResult, 'error' | 'kind'>>,
  notebook: Pick<Notebook, 'currency'>,
  format?: Cell['format'],
): string {
  const { value, unit } = result;
  const parsed = unit === '' ? undefined : parseUnit(unit, notebook.currency);
  if (result.error || typeof value !== 'number' || !parsed || isUnknownUnit(parsed))
    return resultText(result, notebook, format);
  const shown = fromSI(value, parsed);
  return `${formatNumber(shown, format, decimalMark(), false)} ${speakUnit(parsed, shown)}`.trim();
}

const DAY = 86_400_000;

/** Day number (days since 1899-12-30, as spreadsheets of the open standard count) as an ISO date. */
export function dateText(day: number): string {
  return new Date(Date.UTC(1899, 11, 30) + day * DAY).toISOString().slice(0, 10);
}

/** What a cell's text is, without results: at once, before the calculator has answered. */
export function contentOf(
  cell: Cell,
  notebook: Pick<Notebook, 'currency'>,
): ReturnType<typeof contentOfCell> {
  return contentOfCell(cell, notebook.currency);
}
