/** Parameters that stand for the numbers in ranges, arrays and single values. */

import { asNumber, failure, isFailure, isGrid } from '../expression/index.ts';
import type { Failure, Scalar, Value } from '../expression/index.ts';
import { list, plainList } from './parameter.ts';
import type { Parameter } from './parameter.ts';

/** Numbers of a range; texts, logicals and blanks in it are passed over. */
export const numbersOf = (rows: readonly (readonly Scalar[])[]): number[] =>
  rows.flat().filter((cell) => typeof cell === 'number');

function collected(value: Value, inRange: (cell: Scalar) => readonly number[]): number[] | Failure {
  if (isFailure(value)) return value;
  if (isGrid(value)) {
    const cells = value.grid.flat();
    return cells.find((cell) => isFailure(cell)) ?? cells.flatMap(inRange);
  }
  if (value === null) return [];
  const number = asNumber(value);
  return typeof number === 'number' ? [number] : number;
}

const numberOnly = (cell: Scalar): readonly number[] => (typeof cell === 'number' ? [cell] : []);
const textAsZero = (cell: Scalar): readonly number[] =>
  cell === null ? [] : [typeof cell === 'number' ? cell : cell === true ? 1 : 0];

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
