/** Reading a cell's text as a quantity or a number (F1 to F4); everything that is not clearly one stays text. */

import { parseUnit, plainUnitText } from './parse-unit.ts';
import { NUMBER_START, numberFrom, plainText, type RefusedNumber } from './read-number.ts';
import { isUnknownUnit, PERCENT, type Unit, type UnknownUnit } from './unit.ts';

export interface QuantityOptions {
  /** Default: the point. */
  readonly decimalMark?: string;
  /** ISO 4217 code of the notebook's currency. */
  readonly currency?: string;
}

/** `unit` and `unitText` are absent for a plain number. */
export interface ReadQuantity {
  /** Canonical digits (see ReadNumber); a fraction is worked out: "1 1/2 in" has the digits 1.5. */
  readonly digits: string;
  /** True exactly where the unit is %, which toSI already divides by 100. */
  readonly percent: boolean;
  /** As typed. */
  readonly unitText?: string;
  readonly unit?: Unit;
}

/** A number before one word that is no unit: it stays as typed, the cell says so (F4). */
export interface UnknownQuantity extends UnknownUnit {
  readonly digits: string;
}

const MIXED = /^([+-]?)(?:(\d+) +)?(\d+)\/(\d+) *(\D\S*|1\/\S+)$/;
const WORD_LIMIT = 40;

/** Digits after the point of a fraction that does not end; enough for the nearest double. */
const PLACES = 30;

/** Decimal digits of whole + above/below by long division. */
function fractionDigits(whole: bigint, above: bigint, below: bigint): string {
  let rest = above + whole * below;
  let digits = `${rest / below}`;
  rest %= below;
  if (rest) digits += '.';
  for (let place = 0; rest && place < PLACES; place += 1) {
    rest *= 10n;
    digits += rest / below;
    rest %= below;
  }
  return digits;
}

/** "3/8 in", "1 1/2 in": only before a unit that is known, else it may be a thread (F3). */
function readFraction(text: string, currency: string | undefined): ReadQuantity | undefined {
  const [, sign = '', whole = '0', above = '', below = '', unitText = ''] = MIXED.exec(text) ?? [];
  if (!below || below.length > PLACES || BigInt(below) === 0n || unitText === '%') return undefined;
  const unit = parseUnit(unitText, currency);
  if (isUnknownUnit(unit)) return undefined;
  const digits = (sign === '-' ? '-' : '') + fractionDigits(BigInt(whole), BigInt(above), BigInt(below));
  return { digits, percent: false, unitText, unit };
}

/** A single word after the number that can only be meant as a unit: begins with a letter or sign and stands apart. */
const looksLikeUnit = (word: string, apart: boolean): boolean =>
  apart && word.length <= WORD_LIMIT && /^(?:[\p{L}°%′″"'$€£¥]|1\/\D)\S*$/u.test(word);

/**
 * The quantity or plain number that the whole text is; a number before an unknown unit; a refusal with both readings;
 * undefined for text.
 */
export function readQuantity(
  text: string,
  { decimalMark = '.', currency }: QuantityOptions = {},
): ReadQuantity | UnknownQuantity | RefusedNumber | undefined {
  const plain = plainText(text);
  const match = NUMBER_START.exec(plain);
  if (!match) return undefined;
  const after = plain.slice(match[0].length);
  const unitText = after.trimStart();
  const number = numberFrom(match, decimalMark);
  if (unitText === '') return 'refused' in number ? number : { ...number, percent: false };
  const unit = /\s/.test(unitText) ? undefined : parseUnit(unitText, currency);
  const apart = after !== unitText;
  const known =
    unit !== undefined && !isUnknownUnit(unit) && (apart || !/^[1(-]/.test(plainUnitText(unitText)));
  if (known && 'refused' in number) {
    return { refused: plain, readings: number.readings.map((reading) => `${reading} ${unitText}`) };
  }
  if (known && 'digits' in number) {
    return { digits: number.digits, percent: unit === PERCENT, unitText, unit };
  }
  const fraction = readFraction(plain, currency);
  if (fraction) return fraction;
  if ('digits' in number && unit && isUnknownUnit(unit) && looksLikeUnit(unitText, apart)) {
    return { ...unit, digits: number.digits };
  }
  return undefined;
}
