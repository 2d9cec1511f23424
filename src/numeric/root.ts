/** Root finding in a bracket by Brent's method: bisection's safety, secant's speed. */

export interface RootOptions {
  /** Absolute tolerance on the root; default 0 leaves the relative one alone. */
  readonly absolute?: number;
  /** Relative tolerance on the root; default 1e-14. */
  readonly relative?: number;
  /** Default 200. */
  readonly iterations?: number;
}

/**
 * The root of `f` between `a` and `b`; undefined if f(a) and f(b) have the same sign, or a value is not finite.
 * R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 4 (from memory).
 */
export function findRoot(
  f: (x: number) => number,
  a: number,
  b: number,
  options: RootOptions = {},
): number | undefined {
  const { absolute = 0, relative = 1e-14, iterations = 200 } = options;
  let previous = a;
  let best = b;
  let fPrevious = f(previous);
  let fBest = f(best);
  if (!Number.isFinite(fPrevious) || !Number.isFinite(fBest)) return undefined;
  if (fPrevious === 0) return previous;
  if (fBest === 0) return best;
  if (fPrevious > 0 === fBest > 0) return undefined;
  let opposite = previous;
  let fOpposite = fPrevious;
  let step = best - previous;
  let lastStep = step;
  for (let i = 0; i < iterations; i += 1) {
    if (Math.abs(fOpposite) < Math.abs(fBest)) {
      [previous, best, opposite] = [best, opposite, best];
      [fPrevious, fBest, fOpposite] = [fBest, fOpposite, fBest];
    }
    const tolerance = 2 * Number.EPSILON * Math.abs(best) + (absolute + relative * Math.abs(best)) / 2;
    const half = (opposite - best) / 2;
    if (Math.abs(half) <= tolerance || fBest === 0) return best;
    if (Math.abs(lastStep) < tolerance || Math.abs(fPrevious) <= Math.abs(fBest)) {
      step = half;
      lastStep = half;
    } else {
      const s = fBest / fPrevious;
      let p: number;
      let q: number;
      if (previous === opposite) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const t = fPrevious / fOpposite;
        const r = fBest / fOpposite;
        p = s * (2 * half * t * (t - r) - (best - previous) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      if (2 * p < Math.min(3 * half * q - Math.abs(tolerance * q), Math.abs(lastStep * q))) {
        lastStep = step;
        step = p / q;
      } else {
        step = half;
        lastStep = half;
      }
    }
    previous = best;
    fPrevious = fBest;
    best += Math.abs(step) > tolerance ? step : Math.sign(half) * tolerance;
    fBest = f(best);
    if (!Number.isFinite(fBest)) return undefined;
    if (fBest > 0 === fOpposite > 0) {
      opposite = previous;
      fOpposite = fPrevious;
      step = best - previous;
      lastStep = step;
    }
  }
  return best;
}
