/** The interval of Welch for the difference of two means. */

import { failure, type Failure } from '../expression/index.ts';
import { sampleVariance, student } from '../numeric/index.ts';

/** Half width of the two-sided interval; refuses fewer than 2 in either, and two lists without any scatter. */
export function welchMargin(
  a: readonly number[],
  b: readonly number[],
  confidence: number,
  what: string,
): number | Failure {
  if (a.length < 2 || b.length < 2)
    return failure('#NUM!', `an interval needs at least 2 ${what} on each side`);
  const [va, vb] = [sampleVariance(a) / a.length, sampleVariance(b) / b.length];
  const size = Math.max(...a.map(Math.abs), ...b.map(Math.abs));
  if (!(va + vb > (1e-14 * size) ** 2))
    return failure('#NUM!', `neither side has any scatter in its ${what}`);
  const freedom = (va + vb) ** 2 / (va ** 2 / (a.length - 1) + vb ** 2 / (b.length - 1));
  return student(freedom).quantile((1 + confidence) / 2) * Math.sqrt(va + vb);
}
