/** Spread: worked examples of JCGM 100:2008 (annex H) and JCGM 101:2008 (clause 9), with the numbers of the documents. */

import { expect, test } from 'vitest';
import type { Distribution, SpreadResult, StudyQuestion } from '../../src/calculation/index.ts';
import { at, notebookOf } from '../engine/notebook.ts';
import type { Cells } from '../engine/notebook.ts';
import { answerTo } from './asking.ts';

const SAMPLES = 200_000;

type Question = Extract<StudyQuestion, { type: 'spread' }>;

function spreadOf(
  cells: Cells,
  distributions: Readonly<Record<string, Distribution>>,
  more: Partial<Question> = {},
  result = 'B1',
): SpreadResult {
  const answer = answerTo(notebookOf([{ title: 'Sheet', cells }]), {
    type: 'spread',
    givens: Object.entries(distributions).map(([address, distribution]) => ({
      cell: at(address),
      distribution,
    })),
    results: [at(result)],
    samples: SAMPLES,
    seed: 20,
    ...more,
  });
  const [found] = answer.results;
  if (!found) throw new Error('no result');
  return found;
}

function simulated({ simulated: found }: SpreadResult): NonNullable<SpreadResult['simulated']> {
  if (!found) throw new Error('nothing simulated');
  return found;
}

/** Rounding of the published figure, and five standard errors of the figure found by so many samples. */
function near(found: number, published: number, rounding: number, error: number): void {
  expect(Math.abs(found - published), `${found} beside ${published}`).toBeLessThan(rounding / 2 + 5 * error);
}

/** Standard error of the end of a 95 % interval at which the density is `density`. */
const endError = (density: number): number => Math.sqrt((0.025 * 0.975) / SAMPLES) / density;

const normal = (uncertainty: string, freedom?: number): Distribution => ({
  shape: 'normal',
  uncertainty,
  ...(freedom !== undefined && { freedom }),
});
const uniform = (half: string): Distribution => ({ shape: 'uniform', half });

const FOUR: Cells = { A1: '0', A2: '0', A3: '0', A4: '0', B1: '=A1+A2+A3+A4' };
const four = (each: Distribution, last = each) => ({ A1: each, A2: each, A3: each, A4: last });

test('JCGM 101, 9.2.2: the sum of four normal givens', () => {
  // Table 2 (case l37, memory): mean 0.00, u 2.00, 95 % interval ± 3.92.
  const result = spreadOf(FOUR, four(normal('1')));
  const { mean, uncertainty, symmetric, shortest } = simulated(result);
  near(mean, 0, 0.01, 2 / Math.sqrt(SAMPLES));
  near(uncertainty, 2, 0.01, 2 / Math.sqrt(2 * SAMPLES));
  const error = endError(0.0292);
  near(symmetric.low, -3.92, 0.01, error);
  near(symmetric.high, 3.92, 0.01, error);
  // The shortest interval is flat about its place: only its width is sharp.
  near(shortest.high - shortest.low, 7.84, 0.02, 2 * error);
  expect(result.firstOrder?.uncertainty).toBeCloseTo(2, 9);
  expect(result.firstOrder?.expanded).toBeCloseTo(3.92, 3);
  expect(result.firstOrder?.freedom).toBeUndefined();
});

test('JCGM 101, 9.2.3: the sum of four rectangular givens', () => {
  // Table 3 (case l37, memory): u 2.00, 95 % interval ± 3.88, closed form 2 sqrt(3) (2 - (3/5)^(1/4)).
  const { uncertainty, symmetric, shortest } = simulated(spreadOf(FOUR, four(uniform('1.7320508075688772'))));
  near(uncertainty, 2, 0.01, 2 / Math.sqrt(2 * SAMPLES));
  const error = endError(0.031);
  near(symmetric.low, -3.88, 0.01, error);
  near(symmetric.high, 3.88, 0.01, error);
  near(shortest.high - shortest.low, 7.76, 0.02, 2 * error);
});

