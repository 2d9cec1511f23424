/** Sweep: results over the values of one or two givens, as a table. */

import type { CellAddress, SweepAxis, SweepColumn } from '../calculation/index.ts';
import { isFailure } from '../expression/index.ts';
import { fromSI, toSI } from '../quantity/index.ts';
import { Plan } from './plan.ts';
import { Refused } from './refused.ts';
import { plainDigits } from './study-book.ts';
import type { GivenNumber, StudyBook } from './study-book.ts';

/** Most rows of the table. */
export const SWEEP_ROWS = 10_000;

/** Values in between are whole in so many digits of the shown unit, as if they were typed. */
const DIGITS = 10;

function axisValues(book: StudyBook, axis: SweepAxis, given: GivenNumber): number[] {
  const { state, unit, cell } = given;
  if (axis.spacing === 'list') {
    if (axis.values.length === 0) throw new Refused(`${book.name(state)} has no value to run through.`, cell);
    return axis.values.map((text) => book.quantity(text, state, 'A value'));
  }
  const { points, spacing } = axis;
  if (!Number.isInteger(points) || points < 2 || points > SWEEP_ROWS)
    throw new Refused(`${book.name(state)} runs through 2 to ${SWEEP_ROWS} values, not ${points}.`, cell);
  const [from, to] = [
    book.quantity(axis.from, state, 'The first value'),
    book.quantity(axis.to, state, 'The last value'),
  ];
  const [first, last] = [fromSI(from, unit), fromSI(to, unit)];
  if (spacing === 'logarithmic' && !(first * last > 0))
    throw new Refused(
      `A logarithmic range of ${book.name(state)} can neither begin at 0 nor pass through it.`,
      cell,
    );
  return Array.from({ length: points }, (_, index) => {
    if (index === 0) return from;
    if (index === points - 1) return to;
    const share = index / (points - 1);
    const value = spacing === 'linear' ? first + (last - first) * share : first * (last / first) ** share;
    return toSI(plainDigits(value, DIGITS), unit);
  });
}

export interface Swept {
  readonly rows: number;
  readonly columns: readonly SweepColumn[];
}

export function* sweep(
  book: StudyBook,
  axes: readonly SweepAxis[],
  addresses: readonly CellAddress[],
): Generator<number, Swept> {
  if (axes.length < 1 || axes.length > 2) throw new Refused('A sweep runs over one given or two.');
  const givens = axes.map(({ cell }) => book.given(cell));
  if (givens[0]?.state === givens[1]?.state)
    throw new Refused('The two givens of a sweep are the same cell.', axes[1]?.cell);
  const values = axes.map((axis, index) => axisValues(book, axis, givens[index] as GivenNumber));
  const rows = values.reduce((product, each) => product * each.length, 1);
  if (rows > SWEEP_ROWS) throw new Refused(`The sweep has ${rows} rows; ${SWEEP_ROWS} is the most.`);
  const inner = values[1]?.length ?? 1;
  const samples = values.map((each, index) =>
    Float64Array.from(
      { length: rows },
      (_, row) => each[index === 1 ? row % inner : Math.floor(row / inner)] ?? NaN,
    ),
  );
  const results = addresses.map((cell) => book.state(cell));
  const plan = new Plan(
    book,
    givens.map(({ state }) => state),
    results,
  );
  const found = yield* plan.values(samples, rows);
  const given = givens.map(({ state }, index): SweepColumn => ({
    ...book.described(state),
    role: 'given',
    values: [...(samples[index] ?? [])],
    errors: [],
  }));
  const computed = results.map((state, index): SweepColumn => {
    const column = found[index] ?? [];
    return {
      ...book.described(state),
      role: 'result',
      values: column.map((value) => (isFailure(value) ? null : value)),
      errors: column.flatMap((value, row) => (isFailure(value) ? [{ row, message: value.message }] : [])),
    };
  });
  return { rows, columns: [...given, ...computed] };
}
