/** Maximum likelihood of a Weibull distribution, lives that had not ended included. */

import { normal } from './distributions.ts';
import { findRoot } from './root.ts';
import { mean, sum } from './statistics.ts';

export interface WeibullFit {
  readonly shape: number;
  /** In the unit of the lives. */
  readonly scale: number;
  /** Covariance of ln scale and 1/shape, from the observed information (Meeker and Escobar 1998, ch. 8). */
  readonly covariance: { readonly logScale: number; readonly inverseShape: number; readonly both: number };
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
  const ended = lives.length;
  const logScale = Math.log(sum(logs.map((log) => Math.exp(shape * log))) / ended) / shape;
  const z = logs.map((log) => shape * (log - logScale));
  const first = sum(z.map((each) => each * Math.exp(each)));
  const second = ended + sum(z.map((each) => each * each * Math.exp(each)));
  const determinant = (ended * second - first * first) * shape * shape;
  return {
    shape,
    scale: largest * Math.exp(logScale),
    covariance: {
      logScale: second / determinant,
      inverseShape: ended / determinant,
      both: -first / determinant,
    },
  };
}

/** Life by which a share of the edges has ended, with its two-sided interval by the normal approximation of its logarithm. */
export function weibullLife(
  { shape, scale, covariance }: WeibullFit,
  share: number,
  confidence: number,
): { readonly life: number; readonly low: number; readonly high: number } {
  const z = Math.log(-Math.log1p(-share));
  const life = scale * Math.exp(z / shape);
  const variance = covariance.logScale + 2 * z * covariance.both + z * z * covariance.inverseShape;
  const room = normal().quantile((1 + confidence) / 2) * Math.sqrt(variance);
  return { life, low: life * Math.exp(-room), high: life * Math.exp(room) };
}