test('JCGM 101, 9.2.4: one rectangular given outweighs three', () => {
  // Table 4 (memory): u 10.1, 95 % interval ± 17.0 by simulation, ± 19.9 to the first order.
  const result = spreadOf(FOUR, four(uniform('1.7320508075688772'), uniform('17.320508075688775')));
  const { uncertainty, symmetric } = simulated(result);
  near(uncertainty, 10.1, 0.1, 10.1 / Math.sqrt(2 * SAMPLES));
  near(symmetric.low, -17, 0.1, endError(0.0289));
  near(symmetric.high, 17, 0.1, endError(0.0289));
  near(result.firstOrder?.expanded ?? NaN, 19.9, 0.1, 0);
  // By hand: the fourth has 100 of 103 parts of the variance.
  const [first] = result.contributions;
  expect(first?.cell).toEqual(at('A4'));
  expect(first?.share).toBeCloseTo(100 / 103, 9);
  near(first?.simulated ?? NaN, 100 / 103, 0, 0.002);
});

test('JCGM 101, 9.3: mass calibration', () => {
  // Table 6 (memory): simulated 1.2341 mg, u 0.0754 mg, shortest 95 % interval [1.0834, 1.3825] mg; first order u 0.0539.
  const result = spreadOf(
    {
      A1: '100000 mg',
      A2: '1.234 mg',
      A3: '1.2 kg/m3',
      A4: '8000 kg/m3',
      A5: '8000 kg/m3',
      B1: { content: '=(A1+A2)*(1+(A3-1.2 kg/m3)*(1/A4-1/A5))-100000 mg', unit: 'mg' },
    },
    {
      A1: normal('0.05 mg'),
      A2: normal('0.02 mg'),
      A3: { shape: 'uniform', low: '1.1', high: '1.3' },
      A4: { shape: 'uniform', low: '7000', high: '9000' },
      A5: { shape: 'uniform', low: '7950', high: '8050' },
    },
  );
  const mg = 1e-6;
  const { mean, uncertainty, shortest } = simulated(result);
  near(mean / mg, 1.2341, 0.0001, 0.0754 / Math.sqrt(SAMPLES));
  near(uncertainty / mg, 0.0754, 0.0001, 0.0754 / Math.sqrt(2 * SAMPLES));
  // The ends of the shortest interval wander more than its width: thrice the error of a quantile is allowed for.
  const error = endError(0.55);
  near(shortest.low / mg, 1.0834, 0.0001, 3 * error);
  near(shortest.high / mg, 1.3825, 0.0001, 3 * error);
  near((result.firstOrder?.uncertainty ?? NaN) / mg, 0.0539, 0.0001, 0);
  expect(result.unit).toBe('mg');
});

const LOSS: Cells = { A2: '0', B1: '=A1^2+A2^2' };

test.each([
  // JCGM 101, 9.4, tables 8 and 9 (first columns case l39; intervals and correlated ones from memory): in 1e-6.
  { x1: '0', r: 0, mean: 50, u: 50, first: 0, interval: [0, 150] },
  { x1: '0.01', r: 0, mean: 150, u: 112, first: 100, interval: [0, 367] },
  { x1: '0.05', r: 0, mean: 2550, u: 502, first: 500, interval: [1590, 3543] },
  { x1: '0', r: 0.9, mean: 50, u: 67, first: 0, interval: [0, 185] },
  { x1: '0.01', r: 0.9, mean: 150, u: 121, first: 100, interval: [13, 398] },
  { x1: '0.05', r: 0.9, mean: 2550, u: 505, first: 500, interval: [1628, 3555] },
])('JCGM 101, 9.4: comparison loss at x1 = $x1, correlation $r', ({ x1, r, mean, u, first, interval }) => {
  const correlations = r === 0 ? [] : [{ first: at('A1'), second: at('A2'), coefficient: r }];
  const result = spreadOf(
    { ...LOSS, A1: x1 },
    { A1: normal('0.005'), A2: normal('0.005') },
    { correlations },
  );
  const found = simulated(result);
  const [low = NaN, high = NaN] = interval;
  // The document's own last digit is one trial's: 1 is allowed for it, and the 0.4 % by which u is known from so few.
  near(found.mean * 1e6, mean, 1, u / Math.sqrt(SAMPLES));
  near(found.uncertainty * 1e6, u, 1, (1.5 * u) / Math.sqrt(SAMPLES));
  near(found.shortest.high * 1e6, high, 2, 0.02 * u);
  near(found.shortest.low * 1e6, low, 2, 0.02 * u);
  near((result.firstOrder?.uncertainty ?? NaN) * 1e6, first, 1, 0);
});

