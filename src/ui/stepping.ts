/** A value one step up or down in the unit it is shown in, exactly; a step never passes a limit, it ends on it. */

import { contentOf, shownUnit } from '../document/index.ts';
import type { Cell, Limits } from '../document/index.ts';
import {
  ONE_UNIT,
  decimalText,
  exactDecimal,
  exactIn,
  exactSI,
  isUnknownUnit,
  parseUnit,
  readQuantity,
} from '../quantity/index.ts';
import type { Exact, Unit } from '../quantity/index.ts';

/** A cell's number in the unit it is shown in. */
export interface ShownNumber {
  readonly exact: Exact;
  readonly unit: Unit;
  /** As printed on the page: the digits as typed, no decimal lost. */
  readonly text: string;
}

const DIGITS = 15;
const MOST_DECIMALS = 12;
const LARGEST_DENOMINATOR = 128n;

const knownUnit = (text: string, currency: string): Unit | undefined => {
  const unit = parseUnit(text, currency);
  return isUnknownUnit(unit) ? undefined : unit;
};

/** Less than 0, 0 or more than 0 as a is below, at or above b. */
export function compared(a: Exact, b: Exact): number {
  const difference = a.numerator * b.denominator - b.numerator * a.denominator;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

const sum = (a: Exact, b: Exact, sign: bigint): Exact => ({
  numerator: a.numerator * b.denominator + sign * b.numerator * a.denominator,
  denominator: a.denominator * b.denominator,
});

/** The number of a given cell; undefined where it holds none. */
export function shownNumber(cell: Cell, currency: string): ShownNumber | undefined {
  const content = contentOf(cell, currency);
  if (content.type === 'number')
    return { exact: exactDecimal(content.digits), unit: ONE_UNIT, text: cell.content.trim() };
  if (content.type !== 'quantity') return undefined;
  const unit = knownUnit(shownUnit(cell, currency) ?? '', currency) ?? content.unit;
  if (unit === content.unit) {
    const typed = cell.content.trim();
    const text = typed.slice(0, typed.length - content.unitText.length).trim();
    return { exact: exactDecimal(content.digits), unit, text };
  }
  const exact = exactIn(exactSI(content.digits, content.unit), unit);
  return { exact, unit, text: decimalText(exact, DIGITS) };
}

/** A limit in a unit; undefined where there is none or where it does not fit. */
export function limitIn(limit: string | undefined, unit: Unit, currency: string): Exact | undefined {
  const read = limit === undefined ? undefined : readQuantity(limit, { currency });
  if (!read || !('percent' in read)) return undefined;
  const own = read.unit ?? unit;
  if (own.kind.dimension !== unit.kind.dimension) return undefined;
  return own === unit ? exactDecimal(read.digits) : exactIn(exactSI(read.digits, own), unit);
}

/** A difference in a unit: an offset of a scale does not count. */
function stepIn(step: string, unit: Unit, currency: string): Exact | undefined {
  const read = readQuantity(step, { currency });
  if (!read || !('percent' in read)) return undefined;
  const own = read.unit ?? unit;
  const digits = exactDecimal(read.digits);
  const same = own === unit;
  const fits = same || own.kind.dimension === unit.kind.dimension;
  if (!fits || digits.numerator <= 0n) return undefined;
  if (same) return digits;
  return {
    numerator: digits.numerator * own.factor.numerator * unit.factor.denominator,
    denominator: digits.denominator * own.factor.denominator * unit.factor.numerator,
  };
}

/** Between a hundredth and a tenth of the value, a power of ten; 1 for 0 and for things that are counted. */
function sensibleStep({ exact, unit }: ShownNumber): Exact {
  const size = Math.abs(Number(decimalText(exact, 3)));
  if (size === 0 || unit.kind.name === 'count') return exactDecimal('1');
  const power = Math.floor(Math.log10(size)) - 1;
  const whole = exact.denominator === 1n && unit === ONE_UNIT;
  return exactDecimal(`1E${whole ? Math.max(power, 0) : power}`);
}

/** The step of a cell in the unit it is shown in. */
export function stepOf(shown: ShownNumber, step: string | undefined, currency: string): Exact {
  return (step === undefined ? undefined : stepIn(step, shown.unit, currency)) ?? sensibleStep(shown);
}

/** The same as the cell itself has it. */
export const stepOfCell = ({ machine }: Pick<Cell, 'machine'>, shown: ShownNumber, currency: string): Exact =>
  stepOf(shown, machine?.place === 'changed' ? machine.step : undefined, currency);

const decimals = (text: string): number => /\.(\d+)/.exec(text)?.[1]?.length ?? 0;

/** In halves to 128ths, lowest terms: "1 3/8"; undefined where it is none of these. */
function fractionText({ numerator, denominator }: Exact): string | undefined {
  const parts = numerator * LARGEST_DENOMINATOR;
  if (parts % denominator !== 0n) return undefined;
  let above = parts / denominator;
  let below = LARGEST_DENOMINATOR;
  const sign = above < 0n ? '-' : '';
  if (above < 0n) above = -above;
  while (below > 1n && above % 2n === 0n) [above, below] = [above / 2n, below / 2n];
  const [whole, rest] = [above / below, above % below];
  return sign + [whole || !rest ? `${whole}` : '', rest ? `${rest}/${below}` : ''].filter(Boolean).join(' ');
}

/** Written like the value before: a fraction stays a fraction, decimals that were there stay. */
function writtenLike(value: Exact, before: string, step: Exact): string {
  const fraction = before.includes('/') ? fractionText(value) : undefined;
  if (fraction !== undefined) return fraction;
  const plain = decimalText(value, DIGITS);
  const wanted = Math.min(
    Math.max(decimals(plain), decimals(before), decimals(decimalText(step, DIGITS))),
    MOST_DECIMALS,
  );
  const missing = wanted - decimals(plain);
  return missing <= 0 ? plain : `${plain}${decimals(plain) === 0 ? '.' : ''}${'0'.repeat(missing)}`;
}

export interface Stepped {
  /** Number to be typed into the cell: it takes the unit shown there (F1a). Undefined: the value stays. */
  readonly text?: string;
  /** Set where a limit stopped the step. */
  readonly stoppedAt?: 'low' | 'high';
}

/** One step in a direction. From beyond a limit it leads only back. */
export function stepped(
  shown: ShownNumber,
  direction: 1 | -1,
  step: Exact,
  limits: Limits | undefined,
  currency: string,
): Stepped {
  const side = direction > 0 ? 'high' : 'low';
  const limit = limitIn(limits?.[side], shown.unit, currency);
  const next = sum(shown.exact, step, BigInt(direction));
  if (!limit || compared(next, limit) * direction <= 0) return { text: writtenLike(next, shown.text, step) };
  if (compared(shown.exact, limit) * direction >= 0) return { stoppedAt: side };
  return { text: writtenLike(limit, shown.text, step), stoppedAt: side };
}
