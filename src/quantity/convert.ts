/** Between the digits in a unit and coherent SI doubles. */

import { exactDecimal, nearestDouble, over, plus, times, type Exact } from './exact.ts';
import type { Unit } from './unit.ts';

/** The exact SI value of decimal digits in a unit. */
export function exactSI(digits: string, unit: Unit): Exact {
  const value = times(exactDecimal(digits), unit.factor);
  return unit.offset ? plus(value, unit.offset) : value;
}

/** The exact value in a unit of an exact SI value. */
export function exactIn(si: Exact, unit: Unit): Exact {
  const { offset } = unit;
  const value = offset ? plus(si, { ...offset, numerator: -offset.numerator }) : si;
  return over(value, unit.factor);
}

/** The double nearest to the exact SI value of decimal digits in a unit; infinite beyond the largest double. */
export function toSI(digits: string, unit: Unit): number {
  return nearestDouble(exactSI(digits, unit));
}

const SIGNIFICANT = 15;

/**
 * The number in a unit of an SI value, rounded to 15 significant digits: a decimal of up to 15 digits that came
 * through toSI is given back as it was (F20). Absolute temperatures are rounded to what the SI value resolves.
 */
export function fromSI(si: number, unit: Unit): number {
  if (!Number.isFinite(si) || (unit.scale === 1 && unit.shift === 0)) return si;
  const value = (si - unit.shift) / unit.scale;
  if (!unit.offset) return Number(value.toPrecision(SIGNIFICANT));
  const magnitude = Math.max(Math.abs(si / unit.scale), Math.abs(value), 1e-9);
  const decimals = SIGNIFICANT - 1 - Math.floor(Math.log10(magnitude));
  return Number(value.toFixed(Math.min(Math.max(decimals, 0), 100)));
}
