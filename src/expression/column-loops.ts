/** Arithmetic over columns of doubles, a piece of at most PIECE samples at a time so that it stays in the nearest memory. A column of length 1 holds the same number for all samples. */

import { BINARY_FUNCTIONS, powerOrNaN, UNARY_FUNCTIONS } from './numeric-functions.ts';
import { CLOSENESS } from './operators.ts';
import type { ComparisonOperator } from './operators.ts';

/** Most samples of one piece; never 1, which is the length of a column that is the same for all. */
export const PIECE = 512;

/** Columns that are used over and over, so that nothing is left to be collected. */
export class ColumnPool {
  readonly #columns: Float64Array[] = [];
  readonly #singles: Float64Array[] = [];

  /** A column of PIECE samples or, for `single`, of one; what stands in it is of no meaning. */
  take(single = false): Float64Array {
    return (single ? this.#singles : this.#columns).pop() ?? new Float64Array(single ? 1 : PIECE);
  }

  give(column: Float64Array): void {
    (column.length === 1 ? this.#singles : this.#columns).push(column);
  }
}

/** Fills `out[0 .. n)`; NaN goes in and out. */
export type UnaryLoop = (a: Float64Array, out: Float64Array, n: number) => void;
export type BinaryLoop = (a: Float64Array, b: Float64Array, out: Float64Array, n: number) => void;

const step = (column: Float64Array): 0 | 1 => (column.length === 1 ? 0 : 1);

/** a + b as `sumOf` has it. */
export const addLoop: BinaryLoop = (a, b, out, n) => {
  const p = step(a);
  const q = step(b);
  for (let i = 0; i < n; i++) {
    const x = a[i * p] as number;
    const sum = x + (b[i * q] as number);
    out[i] = Math.abs(sum) < CLOSENESS * Math.abs(x) ? 0 : sum;
  }
};

/** a - b as `differenceOf` has it. */
export const subtractLoop: BinaryLoop = (a, b, out, n) => {
  const p = step(a);
  const q = step(b);
  for (let i = 0; i < n; i++) {
    const x = a[i * p] as number;
    const difference = x - (b[i * q] as number);
    out[i] = Math.abs(difference) < CLOSENESS * Math.abs(x) ? 0 : difference;
  }
};

export const multiplyLoop: BinaryLoop = (a, b, out, n) => {
  const p = step(a);
  const q = step(b);
  for (let i = 0; i < n; i++) out[i] = (a[i * p] as number) * (b[i * q] as number);
};

/** a / b; NaN for b = 0. */
export const divideLoop: BinaryLoop = (a, b, out, n) => {
  const p = step(a);
  const q = step(b);
  for (let i = 0; i < n; i++) {
    const y = b[i * q] as number;
    out[i] = y === 0 ? NaN : (a[i * p] as number) / y;
  }
};

/** a ^ b; NaN where no finite number results. */
export const powerLoop: BinaryLoop = (a, b, out, n) => {
  const p = step(a);
  if (b.length === 1) {
    const y = b[0] as number;
    if (y === 2) {
      for (let i = 0; i < n; i++) out[i] = (a[i * p] as number) * (a[i * p] as number);
      return;
    }
    if (y === 0.5) {
      for (let i = 0; i < n; i++) out[i] = Math.sqrt(a[i * p] as number);
      return;
    }
    for (let i = 0; i < n; i++) out[i] = powerOrNaN(a[i * p] as number, y);
    return;
  }
  for (let i = 0; i < n; i++) out[i] = powerOrNaN(a[i * p] as number, b[i] as number);
};

const ANSWERS: Readonly<Record<ComparisonOperator, readonly [number, number, number]>> = {
  '<': [1, 0, 0],
  '<=': [1, 1, 0],
  '>': [0, 0, 1],
  '>=': [0, 1, 1],
  '=': [0, 1, 0],
  '<>': [1, 0, 1],
};

/** 1 and 0, numbers within 1e-13 of the larger one being equal; NaN where a side is none. */
export function compareLoop(operator: ComparisonOperator): BinaryLoop {
  const [less, equal, greater] = ANSWERS[operator];
  return (a, b, out, n) => {
    const p = step(a);
    const q = step(b);
    for (let i = 0; i < n; i++) {
      const x = a[i * p] as number;
      const y = b[i * q] as number;
      const difference = x - y;
      const width = CLOSENESS * Math.max(Math.abs(x), Math.abs(y));
      out[i] =
        x === y
          ? equal
          : difference > width
            ? greater
            : difference < -width
              ? less
              : equal + (difference - difference);
    }
  };
}

export const minLoop: BinaryLoop = (a, b, out, n) => {
  const p = step(a);
  const q = step(b);
  for (let i = 0; i < n; i++) out[i] = Math.min(a[i * p] as number, b[i * q] as number);
};

export const maxLoop: BinaryLoop = (a, b, out, n) => {
  const p = step(a);
  const q = step(b);
  for (let i = 0; i < n; i++) out[i] = Math.max(a[i * p] as number, b[i * q] as number);
};

export const negateLoop: UnaryLoop = (a, out, n) => {
  for (let i = 0; i < n; i++) out[i] = -(a[i] as number);
};

/** Minus with no negative zero, as in a cell. */
export const cellNegateLoop: UnaryLoop = (a, out, n) => {
  for (let i = 0; i < n; i++) out[i] = -(a[i] as number) || 0;
};

export const percentLoop: UnaryLoop = (a, out, n) => {
  for (let i = 0; i < n; i++) out[i] = (a[i] as number) / 100;
};

const absLoop: UnaryLoop = (a, out, n) => {
  for (let i = 0; i < n; i++) out[i] = Math.abs(a[i] as number);
};
const sqrtLoop: UnaryLoop = (a, out, n) => {
  for (let i = 0; i < n; i++) out[i] = Math.sqrt(a[i] as number);
};
const sinLoop: UnaryLoop = (a, out, n) => {
  for (let i = 0; i < n; i++) out[i] = Math.sin(a[i] as number);
};
const cosLoop: UnaryLoop = (a, out, n) => {
  for (let i = 0; i < n; i++) out[i] = Math.cos(a[i] as number);
};
const tanLoop: UnaryLoop = (a, out, n) => {
  for (let i = 0; i < n; i++) out[i] = Math.tan(a[i] as number);
};

/** The loop of any function of one number. */
export const unaryLoopOf =
  (one: (x: number) => number): UnaryLoop =>
  (a, out, n) => {
    for (let i = 0; i < n; i++) out[i] = one(a[i] as number);
  };

export const binaryLoopOf =
  (one: (x: number, y: number) => number): BinaryLoop =>
  (a, b, out, n) => {
    const p = step(a);
    const q = step(b);
    for (let i = 0; i < n; i++) out[i] = one(a[i * p] as number, b[i * q] as number);
  };

/** The numeric functions of one argument as loops; the frequent ones call Math without a step between. */
export const UNARY_LOOPS: ReadonlyMap<string, UnaryLoop> = new Map<string, UnaryLoop>([
  ...[...UNARY_FUNCTIONS].map(([name, one]) => [name, unaryLoopOf(one)] as const),
  ['ABS', absLoop],
  ['SQRT', sqrtLoop],
  ['SIN', sinLoop],
  ['COS', cosLoop],
  ['TAN', tanLoop],
]);

export const BINARY_LOOPS: ReadonlyMap<string, BinaryLoop> = new Map(
  [...BINARY_FUNCTIONS].map(([name, one]) => [name, binaryLoopOf(one)]),
);

/** Where the condition is 0 the second, else the first; NaN where it is none. */
export function chooseLoop(
  condition: Float64Array,
  then: Float64Array,
  otherwise: Float64Array,
  out: Float64Array,
  n: number,
): void {
  const p = step(then);
  const q = step(otherwise);
  for (let i = 0; i < n; i++) {
    const c = condition[i] as number;
    const chosen = c === 0 ? (otherwise[i * q] as number) : (then[i * p] as number);
    out[i] = Number.isNaN(c) ? NaN : chosen;
  }
}

/** 1 where a exceeds b by more than the relative tolerance, else 0; NaN where a side is none. The condition of a definition, its three steps in one. */
export const exceedsLoop =
  (tolerance: number): BinaryLoop =>
  (a, b, out, n) => {
    const p = step(a);
    const q = step(b);
    for (let i = 0; i < n; i++) {
      const x = a[i * p] as number;
      const y = b[i * q] as number;
      const difference = x - y;
      const past = Math.abs(difference) < CLOSENESS * Math.abs(x) ? 0 : difference;
      const room = tolerance * Math.max(Math.abs(x), Math.abs(y));
      const beyond = past - room;
      out[i] = beyond > CLOSENESS * Math.max(Math.abs(past), room) ? 1 : beyond - beyond;
    }
  };

/** Turns infinities, which stand for what is too large, into NaN, so that nothing makes them finite again. */
export function withoutInfinities(column: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    const x = column[i] as number;
    if (x - x !== 0) column[i] = NaN;
  }
}
