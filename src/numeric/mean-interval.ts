/** Intervals of a mean and of the difference of two means by Student's t; of a line through points. */

import { student } from './distributions.ts';
import { deviationProducts, deviationSquares, mean, sampleVariance, sum } from './statistics.ts';

/** Half width of the two-sided interval of a mean; NaN below 2 values. */
export function meanMargin(values: readonly number[], confidence: number): number {
  const { length } = values;
  if (length < 2) return NaN;
  return student(length - 1).quantile((1 + confidence) / 2) * Math.sqrt(sampleVariance(values) / length);
}

export interface Welch {
  /** Half width of the two-sided interval. */
  readonly margin: number;
  /** Degrees of freedom by Welch and Satterthwaite. */
  readonly freedom: number;
}

/** The difference of two means whose variances may differ (B. L. Welch, Biometrika 34, 1947), from variances of the means themselves. */
export function welchOf(
  a: { readonly count: number; readonly variance: number },
  b: { readonly count: number; readonly variance: number },
  confidence: number,
): Welch {
  const [va, vb] = [a.variance / a.count, b.variance / b.count];
  const freedom = (va + vb) ** 2 / (va ** 2 / (a.count - 1) + vb ** 2 / (b.count - 1));
  return { margin: student(freedom).quantile((1 + confidence) / 2) * Math.sqrt(va + vb), freedom };
}

/** The same from values; undefined below 2 on either side, and where neither side has any scatter beyond rounding. */
export function welchInterval(
  a: readonly number[],
  b: readonly number[],
  confidence: number,
): Welch | undefined {
  if (a.length < 2 || b.length < 2) return undefined;
  const [va, vb] = [sampleVariance(a), sampleVariance(b)];
  const size = [...a, ...b].reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  if (!(va / a.length + vb / b.length > (1e-14 * size) ** 2)) return undefined;
  return welchOf({ count: a.length, variance: va }, { count: b.length, variance: vb }, confidence);
}

export interface FittedLine {
  readonly slope: number;
  readonly intercept: number;
  /** Half width of the two-sided interval of the slope; NaN below 3 points. */
  readonly slopeMargin: number;
  /** Standard deviation about the line; NaN below 3 points. */
  readonly spread: number;
}

/** Least-squares line of y over x; undefined below 2 different x. */
export function fittedLine(
  x: readonly number[],
  y: readonly number[],
  confidence: number,
): FittedLine | undefined {
  const squares = deviationSquares(x);
  if (x.length < 2 || !(squares > 0)) return undefined;
  const slope = deviationProducts(x, y) / squares;
  const intercept = mean(y) - slope * mean(x);
  const rest = sum(x.map((each, i) => ((y[i] ?? 0) - intercept - slope * each) ** 2));
  const spread = x.length > 2 ? Math.sqrt(rest / (x.length - 2)) : NaN;
  const slopeMargin =
    x.length > 2 ? (student(x.length - 2).quantile((1 + confidence) / 2) * spread) / Math.sqrt(squares) : NaN;
  return { slope, intercept, slopeMargin, spread };
}

/** Where a curve first comes up to a level: by a straight line in the first interval that goes from below to at or above it. */
export function firstCrossing(
  x: readonly number[],
  y: readonly number[],
  level: number,
): { readonly x: number; readonly interval: number } | undefined {
  const after = y.findIndex((each, i) => i > 0 && each >= level * (1 - 1e-12));
  if (after < 0) return undefined;
  const [x0 = 0, x1 = 0] = [x[after - 1], x[after]];
  const [y0 = 0, y1 = 0] = [y[after - 1], y[after]];
  return { x: x0 + ((level - y0) / (y1 - y0)) * (x1 - x0), interval: after };
}
