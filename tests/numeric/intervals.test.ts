import { expect, test } from 'vitest';
import {
  firstCrossing,
  fittedLine,
  fitWeibull,
  mean,
  meanMargin,
  sampleVariance,
  weibullLife,
  welchOf,
} from '../../src/numeric/index.ts';
import { REFERENCE_CASES } from '../functions/reference-case.ts';

const caseOf = (id: string) => {
  const found = REFERENCE_CASES.find((each) => each.id === id);
  if (!found) throw new Error(`no case ${id}`);
  const numbers = (name: string): number[] => [found.inputs[name]?.value ?? []].flat().map(Number);
  const expected = (name: string): number => Number(found.expected[name]?.value);
  return { numbers, expected };
};

test('l21 NIST/SEMATECH 1.3.5.3: statistic and degrees of freedom of two means with unequal variances', () => {
  const { numbers, expected } = caseOf('l21');
  const [[na = 0, nb = 0], [ma = 0, mb = 0], [sa = 0, sb = 0]] = [
    numbers('n'),
    numbers('mean'),
    numbers('sd'),
  ] as [number[], number[], number[]];
  const { freedom } = welchOf({ count: na, variance: sa ** 2 }, { count: nb, variance: sb ** 2 }, 0.95);
  expect(freedom).toBeCloseTo(expected('df_welch'), 2);
  expect((ma - mb) / Math.sqrt(sa ** 2 / na + sb ** 2 / nb)).toBeCloseTo(expected('T_welch'), 3);
});

// NIST/SEMATECH 1.3.5.2, heat flow meter data: n = 195, mean 9.261460, s = 0.022789, interval 9.258242 to 9.264679 (from memory).
test('NIST/SEMATECH 1.3.5.2: the interval of a mean from its printed summary', () => {
  const [n, centre, s] = [195, 9.26146, 0.022789];
  // Values with exactly this mean and standard deviation: half below, half above, one in the middle.
  const step = s * Math.sqrt((n - 1) / (n - 1));
  const values = Array.from({ length: n }, (_, k) => (k === 0 ? centre : centre + (k % 2 ? step : -step)));
  expect(mean(values)).toBeCloseTo(centre, 9);
  expect(Math.sqrt(sampleVariance(values))).toBeCloseTo(s, 9);
  expect(centre - meanMargin(values, 0.95)).toBeCloseTo(9.258242, 5);
  expect(centre + meanMargin(values, 0.95)).toBeCloseTo(9.264679, 5);
  expect(meanMargin([1], 0.95)).toBeNaN();
});

test('l29 NIST/SEMATECH 8.4.1.2: Weibull with half of the units still running', () => {
  const { numbers, expected } = caseOf('l29');
  const fit = fitWeibull(
    numbers('failures'),
    Array.from({ length: 10 }, () => numbers('censor_time')[0] ?? 0),
  );
  if (!fit) throw new Error('no fit');
  expect(fit.shape).toBeCloseTo(expected('shape'), 7);
  expect(fit.scale).toBeCloseTo(expected('scale'), 4);
  expect(weibullLife(fit, 0.1, 0.95, { ended: 10, all: 20 }).life).toBeCloseTo(expected('B10_life'), 4);
});

test('l30 Kececioglu: Weibull of six complete lives', () => {
  const { numbers, expected } = caseOf('l30');
  const fit = fitWeibull(numbers('t'));
  expect(Math.abs((fit?.shape ?? 0) - expected('shape_ml'))).toBeLessThan(0.0006);
  expect(Math.abs((fit?.scale ?? 0) - expected('scale_ml'))).toBeLessThan(0.001);
});

/**
 * W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data, 1998: shock absorbers, both failure modes
 * (data read in a public repository; the printed estimates 10.23 and 0.3164 are from memory).
 */
test('Meeker and Escobar: estimates of 38 shock absorbers, 27 of them still running', () => {
  const ended = [6700, 9120, 12200, 13150, 14300, 17520, 20100, 20900, 22700, 26510, 27490];
  const running = [
    6950, 7820, 8790, 9660, 9820, 11310, 11690, 11850, 11880, 12140, 12870, 13330, 13470, 14040, 17540, 17890,
    18420, 18960, 18980, 19410, 20100, 20150, 20320, 23490, 27410, 27890, 28100,
  ];
  const fit = fitWeibull(ended, running);
  if (!fit) throw new Error('no fit');
  expect(Math.log(fit.scale)).toBeCloseTo(10.23, 2);
  expect(1 / fit.shape).toBeCloseTo(0.3164, 3);
});

// J. F. Lawless, Statistical Models and Methods for Lifetime Data: the quantity is free of the law; here that is tried.
test('the interval of a Weibull life moves with scale and shape of the lives alone', () => {
  const lives = [3, 5, 6, 7, 8, 9, 9.5, 11, 12, 15];
  const all = { ended: 10, all: 10 };
  const [one, other] = [fitWeibull(lives), fitWeibull(lives.map((life) => 7 * life ** 0.5))];
  if (!one || !other) throw new Error('no fit');
  const [a, b] = [weibullLife(one, 0.1, 0.95, all), weibullLife(other, 0.1, 0.95, all)];
  expect(b.low).toBeCloseTo(7 * a.low ** 0.5, 9);
  expect(b.high).toBeCloseTo(7 * a.high ** 0.5, 9);
  expect(a.low).toBeLessThan(a.life);
});

test('a Weibull fit needs two lives that ended and some scatter', () => {
  expect(fitWeibull([5])).toBeUndefined();
  expect(fitWeibull([5, 5])).toBeUndefined();
  expect(fitWeibull([5, -1])).toBeUndefined();
  expect(fitWeibull([1e300, 2e300])?.scale).toBeGreaterThan(1e300);
});

test('m01 Groover problem 23.1: where wear curves reach their limit', () => {
  const { numbers, expected } = caseOf('m01');
  for (const speed of ['125', '165'])
    expect(firstCrossing(numbers(`t_${speed}`), numbers(`VB_${speed}`), 0.75)?.x).toBeCloseTo(
      expected(`T_${speed}_VB0.75`),
      1,
    );
});

test('m04 slope of a measured wear curve', () => {
  const { numbers, expected } = caseOf('m04');
  const line = fittedLine(numbers('t'), numbers('wear'), 0.95);
  expect(line?.slope).toBeCloseTo(expected('slope'), 10);
  expect(line?.intercept).toBeCloseTo(expected('intercept'), 7);
});

// NIST/SEMATECH and StRD Norris: slope 1.00211681802045, standard error 0.000429796848199937 (certified).
test('the interval of a slope is that of its certified standard error (StRD Norris)', () => {
  const x = [0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5]; // prettier-ignore
  const y = [0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2]; // prettier-ignore
  const line = fittedLine(x, y, 0.95);
  expect(line?.slope).toBeCloseTo(1.00211681802045, 11);
  // t of 34 degrees of freedom, two-sided 95 %: 2.0322 (table).
  expect((line?.slopeMargin ?? 0) / 2.0322445).toBeCloseTo(0.000429796848199937, 9);
});
