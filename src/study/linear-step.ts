/** The best step in a small box where objective and limits are taken as straight: a linear program in few dimensions, by its corners. */

export interface LinearProblem {
  /** Slopes of the objective and of each limit. */
  readonly objective: readonly number[];
  readonly limits: readonly (readonly number[])[];
  /** Values of the limits here; above 0 is passed. */
  readonly at: readonly number[];
  readonly box: readonly { readonly low: number; readonly high: number }[];
}

interface Plane {
  readonly normal: readonly number[];
  readonly offset: number;
}

/** The point where so many planes meet as there are dimensions; undefined where they do not meet in one. */
function meeting(planes: readonly Plane[]): number[] | undefined {
  const size = planes.length;
  const rows = planes.map(({ normal, offset }) => [...normal, offset]);
  for (let k = 0; k < size; k++) {
    let pivot = k;
    for (let i = k + 1; i < size; i++)
      if (Math.abs(rows[i]?.[k] ?? 0) > Math.abs(rows[pivot]?.[k] ?? 0)) pivot = i;
    const row = rows[pivot] as number[];
    rows[pivot] = rows[k] as number[];
    rows[k] = row;
    const divisor = row[k] ?? 0;
    if (Math.abs(divisor) < 1e-12) return undefined;
    for (let j = k; j <= size; j++) row[j] = (row[j] ?? 0) / divisor;
    for (let i = 0; i < size; i++) {
      if (i === k) continue;
      const other = rows[i] as number[];
      const factor = other[k] ?? 0;
      if (factor !== 0) for (let j = k; j <= size; j++) other[j] = (other[j] ?? 0) - factor * (row[j] ?? 0);
    }
  }
  return rows.map((row) => row[size] ?? 0);
}

function* choices<T>(from: readonly T[], count: number, begin = 0): Generator<T[]> {
  if (count === 0) {
    yield [];
    return;
  }
  for (let i = begin; i <= from.length - count; i++)
    for (const rest of choices(from, count - 1, i + 1)) yield [from[i] as T, ...rest];
}

const product = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, k) => sum + value * (b[k] ?? 0), 0);

/** The most that a limit can grow within the box: one with more room than that does not matter. */
const reachOf = (normal: readonly number[], box: LinearProblem['box']): number =>
  normal.reduce((sum, slope, k) => {
    const { low = 0, high = 0 } = box[k] ?? {};
    return sum + Math.max(slope * low, slope * high);
  }, 0);

/** The limits that can matter within the box, the nearest ones where there are many. */
const MOST_LIMITS = 10;

const PENALTY = 1000;

/**
 * The step in the box with the smallest objective plus penalties. The sum is convex and straight between the planes of
 * limits and box, so one of the points where these planes meet is the best.
 */
export function linearStep({ objective, limits, at, box }: LinearProblem): readonly number[] {
  const dimensions = objective.length;
  const unit = (k: number): number[] => objective.map((_, j) => (j === k ? 1 : 0));
  const sides = box.flatMap(({ low, high }, k): Plane[] => [
    { normal: unit(k), offset: low },
    { normal: unit(k), offset: high },
  ]);
  const size = (normal: readonly number[]): number => Math.max(...normal.map(Math.abs));
  const passing = limits
    .map((normal, j) => ({ scale: size(normal), normal, value: at[j] ?? 0 }))
    .filter(
      ({ scale, normal, value }) => scale > 0 && Number.isFinite(scale) && -value <= reachOf(normal, box),
    )
    .toSorted((a, b) => Math.abs(a.value) / a.scale - Math.abs(b.value) / b.scale)
    .slice(0, MOST_LIMITS)
    .map(({ normal, value, scale }): Plane => ({
      normal: normal.map((each) => each / scale),
      offset: -value / scale,
    }));
  let best = objective.map(() => 0);
  const steepness = size(objective);
  // Both counted in lengths of the step, so that passing a limit always costs more than it brings.
  const cost = (step: readonly number[]): number =>
    (steepness > 0 ? product(objective, step) / steepness : 0) +
    PENALTY *
      passing.reduce((sum, { normal, offset }) => sum + Math.max(0, product(normal, step) - offset), 0);
  let least = cost(best);
  for (const planes of choices([...passing, ...sides], dimensions)) {
    const step = meeting(planes);
    if (!step) continue;
    const inside = step.every((value, k) => {
      const { low = 0, high = 0 } = box[k] ?? {};
      const room = 1e-9 * (high - low);
      return value >= low - room && value <= high + room;
    });
    if (!inside) continue;
    const now = cost(step);
    if (now < least) {
      least = now;
      best = step;
    }
  }
  return best;
}
