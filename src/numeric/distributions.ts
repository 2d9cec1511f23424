/** Distribution functions as plain numbers: density, cumulative, quantile. Callers see to the domains; outside them NaN. */

import { largeGammaDensity } from './large-gamma.ts';
import {
  betaIncomplete,
  betaIncompleteInverse,
  erf,
  erfc,
  erfcInverse,
  gammaIncomplete,
  gammaIncompleteInverse,
  LARGE_SHAPE,
  logGamma,
} from './special.ts';

export interface Distribution {
  density(x: number): number;
  /** Probability of at most x. */
  below(x: number): number;
  /** Probability of more than x, exact in the far tail. */
  above(x: number): number;
  /** x with below(x) = p. */
  quantile(p: number): number;
}

export const normal = (mean = 0, spread = 1): Distribution => ({
  density: (x) => Math.exp(-0.5 * ((x - mean) / spread) ** 2) / (spread * Math.sqrt(2 * Math.PI)),
  below: (x) => erfc(-(x - mean) / (spread * Math.SQRT2)) / 2,
  above: (x) => erfc((x - mean) / (spread * Math.SQRT2)) / 2,
  quantile: (p) => mean - spread * Math.SQRT2 * erfcInverse(2 * p),
});

/** Probability between 0 and x of the standard normal distribution. */
export const normalFromCentre = (x: number): number => erf(x / Math.SQRT2) / 2;

/** Student's t with `freedom` degrees. */
export const student = (freedom: number): Distribution => {
  const tail = (x: number) => betaIncomplete(freedom / (freedom + x * x), freedom / 2, 0.5) / 2;
  const density = (x: number) =>
    Math.exp(
      logGamma((freedom + 1) / 2) -
        logGamma(freedom / 2) -
        ((freedom + 1) / 2) * Math.log1p((x * x) / freedom),
    ) / Math.sqrt(freedom * Math.PI);
  /** x > 0 with more than q above it; far out by the tail, near the middle by the part between 0 and x. */
  const beyond = (q: number): number => {
    if (q < 0.25) {
      const y = betaIncompleteInverse(2 * q, freedom / 2, 0.5);
      const x = Math.sqrt((freedom * (1 - y)) / y);
      // The inverse of the library is good to about nine digits: one step of Newton.
      const better = x + (tail(x) - q) / density(x);
      return Number.isFinite(better) ? better : x;
    }
    const y = betaIncompleteInverse(1 - 2 * q, 0.5, freedom / 2);
    return Math.sqrt((freedom * y) / (1 - y));
  };
  return {
    density,
    below: (x) => (x > 0 ? 1 - tail(x) : tail(x)),
    above: (x) => (x > 0 ? tail(x) : 1 - tail(x)),
    quantile: (p) => (p === 0.5 ? 0 : Math.sign(p - 0.5) * beyond(Math.min(p, 1 - p))),
  };
};

/** The x above which the probability q lies; exact for the smallest q, where 1 - q would be 1. */
export const studentAbove = (q: number, freedom: number): number => -student(freedom).quantile(q);
export const chiSquareAbove = (q: number, freedom: number): number =>
  q === 1 ? 0 : 2 * gammaIncompleteInverse(q, freedom / 2, true);

export const beta = (a: number, b: number): Distribution => ({
  density: (x) => {
    if (x < 0 || x > 1) return 0;
    if (x === 0) return a < 1 ? Infinity : a === 1 ? b : 0;
    if (x === 1) return b < 1 ? Infinity : b === 1 ? a : 0;
    return Math.exp(
      logGamma(a + b) - logGamma(a) - logGamma(b) + (a - 1) * Math.log(x) + (b - 1) * Math.log1p(-x),
    );
  },
  below: (x) => (x <= 0 ? 0 : x >= 1 ? 1 : betaIncomplete(x, a, b)),
  above: (x) => (x <= 0 ? 1 : x >= 1 ? 0 : betaIncomplete(x, a, b, true, true)),
  quantile: (p) => betaIncompleteInverse(p, a, b),
});

/** Shape and scale. */
export const gammaDistribution = (shape: number, scale: number): Distribution => ({
  density: (x) => {
    if (x < 0) return 0;
    if (x === 0) return shape < 1 ? Infinity : shape === 1 ? 1 / scale : 0;
    if (shape >= LARGE_SHAPE) return largeGammaDensity(x / scale, shape) / scale;
    return Math.exp((shape - 1) * Math.log(x / scale) - x / scale - logGamma(shape)) / scale;
  },
  below: (x) => (x <= 0 ? 0 : gammaIncomplete(x / scale, shape)),
  above: (x) => (x <= 0 ? 1 : gammaIncomplete(x / scale, shape, true)),
  quantile: (p) => (p === 0 ? 0 : scale * gammaIncompleteInverse(p, shape)),
});

