/** The operators on values, once and for everything: engine, columns, criteria, look-ups, equations. */

import type { BinaryOperator, UnaryOperator } from './tree.ts';
import { failure, isFailure, isGrid } from './value.ts';
import type { Failure, Scalar, Value } from './value.ts';

/** Relative width within which a difference counts as none: architecture, "Operators, once and everywhere". */
export const CLOSENESS = 1e-13;

/** a + b; 0 where the result is smaller than 1e-13 of the left operand. */
export function sumOf(a: number, b: number): number {
  const sum = a + b;
  return Math.abs(sum) < CLOSENESS * Math.abs(a) ? 0 : sum;
}

/** a - b; 0 where the result is smaller than 1e-13 of the left operand. */
export function differenceOf(a: number, b: number): number {
  const difference = a - b;
  return Math.abs(difference) < CLOSENESS * Math.abs(a) ? 0 : difference;
}

/** -1, 0 or 1; numbers within 1e-13 of the larger one are equal. NaN gives NaN. */
export function numberOrder(a: number, b: number): number {
  if (a === b) return 0;
  const difference = a - b;
  const width = CLOSENESS * Math.max(Math.abs(a), Math.abs(b));
  // The last difference is 0, or NaN where a side is none.
  return difference > width ? 1 : difference < -width ? -1 : difference - difference;
}

/** -1, 0 or 1 by code units of the lower-case forms: comparison is not case-sensitive. */
export function textOrder(a: string, b: string): number {
  if (a === b) return 0;
  const left = a.toLowerCase();
  const right = b.toLowerCase();
  return left === right ? 0 : left < right ? -1 : 1;
}

/** A number in words and messages and after &: up to 15 digits, no grouping, decimal point. */
export function numberText(value: number): string {
  return String(Number(value.toPrecision(15))).replace('e', 'E');
}

/** Logical constants as text. */
export function logicalText(value: boolean): string {
  return value ? 'TRUE' : 'FALSE';
}

/** The number an operand stands for: logicals 1 and 0, blanks 0, texts #VALUE!. */
export function asNumber(value: Scalar): number | Failure {
  if (typeof value === 'number') return value;
  if (typeof value === 'boolean') return value ? 1 : 0;
  if (value === null) return 0;
  if (typeof value === 'string')
    return failure('#VALUE!', `the text "${shortened(value)}" stands where a number is needed`);
  return value;
}

/** The text an operand of & stands for; a blank is the empty text. */
export function asText(value: Scalar): string | Failure {
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return numberText(value);
  if (typeof value === 'boolean') return logicalText(value);
  return value === null ? '' : value;
}

/** The logical an operand stands for: any number but 0 is true, a blank is false, a text #VALUE!. */
export function asLogical(value: Scalar): boolean | Failure {
  if (typeof value === 'boolean') return value;
  if (typeof value === 'number') return value !== 0;
  if (value === null) return false;
  if (typeof value === 'string') {
    return failure('#VALUE!', `the text "${shortened(value)}" stands where TRUE or FALSE is needed`);
  }
  return value;
}

const shortened = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text);

/** A finite number, or the failure that a number which is none stands for. */
export function checkedNumber(value: number): number | Failure {
  return Number.isFinite(value)
    ? value
    : failure('#NUM!', Number.isNaN(value) ? 'no number results' : 'the result is too large');
}

type Present = number | string | boolean;

const rank = (value: Present): number => (typeof value === 'number' ? 0 : typeof value === 'string' ? 1 : 2);

const emptyLike = (other: Scalar): Present =>
  typeof other === 'string' ? '' : typeof other === 'boolean' ? false : 0;

/** Order of two values: number < text < logical; a blank is 0, "" or FALSE as its neighbour asks. Failures come back as they are. */
export function valueOrder(left: Scalar, right: Scalar): number | Failure {
  if (isFailure(left)) return left;
  if (isFailure(right)) return right;
  const a = left ?? emptyLike(right);
  const b = right ?? emptyLike(left);
  if (typeof a === 'number' && typeof b === 'number') return numberOrder(a, b);
  if (typeof a === 'string' && typeof b === 'string') return textOrder(a, b);
  return Math.sign(rank(a) - rank(b)) || Math.sign(Number(a) - Number(b));
}

const held: Readonly<Record<'=' | '<>' | '<' | '<=' | '>' | '>=', (order: number) => boolean>> = {
  '=': (order) => order === 0,
  '<>': (order) => order !== 0,
  '<': (order) => order < 0,
  '<=': (order) => order <= 0,
  '>': (order) => order > 0,
  '>=': (order) => order >= 0,
};

