/**
 * Certified data of NIST StRD held against the numerical core; the digits that must be shared (log relative error) stand in each name.
 * Filip: powers of x rounded to doubles allow 7.6 digits, even solved in exact fractions. SmLs04 to 09 and NumAcc3, 4: their decimals
 * rounded to doubles allow about 10 and 4, and 9.5 and 8.3 digits.
 */

import { expect, test } from 'vitest';
import { findMinimum, findRoot, leastSquares, mean, sampleVariance } from '../../src/numeric/index.ts';
import { fewestDigits, sharedDigits } from './digits.ts';
import { REFERENCE_CASES } from '../functions/reference-case.ts';
import { LINEAR_SETS, NONLINEAR_SETS, UNIVARIATE_SETS, VARIANCE_SETS } from './nist-strd.table.ts';

/** Digits of estimates, of their standard deviations, of the residual deviation. */
const LINEAR_DIGITS: Readonly<Record<string, readonly [number, number, number]>> = {
  Norris: [13, 13, 13],
  Pontius: [12, 13, 13],
  NoInt1: [14, 14, 14],
  NoInt2: [14, 14, 14],
  Filip: [7.5, 7.5, 7.5],
  Longley: [13, 13, 13],
  Wampler1: [14, 14, 14],
  Wampler2: [12, 14, 14],
  Wampler3: [14, 13, 14],
  Wampler4: [14, 13, 14],
  Wampler5: [14, 13, 14],
};

for (const { name, x, y, degree, constant, estimates, deviations, residualDeviation } of LINEAR_SETS) {
  const [a, b, c] = LINEAR_DIGITS[name] ?? [15, 15, 15];
  test(`linear least squares on ${name}: estimates to ${a} digits, their deviations to ${b}, the residual to ${c}`, () => {
    const lowest = constant ? 0 : 1;
    const rows = x.map((one) =>
      typeof one === 'number'
        ? Array.from({ length: degree + 1 - lowest }, (_, k) => one ** (k + lowest))
        : [1, ...one],
    );
    const fit = leastSquares(rows, y);
    if (!fit) throw new Error('no fit');
    const scatter = Math.sqrt(fit.residualSum / fit.freedom);
    expect(fewestDigits(fit.coefficients, estimates)).toBeGreaterThan(a);
    expect(
      fewestDigits(
        fit.unscaledCovariance.map((row, i) => scatter * Math.sqrt(row[i] ?? Number.NaN)),
        deviations,
      ),
    ).toBeGreaterThan(b);
    expect(sharedDigits(scatter, residualDeviation)).toBeGreaterThan(c);
  });
}

const DEVIATION_DIGITS: Readonly<Record<string, number>> = {
  Mavro: 13,
  Michelso: 13,
  NumAcc3: 9,
  NumAcc4: 8,
};

for (const { name, values, mean: middle, deviation } of UNIVARIATE_SETS) {
  const digits = DEVIATION_DIGITS[name] ?? 14;
  test(`summary statistics of ${name}: the mean to 14 digits, the deviation to ${digits}`, () => {
    expect(sharedDigits(mean(values), middle)).toBeGreaterThan(14);
    expect(sharedDigits(Math.sqrt(sampleVariance(values)), deviation)).toBeGreaterThan(digits);
  });
}

const VARIANCE_DIGITS: Readonly<Record<string, readonly [number, number]>> = {
  SiRstv: [12, 13],
  AtmWtAg: [10, 10],
  SmLs01: [14, 14],
  SmLs02: [14, 14],
  SmLs03: [14, 14],
  SmLs04: [10, 10],
  SmLs05: [10, 9],
  SmLs06: [10, 9],
  SmLs07: [4, 3.5],
  SmLs08: [4, 3.5],
  SmLs09: [4, 3.5],
};

for (const { name, groups, within, between } of VARIANCE_SETS) {
  const [a, b] = VARIANCE_DIGITS[name] ?? [15, 15];
  test(`one-way analysis of ${name} as a fit with marks of the groups: squares within to ${a} digits, between to ${b}`, () => {
    const y = groups.flat();
    const rows = groups.flatMap((group, i) =>
      group.map(() => groups.map((_, j) => Number(j === 0 || j === i))),
    );
    const rest = leastSquares(rows, y)?.residualSum ?? Number.NaN;
    expect(sharedDigits(rest, within)).toBeGreaterThan(a);
    expect(sharedDigits(sampleVariance(y) * (y.length - 1) - rest, between)).toBeGreaterThan(b);
  });
}

