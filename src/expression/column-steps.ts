/** Loops over the columns of a piece as cells have them: what is no matter of numbers gives undefined, and operands that were used up go back to the pool. */

import { chooseLoop } from './column-loops.ts';
import type { BinaryLoop, UnaryLoop } from './column-loops.ts';
import { doublesOf, finiteDoubles, giveBack } from './column.ts';
import type { Column, Doubles } from './column.ts';
import type { ColumnFrame } from './compile-columns.ts';
import { isGrid } from './value.ts';

export const isNumbers = (column: Column): column is Doubles => 'doubles' in column && !column.logical;

/** A number that is the same for all samples. */
export const numberAlone = (value: number): Doubles =>
  doublesOf(Float64Array.of(value), { isTemporary: false });

export function unaryColumn(column: Doubles, loop: UnaryLoop, { pool, samples }: ColumnFrame): Column {
  const single = column.doubles.length === 1;
  const out = pool.take(single);
  loop(column.doubles, out, single ? 1 : samples);
  giveBack(column, pool);
  return doublesOf(out, { mayOverflow: true });
}

export function binaryColumn(
  x: Doubles,
  y: Doubles,
  loop: BinaryLoop,
  frame: ColumnFrame,
  logical: boolean,
): Column {
  const { pool, samples } = frame;
  const single = x.doubles.length === 1 && y.doubles.length === 1;
  const out = pool.take(single);
  loop(x.doubles, y.doubles, out, single ? 1 : samples);
  giveBack(x, pool);
  giveBack(y, pool);
  return doublesOf(out, { logical, mayOverflow: !logical });
}

/** IF over a piece; undefined where a branch is no matter of doubles. */
export function choiceColumn(
  condition: Column,
  then: Column,
  otherwise: Column,
  frame: ColumnFrame,
): Column | undefined {
  const { pool, samples } = frame;
  const fits = 'doubles' in condition && 'doubles' in then && 'doubles' in otherwise;
  const whole = fits && condition.doubles.length > 1 && then.logical === otherwise.logical;
  let found: Doubles | undefined;
  if (whole) {
    const [x, y] = [finiteDoubles(then, samples), finiteDoubles(otherwise, samples)];
    const out = pool.take();
    chooseLoop(finiteDoubles(condition, samples), x, y, out, samples);
    found = doublesOf(out, { logical: then.logical });
  }
  for (const column of [condition, then, otherwise]) giveBack(column, pool);
  return found;
}

/** The numbers among the arguments of MIN or MAX; texts, logicals and blanks of a block are passed over. */
function numbersAmong(column: Column): readonly Doubles[] | undefined {
  if (isNumbers(column)) return [column];
  const cells: readonly Column[] | undefined =
    'cells' in column
      ? column.cells.flat()
      : 'same' in column && isGrid(column.same)
        ? column.same.grid.flat().map((same) => ({ same }))
        : undefined;
  if (!cells) return undefined;
  const found: Doubles[] = [];
  for (const cell of cells) {
    if (isNumbers(cell)) found.push(cell);
    else if ('same' in cell && typeof cell.same === 'number') found.push(numberAlone(cell.same));
    else if (!('same' in cell) || (typeof cell.same === 'object' && cell.same !== null)) return undefined;
  }
  return found;
}

/** MIN or MAX. */
export function extremeColumn(
  columns: readonly Column[],
  loop: BinaryLoop,
  frame: ColumnFrame,
): Column | undefined {
  const { pool, samples } = frame;
  const numbers = columns.map(numbersAmong);
  const flat = numbers.flatMap((each) => each ?? []);
  if (numbers.includes(undefined) || flat.length === 0) {
    for (const column of columns) giveBack(column, pool);
    return undefined;
  }
  const out = pool.take();
  const [first, ...others] = flat.map((each) => finiteDoubles(each, samples));
  if (first?.length === 1) out.fill(first[0] ?? NaN, 0, samples);
  else if (first) out.set(first);
  for (const each of others) loop(out, each, out, samples);
  for (const column of columns) giveBack(column, pool);
  return doublesOf(out);
}
