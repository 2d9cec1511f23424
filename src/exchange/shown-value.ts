/** A cell's value in words, as it is read in a report or beside another notebook's: number in its unit, text, error. */

import { cellAt, contentOf } from '../document/index.ts';
import type { Cell, Notebook, Worksheet } from '../document/index.ts';
import { addressText } from '../expression/index.ts';
import { formatNumber, fromSI, isUnknownUnit, ONE_UNIT, parseUnit, unitLabel } from '../quantity/index.ts';
import type { Unit } from '../quantity/index.ts';
import { csvValue } from './csv-cell.ts';
import { NO_RESULTS } from './stored-result.ts';
import type { StoredResult, StoredResults } from './stored-result.ts';

export interface ShownValue {
  readonly text: string;
  /** True for a number, which stands right-aligned in a table. */
  readonly number: boolean;
}

const withUnit = (number: string, unit: Unit | undefined, written: string): string => {
  const label = unit ? unitLabel(unit) : written;
  return label === '' ? number : `${number} ${label}`;
};

function ofResult(result: StoredResult, cell: Cell | undefined, currency: string): ShownValue {
  if (result.error) return { text: `${result.error.code} ${result.error.message}`, number: false };
  const { value, unit } = result;
  if (typeof value !== 'number' || result.kind === 'date' || !Number.isFinite(value)) {
    if (typeof value === 'boolean') return { text: String(value).toUpperCase(), number: false };
    return { text: value === null ? '' : String(value), number: false };
  }
  const parsed = unit === '' ? ONE_UNIT : parseUnit(unit, currency);
  if (isUnknownUnit(parsed)) return { text: `${value} ${unit}`, number: true };
  return { text: withUnit(formatNumber(fromSI(value, parsed), cell?.format), parsed, ''), number: true };
}

/** What stands in a place: typed values as typed, formulas with their last result. */
export function shownValue(
  notebook: Pick<Notebook, 'currency'>,
  worksheet: Worksheet,
  row: number,
  column: number,
  results: StoredResults = NO_RESULTS,
): ShownValue {
  const { currency } = notebook;
  const cell = cellAt(worksheet, row, column);
  const content = cell ? contentOf(cell, currency) : undefined;
  const result = results.get(worksheet.id)?.get(addressText(column, row));
  if (result && (!content || content.type === 'formula') && result.kind !== 'date')
    return ofResult(result, cell, currency);
  switch (content?.type) {
    case 'formula':
      return {
        text: result ? csvValue(notebook as Notebook, worksheet, row, column, results).value : content.text,
        number: false,
      };
    case 'quantity':
      if (cell?.unit !== undefined && cell.unit !== content.unitText) {
        const unit = parseUnit(cell.unit, currency);
        if (!isUnknownUnit(unit))
          return {
            text: withUnit(formatNumber(fromSI(content.si, unit), cell.format), unit, ''),
            number: true,
          };
      }
      return { text: cell?.content.trim() ?? '', number: true };
    case 'number':
      return { text: cell?.content.trim() ?? '', number: true };
    case 'text':
      return { text: content.text, number: false };
    default:
      return { text: cell?.content ?? '', number: false };
  }
}
