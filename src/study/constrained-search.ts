/** A small constrained search in the unit box: an even start, then linear programs in a shrinking box with points strewn beside them. Always ends. */

import { haltonPoint, randomStream } from '../numeric/index.ts';
import { linearStep } from './linear-step.ts';
import { within } from './progress.ts';

/** What a point gives: the objective (the smaller the better) and how far each limit is passed (negative: room), all scaled. */
export interface Outcome {
  readonly objective: number;
  readonly limits: readonly number[];
}

export interface Judged extends Outcome {
  readonly x: readonly number[];
  /** Sum of what is passed; infinite where a value is missing. */
  readonly violation: number;
}

/** Whole dimensions have so many steps from 0 to 1; undefined for continuous ones. */
export type Steps = readonly (number | undefined)[];

export type Evaluate = (points: readonly (readonly number[])[]) => Generator<number, readonly Outcome[]>;

/** A limit passed by less, in units of its scale, is kept. */
export const KEPT = 1e-12;

/** How much is looked at; less where a single point takes long. */
export interface Effort {
  readonly even: number;
  readonly starts: number;
  readonly rounds: number;
  readonly strewn: number;
}
export const THOROUGH: Effort = { even: 2048, starts: 6, rounds: 120, strewn: 96 };
export const SPARING: Effort = { even: 256, starts: 3, rounds: 50, strewn: 16 };

const SMALLEST = 1e-9;
const FRACTIONS = [1, 0.7, 0.4, 0.2, 0.05];
/** While the box is large, limits passed by this share of it count as kept, so that the way along a limit is open. */
const LENIENCE = 0.01;
/** So near to a bound, a given is tried at the bound. */
const NEAR_BOUND = 1e-4;

export function judged(x: readonly number[], outcome: Outcome): Judged {
  const isThere = Number.isFinite(outcome.objective) && outcome.limits.every(Number.isFinite);
  const violation = isThere ? outcome.limits.reduce((sum, each) => sum + Math.max(0, each), 0) : Infinity;
  return { x, ...outcome, violation };
}

/** Kept limits before passed ones, then the smaller objective or violation. */
export function isBetter(a: Judged, b: Judged, kept = KEPT): boolean {
  const [aKept, bKept] = [a.violation <= kept, b.violation <= kept];
  if (aKept && bKept) return a.objective < b.objective;
  return aKept !== bKept ? aKept : a.violation < b.violation;
}

const snapped = (x: readonly number[], steps: Steps): number[] =>
  x.map((value, k) => {
    const inside = Math.min(1, Math.max(0, value));
    const count = steps[k];
    return count === undefined ? inside : count === 0 ? 0 : Math.round(inside * count) / count;
  });

class Search {
  best: Judged | undefined;
  points = 0;

  constructor(
    readonly evaluate: Evaluate,
    readonly steps: Steps,
    readonly effort: Effort,
  ) {}

  *judge(points: readonly (readonly number[])[]): Generator<number, Judged[]> {
    const inside = points.map((x) => snapped(x, this.steps));
    const outcomes = yield* this.evaluate(inside);
    this.points += points.length;
    const all = inside.map((x, index) => judged(x, outcomes[index] as Outcome));
    for (const each of all) if (!this.best || isBetter(each, this.best)) this.best = each;
    return all;
  }

  /** Half the size of the box in a dimension: a whole one reaches its neighbours. */
  reach(k: number, h: number): number {
    const count = this.steps[k];
    return count === undefined ? h : Math.max(h, count === 0 ? 0 : 1 / count);
  }

  /** Slopes of objective and limits by central differences, one-sided at an edge. */
  *slopes(at: Judged, h: number): Generator<number, { objective: number[]; limits: number[][] }> {
    const arms = at.x.map((_, k) =>
      this.steps[k] === undefined ? Math.max(1e-8, h * 1e-3) : this.reach(k, 0),
    );
    const points = at.x.flatMap((value, k) =>
      [-1, 1].map((sign) => at.x.map((each, j) => (j === k ? value + sign * (arms[k] ?? 0) : each))),
    );
    const all = yield* this.judge(points);
    const slope = (k: number, of: (point: Judged) => number): number => {
      const [low, high] = [all[2 * k], all[2 * k + 1]] as [Judged, Judged];
      const ends = [low, at, high].filter((point) => Number.isFinite(of(point)));
      const [first, last] = [ends[0], ends.at(-1)];
      const run = (last?.x[k] ?? 0) - (first?.x[k] ?? 0);
      return first && last && run > 0 ? (of(last) - of(first)) / run : 0;
    };
    return {
      objective: at.x.map((_, k) => slope(k, ({ objective }) => objective)),
      limits: at.limits.map((__, j) => at.x.map((_, k) => slope(k, ({ limits }) => limits[j] ?? NaN))),
    };
  }

