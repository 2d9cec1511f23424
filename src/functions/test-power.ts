/** Power of the two-sided t test of two samples of equal size. */

import { chiSquare, normal, student } from '../numeric/index.ts';

const STEPS = 400;

/**
 * Chance that n of each show a difference of `distance` standard deviations: the integral over u of
 * [Phi(d - t u) + Phi(-d - t u)] times the density of u = sqrt(chi2/df) (J. Cohen, Statistical Power Analysis).
 */
export function powerOfWelch(n: number, distance: number, confidence: number): number {
  const freedom = 2 * n - 2;
  const shift = distance * Math.sqrt(n / 2);
  const t = student(freedom).quantile((1 + confidence) / 2);
  const scaled = chiSquare(freedom);
  const { below } = normal();
  const width = 8 / Math.sqrt(2 * freedom);
  const [from, to] = [Math.max(0, 1 - width), 1 + width];
  const density = (u: number): number =>
    (below(shift - t * u) + below(-shift - t * u)) * 2 * freedom * u * scaled.density(freedom * u * u);
  const step = (to - from) / STEPS;
  let total = (from > 0 ? density(from) : 0) + density(to);
  for (let i = 1; i < STEPS; i += 1) total += (i % 2 === 1 ? 4 : 2) * density(from + i * step);
  return (total * step) / 3;
}
