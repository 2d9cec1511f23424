/** Maximum likelihood of a Weibull distribution for complete lives. */

import type { Parameter } from '../definition/index.ts';
import { failure, type Failure } from '../expression/index.ts';
import { findRoot, mean, sum } from '../numeric/index.ts';
import { parameter } from './parameter.ts';

export const WEIBULL_LIVES: Parameter = parameter('tool_life', {
  name: 'lives',
  symbol: 'lives',
  list: true,
  meaning: 'lives of the edges, all run to the wear limit',
});

export const FEW_LIVES = 'fewer than 10 lives: the shape reads high (5 edges: 1.43 times on average)';

/** Shape, and scale in the unit of the lives. Lives are divided by the largest first, else powers overflow. */
export function weibullFit(
  lives: readonly number[],
): { readonly shape: number; readonly scale: number } | Failure {
  if (lives.length < 3) return failure('#NUM!', 'a Weibull fit needs at least 3 lives');
  const largest = Math.max(...lives);
  const logs = lives.map((life) => Math.log(life / largest));
  const centre = mean(logs);
  const slope = (shape: number): number => {
    const weights = logs.map((log) => Math.exp(shape * log));
    return sum(weights.map((weight, i) => weight * (logs[i] ?? 0))) / sum(weights) - 1 / shape - centre;
  };
  let high = 1;
  while (slope(high) < 0 && high < 1e9) high *= 2;
  const shape = high < 1e9 ? findRoot(slope, 1e-6, high) : undefined;
  if (shape === undefined) return failure('#NUM!', 'the lives are all equal: there is no shape');
  return { shape, scale: largest * mean(logs.map((log) => Math.exp(shape * log))) ** (1 / shape) };
}
