/** Functions of plain doubles that equations and columns share. NaN goes in and out; nothing throws. */

import { CLOSENESS } from './operators.ts';

/** Rule E2: a whole number that was missed by rounding is reached, so that 6.6 / 2.2 counts as 3. */
export function wholeBelow(x: number): number {
  return Math.floor(x * (1 + 1e-12) + 1e-9);
}

/** Rule E2, upwards. */
export function wholeAbove(x: number): number {
  return Math.ceil(x * (1 - 1e-12) - 1e-9);
}

const towardsZero = (x: number): number => (x < 0 ? -wholeBelow(-x) : wholeBelow(x)) || 0;
const awayFromZero = (x: number): number => (x < 0 ? -wholeAbove(-x) : wholeAbove(x)) || 0;
const halfAway = (x: number): number =>
  (x < 0 ? -Math.floor(-x * (1 + 1e-15) + 0.5) : Math.floor(x * (1 + 1e-15) + 0.5)) || 0;

/** Applies a rounding at so many decimals; negative digits round before the point. */
const atDigits =
  (round: (x: number) => number) =>
  (x: number, digits = 0): number => {
    const scale = 10 ** Math.abs(Math.trunc(digits));
    return digits < 0 ? round(x / scale) * scale : round(x * scale) / scale;
  };

/** An argument that passed 1 by rounding alone is 1. */
const withinOne = (x: number): number => (Math.abs(x) > 1 && Math.abs(x) <= 1 + CLOSENESS ? Math.sign(x) : x);

const finiteOnly = (x: number): number => (Number.isFinite(x) ? x : NaN);

/** Quotient whose zero divisor is NaN, so that no later step makes it finite again. */
const quotient = (a: number, b: number): number => (b === 0 ? NaN : a / b);

/** A power as the operator ^ gives it; NaN where there is none. */
export function powerOrNaN(a: number, b: number): number {
  return finiteOnly(a ** b);
}

/**
 * Functions of one number. INT, FLOOR and CEILING follow rule E2; angles are radians.
 */
export const UNARY_FUNCTIONS: ReadonlyMap<string, (x: number) => number> = new Map([
  ['ABS', Math.abs],
  ['SQRT', Math.sqrt],
  ['SIN', Math.sin],
  ['COS', Math.cos],
  ['TAN', Math.tan],
  ['ASIN', (x: number) => Math.asin(withinOne(x))],
  ['ACOS', (x: number) => Math.acos(withinOne(x))],
  ['ATAN', Math.atan],
  ['SINH', (x: number) => finiteOnly(Math.sinh(x))],
  ['COSH', (x: number) => finiteOnly(Math.cosh(x))],
  ['TANH', Math.tanh],
  ['EXP', (x: number) => finiteOnly(Math.exp(x))],
  ['LN', (x: number) => finiteOnly(Math.log(x))],
  ['LOG10', (x: number) => finiteOnly(Math.log10(x))],
  ['LOG', (x: number) => finiteOnly(Math.log10(x))],
  ['SIGN', Math.sign],
  ['INT', wholeBelow],
  ['FLOOR', wholeBelow],
  ['CEILING', wholeAbove],
  ['ROUND', halfAway],
  ['ROUNDUP', awayFromZero],
  ['ROUNDDOWN', towardsZero],
  ['TRUNC', towardsZero],
  ['RADIANS', (x: number) => (x / 180) * Math.PI],
  ['DEGREES', (x: number) => (x / Math.PI) * 180],
]);

/** Functions of two numbers; ATAN2 takes x before y as OpenFormula does. */
export const BINARY_FUNCTIONS: ReadonlyMap<string, (x: number, y: number) => number> = new Map([
  ['ATAN2', (x: number, y: number) => (x === 0 && y === 0 ? NaN : Math.atan2(y, x))],
  ['POWER', powerOrNaN],
  ['LOG', (x: number, base: number) => quotient(finiteOnly(Math.log(x)), finiteOnly(Math.log(base)))],
  ['MOD', (x: number, divisor: number) => (divisor === 0 ? NaN : x - divisor * wholeBelow(x / divisor))],
  ['FLOOR', (x: number, step: number) => (step === 0 ? NaN : wholeBelow(x / step) * step)],
  ['CEILING', (x: number, step: number) => (step === 0 ? NaN : wholeAbove(x / step) * step)],
  ['ROUND', atDigits(halfAway)],
  ['ROUNDUP', atDigits(awayFromZero)],
  ['ROUNDDOWN', atDigits(towardsZero)],
  ['TRUNC', atDigits(towardsZero)],
]);

/** Folds over any number of values: the start, the step, and what becomes of total and count. */
export interface Fold {
  readonly start: number;
  readonly step: (total: number, x: number) => number;
  readonly end?: (total: number, count: number) => number;
}

/** Functions over lists and single values alike. Of no values at all SUM is 0, MIN and MAX are NaN. */
export const FOLDS: ReadonlyMap<string, Fold> = new Map<string, Fold>([
  ['SUM', { start: 0, step: (total, x) => total + x }],
  ['SUMPRODUCT', { start: 0, step: (total, x) => total + x }],
  ['SUMSQ', { start: 0, step: (total, x) => total + x * x }],
  ['PRODUCT', { start: 1, step: (total, x) => total * x }],
  ['MIN', { start: Infinity, step: Math.min, end: finiteOnly }],
  ['MAX', { start: -Infinity, step: Math.max, end: finiteOnly }],
  ['AVERAGE', { start: 0, step: (total, x) => total + x, end: quotient }],
  ['COUNT', { start: 0, step: (total) => total + 1 }],
]);
