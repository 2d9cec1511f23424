/** What a node or a cell is for a piece of samples: doubles where it can be, boxed values where it must, one value where nothing varies. */

import { PIECE, withoutInfinities } from './column-loops.ts';
import type { ColumnPool } from './column-loops.ts';
import { failure } from './value.ts';
import type { Failure, Scalar, Value } from './value.ts';

/** Doubles that are all numbers or all logicals; NaN (or, until it is looked at, an infinity) where there is none. */
export interface Doubles {
  readonly doubles: Float64Array;
  readonly logical: boolean;
  /** Belongs to the pool: whoever uses it up gives it back. */
  readonly isTemporary: boolean;
  /** May hold infinities, which stand for numbers that are too large. */
  mayOverflow: boolean;
}
export interface Boxed {
  readonly boxed: readonly Value[];
}
/** A block of cells, row by row. */
export interface CellBlock {
  readonly cells: readonly (readonly Column[])[];
}
export interface Same {
  readonly same: Value;
}
export type Column = Doubles | Boxed | CellBlock | Same;

export const MISSING: Failure = failure('#NUM!', 'no number results');

export function doublesOf(
  doubles: Float64Array,
  { logical = false, isTemporary = true, mayOverflow = false } = {},
): Doubles {
  return { doubles, logical, isTemporary, mayOverflow };
}

/** The column without infinities, for whoever might make them finite again. */
export function finiteDoubles(column: Doubles, samples: number): Float64Array {
  const { doubles } = column;
  if (column.mayOverflow) {
    withoutInfinities(doubles, doubles.length === 1 ? 1 : samples);
    column.mayOverflow = false;
  }
  return doubles;
}

/** The value of one sample; a failure without its words where doubles have none. */
export function valueAt(column: Column, sample: number): Value {
  if ('same' in column) return column.same;
  if ('boxed' in column) return column.boxed[sample] ?? null;
  if ('cells' in column) {
    return { grid: column.cells.map((row) => row.map((cell) => valueAt(cell, sample) as Scalar)) };
  }
  const { doubles, logical } = column;
  const value = doubles[doubles.length === 1 ? 0 : sample] ?? NaN;
  if (!Number.isFinite(value)) return MISSING;
  return logical ? value !== 0 : value;
}

/** Doubles where every value is a number, or every one a logical. */
export function packed(values: readonly Value[], pool: ColumnPool): Column {
  const numbers = values.every((value) => typeof value === 'number');
  if (!numbers && !values.every((value) => typeof value === 'boolean')) return { boxed: values };
  if (values.length > PIECE) throw new RangeError(`${values.length} samples in a piece of ${PIECE}`);
  const doubles = pool.take();
  for (let i = 0; i < values.length; i++) doubles[i] = Number(values[i]);
  return doublesOf(doubles, { logical: !numbers });
}

export function giveBack(column: Column, pool: ColumnPool): void {
  if ('doubles' in column && column.isTemporary) pool.give(column.doubles);
}
