/** Maximum likelihood of a Weibull distribution for complete lives. */

import type { Parameter } from '../definition/index.ts';
import { failure, type Failure } from '../expression/index.ts';
import { fitWeibull } from '../numeric/index.ts';
import { parameter } from './parameter.ts';

export const WEIBULL_LIVES: Parameter = parameter('tool_life', {
  name: 'lives',
  symbol: 'lives',
  list: true,
  meaning: 'lives of the edges, all run to the wear limit',
});

export const FEW_LIVES = 'fewer than 10 lives: the shape reads high (5 edges: 1.43 times on average)';

/** Shape, and scale in the unit of the lives. */
export function weibullFit(
  lives: readonly number[],
): { readonly shape: number; readonly scale: number } | Failure {
  if (lives.length < 3) return failure('#NUM!', 'a Weibull fit needs at least 3 lives');
  return fitWeibull(lives) ?? failure('#NUM!', 'the lives are all equal: there is no shape');
}