export const chiSquare = (freedom: number): Distribution => gammaDistribution(freedom / 2, 2);

/** Fisher's F with the degrees of numerator and denominator. */
export const fisher = (over: number, under: number): Distribution => {
  const share = (x: number) => (over * x) / (over * x + under);
  const shares = beta(over / 2, under / 2);
  return {
    density: (x) => (x < 0 ? 0 : (shares.density(share(x)) * over * under) / (over * x + under) ** 2),
    below: (x) => (x <= 0 ? 0 : shares.below(share(x))),
    above: (x) => (x <= 0 ? 1 : betaIncomplete(under / (over * x + under), under / 2, over / 2)),
    quantile: (p) => {
      const y = betaIncompleteInverse(p, over / 2, under / 2);
      return (under * y) / (over * (1 - y));
    },
  };
};

export const logNormal = (mean = 0, spread = 1): Distribution => {
  const logs = normal(mean, spread);
  return {
    density: (x) => (x <= 0 ? 0 : logs.density(Math.log(x)) / x),
    below: (x) => (x <= 0 ? 0 : logs.below(Math.log(x))),
    above: (x) => (x <= 0 ? 1 : logs.above(Math.log(x))),
    quantile: (p) => Math.exp(logs.quantile(p)),
  };
};

/** Weibull with shape and scale: survival exp(-(x / scale)^shape). */
export const weibull = (shape: number, scale: number): Distribution => ({
  density: (x) =>
    x < 0 ? 0 : (shape / scale) * (x / scale) ** (shape - 1) * Math.exp(-((x / scale) ** shape)),
  below: (x) => (x <= 0 ? 0 : -Math.expm1(-((x / scale) ** shape))),
  above: (x) => (x <= 0 ? 1 : Math.exp(-((x / scale) ** shape))),
  quantile: (p) => scale * (-Math.log1p(-p)) ** (1 / shape),
});

export const exponential = (rate: number): Distribution => weibull(1, 1 / rate);

/** Logarithm of n choose k. */
const logChoose = (n: number, k: number): number => logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);

/** n choose k, exact while it fits a double. */
export function choose(n: number, k: number): number {
  if (k < 0 || k > n) return 0;
  let result = 1;
  for (let i = 1; i <= Math.min(k, n - k); i += 1) {
    result = (result * (n - Math.min(k, n - k) + i)) / i;
    if (!Number.isFinite(result)) return Infinity;
  }
  return result > Number.MAX_SAFE_INTEGER ? result : Math.round(result);
}

/** Probability of exactly k successes in n trials. */
export function binomialAt(k: number, n: number, p: number): number {
  if (k < 0 || k > n) return 0;
  if (p === 0 || p === 1) return k === (p === 0 ? 0 : n) ? 1 : 0;
  const ways = n <= 1000 ? choose(n, k) : Infinity;
  return Number.isFinite(ways)
    ? ways * p ** k * (1 - p) ** (n - k)
    : Math.exp(logChoose(n, k) + k * Math.log(p) + (n - k) * Math.log1p(-p));
}

/** Probability of at most k successes in n trials. */
export function binomialBelow(k: number, n: number, p: number): number {
  if (k < 0) return 0;
  return k >= n ? 1 : betaIncomplete(p, k + 1, n - k, true, true);
}

export const poissonAt = (k: number, mean: number): number =>
  mean === 0 ? Number(k === 0) : Math.exp(k * Math.log(mean) - mean - logGamma(k + 1));

export const poissonBelow = (k: number, mean: number): number =>
  mean === 0 ? 1 : gammaIncomplete(mean, k + 1, true);

/** k marked ones in a sample of `drawn` from `population` with `marked` ones. */
export function hypergeometricAt(k: number, drawn: number, marked: number, population: number): number {
  const exact = (choose(marked, k) * choose(population - marked, drawn - k)) / choose(population, drawn);
  if (Number.isFinite(exact)) return exact;
  return Math.exp(
    logChoose(marked, k) + logChoose(population - marked, drawn - k) - logChoose(population, drawn),
  );
}

/** Probability of exactly k failures before success number r. */
export const negativeBinomialAt = (k: number, r: number, p: number): number =>
  Math.exp(logChoose(k + r - 1, k) + r * Math.log(p) + (k === 0 ? 0 : k * Math.log1p(-p)));
