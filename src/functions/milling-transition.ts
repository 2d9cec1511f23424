/**
 * Stability of milling with the forces as they change over the turn: the delay equation is cut into steps of a tooth
 * period, the modes are carried over a step exactly, force and delayed position run straight between its ends (SD).
 * Time is counted in tooth periods, so that no units are left.
 */

import { directionFactors, type MillingSystem, type Mode } from './milling-stability.ts';

/** One mode over one step: position and speed over frequency, for positions, speeds and forces at its ends. */
interface Carried {
  readonly own: readonly [number, number, number, number];
  readonly force: readonly [q0: number, q1: number, v0: number, v1: number];
  /** Tangential coefficient over twice the stiffness, in 1/m of depth. */
  readonly gain: number;
}

function carried({ frequency, damping, stiffness }: Mode, step: number, tangential: number): Carried {
  const turn = 2 * Math.PI * frequency * step;
  const root = Math.sqrt(1 - damping ** 2);
  const fall = Math.exp(-damping * turn);
  const [cos, sin] = [fall * Math.cos(turn * root), (fall * Math.sin(turn * root)) / root];
  const own = [cos + damping * sin, sin, -sin, cos - damping * sin] as const;
  const lag = (2 * damping) / turn;
  return {
    own,
    force: [
      -own[0] * (1 + lag) + own[1] / turn + lag,
      own[0] * lag - own[1] / turn + 1 - lag,
      -own[2] * (1 + lag) + (own[3] - 1) / turn,
      own[2] * lag - (own[3] - 1) / turn,
    ],
    gain: tangential / (2 * stiffness),
  };
}

type Matrix2 = readonly [number, number, number, number];

/** Mean direction factors of all teeth over each step. */
function stepFactors({ teeth, from, to, radialRatio }: MillingSystem, steps: number): Matrix2[] {
  const width = (2 * Math.PI) / (teeth * steps);
  return Array.from({ length: steps }, (_, i) => {
    const total = [0, 0, 0, 0];
    for (let tooth = 0; tooth < teeth; tooth += 1) {
      const start = (2 * Math.PI * tooth) / teeth + i * width;
      const [a, b] = [Math.max(from, start), Math.min(to, start + width)];
      if (b > a)
        for (const [k, factor] of directionFactors(a, b, radialRatio).entries())
          total[k] = (total[k] ?? 0) + factor / width;
    }
    return [total[0] ?? 0, total[1] ?? 0, total[2] ?? 0, total[3] ?? 0];
  });
}

const BASIS = 40;
const SQUARINGS = 16;

/** Largest eigenvalue in size, by powers of the matrix scaled to length 1. */
function spectralRadius(matrix: readonly (readonly number[])[]): number {
  const size = matrix.length;
  let power = matrix.map((row) => Float64Array.from(row));
  let logarithm = 0;
  for (let k = 0; ; k += 1) {
    const length = Math.hypot(...power.map((row) => Math.hypot(...row)));
    if (!(length > 0)) return 0;
    logarithm += Math.log(length) / 2 ** k;
    if (k === SQUARINGS) return Math.exp(logarithm);
    for (const row of power) for (let j = 0; j < size; j += 1) row[j] = (row[j] ?? 0) / length;
    const squared = power.map(() => new Float64Array(size));
    for (const [i, row] of power.entries())
      for (let l = 0; l < size; l += 1) {
        const factor = row[l] ?? 0;
        const [from, into] = [power[l], squared[i]];
        if (factor === 0 || !from || !into) continue;
        for (let j = 0; j < size; j += 1) into[j] = (into[j] ?? 0) + factor * (from[j] ?? 0);
      }
    power = squared;
  }
}

