/** What of a worksheet stands on its machine-side page, in the order of its rows. */

import { contentOf, forEachCell, labelOf, shownUnit } from '../document/index.ts';
import type { Cell, Notebook, Worksheet } from '../document/index.ts';
import { columnLetters } from '../expression/index.ts';
import {
  PLAIN,
  isKindName,
  isUnknownUnit,
  kindNamed,
  parseUnit,
  readQuantity,
  toSI,
} from '../quantity/index.ts';
import type { Kind } from '../quantity/index.ts';
import { markedDigits } from './number-locale.ts';
import { openCautions } from './open-cautions.ts';
import type { OpenCaution } from './open-cautions.ts';
import type { KnownResult } from './results.ts';
import type { Session } from './session.ts';
import { unitText } from './value-text.ts';

export interface MachineCell {
  readonly row: number;
  readonly column: number;
  readonly address: string;
  readonly cell: Cell;
  readonly label: string;
  /** Symbol of the cell's name as typed ("a_e"); "" where it has none. */
  readonly symbol: string;
  readonly result: KnownResult | undefined;
}

export interface MachineCells {
  readonly changed: readonly MachineCell[];
  readonly shown: readonly MachineCell[];
}

export function machineCells(session: Session, worksheet: Worksheet): MachineCells {
  const changed: MachineCell[] = [];
  const shown: MachineCell[] = [];
  forEachCell(worksheet, (cell, row, column) => {
    if (!cell.machine) return;
    const name = worksheet.names.find(
      ({ target }) =>
        target.row === row && target.column === column && target.rows === 1 && target.columns === 1,
    );
    const address = `${columnLetters(column)}${row + 1}`;
    const one: MachineCell = {
      row,
      column,
      address,
      cell,
      label: labelOf(worksheet, row, column) || name?.name || address,
      symbol: name ? (name.symbol ?? name.name) : '',
      result: session.results.at(worksheet.id, row, column),
    };
    (cell.machine.place === 'changed' ? changed : shown).push(one);
  });
  return { changed, shown };
}

export const hasMachineCells = (worksheet: Worksheet): boolean =>
  worksheet.rows.some((row) => row?.some((cell) => cell?.machine));

/** Open errors, breaches and cautions of these cells, and how many more the worksheet has elsewhere. */
export function machineCautions(
  session: Session,
  worksheet: Worksheet,
  { changed, shown }: MachineCells,
): { readonly here: readonly OpenCaution[]; readonly elsewhere: number } {
  const places = new Set([...changed, ...shown].map(({ row, column }) => `${row} ${column}`));
  const open = openCautions(session).filter(
    ({ address, type, acknowledged }) =>
      address.worksheet === worksheet.id && type !== 'assumed' && acknowledged === undefined,
  );
  const here = open.filter(({ address }) => places.has(`${address.row} ${address.column}`));
  return { here, elsewhere: open.length - here.length };
}

/** Kind of quantity a field takes. */
export function kindOf({ cell, result }: MachineCell, notebook: Pick<Notebook, 'currency'>): Kind {
  if (result && isKindName(result.kind)) return kindNamed(result.kind);
  const content = contentOf(cell, notebook.currency);
  if (content.type === 'quantity') return content.kind;
  const unit = parseUnit(shownUnit(cell, notebook.currency) ?? '1', notebook.currency);
  return isUnknownUnit(unit) ? PLAIN : unit.kind;
}

/** Takes numbers with units, and so the keypad; a text or a choice does not. */
export function isNumberField({ cell }: MachineCell, { currency }: Pick<Notebook, 'currency'>): boolean {
  return (
    !cell.choices && ['number', 'quantity', 'empty', 'unknownUnit'].includes(contentOf(cell, currency).type)
  );
}

/** A limit or any other quantity text as printed: "0.2 mm", "12 000 1/min". */
export function quantityText(
  text: string,
  currency: string,
): { readonly number: string; readonly unit: string } {
  const read = readQuantity(text, { currency });
  if (!read || !('percent' in read) || !read.unitText)
    return { number: groupedDigits(text.trim()), unit: '' };
  const number = text.trim().slice(0, -read.unitText.length).trim();
  return { number: groupedDigits(number), unit: unitText(read.unitText) };
}

/** Digits as typed with thin spaces between thousands from five digits on, and a true minus. */
export function groupedDigits(digits: string): string {
  const [, sign = '', whole = '', rest = ''] = /^([+-]?)(\d*)(.*)$/.exec(markedDigits(digits)) ?? [];
  const parted = whole.length < 5 ? whole : whole.replaceAll(/\B(?=(\d{3})+$)/g, '\u202f');
  return `${sign === '-' ? '\u2212' : sign}${parted}${rest}`;
}

/** "0.2 to 5 mm", "at most 80 %"; "" without limits. */
export function limitsText({ limits }: Cell, currency: string): string {
  const low = limits?.low === undefined ? undefined : quantityText(limits.low, currency);
  const high = limits?.high === undefined ? undefined : quantityText(limits.high, currency);
  const whole = ({ number, unit }: { readonly number: string; readonly unit: string }): string =>
    unit === '' ? number : `${number} ${unit}`;
  if (low && high) return `${low.unit === high.unit ? low.number : whole(low)} to ${whole(high)}`;
  return low ? `at least ${whole(low)}` : high ? `at most ${whole(high)}` : '';
}

/** Value over its high limit; undefined where that says nothing. */
export function shareOfLimit({ cell, result }: MachineCell, currency: string): number | undefined {
  const high = cell.limits?.high;
  if (high === undefined || typeof result?.value !== 'number' || result.error) return undefined;
  const read = readQuantity(high, { currency });
  if (!read || !('percent' in read)) return undefined;
  const unit = read.unit ?? parseUnit(result.unit === '' ? '1' : result.unit, currency);
  if (isUnknownUnit(unit)) return undefined;
  const limit = toSI(read.digits, unit);
  const share = result.value / limit;
  return limit > 0 && Number.isFinite(share) && share >= 0 ? share : undefined;
}
