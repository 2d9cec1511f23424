/** A given between its bounds. */

import type { FoundGiven, MovedGiven } from '../calculation/index.ts';
import { Refused } from './refused.ts';
import type { GivenNumber, StudyBook } from './study-book.ts';

/** Whole numbers between two bounds are looked at one by one up to so many. */
export const MOST_WHOLE = 20_000;

export interface Moved extends GivenNumber {
  readonly low: number;
  readonly high: number;
}

export function movedGiven(book: StudyBook, { cell, low, high }: MovedGiven): Moved {
  const given = book.given(cell);
  const [a, b] = [
    book.quantity(low, given.state, 'The lower bound'),
    book.quantity(high, given.state, 'The upper bound'),
  ];
  if (a === b) throw new Refused(`The bounds of ${book.name(given.state)} are the same.`, cell);
  return { ...given, low: Math.min(a, b), high: Math.max(a, b) };
}

/** The same with bounds on whole numbers. */
export function wholeMoved(book: StudyBook, moved: Moved): Moved {
  const [low, high] = [Math.ceil(moved.low - 1e-9), Math.floor(moved.high + 1e-9)];
  if (low > high)
    throw new Refused(
      `There is no whole number between the bounds of ${book.name(moved.state)}.`,
      moved.cell,
    );
  return { ...moved, low, high, whole: true };
}

/** A value with the text that, typed into the cell, means it. */
export function foundGiven(book: StudyBook, moved: Moved, value: number): FoundGiven {
  const { cell, low, high, unit } = moved;
  const room = 1e-9 * (high - low);
  const at = value <= low + room ? ('low' as const) : value >= high - room ? ('high' as const) : undefined;
  return {
    cell,
    value,
    content: book.content(moved, value),
    unit: unit.symbol === '1' ? '' : unit.symbol,
    ...(at && { at }),
  };
}
