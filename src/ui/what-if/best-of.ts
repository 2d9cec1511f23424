/** Which columns of a row of variants are the best in the direction the user chose. */

import type { VariantValue } from '../../calculation/index.ts';

/** Places of the best among those that are numbers and keep their limits; none where all are equal, where others only equal the base, or where no direction is chosen. */
export function bestOf(
  values: readonly Pick<VariantValue, 'value' | 'breaches'>[],
  direction: 'largest' | 'smallest' | undefined,
): ReadonlySet<number> {
  if (!direction) return new Set();
  const numbers = values.flatMap(({ value, breaches }, at): (readonly [number, number])[] =>
    typeof value === 'number' && breaches.length === 0 ? [[at, value]] : [],
  );
  const all = numbers.map(([, value]) => value);
  const best = direction === 'largest' ? Math.max(...all) : Math.min(...all);
  const close = (value: number): boolean => Math.abs(value - best) <= Math.abs(best) * 1e-12;
  if (numbers.length < 2 || all.every(close)) return new Set();
  const winners = numbers.filter(([, value]) => close(value)).map(([at]) => at);
  return new Set(winners.length > 1 && winners.includes(0) ? [] : winners);
}
