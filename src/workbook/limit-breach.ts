/** A value beyond the limits that the cell's user gave it. */

import { describeDimension, readQuantity, toSI } from '../quantity/index.ts';
import type { Kind } from '../quantity/index.ts';
import type { Limits } from '../document/index.ts';
import { numberOrder } from '../expression/index.ts';
import type { Caution } from '../expression/index.ts';
import { knownUnit } from './display-unit.ts';

interface Side {
  readonly side: 'low' | 'high';
  readonly limit: string;
  readonly words: string | undefined;
}

/** The limit in coherent SI; one without a unit is read in the unit the cell shows. Undefined where it does not fit the kind. */
export function limitValue(limit: string, kind: Kind, shownIn: string, currency: string): number | undefined {
  const read = readQuantity(limit, { currency });
  if (!read || !('percent' in read)) return undefined;
  const unit = read.unit ?? knownUnit(shownIn === '' ? '1' : shownIn, currency);
  return unit?.kind.dimension === kind.dimension ? toSI(read.digits, unit) : undefined;
}

/** Marks for every limit that a value (coherent SI) passes; equal within 1e-13 is not passed. */
export function breaches(
  value: number,
  kind: Kind,
  limits: Limits,
  shownIn: string,
  currency: string,
): readonly Caution[] {
  const sides: readonly Side[] = [
    ...(limits.low === undefined ? [] : [{ side: 'low', limit: limits.low, words: limits.lowText } as const]),
    ...(limits.high === undefined
      ? []
      : [{ side: 'high', limit: limits.high, words: limits.highText } as const]),
  ];
  return sides.flatMap(({ side, limit, words }) => {
    const bound = limitValue(limit, kind, shownIn, currency);
    const named = words === undefined || words === '' ? '' : ` (${words})`;
    if (bound === undefined) {
      const text = `the ${side} limit ${limit}${named} is not ${describeDimension(kind.dimension)}`;
      return [{ key: `limit-${side}`, text }];
    }
    const order = numberOrder(value, bound);
    const passed = side === 'low' ? order < 0 : order > 0;
    return passed
      ? [{ key: `limit-${side}`, text: `${side === 'low' ? 'below' : 'above'} ${limit}${named}` }]
      : [];
  });
}
