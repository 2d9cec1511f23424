/** Solve: where a result has a wanted value, between the bounds of one given. Always ends. */

import type {
  CellAddress,
  MovedGiven,
  SolveAnswer,
  StudyAnswer,
  TypedQuantity,
} from '../calculation/index.ts';
import { findMinimum, findRoot } from '../numeric/index.ts';
import { wholeGivens } from './influences.ts';
import { foundGiven, MOST_WHOLE, movedGiven, wholeMoved } from './moved.ts';
import type { Moved } from './moved.ts';
import { Plan } from './plan.ts';
import { within } from './progress.ts';
import { Refused } from './refused.ts';
import type { StudyBook } from './study-book.ts';

/** Points of the grid; beside them as many in equal ratios where the bounds lie far apart. */
const GRID = 129;
const FAR_APART = 20;
/** Halvings that look for the end of the values between a point with a number and one without. */
const EDGE_STEPS = 40;
/** A residual below this share of the values around counts as none; a jump leaves far more. */
const RESIDUAL = 1e-9;

interface Point {
  readonly x: number;
  /** Result minus wanted; NaN where it has no number. */
  readonly f: number;
}
interface Root extends Point {
  readonly touching: boolean;
}

function gridOf({ low, high }: Moved, now: number): number[] {
  const points = Array.from({ length: GRID }, (_, i) => low + ((high - low) * i) / (GRID - 1));
  if (low > 0 && high / low > FAR_APART)
    for (let i = 1; i < GRID - 1; i++) points.push(low * (high / low) ** (i / (GRID - 1)));
  points[GRID - 1] = high;
  if (now > low && now < high) points.push(now);
  return [...new Set(points)].sort((a, b) => a - b);
}

/** The curve of the result over the given. */
class Curve {
  readonly plan: Plan;
  readonly wanted: number;

  constructor(book: StudyBook, given: Moved, result: CellAddress, wanted: number) {
    this.plan = new Plan(book, [given.state], [book.state(result)]);
    this.wanted = wanted;
  }

  *points(xs: readonly number[]): Generator<number, Point[]> {
    const [values = new Float64Array()] = yield* this.plan.numbers([Float64Array.from(xs)], xs.length);
    return xs.map((x, index) => ({ x, f: (values[index] ?? NaN) - this.wanted }));
  }

  /** One point at once. */
  readonly at = (x: number): number => {
    const work = this.points([x]);
    for (;;) {
      const { done, value } = work.next();
      if (done) return value[0]?.f ?? NaN;
    }
  };

  /** The grid with the last points before and after a gap without numbers, so that nothing at a gap's edge is missed. */
  *withEdges(grid: readonly Point[]): Generator<number, Point[]> {
    let gaps = grid.flatMap((point, index) => {
      const next = grid[index + 1];
      if (!next || Number.isNaN(point.f) === Number.isNaN(next.f)) return [];
      return [
        Number.isNaN(point.f) ? { inside: next, outside: point.x } : { inside: point, outside: next.x },
      ];
    });
    for (let step = 0; step < EDGE_STEPS && gaps.length > 0; step++) {
      const halves = gaps.map(({ inside, outside }) => (inside.x + outside) / 2);
      const middles = yield* within(this.points(halves), step / EDGE_STEPS, (step + 1) / EDGE_STEPS);
      gaps = gaps.map(({ inside, outside }, index) => {
        const middle = middles[index] as Point;
        return Number.isNaN(middle.f) ? { inside, outside: middle.x } : { inside: middle, outside };
      });
    }
    const edges = gaps.map(({ inside }) => inside);
    const all = new Map([...grid, ...edges].map((point) => [point.x, point]));
    return [...all.values()].sort((a, b) => a.x - b.x);
  }

  /** What counts as no residual between two points. */
  room(a: Point, b: Point): number {
    return (
      RESIDUAL * Math.max(Math.abs(this.wanted), Math.min(Math.abs(a.f), Math.abs(b.f)) || Math.abs(a.f))
    );
  }

  /** The passage through zero between two points of different sign; undefined for a jump. */
  crossing(a: Point, b: Point): Root | undefined {
    const x = findRoot(this.at, a.x, b.x);
    if (x === undefined) return undefined;
    const f = this.at(x);
    return Math.abs(f) <= this.room(a, b) ? { x, f, touching: false } : undefined;
  }

  /** The point between two others at which the curve is nearest to zero from its side. */
  lowest(a: Point, middle: Point, b: Point): Point | undefined {
    const side = Math.sign(middle.f);
    const found = findMinimum((x) => side * this.at(x), a.x, b.x);
    if (!found || found.value > side * middle.f) return middle;
    return { x: found.x, f: side * found.value };
  }
}

