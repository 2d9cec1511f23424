/** Sums of products carried with twice the digits of a double: T. Ogita, S. M. Rump, S. Oishi, SIAM J. Sci. Comput. 26 (2005) 1955-1988, Dot2 (from memory). */

/** Dekker's splitter: 2^27 + 1. */
const SPLITTER = 134_217_729;

/** `start` plus the sum over xs[i] ys[i]; NaN where a factor is beyond about 1e300. */
export function dotWith(start: number, xs: readonly number[], ys: readonly number[]): number {
  let total = start;
  let lost = 0;
  for (let i = 0; i < xs.length; i += 1) {
    const x = xs[i]!;
    const y = ys[i]!;
    const product = x * y;
    let c = SPLITTER * x;
    const xHigh = c - (c - x);
    const xLow = x - xHigh;
    c = SPLITTER * y;
    const yHigh = c - (c - y);
    const yLow = y - yHigh;
    const rest = xLow * yLow - (product - xHigh * yHigh - xLow * yHigh - xHigh * yLow);
    const next = total + product;
    const part = next - total;
    lost += total - (next - part) + (product - part) + rest;
    total = next;
  }
  return total + lost;
}
