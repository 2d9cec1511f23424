/** Maximum likelihood of a Weibull distribution, lives that had not ended included. */

import { randomStream } from './random.ts';
import { findRoot } from './root.ts';
import { ascending, mean, quantile, sum } from './statistics.ts';

export interface WeibullFit {
  readonly shape: number;
  /** In the unit of the lives. */
  readonly scale: number;
}

/**
 * `lives` ended, `running` had not ended at these times; all positive. Undefined below 2 lives that ended, and where they
 * are all equal with nothing running longer: there is no shape. Times are divided by the largest first, else powers overflow.
 */
export function fitWeibull(
  lives: readonly number[],
  running: readonly number[] = [],
): WeibullFit | undefined {
  const all = [...lives, ...running];
  if (lives.length < 2 || all.some((life) => !(life > 0 && Number.isFinite(life)))) return undefined;
  const largest = all.reduce((most, life) => Math.max(most, life));
  const logs = all.map((life) => Math.log(life / largest));
  const centre = mean(logs.slice(0, lives.length));
  const slope = (shape: number): number => {
    const weights = logs.map((log) => Math.exp(shape * log));
    return sum(weights.map((weight, i) => weight * (logs[i] ?? 0))) / sum(weights) - 1 / shape - centre;
  };
  let high = 1;
  while (slope(high) < 0 && high < 1e9) high *= 2;
  const shape = high < 1e9 ? findRoot(slope, 1e-6, high) : undefined;
  if (shape === undefined) return undefined;
  const logScale = Math.log(sum(logs.map((log) => Math.exp(shape * log))) / lives.length) / shape;
  return { shape, scale: largest * Math.exp(logScale) };
}

/** Tries of which the spread of an estimate is taken. */
const TRIES = 3000;

/** Fits of lives drawn from the law with shape and scale 1, by how many ended and how many there were. */
const tried = new Map<string, readonly WeibullFit[]>();

function triedFits(ended: number, all: number): readonly WeibullFit[] {
  const key = `${ended} ${all}`;
  const known = tried.get(key);
  if (known) return known;
  const random = randomStream(all, ended);
  const draw = (): number => -Math.log(1 - random.next());
  const fits: WeibullFit[] = [];
  for (let k = 0; k < TRIES; k += 1) {
    const sorted = ascending(Array.from({ length: all }, draw));
    const stopped = sorted[ended - 1] ?? 1;
    const fit = fitWeibull(
      sorted.slice(0, ended),
      sorted.slice(ended).map(() => stopped),
    );
    if (fit) fits.push(fit);
  }
  tried.set(key, fits);
  return fits;
}

/**
 * Ends of the interval that holds (estimate - truth) of the logarithm of a life in multiples of 1/shape: this quantity
 * has one distribution for all Weibull laws (D. R. Thoman, L. J. Bain, C. E. Antle, Technometrics 11, 1969, from
 * memory), which is tried out here with draws that repeat. Exact where all have ended, or all others were stopped with
 * the last that ended; else nearly so.
 */
function spreadOf(ended: number, all: number, z: number, confidence: number): readonly [number, number] {
  const found = triedFits(ended, all).map(({ shape, scale }) => (Math.log(scale) - z) * shape + z);
  return [quantile(found, (1 - confidence) / 2), quantile(found, (1 + confidence) / 2)];
}

/** Life by which a share of the edges has ended, with its two-sided interval; `ended` of `all` lives were fitted. */
export function weibullLife(
  { shape, scale }: WeibullFit,
  share: number,
  confidence: number,
  { ended, all }: { readonly ended: number; readonly all: number },
): { readonly life: number; readonly low: number; readonly high: number } {
  const z = Math.log(-Math.log1p(-share));
  const life = scale * Math.exp(z / shape);
  const [from, to] = spreadOf(ended, all, z, confidence);
  return { life, low: life * Math.exp(-to / shape), high: life * Math.exp(-from / shape) };
}