function* rootsOf(
  curve: Curve,
  points: readonly Point[],
): Generator<number, { roots: Root[]; nearest: Point[] }> {
  const roots: Root[] = [];
  const nearest: Point[] = [];
  for (const [index, point] of points.entries()) {
    const [before, next] = [points[index - 1], points[index + 1]];
    if (Number.isNaN(point.f)) continue;
    if (point.f === 0) {
      // Of a whole stretch at the wanted value the first point stands for all.
      if (before?.f !== 0) roots.push({ ...point, touching: false });
      continue;
    }
    if (next && next.f !== 0 && point.f < 0 !== next.f < 0 && !Number.isNaN(next.f)) {
      const root = curve.crossing(point, next);
      if (root) roots.push(root);
      yield index / points.length;
    }
    const sameSide = (other: Point | undefined): other is Point =>
      other !== undefined &&
      Math.sign(other.f) === Math.sign(point.f) &&
      Math.abs(other.f) >= Math.abs(point.f);
    if (!sameSide(before) || !sameSide(next)) {
      nearest.push(point);
      continue;
    }
    if (Math.abs(before.f) === Math.abs(point.f) && Math.abs(next.f) === Math.abs(point.f)) continue;
    const lowest = curve.lowest(before, point, next);
    yield index / points.length;
    if (!lowest) continue;
    nearest.push(lowest);
    const room = RESIDUAL * Math.max(Math.abs(curve.wanted), Math.abs(before.f), Math.abs(next.f));
    if (Math.abs(lowest.f) <= room) roots.push({ ...lowest, touching: true });
    else if (Math.sign(lowest.f) !== Math.sign(point.f)) {
      for (const root of [curve.crossing(before, lowest), curve.crossing(lowest, next)])
        if (root) roots.push(root);
    }
  }
  return { roots: distinct(roots, points), nearest };
}

/** The same root found from two sides is one. */
function distinct(roots: readonly Root[], points: readonly Point[]): Root[] {
  const room = 1e-7 * ((points.at(-1)?.x ?? 0) - (points[0]?.x ?? 0));
  const sorted = roots.toSorted((a, b) => a.x - b.x);
  return sorted.filter((root, index) => {
    const before = sorted[index - 1];
    return !before || root.x - before.x > (root.touching || before.touching ? room : room * 1e-3);
  });
}

export function* solve(
  book: StudyBook,
  question: { readonly result: CellAddress; readonly wanted: TypedQuantity; readonly given: MovedGiven },
): Generator<number, Extract<StudyAnswer, { type: 'solve' }>> {
  const result = book.result(question.result);
  const wanted = book.quantity(question.wanted, result, 'The wanted value');
  const between = movedGiven(book, question.given);
  const isWhole = (yield* within(wholeGivens(book, [between], [result]), 0, 0)).has(between.state);
  const given = isWhole ? wholeMoved(book, between) : between;
  const curve = new Curve(book, given, question.result, wanted);
  let points: Point[];
  let roots: Root[];
  let nearest: Point[];
  if (isWhole) {
    if (given.high - given.low > MOST_WHOLE)
      throw new Refused(
        `${book.name(given.state)}: more than ${MOST_WHOLE} whole numbers lie between the bounds.`,
        given.cell,
      );
    const numbers = Array.from({ length: given.high - given.low + 1 }, (_, i) => given.low + i);
    points = yield* within(curve.points(numbers), 0, 1);
    roots = points
      .filter(({ f }) => Math.abs(f) <= RESIDUAL * Math.abs(wanted))
      .map((point) => ({ ...point, touching: false }));
    nearest = points;
  } else {
    points = yield* within(curve.points(gridOf(given, given.value)), 0, 0.4);
    const edged = yield* within(curve.withEdges(points), 0.4, 0.6);
    ({ roots, nearest } = yield* within(rootsOf(curve, edged), 0.6, 1));
  }
  const failed = points.filter(({ f }) => Number.isNaN(f));
  const answer = ({ x, f }: Point, touching = false): SolveAnswer => ({
    given: foundGiven(book, given, x),
    result: f + wanted,
    ...(touching && { touching }),
  });
  const best = [...nearest, ...points]
    .filter(({ f }) => !Number.isNaN(f))
    .reduce<Point | undefined>(
      (least, point) => (least && Math.abs(least.f) <= Math.abs(point.f) ? least : point),
      undefined,
    );
  const [firstFailed] = failed;
  const words = firstFailed && book.failureWords([[given.state, firstFailed.x]], result);
  return {
    type: 'solve',
    outcome: roots.length === 0 ? 'notReached' : roots.length === 1 ? 'reached' : 'several',
    answers: roots.map((root) => answer(root, root.touching)),
    ...(roots.length === 0 && best && { nearest: answer(best) }),
    result: book.described(result),
    wanted,
    points: points.length,
    failures: failed.length,
    ...(words !== undefined && { failureWords: words }),
  };
}
