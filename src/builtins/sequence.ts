/** Parameters that stand for the numbers in ranges, arrays and single values. */

import { asNumber, failure, isFailure, isGrid } from '../expression/index.ts';
import type { Failure, Scalar, Value } from '../expression/index.ts';
import { list, plainList } from './parameter.ts';
import type { Parameter } from './parameter.ts';

/** Numbers of a range; texts, logicals and blanks in it are passed over. */
export const numbersOf = (rows: readonly (readonly Scalar[])[]): number[] =>
  rows.flat().filter((cell) => typeof cell === 'number');

/** Loops, because running sums over long columns call this for every cell. */
function collected(value: Value, inRange: (cell: Scalar) => number | undefined): number[] | Failure {
  if (isFailure(value)) return value;
  if (isGrid(value)) {
    const numbers: number[] = [];
    for (const row of value.grid) {
      for (const cell of row) {
        if (typeof cell === 'object' && cell !== null) return cell;
        const number = inRange(cell);
        if (number !== undefined) numbers.push(number);
      }
    }
    return numbers;
  }
  if (value === null) return [];
  const number = asNumber(value);
  return typeof number === 'number' ? [number] : number;
}

const numberOnly = (cell: Scalar): number | undefined => (typeof cell === 'number' ? cell : undefined);
const textAsZero = (cell: Scalar): number | undefined => {
  if (cell === null) return undefined;
  return typeof cell === 'number' ? cell : Number(cell === true);
};

/** The numbers of a range; a value given directly must be a number. */
export const sequence = (name: string): Parameter<number[]> => ({
  ...list(name),
  read: (value) => collected(value, numberOnly),
});

/** As `sequence`, plain numbers only. */
export const plainSequence = (name: string): Parameter<number[]> => ({
  ...plainList(name),
  read: (value) => collected(value, numberOnly),
});

/** As `sequence`, but in ranges TRUE counts as 1, FALSE and texts as 0. */
export const sequenceWithTexts = (name: string): Parameter<number[]> => ({
  ...list(name),
  read: (value) => collected(value, textAsZero),
});

/** Two ranges of the same size as pairs of numbers; a pair with a text, logical or blank in it is left out. */
export function pairs(
  a: readonly (readonly Scalar[])[],
  b: readonly (readonly Scalar[])[],
): { readonly xs: number[]; readonly ys: number[] } | Failure {
  const left = a.flat();
  const right = b.flat();
  if (left.length !== right.length) {
    return failure('#N/A', `the ranges have ${left.length} and ${right.length} values`);
  }
  const both = left.flatMap((x, i) => {
    const y = right[i];
    return typeof x === 'number' && typeof y === 'number' ? [[x, y] as const] : [];
  });
  return { xs: both.map(([x]) => x), ys: both.map(([, y]) => y) };
}
