/** Numerical methods against known integrals, printed tables, certified data and a second library. */

import { expect, test } from 'vitest';
import jstat from 'jstat';
import {
  bessel,
  beta,
  binomialAt,
  binomialBelow,
  chiSquare,
  determinant,
  findMinimum,
  findRoot,
  fisher,
  gammaDistribution,
  hypergeometricAt,
  integrate,
  interpolateLinear,
  interpolateMonotone,
  inverseMatrix,
  leastSquares,
  logNormal,
  negativeBinomialAt,
  normal,
  poissonBelow,
  quantile,
  rounded,
  sampleVariance,
  student,
  sum,
  truncated,
  weibull,
} from '../../src/numeric/index.ts';

test('a root in a bracket is found to the last digits, and no bracket gives no answer', () => {
  expect(findRoot((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 14);
  // Wallis's equation x^3 - 2x - 5 = 0, root 2.0945514815423265 (mathematical constant, Wallis 1685).
  expect(findRoot((x) => x ** 3 - 2 * x - 5, 2, 3)).toBeCloseTo(2.0945514815423265, 14);
  expect(findRoot((x) => x * x + 1, -1, 1)).toBeUndefined();
});

test('integrals with known values: a sine arch is 2, a Gaussian bell is sqrt(pi), a root singularity is 2', () => {
  expect(integrate(Math.sin, 0, Math.PI)).toBeCloseTo(2, 13);
  expect(integrate((x) => Math.exp(-x * x), -8, 8)).toBeCloseTo(Math.sqrt(Math.PI), 12);
  expect(integrate((x) => 1 / Math.sqrt(x), 0, 1, { relative: 1e-9 })).toBeCloseTo(2, 7);
  expect(integrate((x) => 1 / x, 0, 0)).toBe(0);
});

test('interpolation goes through its points, keeps a monotone table monotone and does not extrapolate', () => {
  const xs = [0, 1, 2, 3, 4];
  const ys = [0, 0.1, 2, 2.1, 5];
  for (const [i, x] of xs.entries()) {
    expect(interpolateLinear(xs, ys, x)).toBe(ys[i]);
    expect(interpolateMonotone(xs, ys, x)).toBeCloseTo(ys[i]!, 14);
  }
  let before = -1;
  for (let x = 0; x <= 4; x += 0.01) {
    const here = interpolateMonotone(xs, ys, x)!;
    expect(here).toBeGreaterThanOrEqual(before - 1e-12);
    before = here;
  }
  expect(interpolateLinear(xs, ys, 4.1)).toBeUndefined();
  expect(interpolateLinear(xs, ys, 1.5)).toBeCloseTo(1.05, 14);
});

test('dependent columns and too few rows give no fit', () => {
  expect(
    leastSquares(
      [
        [1, 2],
        [2, 4],
        [3, 6],
      ],
      [1, 2, 3],
    ),
  ).toBeUndefined();
  expect(leastSquares([[1, 2]], [1])).toBeUndefined();
});

test('matrices: a determinant and an inverse by hand, a singular one is seen', () => {
  expect(
    determinant([
      [4, 7],
      [2, 6],
    ]),
  ).toBeCloseTo(10, 13);
  const inverse = inverseMatrix([
    [4, 7],
    [2, 6],
  ]);
  expect(inverse).not.toBe('singular');
  expect((inverse as number[][]).flat().map((x) => rounded(x, 12))).toEqual([0.6, -0.7, -0.2, 0.4]);
  expect(
    inverseMatrix([
      [1, 2],
      [2, 4],
    ]),
  ).toBe('singular');
  expect(determinant([[1, 2, 3]])).toBeUndefined();
});

test('decimal rounding reads 15 digits', () => {
  expect(rounded(21.9 / 0.2, 0)).toBe(110);
  expect(rounded(1.005, 2)).toBe(1.01);
  expect(rounded(-2.5, 0)).toBe(-3);
  expect(rounded(2.5e-7, 7)).toBe(3e-7);
  expect(truncated(-2.567, 2)).toBe(-2.56);
  expect(rounded(1234.5, -2)).toBe(1200);
});

test('sums lose nothing: ten tenths, and one beside 1e100', () => {
  expect(sum(Array.from({ length: 10 }, () => 0.1))).toBe(1);
  expect(sum([1, 1e100, 1, -1e100])).toBe(2);
  expect(sampleVariance([1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16])).toBe(30);
  expect(quantile([1, 2, 3, 4], 0.25)).toBe(1.75);
});

test('critical values as printed in common tables of t, chi-square and F (NIST/SEMATECH e-Handbook 1.3.6.7; from memory)', () => {
  expect(student(10).quantile(0.975)).toBeCloseTo(2.228, 3);
  expect(student(5).quantile(0.95)).toBeCloseTo(2.015, 3);
  expect(chiSquare(10).quantile(0.95)).toBeCloseTo(18.307, 3);
  expect(fisher(3, 10).quantile(0.95)).toBeCloseTo(3.708, 3);
  expect(normal().quantile(0.975)).toBeCloseTo(1.959963984540054, 12);
});

// The second library's own gamma function is good to about 2e-9 (Simpson's rule over the density confirms the first value here).
test('distributions agree with a second library (jstat 1.9.6) over a grid', () => {
  for (const x of [0.05, 0.4, 1, 2.5, 7]) {
    expect(student(4.5).below(x)).toBeCloseTo(jstat.studentt.cdf(x, 4.5), 8);
    expect(student(7).density(x)).toBeCloseTo(jstat.studentt.pdf(x, 7), 8);
    expect(chiSquare(3).below(x)).toBeCloseTo(jstat.chisquare.cdf(x, 3), 8);
    expect(fisher(3, 8).below(x)).toBeCloseTo(jstat.centralF.cdf(x, 3, 8), 8);
    expect(fisher(3, 8).density(x)).toBeCloseTo(jstat.centralF.pdf(x, 3, 8), 8);
    expect(gammaDistribution(2.2, 1.7).below(x)).toBeCloseTo(jstat.gamma.cdf(x, 2.2, 1.7), 8);
    expect(gammaDistribution(2.2, 1.7).density(x)).toBeCloseTo(jstat.gamma.pdf(x, 2.2, 1.7), 8);
    expect(logNormal(0.3, 0.8).below(x)).toBeCloseTo(jstat.lognormal.cdf(x, 0.3, 0.8), 6);
    expect(weibull(1.8, 2.1).below(x)).toBeCloseTo(jstat.weibull.cdf(x, 2.1, 1.8), 8);
    expect(weibull(1.8, 2.1).density(x)).toBeCloseTo(jstat.weibull.pdf(x, 2.1, 1.8), 8);
  }
  for (const p of [0.05, 0.3, 0.8]) {
    expect(beta(2, 3.5).below(p)).toBeCloseTo(jstat.beta.cdf(p, 2, 3.5), 8);
    expect(beta(2, 3.5).density(p)).toBeCloseTo(jstat.beta.pdf(p, 2, 3.5), 8);
    expect(binomialBelow(4, 11, p)).toBeCloseTo(jstat.binomial.cdf(4, 11, p), 8);
  }
  expect(poissonBelow(3, 2.5)).toBeCloseTo(jstat.poisson.cdf(3, 2.5), 8);
});

test('a quantile undoes its cumulative function, into the far tails', () => {
  for (const distribution of [
    normal(3, 2),
    student(6),
    chiSquare(9),
    fisher(4, 7),
    beta(2, 5),
    logNormal(),
    weibull(2, 3),
  ]) {
    for (const p of [1e-6, 0.01, 0.5, 0.9, 0.999]) {
      expect(Math.abs(distribution.below(distribution.quantile(p)) / p - 1)).toBeLessThan(1e-9);
      expect(distribution.above(distribution.quantile(p))).toBeCloseTo(1 - p, 9);
    }
  }
});

test('a minimum is found where calculus puts it: x^2 - 4x at 2, x - ln x at 1, a cost curve a/v + b v^3 at (a / 3b)^(1/4)', () => {
  expect(findMinimum((x) => x * x - 4 * x, 0, 10)?.x).toBeCloseTo(2, 7);
  expect(findMinimum((x) => x - Math.log(x), 0.1, 5)?.x).toBeCloseTo(1, 7);
  expect(findMinimum((v) => 100 / v + 2e-7 * v ** 3, 10, 1000)?.x).toBeCloseTo((100 / 6e-7) ** 0.25, 4);
  expect(findMinimum((x) => x, 1, 3)?.x).toBeCloseTo(1, 6);
  expect(findMinimum(() => NaN, 0, 1)).toBeUndefined();
});

test('Bessel functions as tabulated (Abramowitz and Stegun, tables 9.1, 9.8; from memory)', () => {
  expect(bessel.J(1, 0)).toBeCloseTo(0.7651976866, 10);
  expect(bessel.J(2, 1)).toBeCloseTo(0.5767248078, 10);
  expect(bessel.Y(1, 0)).toBeCloseTo(0.0882569642, 9);
  expect(bessel.I(1, 0)).toBeCloseTo(1.2660658778, 9);
  expect(bessel.K(1, 0)).toBeCloseTo(0.4210244382, 9);
  // J0 vanishes at 2.404825557695773.
  expect(bessel.J(2.404825557695773, 0)).toBeCloseTo(0, 12);
});

test('counting distributions agree with a second library (jstat 1.9.6) and with fractions by hand', () => {
  for (const k of [0, 1, 3]) expect(binomialAt(k, 9, 0.3)).toBeCloseTo(jstat.binomial.pdf(k, 9, 0.3), 10);
  // 3 failures before success 4: (6 choose 3) 0.3^4 0.7^3.
  expect(negativeBinomialAt(3, 4, 0.3)).toBeCloseTo(20 * 0.0081 * 0.343, 12);
  // 3 marked ones in 5 of 20 with 7 marked: (7 choose 3) (13 choose 2) / (20 choose 5).
  expect(hypergeometricAt(3, 5, 7, 20)).toBeCloseTo((35 * 78) / 15504, 12);
});

test('a gamma distribution of a large shape keeps 11 digits (mpmath 1.3.0, the density integrated with 30 digits)', () => {
  for (const [shape, z, wanted] of [
    [1e6, -5, 2.74958035927007e-7],
    [1e6, 0, 0.500132980760873],
    [1e6, 1, 0.84134478636834],
    [1e8, -5, 2.85464213995863e-7],
    [1e8, 0, 0.500013298076014],
    [1e8, 1, 0.841344746471799],
    [1e10, -5, 2.86532654510889e-7],
    [1e10, 0, 0.500001329807601],
    [1e15, 0, 0.500000004205221],
    [1e15, 1, 0.841344746246954],
  ] as const) {
    const { below, above, ...distribution } = gammaDistribution(shape, 2);
    const x = 2 * (shape + z * Math.sqrt(shape));
    expect(Math.abs(below(x) / wanted - 1), `${shape} ${z}`).toBeLessThan(1e-11);
    expect(Math.abs(above(x) / (1 - wanted) - 1)).toBeLessThan(1e-11);
    expect(Math.abs(distribution.quantile(wanted) / x - 1)).toBeLessThan(1e-13 + 1e-11 / Math.sqrt(shape));
  }
});

test('the densities at the edge of the two ways agree, and add up to the probability between', () => {
  const [small, large] = [gammaDistribution(1e6 - 1e-3, 1), gammaDistribution(1e6, 1)];
  for (const x of [996_000, 1e6, 1_003_000]) expect(large.density(x) / small.density(x)).toBeCloseTo(1, 5);
  const between = integrate(large.density, 999_000, 1_001_000) ?? Number.NaN;
  expect(between).toBeCloseTo(large.below(1_001_000) - large.below(999_000), 10);
});

test('a quantile of any shape takes milliseconds, not seconds', () => {
  const begin = process.cpuUsage();
  for (const shape of [1e6, 1e10, 1e15, 1e300])
    for (const p of [1e-300, 0.3, 0.999]) gammaDistribution(shape, 5e-324).quantile(p);
  expect(process.cpuUsage(begin).user / 1000).toBeLessThan(200);
});