/** Growth over one tooth period as a function of the axial depth in m: above 1 the cut chatters. */
export function growthOf(system: MillingSystem, speed: number, steps: number): (depth: number) => number {
  const step = 1 / (speed * system.teeth * steps);
  const all = [...system.x, ...system.y].map((mode) => carried(mode, step, system.tangential));
  const alongX = system.x.length;
  const count = all.length;
  const factors = stepFactors(system, steps);
  const size = 2 * count + 2 * steps;

  /** One tooth period: modes (position, speed), then the positions x, y of the period before. */
  function period(start: Float64Array, depth: number): Float64Array {
    const modes = start.slice(0, 2 * count);
    const end = new Float64Array(size);
    const sum = (first: number, last: number): number => {
      let total = 0;
      for (let j = first; j < last; j += 1) total += modes[2 * j] ?? 0;
      return total;
    };
    const first: readonly [number, number] = [sum(0, alongX), sum(alongX, count)];
    const before = (i: number): readonly [number, number] =>
      i < steps ? [start[2 * count + 2 * i] ?? 0, start[2 * count + 2 * i + 1] ?? 0] : first;
    let [x, y] = first;
    let [sx, sy] = [0, 0];
    for (const [j, { force, gain }] of all.entries())
      if (j < alongX) sx += force[1] * gain * depth;
      else sy += force[1] * gain * depth;
    for (const [i, [axx, axy, ayx, ayy]] of factors.entries()) {
      end[2 * count + 2 * i] = x;
      end[2 * count + 2 * i + 1] = y;
      const [d0, d1] = [before(i), before(i + 1)];
      const px = axx * (x - d0[0]) + axy * (y - d0[1]);
      const py = ayx * (x - d0[0]) + ayy * (y - d0[1]);
      let [freeX, freeY] = [0, 0];
      for (const [j, { own, force, gain }] of all.entries()) {
        const [q, v] = [modes[2 * j] ?? 0, modes[2 * j + 1] ?? 0];
        const load = (j < alongX ? px : py) * gain * depth;
        const free = own[0] * q + own[1] * v + force[0] * load;
        modes[2 * j] = free;
        modes[2 * j + 1] = own[2] * q + own[3] * v + force[2] * load;
        if (j < alongX) freeX += free;
        else freeY += free;
      }
      // (1 - S A) r = free - S A d, the end force depending on the end position.
      const [m11, m12, m21, m22] = [1 - sx * axx, -sx * axy, -sy * ayx, 1 - sy * ayy];
      const rightX = freeX - sx * (axx * d1[0] + axy * d1[1]);
      const rightY = freeY - sy * (ayx * d1[0] + ayy * d1[1]);
      const determinant = m11 * m22 - m12 * m21;
      x = (rightX * m22 - rightY * m12) / determinant;
      y = (rightY * m11 - rightX * m21) / determinant;
      const endX = axx * (x - d1[0]) + axy * (y - d1[1]);
      const endY = ayx * (x - d1[0]) + ayy * (y - d1[1]);
      for (const [j, { force, gain }] of all.entries()) {
        const load = (j < alongX ? endX : endY) * gain * depth;
        modes[2 * j] = (modes[2 * j] ?? 0) + force[1] * load;
        modes[2 * j + 1] = (modes[2 * j + 1] ?? 0) + force[3] * load;
      }
    }
    end.set(modes);
    return end;
  }

  /** Arnoldi: the large eigenvalues of the period in a small space. */
  return (depth) => {
    const most = Math.min(BASIS, size);
    const basis: Float64Array[] = [];
    const small = Array.from({ length: most }, () => Array.from({ length: most }, () => 0));
    let next = Float64Array.from({ length: size }, (_, i) => Math.cos(1 + 7 * i + 3 * i * i));
    let length = Math.hypot(...next);
    for (let k = 0; k < most; k += 1) {
      const unit = next.map((value) => value / length);
      basis.push(unit);
      next = Float64Array.from(period(unit, depth));
      for (let pass = 0; pass < 2; pass += 1)
        for (const [j, other] of basis.entries()) {
          let along = 0;
          for (let i = 0; i < size; i += 1) along += (other[i] ?? 0) * (next[i] ?? 0);
          for (let i = 0; i < size; i += 1) next[i] = (next[i] ?? 0) - along * (other[i] ?? 0);
          const row = small[j];
          if (row) row[k] = (row[k] ?? 0) + along;
        }
      length = Math.hypot(...next);
      const row = small[k + 1];
      if (row) row[k] = length;
      if (!(length > 1e-13)) return spectralRadius(small.slice(0, k + 1).map((each) => each.slice(0, k + 1)));
    }
    return spectralRadius(small);
  };
}

const SCAN = 1.25;
const REACH = 60;
const CLOSE = 5e-4;

/** The first depth in m at which the cut chatters, from below; undefined where none is found. */
export function firstUnstableDepth(
  system: MillingSystem,
  speed: number,
  steps: number,
  near?: number,
): number | undefined {
  const growth = growthOf(system, speed, steps);
  const softest = Math.min(
    ...[...system.x, ...system.y].map(({ stiffness, damping }) => stiffness * damping),
  );
  let low = near === undefined ? (0.05 * softest) / (system.tangential * system.teeth) : near / 2;
  for (let i = 0; i < 20 && growth(low) >= 1; i += 1) low /= 4;
  let high = low * SCAN;
  for (let i = 0; growth(high) < 1; i += 1) {
    if (i === REACH) return undefined;
    [low, high] = [high, high * SCAN];
  }
  while (high - low > CLOSE * high) {
    const middle = (low + high) / 2;
    if (growth(middle) < 1) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