const BLOCK: Cells = {
  A1: '50.000623 mm',
  A2: '0.215 um',
  A3: '0 um',
  A4: '0 um',
  A5: '0.0000115 1/K',
  A6: '-0.1 K',
  A7: '0 K',
  A8: '0 1/K',
  A9: '0 K',
  B1: { content: '=A1+A2+A3+A4-A1*(A8*(A6+A7)+A5*A9)-50 mm', unit: 'um' },
};

test('JCGM 101, 9.5: gauge block calibration', () => {
  // Table 11: 838 nm, u 36 nm by simulation (seen quoted in Metrology 2 (2022) 1, 3; inputs of table 10 from memory).
  const result = spreadOf(BLOCK, {
    A1: normal('0.025 um', 18),
    A2: normal('0.006 um', 24),
    A3: normal('0.004 um', 5),
    A4: normal('0.007 um', 8),
    A5: { shape: 'uniform', low: '0.0000095', high: '0.0000135' },
    A6: normal('0.2 K'),
    A7: { shape: 'arcsine', half: '0.5 K' },
    A8: { shape: 'uniform', half: '0.000001 1/K', inexact: '0.0000001 1/K' },
    A9: { shape: 'uniform', half: '0.05 K', inexact: '0.025 K' },
  });
  const { mean, uncertainty } = simulated(result);
  near(mean * 1e9, 838, 1, 36 / Math.sqrt(SAMPLES));
  near(uncertainty * 1e9, 36, 1, 36 / Math.sqrt(2 * SAMPLES));
  expect(result.failures).toBe(0);
});

test('JCGM 100, H.1: end gauge, first order with effective degrees of freedom', () => {
  // Case l26 (seen): l = 50.000838 mm, u = 32 nm (31.71), nu_eff 16 (16.66), parts 25, 9.7, 2.9 and 16.6 nm.
  const result = spreadOf(
    { ...BLOCK, A6: '-0.1 K', B1: { content: '=A1+A2-A1*(A8*A6+A5*A9)', unit: 'mm' } },
    {
      A1: normal('0.025 um', 18),
      A2: normal('0.0097 um', 25.6),
      A5: normal('0.0000012 1/K'),
      A6: normal('0.41 K'),
      // The document rounds the uncertainties of rectangular givens and goes on with these figures.
      A8: normal('0.00000058 1/K', 50),
      A9: normal('0.029 K', 2),
    },
  );
  const { firstOrder, contributions } = result;
  near((firstOrder?.value ?? NaN) * 1e9, 50_000_838, 1, 0);
  near((firstOrder?.uncertainty ?? NaN) * 1e9, 31.7106, 0.1, 0);
  near(firstOrder?.freedom ?? NaN, 16.66, 0.1, 0);
  // t of 16 degrees of freedom at 97.5 %: 2.120 (any table of t).
  near(firstOrder?.coverageFactor ?? NaN, 2.12, 0.001, 0);
  const part = (address: string): number => {
    const found = contributions.find(({ cell }) => cell.row === at(address).row);
    return Math.abs((found?.sensitivity ?? NaN) * (found?.uncertainty ?? NaN)) * 1e9;
  };
  near(part('A1'), 25, 0.2, 0);
  near(part('A2'), 9.7, 0.1, 0);
  near(part('A8'), 2.9, 0.1, 0);
  // 16.67 by hand; the document cuts it to 16.6.
  near(part('A9'), 16.6, 0.2, 0);
  // The temperature counts only to the second order: nothing but rounding is left of it.
  expect(part('A6')).toBeLessThan(1e-6);
});