  /** From a start downwards. */
  *descend(start: Judged, seed: number): Generator<number, Judged> {
    const { rounds, strewn: count } = this.effort;
    const random = randomStream(seed);
    let here = start;
    let before = start;
    let h = 0.1;
    for (let round = 0; round < rounds && h > SMALLEST; round++) {
      const { objective, limits } = yield* this.slopes(here, h);
      const box = here.x.map((value, k) => {
        const reach = this.reach(k, h);
        return { low: Math.max(-reach, -value), high: Math.min(reach, 1 - value) };
      });
      const step = linearStep({ objective, limits, at: here.limits, box });
      const along = (direction: readonly number[], share: number): number[] =>
        here.x.map((value, k) => value + share * (direction[k] ?? 0));
      const momentum = here.x.map((value, k) => value - (before.x[k] ?? value));
      const strewn = Array.from({ length: count }, (_, i) =>
        here.x.map((value, k) => {
          const size = this.reach(k, i % 3 === 0 ? h * 0.1 : h);
          return value + size * (2 * random.next() - 1);
        }),
      );
      const axes = here.x.flatMap((_, k) =>
        [-1, 1].map((sign) =>
          along(
            here.x.map((__, j) => (j === k ? sign * this.reach(k, h) : 0)),
            1,
          ),
        ),
      );
      const candidates = [
        ...FRACTIONS.map((share) => along(step, share)),
        ...[0.5, 1, 2, 4].map((share) => along(momentum, share)),
        ...axes,
        ...strewn,
      ];
      const all = yield* this.judge(candidates);
      const kept = Math.max(KEPT, LENIENCE * h);
      const next = all.reduce((least, each) => (isBetter(each, least, kept) ? each : least), here);
      if (next === here) h *= 0.5;
      else {
        const moved = Math.max(...next.x.map((value, k) => Math.abs(value - (here.x[k] ?? value))));
        before = here;
        here = next;
        h = moved > 0.7 * h ? Math.min(0.25, h * 1.6) : h * 0.7;
      }
      yield round / rounds;
    }
    return here;
  }

  /** Givens that all but stand at a bound are put there, where that costs nothing that counts. */
  *toBounds(): Generator<number, void> {
    for (let k = 0; k < this.steps.length; k++) {
      const { best } = this;
      const value = best?.x[k] ?? 0.5;
      const bound = value < NEAR_BOUND ? 0 : value > 1 - NEAR_BOUND ? 1 : undefined;
      if (!best || bound === undefined || value === bound) continue;
      const [there] = yield* this.judge([best.x.map((each, j) => (j === k ? bound : each))]);
      const room = 1e-9 * Math.abs(best.objective);
      if (
        there &&
        there.violation <= Math.max(KEPT, best.violation) &&
        there.objective <= best.objective + room
      )
        this.best = there;
    }
  }

  /** The best starts that do not lie beside each other. */
  starts(all: readonly Judged[]): Judged[] {
    const found: Judged[] = [];
    for (const each of all.toSorted((a, b) => (isBetter(a, b) ? -1 : isBetter(b, a) ? 1 : 0))) {
      if (!Number.isFinite(each.violation)) continue;
      const isApart = found.every(({ x }) => x.some((value, k) => Math.abs(value - (each.x[k] ?? 0)) > 0.08));
      if (isApart) found.push(each);
      if (found.length === this.effort.starts) break;
    }
    return found;
  }
}

/** The best point found, or the one that passes its limits least; undefined where no point has all its values. */
export function* constrainedSearch(
  evaluate: Evaluate,
  steps: Steps,
  known: readonly (readonly number[])[],
  effort: Effort = THOROUGH,
): Generator<number, { readonly best: Judged | undefined; readonly points: number }> {
  const search = new Search(evaluate, steps, effort);
  const dimensions = steps.length;
  const corners = Array.from({ length: 2 ** dimensions }, (_, bits) => steps.map((__, k) => (bits >> k) & 1));
  const even = Array.from({ length: effort.even }, (_, i) => haltonPoint(i + 1, dimensions));
  const all = yield* within(search.judge([...known, ...corners, ...even]), 0, 0.2);
  const starts = search.starts(all);
  for (const [index, start] of starts.entries()) {
    const from = 0.2 + (0.7 * index) / starts.length;
    yield* within(search.descend(start, index + 1), from, from + 0.7 / starts.length);
  }
  const last = search.best;
  if (last && Number.isFinite(last.violation)) {
    yield* within(search.descend(last, starts.length + 1), 0.9, 0.99);
    yield* within(search.toBounds(), 0.99, 1);
  }
  const { best, points } = search;
  return { best: best && Number.isFinite(best.violation) ? best : undefined, points };
}
