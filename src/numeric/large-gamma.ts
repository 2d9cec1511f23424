/**
 * Incomplete gamma function and its inverse for large shapes, where series and continued fractions lose digits and time:
 * the uniform expansion of N. M. Temme (DLMF 8.12.3 to 8.12.8, coefficients from memory) and the one of Cornish and Fisher
 * (M. Abramowitz, I. Stegun, 26.2.49, from memory).
 */

/** Coefficients by powers of eta. */
const FIRST = [-1 / 3, 1 / 12, -2 / 135, 1 / 864, 1 / 2835, -139 / 777_600];
const SECOND = [-1 / 540, -1 / 288, 25 / 12_096];

const series = (coefficients: readonly number[], x: number): number =>
  coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);

/** mu - ln(1 + mu), which is nearly mu^2/2 where mu is small. */
function gap(mu: number): number {
  if (Math.abs(mu) > 0.05) return mu - Math.log1p(mu);
  let power = mu * mu;
  let total = 0;
  for (let k = 2; Math.abs(power) > 1e-17 * Math.abs(total); k += 1) {
    total += (k % 2 === 0 ? power : -power) / k;
    power *= mu;
  }
  return total;
}

/** P(a, x), or Q(a, x) above; a from 1e6 on. `erfc` is handed in. */
export function largeGammaIncomplete(
  x: number,
  a: number,
  upper: boolean,
  erfc: (x: number) => number,
): number {
  const mu = (x - a) / a;
  const eta = Math.sign(mu) * Math.sqrt(2 * gap(mu));
  const side = upper ? 1 : -1;
  const main = erfc(side * eta * Math.sqrt(a / 2)) / 2;
  // Far out both parts have vanished or are whole; the series holds near the middle.
  if (Math.abs(eta) > 0.5) return main;
  const rest =
    (Math.exp((-a * eta * eta) / 2) / Math.sqrt(2 * Math.PI * a)) *
    (series(FIRST, eta) + series(SECOND, eta) / a);
  return Math.min(1, Math.max(0, main + side * rest));
}

/** Density at x > 0, scale 1: no difference of large logarithms. */
export const largeGammaDensity = (x: number, a: number): number =>
  ((Math.sqrt(a / (2 * Math.PI)) * Math.exp(-a * gap((x - a) / a))) / x) * (1 - 1 / (12 * a));

/** The x of shape a for the normal quantile z of the same probability. */
export const largeGammaQuantile = (z: number, a: number): number =>
  a +
  z * Math.sqrt(a) +
  (z * z - 1) / 3 +
  (z ** 3 - 7 * z) / (36 * Math.sqrt(a)) -
  (3 * z ** 4 + 7 * z * z - 16) / (810 * a);
