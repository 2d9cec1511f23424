/** Special functions: incomplete gamma and beta, error function (from the library), Bessel functions by their integrals. */

import betaIncomplete from '@stdlib/math-base-special-betainc';
import betaIncompleteInverse from '@stdlib/math-base-special-betaincinv';
import erf from '@stdlib/math-base-special-erf';
import erfc from '@stdlib/math-base-special-erfc';
import erfcInverse from '@stdlib/math-base-special-erfcinv';
import gamma from '@stdlib/math-base-special-gamma';
import gammaIncompleteSmall from '@stdlib/math-base-special-gammainc';
import gammaIncompleteInverseSmall from '@stdlib/math-base-special-gammaincinv';
import logGamma from '@stdlib/math-base-special-gammaln';
import { largeGammaIncomplete, largeGammaQuantile } from './large-gamma.ts';
import { integrate } from './quadrature.ts';

export { betaIncomplete, betaIncompleteInverse, erf, erfc, erfcInverse, gamma, logGamma };

/** From here on the library loses digits, and its inverse takes half a second. */
export const LARGE_SHAPE = 1e6;

/** P(a, x), the regularised incomplete gamma function; Q(a, x), its complement, where `upper`. */
export const gammaIncomplete = (x: number, a: number, upper = false): number =>
  a < LARGE_SHAPE || !Number.isFinite(x)
    ? gammaIncompleteSmall(x, a, true, upper)
    : largeGammaIncomplete(x, a, upper, erfc);

/** The x with P(a, x) = p, or with Q(a, x) = p where `upper`: nothing is lost in the far tail. */
export function gammaIncompleteInverse(p: number, a: number, upper = false): number {
  if (a < LARGE_SHAPE || !(p > 0 && p < 1)) return gammaIncompleteInverseSmall(p, a, upper);
  return largeGammaQuantile((upper ? 1 : -1) * Math.SQRT2 * erfcInverse(2 * p), a);
}

/** Bessel functions of whole order n >= 0 by their integrals (DLMF 10.9.1, 10.9.7, 10.32.3, 10.32.9; from memory); undefined outside. */
export const bessel = {
  /** First kind, any x. */
  J: (x: number, n: number): number | undefined =>
    over(0, Math.PI, (t) => Math.cos(n * t - x * Math.sin(t)) / Math.PI),
  /** Second kind, x > 0. */
  Y(x: number, n: number): number | undefined {
    const near = over(0, Math.PI, (t) => Math.sin(x * Math.sin(t) - n * t) / Math.PI);
    const sign = n % 2 === 0 ? 1 : -1;
    const far = over(
      0,
      reach(x, n),
      (t) => ((Math.exp(n * t) + sign * Math.exp(-n * t)) * Math.exp(-x * Math.sinh(t))) / Math.PI,
    );
    return near === undefined || far === undefined ? undefined : near - far;
  },
  /** Modified, first kind, any x. */
  I: (x: number, n: number): number | undefined =>
    over(0, Math.PI, (t) => (Math.exp(x * Math.cos(t)) * Math.cos(n * t)) / Math.PI),
  /** Modified, second kind, x > 0. */
  K: (x: number, n: number): number | undefined =>
    over(0, reach(x, n), (t) => Math.exp(-x * Math.cosh(t)) * Math.cosh(n * t)),
};

const over = (from: number, to: number, f: (t: number) => number): number | undefined =>
  integrate(f, from, to, { relative: 1e-11, absolute: 1e-15 });

/** Where the integrand e^(n t - x sinh t) has fallen below 1e-17 of its top. */
function reach(x: number, n: number): number {
  let t = Math.asinh(Math.max(1, n) / x);
  while (x * Math.sinh(t) - n * t < 45) t += 0.25;
  return t;
}