test('JCGM 100, H.2: resistance, reactance and impedance of correlated readings', () => {
  // Tables H.2 and H.4 (memory): R = 127.732, u 0.071; X = 219.847, u 0.295; Z = 254.260, u 0.236 ohm.
  const cells: Cells = {
    A1: '4.9990',
    A2: '0.0196610',
    A3: '1.04446 rad',
    B1: '=A1/A2*COS(A3)',
    B2: '=A1/A2*SIN(A3)',
    B3: '=A1/A2',
  };
  const pair = (first: string, second: string, coefficient: number) => ({
    first: at(first),
    second: at(second),
    coefficient,
  });
  const correlations = [pair('A1', 'A2', -0.36), pair('A1', 'A3', 0.86), pair('A2', 'A3', -0.65)];
  const givens = { A1: normal('0.0032'), A2: normal('0.0000095'), A3: normal('0.00075 rad') };
  for (const [address, value, u] of [
    ['B1', 127.732, 0.071],
    ['B2', 219.847, 0.295],
    ['B3', 254.26, 0.236],
  ] as const) {
    const result = spreadOf(cells, givens, { correlations }, address);
    near(result.base ?? NaN, value, 0.002, 0);
    // The inputs are rounded to two digits; the document keeps all of them: 1 % of u is allowed for.
    near(result.firstOrder?.uncertainty ?? NaN, u, 0.001 + 0.02 * u, 0);
    near(simulated(result).uncertainty, result.firstOrder?.uncertainty ?? NaN, 0, u / Math.sqrt(2 * SAMPLES));
  }
});

test('JCGM 100, H.3: the correction of a thermometer at 30 degC from its line', () => {
  // Case l28: y1 = -0.1712, u 0.0029; y2 = 0.00218, u 0.00067; r = -0.930; b(30) = -0.1494, u 0.0041 (9 degrees).
  const result = spreadOf(
    { A1: '-0.1712', A2: '0.00218', B1: '=A1+A2*10' },
    { A1: normal('0.0029'), A2: normal('0.00067') },
    { correlations: [{ first: at('A1'), second: at('A2'), coefficient: -0.93 }] },
  );
  near(result.firstOrder?.value ?? NaN, -0.1494, 0.0001, 0);
  near(result.firstOrder?.uncertainty ?? NaN, 0.0041, 0.0001, 0);
  near(simulated(result).uncertainty, 0.0041, 0.0001, 0.0041 / Math.sqrt(2 * SAMPLES));
});

