/**
 * Every fit of the domain library on certified data. The straight lines over logarithms take the set Norris of NIST StRD through the
 * exponential, so that their slope and constant are certified too; the digits reached stand in the names. The Weibull fit has no set
 * there: it takes the ball bearings of Lieblein and Zelen. Nothing in the library fits a nonlinear law by least squares.
 */

import jstat from 'jstat';
import { expect, test } from 'vitest';
import { sharedDigits } from '../numeric/digits.ts';
import { LINEAR_SETS } from '../numeric/nist-strd.table.ts';
import { numberIn } from './calculated.ts';

const NORRIS = LINEAR_SETS.find(({ name }) => name === 'Norris');
if (!NORRIS) throw new Error('no Norris');
const X = NORRIS.x as readonly number[];
const { y: Y, residualDeviation } = NORRIS;
const [CONSTANT, SLOPE] = NORRIS.estimates as [number, number];
const [CONSTANT_ERROR, SLOPE_ERROR] = NORRIS.deviations as [number, number];

const list = (values: readonly number[], unit: string): string => `{${values.join(';')}} ${unit}`;

test('FORCE.FIT_MC and FORCE.FIT_KC11 on exp(Norris): the exponent to 12 digits, ln kc1.1 to 9', () => {
  const trials = `${list(
    X.map((x) => Math.exp(x / 1000)),
    'mm',
  )}; ${list(
    Y.map((y) => Math.exp(-y / 10_000)),
    'MPa',
  )}`;
  expect(sharedDigits(numberIn(`=FORCE.FIT_MC(${trials})`), SLOPE / 10)).toBeGreaterThan(12);
  const main = numberIn(`=FORCE.FIT_KC11(${trials})`, 'MPa');
  expect(sharedDigits(Math.log(main) * 10_000, -CONSTANT)).toBeGreaterThan(9);
});

const SPEEDS = list(
  X.map((x) => Math.exp(x / 1000)),
  'm/min',
);
const LIVES = list(
  Y.map((y) => Math.exp(-y / 1000)),
  'min',
);

test('LIFE.TAYLOR_EXPONENT and LIFE.TAYLOR_CONSTANT on exp(Norris): the exponent to 12 digits, ln C to 10', () => {
  expect(sharedDigits(numberIn(`=LIFE.TAYLOR_EXPONENT(${SPEEDS}; ${LIVES})`), 1 / SLOPE)).toBeGreaterThan(12);
  const constant = numberIn(`=LIFE.TAYLOR_CONSTANT(${SPEEDS}; ${LIVES})`, 'm/min');
  expect(sharedDigits(Math.log(constant) * 1000, -CONSTANT / SLOPE)).toBeGreaterThan(10);
});

test('LIFE.TAYLOR_LOW on exp(Norris): the limit from the certified line, its errors and t, to 8 digits', () => {
  // The errors give Sxx and the mean of x: s^2 / sb1^2 and sb0^2 = s^2 (1/n + mean^2 / Sxx).
  const sxx = (residualDeviation / SLOPE_ERROR) ** 2;
  const middle = Math.sqrt(sxx * ((CONSTANT_ERROR / residualDeviation) ** 2 - 1 / 36));
  const room =
    jstat.studentt.inv(0.95, 34) * residualDeviation * Math.sqrt(1 + 1 / 36 + (500 - middle) ** 2 / sxx);
  const low = numberIn(`=LIFE.TAYLOR_LOW(${SPEEDS}; ${LIVES}; ${Math.exp(0.5)} m/min)`, 'min');
  expect(sharedDigits(Math.log(low) * -1000, CONSTANT + SLOPE * 500 + room)).toBeGreaterThan(8);
});

test('LIFE.WEAR_RATE on Norris: the slope to 13 digits', () => {
  const order = [...X.keys()].sort((a, b) => (X[a] ?? 0) - (X[b] ?? 0));
  const sorted = (values: readonly number[]): number[] => order.map((i) => values[i] ?? Number.NaN);
  const rate = numberIn(`=LIFE.WEAR_RATE(${list(sorted(X), 'min')}; ${list(sorted(Y), 'um')})`, 'um/min');
  expect(sharedDigits(rate, SLOPE)).toBeGreaterThan(13);
});

/** Millions of turns to failure of 23 deep-groove ball bearings: J. Lieblein, M. Zelen, J. Res. Nat. Bur. Standards 57 (1956) 273-316 (read in copies). */
const BEARINGS = [
  17.88, 28.92, 33, 41.52, 42.12, 45.6, 48.48, 51.84, 51.96, 54.12, 55.56, 67.8, 68.64, 68.64, 68.88, 84.12,
  93.12, 98.64, 105.12, 105.84, 127.92, 128.04, 173.4,
];

test('LIFE.WEIBULL on the ball bearings: shape 2.1021, scale 81.878 (J. F. Lawless, Statistical Models and Methods for Lifetime Data, 1982; from memory); 12 digits of the likelihood solved in 30 digits', () => {
  const lives = list(BEARINGS, 'min');
  const shape = numberIn(`=LIFE.WEIBULL_SHAPE(${lives})`);
  const scale = numberIn(`=LIFE.WEIBULL_SCALE(${lives})`, 'min');
  expect(shape).toBeCloseTo(2.1021, 4);
  expect(scale).toBeCloseTo(81.878, 3);
  // mpmath 1.3.0, likelihood equation solved with 30 digits.
  expect(sharedDigits(shape, 2.10205887519462)).toBeGreaterThan(12);
  expect(sharedDigits(scale, 81.8783340516315)).toBeGreaterThan(12);
});
