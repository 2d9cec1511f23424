/** Search: the largest or smallest result over up to four givens, subject to limits on other results. */

import type {
  CellAddress,
  Constraint,
  ConstraintMet,
  MovedGiven,
  StudyAnswer,
} from '../calculation/index.ts';
import type { CellState } from '../workbook/index.ts';
import { constrainedSearch, KEPT, SPARING, THOROUGH } from './constrained-search.ts';
import type { Outcome } from './constrained-search.ts';
import { wholeGivens } from './influences.ts';
import { foundGiven, movedGiven, wholeMoved } from './moved.ts';
import type { Moved } from './moved.ts';
import { Plan } from './plan.ts';
import { within } from './progress.ts';
import { Refused } from './refused.ts';
import type { StudyBook } from './study-book.ts';

interface Limit {
  readonly state: CellState;
  readonly cell: CellAddress;
  readonly side: ConstraintMet['side'];
  readonly limit: number;
}

/** Bounds further apart than this are searched in equal ratios. */
const FAR_APART = 50;
/** A limit counts as reached within this share of its scale. */
const REACHED = 1e-6;

const MOST_GIVENS = 4;
const SCALE_POINTS = 64;
/** So many points are tried first; where one takes longer than this (ms), fewer are looked at. */
const [TRIED, SLOW] = [16, 0.5];

function limitsOf(book: StudyBook, constraints: readonly Constraint[]): Limit[] {
  return constraints.flatMap(({ cell, atLeast, atMost }) => {
    const state = book.result(cell);
    const limit = (side: Limit['side'], text: string | undefined): Limit[] =>
      text === undefined ? [] : [{ state, cell, side, limit: book.quantity(text, state, 'The limit') }];
    return [...limit('atLeast', atLeast), ...limit('atMost', atMost)];
  });
}

/** A given's value from its place between the bounds, 0 to 1, and back. */
function between({ low, high, whole }: Moved) {
  const inRatios = low > 0 && high / low > FAR_APART && !whole;
  return {
    value: (u: number): number => {
      if (u <= 0) return low;
      if (u >= 1) return high;
      return inRatios ? low * (high / low) ** u : low + (high - low) * u;
    },
    place: (value: number): number =>
      inRatios ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low || 1),
  };
}

/** A size by which values of a result differ: the middle half of them. */
function spreadOf(values: Float64Array): number {
  const sorted = values.filter(Number.isFinite).sort();
  const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
  return at(0.75) - at(0.25) || Math.abs(at(0.5)) || 1;
}

export function* search(
  book: StudyBook,
  question: {
    readonly result: CellAddress;
    readonly aim: 'largest' | 'smallest';
    readonly givens: readonly MovedGiven[];
    readonly constraints: readonly Constraint[];
  },
): Generator<number, Extract<StudyAnswer, { type: 'search' }>> {
  const { aim, givens: asked } = question;
  if (asked.length < 1 || asked.length > MOST_GIVENS)
    throw new Refused(`A search moves one to ${MOST_GIVENS} givens, not ${asked.length}.`);
  const result = book.result(question.result);
  const limits = limitsOf(book, question.constraints);
  const all = asked.map((each) => movedGiven(book, each));
  if (new Set(all.map(({ state }) => state)).size < all.length)
    throw new Refused('The same given is moved twice.', asked[0]?.cell);
  const results = [result, ...limits.map(({ state }) => state)];
  const whole = yield* within(wholeGivens(book, all, results), 0, 0);
  const givens = all.map((each) => (whole.has(each.state) ? wholeMoved(book, each) : each));
  const scales = givens.map(between);
  const plan = new Plan(
    book,
    givens.map(({ state }) => state),
    results,
  );
  const sign = aim === 'largest' ? -1 : 1;

  function* numbers(points: readonly (readonly number[])[]): Generator<number, Float64Array[]> {
    const samples = scales.map(({ value }, k) => Float64Array.from(points, (point) => value(point[k] ?? 0)));
    return yield* plan.numbers(samples, points.length);
  }

  let sizes: { objective: number; limits: number[] } | undefined;
  const passed = ({ side, limit }: Limit, value: number): number =>
    side === 'atMost' ? value - limit : limit - value;
  const evaluate = function* (points: readonly (readonly number[])[]): Generator<number, readonly Outcome[]> {
    const [objective = new Float64Array(), ...values] = yield* numbers(points);
    sizes ??= {
      objective: spreadOf(objective),
      limits: limits.map(
        ({ limit }, j) => Math.abs(limit) || spreadOf(values[j] ?? new Float64Array(SCALE_POINTS)),
      ),
    };
    const { objective: size, limits: sizeOf } = sizes;
    return points.map((_, i) => ({
      objective: (sign * (objective[i] ?? NaN)) / size,
      limits: limits.map((limit, j) => passed(limit, values[j]?.[i] ?? NaN) / (sizeOf[j] ?? 1)),
    }));
  };

  const steps = givens.map(({ whole: isWhole, low, high }) => (isWhole ? high - low : undefined));
  const now = givens.map(({ value }, k) => Math.min(1, Math.max(0, scales[k]?.place(value) ?? 0)));
  const begun = book.now();
  yield* within(numbers(Array.from({ length: TRIED }, (_, i) => now.map(() => (i + 0.5) / TRIED))), 0, 0);
  const effort = book.now() - begun > SLOW * TRIED ? SPARING : THOROUGH;
  const { best, points } = yield* constrainedSearch(evaluate, steps, [now], effort);
  const described = book.described(result);
  if (!best)
    return {
      type: 'search',
      outcome: 'noNumber',
      givens: [],
      result: { ...described, value: null },
      constraints: [],
      points,
    };
  const [objective, ...values] = yield* within(numbers([best.x]), 1, 1);
  const value = objective?.[0] ?? NaN;
  return {
    type: 'search',
    outcome: best.violation <= KEPT * Math.max(1, limits.length) ? 'found' : 'noPoint',
    givens: givens.map((given, k) => foundGiven(book, given, scales[k]?.value(best.x[k] ?? 0) ?? NaN)),
    result: { ...described, value: Number.isFinite(value) ? value : null },
    constraints: limits.map((limit, j): ConstraintMet => {
      const own = values[j]?.[0] ?? NaN;
      const beyond = passed(limit, own);
      const size = sizes?.limits[j] ?? 1;
      return {
        cell: limit.cell,
        side: limit.side,
        limit: limit.limit,
        value: own,
        unit: book.described(limit.state).unit,
        binding: Math.abs(beyond) <= REACHED * size,
        violation: beyond <= KEPT * size ? 0 : beyond,
      };
    }),
    points,
  };
}