test('expectation and uncertainty of every shape', () => {
  // Standard deviations by hand: a/sqrt(3), a/sqrt(6), a/sqrt(2); of the readings 1 to 5 s = sqrt(2.5), of their mean
  // drawn anew sqrt(2/5); triangle 0, 1, 3: mean 4/3, variance (9 + 1 - 3)/18.
  const cells: Cells = { A1: '3', A2: '1', A3: '2', A4: '3', A5: '4', A6: '5', B1: '=A1*1' };
  const block = { row: 1, column: 0, rows: 5, columns: 1 };
  const cases: readonly [Distribution, number, number][] = [
    [uniform('2'), 3, 2 / Math.sqrt(3)],
    [{ shape: 'triangular', half: '2' }, 3, 2 / Math.sqrt(6)],
    [{ shape: 'arcsine', half: '2' }, 3, Math.SQRT2],
    [{ shape: 'triangular', low: '0', high: '3', peak: '1' }, 4 / 3, Math.sqrt(7 / 18)],
    [{ shape: 'measured', worksheet: 'w1', block }, 3, Math.SQRT2],
    [{ shape: 'measured', worksheet: 'w1', block, mean: true }, 3, Math.sqrt(2 / 5)],
    [normal('5 %'), 3, 0.05],
  ];
  for (const [distribution, mean, u] of cases) {
    const found = simulated(spreadOf(cells, { A1: distribution }));
    near(found.mean, mean, 0, u / Math.sqrt(SAMPLES));
    near(found.uncertainty, u, 0, u / Math.sqrt(SAMPLES));
  }
  const readings = spreadOf(cells, { A1: { shape: 'measured', worksheet: 'w1', block } });
  expect(readings.firstOrder).toMatchObject({
    uncertainty: expect.closeTo(Math.sqrt(2.5), 9),
    freedom: expect.closeTo(4, 9),
  });
});

test('the chance that a limit is passed, and samples without a number', () => {
  // Uniform on 0 to 2: above 1.5 with 1/4, below 0.2 with 1/10. A third of -1 to 2 has no square root.
  const result = spreadOf(
    { A1: '1', B1: { content: '=A1*1', limits: { low: '0.2', high: '1.5', highText: 'holder' } } },
    { A1: uniform('1') },
  );
  const error = (p: number): number => Math.sqrt((p * (1 - p)) / SAMPLES);
  near(result.breaches.find(({ side }) => side === 'high')?.probability ?? NaN, 0.25, 0, error(0.25));
  near(result.breaches.find(({ side }) => side === 'low')?.probability ?? NaN, 0.1, 0, error(0.1));
  expect(result.breaches.map(({ words }) => words)).toEqual(['below 0.2', 'above 1.5 (holder)']);
  const roots = spreadOf({ A1: '0.5', B1: '=SQRT(A1)' }, { A1: uniform('1.5') });
  near(roots.failures / SAMPLES, 1 / 3, 0, error(1 / 3));
  expect(roots.failureWords).toMatch(/./);
  const { counts } = simulated(roots).histogram;
  expect(counts.reduce((sum, count) => sum + count, 0)).toBe(SAMPLES - roots.failures);
});

test('the same seed gives the same numbers, another seed others', () => {
  const once = (seed: number) => spreadOf(FOUR, four(normal('1')), { samples: 2000, seed });
  expect(once(4)).toEqual(once(4));
  expect(simulated(once(4)).mean).not.toBe(simulated(once(5)).mean);
});

test('what can not be drawn is refused in words', () => {
  const cells: Cells = { A1: '1 mm', A2: '2 mm', A3: '5', B1: '=A1+A2' };
  const ask =
    (distributions: Record<string, Distribution>, more: Partial<Question> = {}) =>
    () =>
      spreadOf(cells, distributions, more);
  expect(ask({})).toThrow(/No given spreads/);
  expect(ask({ A1: normal('-1 mm') })).toThrow(/at least 0/);
  expect(ask({ A1: normal('2 s') })).toThrow(/not in mm/);
  expect(ask({ A1: { shape: 'uniform', low: '3', high: '2' } })).toThrow(/no interval/);
  expect(ask({ A1: normal('1') }, { samples: 10 })).toThrow(/samples/);
  expect(ask({ B1: normal('1') })).toThrow(/computed/);
  const block = { row: 2, column: 0, rows: 1, columns: 1 };
  expect(ask({ A1: { shape: 'measured', worksheet: 'w1', block } })).toThrow(/another kind/);
  const correlations = [{ first: at('A1'), second: at('A2'), coefficient: 0.5 }];
  expect(ask({ A1: uniform('1'), A2: normal('1') }, { correlations })).toThrow(/has to be normal/);
});
