/** What a cloud of samples says: mean, standard deviation, coverage intervals, histogram (JCGM 101:2008, 7.6 and 7.7). */

import type { Interval, SpreadResult } from '../calculation/index.ts';

type Simulated = NonNullable<SpreadResult['simulated']>;

/** Probability that the intervals hold. */
const COVERAGE = 0.95;
const [FEWEST_BINS, MOST_BINS] = [8, 60];

export function meanOf(values: Float64Array): number {
  let sum = 0;
  // About the first value, so that small spreads of large values keep their digits.
  const origin = values[0] ?? 0;
  for (const value of values) sum += value - origin;
  return origin + sum / values.length;
}

/** Over n - 1. */
export function varianceOf(values: Float64Array, mean = meanOf(values)): number {
  let squares = 0;
  for (const value of values) squares += (value - mean) ** 2;
  return squares / (values.length - 1);
}

/** Indices of an interval that holds `inside` of the steps between sorted values. */
function intervals(sorted: Float64Array): { symmetric: Interval; shortest: Interval } {
  const count = sorted.length;
  const product = COVERAGE * count;
  const inside = Math.min(count - 1, Number.isInteger(product) ? product : Math.floor(product + 0.5));
  const between = (first: number): Interval => ({
    low: sorted[first] ?? NaN,
    high: sorted[first + inside] ?? NaN,
  });
  const rest = (count - inside) / 2;
  const left = Math.max(1, Number.isInteger(rest) ? rest : Math.floor((count - inside + 1) / 2));
  let best = 0;
  for (let first = 0; first + inside < count; first++) {
    const { low, high } = between(first);
    const { low: bestLow, high: bestHigh } = between(best);
    if (high - low < bestHigh - bestLow) best = first;
  }
  return { symmetric: between(left - 1), shortest: between(best) };
}

function histogramOf(sorted: Float64Array): Simulated['histogram'] {
  const count = sorted.length;
  const [from = 0, to = from] = [sorted[0], sorted.at(-1)];
  if (!(to > from)) return { from, width: 0, counts: [count] };
  const quarter = (sorted[Math.floor(0.75 * count)] ?? to) - (sorted[Math.floor(0.25 * count)] ?? from);
  // The width of Freedman and Diaconis (1981), within reason.
  const wanted = quarter > 0 ? ((to - from) * Math.cbrt(count)) / (2 * quarter) : MOST_BINS;
  const bins = Math.min(MOST_BINS, Math.max(FEWEST_BINS, Math.ceil(wanted)));
  const width = (to - from) / bins;
  const counts = Array.from({ length: bins }, () => 0);
  for (const value of sorted) {
    const bin = Math.min(bins - 1, Math.floor((value - from) / width));
    counts[bin] = (counts[bin] ?? 0) + 1;
  }
  return { from, width, counts };
}

/** Of at least two numbers. */
export function simulatedBy(values: Float64Array): Simulated {
  const mean = meanOf(values);
  const sorted = values.slice().sort();
  return {
    mean,
    uncertainty: Math.sqrt(varianceOf(values, mean)),
    ...intervals(sorted),
    histogram: histogramOf(sorted),
  };
}
