/** The interval of Welch for the difference of two means. */

import { failure, type Failure } from '../expression/index.ts';
import { welchInterval } from '../numeric/index.ts';

/** Half width of the two-sided interval; refuses fewer than 2 in either, and two lists without any scatter. */
export function welchMargin(
  a: readonly number[],
  b: readonly number[],
  confidence: number,
  what: string,
): number | Failure {
  if (a.length < 2 || b.length < 2)
    return failure('#NUM!', `an interval needs at least 2 ${what} on each side`);
  return (
    welchInterval(a, b, confidence)?.margin ?? failure('#NUM!', `neither side has any scatter in its ${what}`)
  );
}
