/** Quantities of a trial as text: read, checked and written in the unit in which they are noted. */

import { canonicalContent, isRefusal, isSameDimension, readContent } from '../document/index.ts';
import type { Measurand, Refusal, Trial, TypingLocale } from '../document/index.ts';
import {
  describeDimension,
  formatNumber,
  fromSI,
  isUnknownUnit,
  ONE_UNIT,
  parseUnit,
} from '../quantity/index.ts';
import type { Unit } from '../quantity/index.ts';

export const DEFAULT_CUT_UNIT = 'min';

export const cutUnitOf = ({ cutUnit }: Pick<Trial, 'cutUnit'>): string => cutUnit ?? DEFAULT_CUT_UNIT;

/** A unit's text read; the plain unit where the text is empty or 1; undefined where it is unknown. */
export function unitFrom(text: string, currency?: string): Unit | undefined {
  if (text === '' || text === '1') return ONE_UNIT;
  const unit = parseUnit(text, currency);
  return isUnknownUnit(unit) ? undefined : unit;
}

/** The SI value of a quantity's text and the unit it stands in; undefined where it is none. */
export function quantityFrom(
  text: string,
  currency?: string,
): { readonly si: number; readonly unit: Unit } | undefined {
  const read = readContent(text, currency);
  if (read.type === 'quantity') return { si: read.si, unit: read.unit };
  return read.type === 'number' ? { si: read.si, unit: ONE_UNIT } : undefined;
}

/**
 * What was typed, as the text that is kept: a plain number takes the unit in which this is noted. Refused in words: no
 * number, an unknown unit, another dimension.
 */
export function quantityText(
  typed: string,
  { what, unit }: { readonly what: string; readonly unit: string },
  locale: TypingLocale = {},
): string | Refusal {
  if (typed.trim() === '') return { message: `${what} is missing.` };
  if (typed.trim().startsWith('=')) return { message: `${what} is a reading, not a formula.` };
  const plain = unit === '' || unit === '1';
  const canonical = canonicalContent(typed, locale, plain ? undefined : { content: '', unit });
  if (isRefusal(canonical)) return canonical;
  const { content } = canonical;
  const read = readContent(content, locale.currency);
  if (read.type === 'unknownUnit') {
    const near = read.near.length > 0 ? `; near it: ${read.near.join(', ')}` : '';
    return { message: `${what}: the unit ${read.unknown} is not known${near}.` };
  }
  if (read.type !== 'quantity' && read.type !== 'number') {
    return { message: `${what}: "${typed.trim().slice(0, 40)}" is not a number that can be read.` };
  }
  const own = read.type === 'quantity' ? read.unit.symbol : '1';
  if (isSameDimension(own, plain ? '1' : unit, locale.currency)) return content;
  const wanted = unitFrom(unit, locale.currency);
  const here = wanted ? describeDimension(wanted.kind.dimension) : unit;
  return { message: `${what}: here stands ${here}, not ${describeDimension(read.kind.dimension)}.` };
}

/** A reading's place in the record: its measurand and unit. */
export const measurandNamed = (
  { measurands }: Pick<Trial, 'measurands'>,
  name: string,
): Measurand | undefined => measurands.find((each) => each.name === name);

/** An SI value in words, to so many significant digits: "22.5 min". */
export function inWords(si: number, unit: Unit, digits = 3): string {
  const number = formatNumber(fromSI(si, unit), { type: 'significant', digits });
  return unit === ONE_UNIT ? number : `${number} ${unit.symbol}`;
}
