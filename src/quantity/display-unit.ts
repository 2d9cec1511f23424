/** Which unit a kind is shown in, which units fit it, and how a unit is written and spoken. */

import type { Kind } from './kind.ts';
import { generalKind } from './kind-tree.ts';
import { parseUnit } from './parse-unit.ts';
import { isUnknownUnit, ONE_UNIT, UNITS, type Unit } from './unit.ts';

/** F19: the kind's default in the display system; the SI product where the dimension has none; "1" for plain numbers and dates. */
export function displayUnit(kind: Kind, system: 'metric' | 'inch', currency?: string): Unit {
  const symbol = kind[system];
  if (symbol === '') return ONE_UNIT;
  const unit = parseUnit(symbol, currency);
  if (isUnknownUnit(unit)) throw new RangeError(`Kind "${kind.name}" has no readable unit: ${symbol}`);
  return unit;
}

const isAbsolute = (unit: Unit): boolean => unit.offset !== undefined;

const fitting = new Map<Kind, readonly Unit[]>();

/**
 * Units with a row that a value of the kind can be shown in: its defaults first, then its own, then those of the general
 * kind; for a general kind all of its dimension. Without a currency code money stands as "money".
 */
export function unitsOfKind(kind: Kind, currency?: string): readonly Unit[] {
  if (currency !== undefined && kind.dimension.money !== 0) {
    const inCurrency = unitsOfKind(kind).map((unit) => parseUnit(unit.symbol, currency));
    return inCurrency.filter((unit): unit is Unit => !isUnknownUnit(unit));
  }
  const known = fitting.get(kind);
  if (known) return known;
  const rank = (unit: Unit): number => {
    if (unit.symbol === kind.metric) return 0;
    if (unit.symbol === kind.inch) return 1;
    return unit.kind === kind ? 2 : 3;
  };
  const general = generalKind(kind.dimension);
  const units = UNITS.filter(
    (unit) =>
      unit.kind.dimension === kind.dimension &&
      (unit.kind === kind || unit.kind === general || (kind === general && !isAbsolute(unit))),
  ).sort((a, b) => rank(a) - rank(b));
  const missing = [kind.metric, kind.inch]
    .filter((symbol) => symbol !== '' && !units.some((unit) => unit.symbol === symbol))
    .map((symbol) => parseUnit(symbol))
    .filter((unit): unit is Unit => !isUnknownUnit(unit));
  const all = Object.freeze([...new Set([...missing, ...units])]);
  fitting.set(kind, all);
  return all;
}

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** The unit as printed: "µm", "mm³/s", "°C", "m⁰·⁵" stays "m^0.5"; "" for plain numbers. */
export function unitLabel(unit: Unit): string {
  if (unit === ONE_UNIT) return '';
  return unit.symbol
    .replace(/\bu(?=m\b|in\b|s\b)/g, 'µ')
    .replace(/\bddeg([CF])\b/g, 'Δ°$1')
    .replace(/\bdeg([CF]?)\b/g, '°$1')
    .replace(/\bhp_metric\b/g, 'hp (metric)')
    .replace(/(?<=[A-Za-z)])\d(?!\d)/g, (digit) => SUPERSCRIPTS[Number(digit)] ?? digit);
}

/** The unit in words for a number: "millimetres per minute", "millimetre per minute" for exactly 1; "" for plain numbers. */
export function speakUnit(unit: Unit, value = 2): string {
  if (unit === ONE_UNIT) return '';
  return value === 1 ? unit.singular : unit.plural;
}