export type ComparisonOperator = keyof typeof held;

export function isComparison(operator: BinaryOperator): operator is ComparisonOperator {
  return operator in held;
}

/** Whether an order of -1, 0 or 1 satisfies the operator. */
export function holds(operator: ComparisonOperator, order: number): boolean {
  return held[operator](order);
}

/** a / b; #DIV/0! for b = 0. */
function quotientOf(a: number, b: number): number | Failure {
  return b === 0 ? failure('#DIV/0!', 'division by zero') : checkedNumber(a / b);
}

/** a ^ b; #DIV/0! for 0 to a negative power, #NUM! where no real number results. */
function powerOf(a: number, b: number): number | Failure {
  if (a === 0 && b < 0) return failure('#DIV/0!', '0 is raised to a negative power: division by zero');
  if (a < 0 && !Number.isInteger(b)) {
    return failure('#NUM!', 'a negative number is raised to a power that is no whole number');
  }
  return checkedNumber(a ** b);
}

/** Every operator on two numbers. */
const ON_NUMBERS: Readonly<Record<BinaryOperator, (a: number, b: number) => Scalar>> = {
  '+': (a, b) => checkedNumber(sumOf(a, b)),
  '-': (a, b) => checkedNumber(differenceOf(a, b)),
  '*': (a, b) => checkedNumber(a * b),
  '/': quotientOf,
  '^': powerOf,
  '&': (a, b) => numberText(a) + numberText(b),
  '=': (a, b) => numberOrder(a, b) === 0,
  '<>': (a, b) => numberOrder(a, b) !== 0,
  '<': (a, b) => numberOrder(a, b) < 0,
  '<=': (a, b) => numberOrder(a, b) <= 0,
  '>': (a, b) => numberOrder(a, b) > 0,
  '>=': (a, b) => numberOrder(a, b) >= 0,
};

/** The operator as a function of two numbers. */
export function numberOperation(operator: BinaryOperator): (a: number, b: number) => Scalar {
  return ON_NUMBERS[operator];
}

/** One binary operator on two single values. Failures pass through, the left one first. */
export function applyBinary(operator: BinaryOperator, left: Scalar, right: Scalar): Scalar {
  if (isFailure(left)) return left;
  if (isFailure(right)) return right;
  if (operator === '&') return `${asText(left) as string}${asText(right) as string}`;
  if (isComparison(operator)) {
    const order = valueOrder(left, right);
    return typeof order === 'number' ? holds(operator, order) : order;
  }
  const a = asNumber(left);
  if (typeof a !== 'number') return a;
  const b = asNumber(right);
  return typeof b === 'number' ? ON_NUMBERS[operator](a, b) : b;
}

/** Unary minus; unary plus leaves every value as it is. */
export function applyUnary(operator: UnaryOperator, operand: Scalar): Scalar {
  if (operator === '+') return operand;
  const value = asNumber(operand);
  return typeof value === 'number' ? -value || 0 : value;
}

/** A hundredth. */
export function applyPercent(operand: Scalar): Scalar {
  const value = asNumber(operand);
  return typeof value === 'number' ? value / 100 : value;
}

/** An operation on two values where either may be a grid: cell by cell, a single row, column or value serving for all; else #VALUE!. */
export function mapPairs(left: Value, right: Value, pair: (a: Scalar, b: Scalar) => Scalar): Value {
  if (!isGrid(left) && !isGrid(right)) return pair(left, right);
  const a = isGrid(left) ? left.grid : [[left]];
  const b = isGrid(right) ? right.grid : [[right]];
  const rows = Math.max(a.length, b.length);
  const columns = Math.max(a[0]?.length ?? 0, b[0]?.length ?? 0);
  const fits = (grid: typeof a): boolean =>
    (grid.length === rows || grid.length === 1) && (grid[0]?.length === columns || grid[0]?.length === 1);
  if (!fits(a) || !fits(b))
    return failure('#VALUE!', 'the ranges differ in their numbers of rows or columns');
  const at = (grid: typeof a, row: number, column: number): Scalar => {
    const line = grid[grid.length === 1 ? 0 : row] ?? [];
    return line[line.length === 1 ? 0 : column] ?? null;
  };
  const grid = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (__, column) => pair(at(a, row, column), at(b, row, column))),
  );
  return { grid };
}

/** An operation on a value, cell by cell if it is a grid. */
export function mapValue(value: Value, one: (a: Scalar) => Scalar): Value {
  return isGrid(value) ? { grid: value.grid.map((row) => row.map(one)) } : one(value);
}
