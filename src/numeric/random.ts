/** Repeatable draws: xoshiro128** 1.1 (D. Blackman and S. Vigna, prng.di.unimi.it), its state filled from a seed by splitmix32. */

import { Xoshiro } from './xoshiro.ts';

export { Xoshiro };

/** A source of draws; the same seed and stream give the same draws. Streams of one seed are independent of each other. */
export function randomStream(seed: number, stream = 0): Xoshiro {
  return Xoshiro.seeded(Math.imul(stream + 1, 0x9e3779b9) ^ Math.trunc(seed));
}

/** Standard normal draws by G. Marsaglia's polar method, two at a time. */
export function normalDraws(random: Xoshiro, out: Float64Array): Float64Array {
  for (let i = 0; i < out.length;) {
    const u = 2 * random.next() - 1;
    const v = 2 * random.next() - 1;
    const s = u * u + v * v;
    if (s >= 1 || s === 0) continue;
    const factor = Math.sqrt((-2 * Math.log(s)) / s);
    out[i++] = u * factor;
    if (i < out.length) out[i++] = v * factor;
  }
  return out;
}

/** Draws of Student's t with `freedom` > 0 degrees: a normal draw over the root of a gamma draw (Marsaglia and Tsang, 2000). */
export function studentDraws(random: Xoshiro, freedom: number, out: Float64Array): Float64Array {
  normalDraws(random, out);
  const one = new Float64Array(2);
  for (let i = 0; i < out.length; i++) {
    const chiSquare = 2 * gammaDraw(random, freedom / 2, one);
    out[i] = (out[i] as number) / Math.sqrt(chiSquare / freedom);
  }
  return out;
}

function gammaDraw(random: Xoshiro, shape: number, scratch: Float64Array): number {
  if (shape < 1) return gammaDraw(random, shape + 1, scratch) * (1 - random.next()) ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const [x = 0] = normalDraws(random, scratch);
    const v = (1 + c * x) ** 3;
    if (v <= 0) continue;
    if (Math.log(1 - random.next()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}
