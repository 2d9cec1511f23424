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
  let power = Float64Array.from(matrix.flat());
  let squared = new Float64Array(size * size);
  let logarithm = 0;
  for (let k = 0; ; k += 1) {
    const length = lengthOf(power);
    if (!(length > 0)) return 0;
    logarithm += Math.log(length) / 2 ** k;
    if (k === SQUARINGS) return Math.exp(logarithm);
    for (let i = 0; i < power.length; i += 1) power[i] = power[i]! / length;
    squared.fill(0);
    for (let i = 0; i < size; i += 1)
      for (let l = 0; l < size; l += 1) {
        const factor = power[i * size + l]!;
        if (factor === 0) continue;
        for (let j = 0; j < size; j += 1)
          squared[i * size + j] = squared[i * size + j]! + factor * power[l * size + j]!;
      }
    [power, squared] = [squared, power];
  }
}

/** Growth over one tooth period as a function of the axial depth in m: above 1 the cut chatters. */
export function growthOf(system: MillingSystem, speed: number, steps: number): (depth: number) => number {
  const step = 1 / (speed * system.teeth * steps);
  const all = [...system.x, ...system.y].map((mode) => carried(mode, step, system.tangential));
  const alongX = system.x.length;
  const count = all.length;
  /** Four numbers a mode each. */
  const own = Float64Array.from(all.flatMap((mode) => [...mode.own]));
  const force = Float64Array.from(all.flatMap((mode) => [...mode.force]));
  const gain = Float64Array.from(all, (mode) => mode.gain);
  const factors = Float64Array.from(stepFactors(system, steps).flat());
  const past = 2 * count;
  const size = past + 2 * steps;

  /** One tooth period: modes (position, speed), then the positions x, y of the period before. */
  function period(start: Float64Array, depth: number, end: Float64Array): void {
    for (let j = 0; j < past; j += 1) end[j] = start[j]!;
    let [x, y, sx, sy] = [0, 0, 0, 0];
    for (let j = 0; j < count; j += 1) {
      const give = force[4 * j + 1]! * gain[j]! * depth;
      if (j < alongX) {
        x += start[2 * j]!;
        sx += give;
      } else {
        y += start[2 * j]!;
        sy += give;
      }
    }
    const [firstX, firstY] = [x, y];
    for (let i = 0; i < steps; i += 1) {
      const axx = factors[4 * i]!;
      const axy = factors[4 * i + 1]!;
      const ayx = factors[4 * i + 2]!;
      const ayy = factors[4 * i + 3]!;
      const here = past + 2 * i;
      const d0x = start[here]!;
      const d0y = start[here + 1]!;
      const d1x = i + 1 < steps ? start[here + 2]! : firstX;
      const d1y = i + 1 < steps ? start[here + 3]! : firstY;
      end[here] = x;
      end[here + 1] = y;
      const px = axx * (x - d0x) + axy * (y - d0y);
      const py = ayx * (x - d0x) + ayy * (y - d0y);
      let freeX = 0;
      let freeY = 0;
      for (let j = 0; j < count; j += 1) {
        const q = end[2 * j]!;
        const v = end[2 * j + 1]!;
        const load = (j < alongX ? px : py) * gain[j]! * depth;
        const free = own[4 * j]! * q + own[4 * j + 1]! * v + force[4 * j]! * load;
        end[2 * j] = free;
        end[2 * j + 1] = own[4 * j + 2]! * q + own[4 * j + 3]! * v + force[4 * j + 2]! * load;
        if (j < alongX) freeX += free;
        else freeY += free;
      }
      // (1 - S A) r = free - S A d, the end force depending on the end position.
      const m11 = 1 - sx * axx;
      const m12 = -sx * axy;
      const m21 = -sy * ayx;
      const m22 = 1 - sy * ayy;
      const rightX = freeX - sx * (axx * d1x + axy * d1y);
      const rightY = freeY - sy * (ayx * d1x + ayy * d1y);
      const determinant = m11 * m22 - m12 * m21;
      x = (rightX * m22 - rightY * m12) / determinant;
      y = (rightY * m11 - rightX * m21) / determinant;
      const endX = axx * (x - d1x) + axy * (y - d1y);
      const endY = ayx * (x - d1x) + ayy * (y - d1y);
      for (let j = 0; j < count; j += 1) {
        const load = (j < alongX ? endX : endY) * gain[j]! * depth;
        end[2 * j] = end[2 * j]! + force[4 * j + 1]! * load;
        end[2 * j + 1] = end[2 * j + 1]! + force[4 * j + 3]! * load;
      }
    }
  }

  /** Arnoldi: the large eigenvalues of the period in a small space. */
  return (depth) => {
    const most = Math.min(BASIS, size);
    const basis: Float64Array[] = [];
    const small = Array.from({ length: most }, () => Array.from({ length: most }, () => 0));
    const next = Float64Array.from({ length: size }, (_, i) => Math.cos(1 + 7 * i + 3 * i * i));
    let length = lengthOf(next);
    for (let k = 0; k < most; k += 1) {
      const unit = next.map((value) => value / length);
      basis.push(unit);
      period(unit, depth, next);
      for (let pass = 0; pass < 2; pass += 1)
        for (let j = 0; j <= k; j += 1) {
          const other = basis[j]!;
          let along = 0;
          for (let i = 0; i < size; i += 1) along += other[i]! * next[i]!;
          for (let i = 0; i < size; i += 1) next[i] = next[i]! - along * other[i]!;
          small[j]![k] = small[j]![k]! + along;
        }
      length = lengthOf(next);
      const row = small[k + 1];
      if (row) row[k] = length;
      if (!(length > 1e-13)) return spectralRadius(small.slice(0, k + 1).map((each) => each.slice(0, k + 1)));
    }
    return spectralRadius(small);
  };
}

function lengthOf(vector: Float64Array): number {
  let total = 0;
  for (let i = 0; i < vector.length; i += 1) total += vector[i]! * vector[i]!;
  return Math.sqrt(total);
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