// No function of the program fits such a law by least squares; these hold the parts it would be built of.
for (const { name, x, y, law, slope, range, estimates, residualSum } of NONLINEAR_SETS)
  test(`nonlinear least squares on ${name}, linear parameter by reflections, the other by a root: 9 digits; by a minimum: 7`, () => {
    const at = (b2: number) => {
      const fit = leastSquares(
        x.map((one) => [law(one, b2)]),
        y,
      );
      if (!fit) throw new Error('no fit');
      return { b1: fit.coefficients[0] ?? Number.NaN, ...fit };
    };
    const b2 = findRoot(
      (b) => {
        const { residuals, b1 } = at(b);
        return x.reduce((total, one, i) => total + (residuals[i] ?? 0) * b1 * slope(one, b), 0);
      },
      ...range,
    );
    if (b2 === undefined) throw new Error('no root');
    expect(fewestDigits([at(b2).b1, b2], estimates)).toBeGreaterThan(9);
    expect(sharedDigits(at(b2).residualSum, residualSum)).toBeGreaterThan(9);
    const lowest = findMinimum((b) => at(b).residualSum, ...range);
    expect(sharedDigits(lowest?.x ?? Number.NaN, estimates[1])).toBeGreaterThan(7);
  });

/** Laws of several parameters and their derivatives by each, for the fits by Gauss and Newton. */
const LAWS: Readonly<Record<string, (x: number, b: readonly number[]) => readonly [number, ...number[]]>> = {
  // y = b1 (1 - exp(-b2 x))
  l09: (x, [b1 = 0, b2 = 0]) => [-b1 * Math.expm1(-b2 * x), -Math.expm1(-b2 * x), b1 * x * Math.exp(-b2 * x)],
  l10: (x, [b1 = 0, b2 = 0]) => [-b1 * Math.expm1(-b2 * x), -Math.expm1(-b2 * x), b1 * x * Math.exp(-b2 * x)],
  // y = b1 (x^2 + b2 x) / (x^2 + b3 x + b4)
  l12: (x, [b1 = 0, b2 = 0, b3 = 0, b4 = 0]) => {
    const [over, under] = [x * x + b2 * x, x * x + b3 * x + b4];
    return [
      (b1 * over) / under,
      over / under,
      (b1 * x) / under,
      (-b1 * over * x) / under ** 2,
      (-b1 * over) / under ** 2,
    ];
  },
  // y = b1 (1 - (1 + b2 x / 2)^-2)
  l14: (x, [b1 = 0, b2 = 0]) => {
    const base = 1 + (b2 * x) / 2;
    return [b1 * (1 - base ** -2), 1 - base ** -2, b1 * x * base ** -3];
  },
};

for (const [id, law] of Object.entries(LAWS)) {
  const found = REFERENCE_CASES.find((each) => each.id === id);
  if (!found) throw new Error(`no case ${id}`);
  test(`${id} ${found.title}: 8 digits by Gauss and Newton on reflections, from the second start`, () => {
    const numbers = (key: string): number[] => [found.inputs[key]?.value ?? []].flat().map(Number);
    const certified = (key: string): number => Number(found.expected[key]?.value);
    const [x, y] = [numbers('x'), numbers('y')];
    let b = numbers('start_2');
    const fitAt = (at: readonly number[]) => {
      const each = x.map((one) => law(one, at));
      const rest = each.map(([value], i) => (y[i] ?? 0) - value);
      return { rest, squares: rest.reduce((sum, r) => sum + r * r, 0), slopes: each.map(([, ...d]) => d) };
    };
    for (let round = 0; round < 100; round += 1) {
      const now = fitAt(b);
      const step = leastSquares(now.slopes, now.rest)?.coefficients ?? [];
      // A step that does not pay is halved.
      let share = 1;
      const moved = () => b.map((value, i) => value + share * (step[i] ?? 0));
      while (share > 1e-9 && !(fitAt(moved()).squares < now.squares)) share /= 2;
      if (share <= 1e-9) break;
      b = moved();
    }
    expect(
      fewestDigits(
        b,
        b.map((_, i) => certified(`b${i + 1}`)),
      ),
    ).toBeGreaterThan(8);
    const { squares, slopes, rest } = fitAt(b);
    expect(sharedDigits(squares, certified('RSS'))).toBeGreaterThan(9);
    const fit = leastSquares(slopes, rest);
    const scatter = Math.sqrt(squares / (x.length - b.length));
    expect(
      fewestDigits(
        b.map((_, i) => scatter * Math.sqrt(fit?.unscaledCovariance[i]?.[i] ?? Number.NaN)),
        b.map((_, i) => certified(`sd_b${i + 1}`)),
      ),
    ).toBeGreaterThan(7);
  });
}
