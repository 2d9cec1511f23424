/** Closures that call Math and compare without a step between, for what stands in nearly every equation. */

import { numberOrder } from './operators.ts';
import type { ComparisonOperator } from './operators.ts';

/** Numbers by symbol, lists by list symbol, and the place in the lists inside a fold. */
export type NumberClosure = (
  slots: ArrayLike<number>,
  lists: readonly ArrayLike<number>[],
  index: number,
) => number;

type Unary = (a: NumberClosure) => NumberClosure;
type Binary = (a: NumberClosure, b: NumberClosure) => NumberClosure;

export const UNARY_CLOSURES: ReadonlyMap<string, Unary> = new Map<string, Unary>([
  ['ABS', (a) => (s, l, i) => Math.abs(a(s, l, i))],
  ['SQRT', (a) => (s, l, i) => Math.sqrt(a(s, l, i))],
  ['SIN', (a) => (s, l, i) => Math.sin(a(s, l, i))],
  ['COS', (a) => (s, l, i) => Math.cos(a(s, l, i))],
  ['TAN', (a) => (s, l, i) => Math.tan(a(s, l, i))],
]);

/** Comparisons give 1, 0 or, where a side is none, NaN. */
export const COMPARISON_CLOSURES: Readonly<Record<ComparisonOperator, Binary>> = {
  '<': (a, b) => (s, l, i) => {
    const order = numberOrder(a(s, l, i), b(s, l, i));
    return order < 0 ? 1 : order >= 0 ? 0 : NaN;
  },
  '<=': (a, b) => (s, l, i) => {
    const order = numberOrder(a(s, l, i), b(s, l, i));
    return order <= 0 ? 1 : order > 0 ? 0 : NaN;
  },
  '>': (a, b) => (s, l, i) => {
    const order = numberOrder(a(s, l, i), b(s, l, i));
    return order > 0 ? 1 : order <= 0 ? 0 : NaN;
  },
  '>=': (a, b) => (s, l, i) => {
    const order = numberOrder(a(s, l, i), b(s, l, i));
    return order >= 0 ? 1 : order < 0 ? 0 : NaN;
  },
  '=': (a, b) => (s, l, i) => {
    const order = numberOrder(a(s, l, i), b(s, l, i));
    return order === 0 ? 1 : Math.abs(order) > 0 ? 0 : NaN;
  },
  '<>': (a, b) => (s, l, i) => {
    const order = numberOrder(a(s, l, i), b(s, l, i));
    return order === 0 ? 0 : Math.abs(order) > 0 ? 1 : NaN;
  },
};
