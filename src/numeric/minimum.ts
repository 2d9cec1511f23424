/** The lowest point of a function in an interval by Brent's method: parabolas where they help, golden sections where not. */

const GOLDEN = (3 - Math.sqrt(5)) / 2;

/**
 * A place in [a, b] where `f` has a local minimum; undefined if a value is not finite. The place is good to about the
 * square root of the precision of `f` (relative default 1e-9). R. P. Brent, 1973, chapter 5 (from memory).
 */
export function findMinimum(
  f: (x: number) => number,
  a: number,
  b: number,
  { relative = 1e-9, iterations = 200 } = {},
): { readonly x: number; readonly value: number } | undefined {
  let [low, high] = a < b ? [a, b] : [b, a];
  let best = low + GOLDEN * (high - low);
  let [second, third] = [best, best];
  let fBest = f(best);
  let [fSecond, fThird] = [fBest, fBest];
  let step = 0;
  let lastStep = 0;
  for (let i = 0; i < iterations; i += 1) {
    if (!Number.isFinite(fBest)) return undefined;
    const middle = (low + high) / 2;
    const tolerance = relative * Math.abs(best) + 1e-300;
    if (Math.abs(best - middle) <= 2 * tolerance - (high - low) / 2) break;
    let golden = true;
    if (Math.abs(lastStep) > tolerance) {
      const r = (best - second) * (fBest - fThird);
      const q = (best - third) * (fBest - fSecond);
      const over = 2 * (q - r);
      const p = Math.sign(over) * -((best - third) * q - (best - second) * r);
      const under = Math.abs(over);
      const before = lastStep;
      lastStep = step;
      if (
        Math.abs(p) < Math.abs((under * before) / 2) &&
        p > under * (low - best) &&
        p < under * (high - best)
      ) {
        step = p / under;
        golden = false;
        const x = best + step;
        if (x - low < 2 * tolerance || high - x < 2 * tolerance)
          step = best < middle ? tolerance : -tolerance;
      }
    }
    if (golden) {
      lastStep = best < middle ? high - best : low - best;
      step = GOLDEN * lastStep;
    }
    const x = best + (Math.abs(step) >= tolerance ? step : Math.sign(step) * tolerance);
    const value = f(x);
    if (!Number.isFinite(value)) return undefined;
    if (value <= fBest) {
      if (x >= best) low = best;
      else high = best;
      [third, second, best] = [second, best, x];
      [fThird, fSecond, fBest] = [fSecond, fBest, value];
    } else {
      if (x < best) low = x;
      else high = x;
      if (value <= fSecond || second === best) {
        [third, second] = [second, x];
        [fThird, fSecond] = [fSecond, value];
      } else if (value <= fThird || third === best || third === second) {
        third = x;
        fThird = value;
      }
    }
  }
  return { x: best, value: fBest };
}
