/** Which given numbers decide a result, and which of them are whole by nature. */

import type { CellAddress, Influence } from '../calculation/index.ts';
import { PLAIN } from '../quantity/index.ts';
import { addressOf, isCell } from '../workbook/index.ts';
import type { CellState, RangeState } from '../workbook/index.ts';
import { Plan } from './plan.ts';
import type { GivenNumber, StudyBook } from './study-book.ts';

/** Everything that the results need, near or far, by the places of the results that need it. */
function reachOf(book: StudyBook, results: readonly CellState[]): Map<CellState, number[]> {
  const { cells } = book.workbook;
  const reaches = new Map<CellState, number[]>();
  for (const [index, result] of results.entries()) {
    const seen = new Set<CellState | RangeState>([result]);
    for (const next of seen) {
      if (!isCell(next)) {
        for (const cell of cells.within(next)) seen.add(cell);
        continue;
      }
      const known = reaches.get(next);
      if (known) known.push(index);
      else reaches.set(next, [index]);
      if (next.origin) seen.add(next.origin);
      for (const cell of next.formula?.cells ?? []) seen.add(cell);
      for (const range of next.formula?.ranges ?? []) seen.add(range);
    }
  }
  return reaches;
}

export function* influences(
  book: StudyBook,
  addresses: readonly CellAddress[],
): Generator<number, readonly Influence[]> {
  const results = addresses.map((cell) => book.state(cell));
  const found = [...reachOf(book, results)].flatMap(([state, reaches]) => {
    const isGiven = !state.formula && !state.origin && state.type.type === 'number';
    if (!isGiven || typeof state.value !== 'number') return [];
    return [{ given: book.given(addressOf(book.workbook.cells, state)), reaches }];
  });
  const whole = yield* wholeGivens(
    book,
    found.map(({ given }) => given),
    results,
  );
  return found.map(({ given, reaches }) => ({
    ...book.described(given.state),
    value: given.value,
    whole: whole.has(given.state),
    reaches,
  }));
}

/**
 * The givens that only make sense as whole numbers: counts, and plain whole numbers with which a result has a number
 * while half a step further it has none (numbers of teeth, which functions refuse to split).
 */
export function* wholeGivens(
  book: StudyBook,
  givens: readonly GivenNumber[],
  results: readonly CellState[],
): Generator<number, ReadonlySet<CellState>> {
  const whole = new Set(givens.filter((given) => given.whole).map(({ state }) => state));
  const asked = givens.filter(
    ({ state, kind, value }) => !whole.has(state) && kind.name === PLAIN.name && Number.isInteger(value),
  );
  if (asked.length === 0) return whole;
  const plan = new Plan(
    book,
    asked.map(({ state }) => state),
    results,
  );
  // The first sample is the notebook as it stands; in each further one another given is half a step away.
  const samples = asked.map(({ value }, index) =>
    Float64Array.from({ length: asked.length + 1 }, (_, sample) =>
      sample === index + 1 ? value + 0.5 : value,
    ),
  );
  const numbers = yield* plan.numbers(samples, asked.length + 1);
  asked.forEach(({ state }, index) => {
    const isSplit = numbers.some((column) => Number.isFinite(column[0]) && Number.isNaN(column[index + 1]));
    if (isSplit) whole.add(state);
  });
  return whole;
}
