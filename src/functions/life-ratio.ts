/** Lives of two tools compared on logarithms: the interval of Welch. */

import type { NoteCaution, Parameter } from '../definition/index.ts';
import { failure, type Failure } from '../expression/index.ts';
import { mean } from '../numeric/index.ts';
import { parameter } from './parameter.ts';
import { welchMargin } from './welch.ts';

export const LIVES_A: Parameter = parameter('tool_life', {
  name: 'lives_a',
  symbol: 'T_a',
  list: true,
  meaning: 'lives of tool A',
});

export const LIVES_B: Parameter = parameter('tool_life', {
  name: 'lives_b',
  symbol: 'T_b',
  list: true,
  meaning: 'lives of tool B',
});

/** Low and high end of the ratio of lives, A over B; both ends two-sided at this confidence. */
export function ratioInterval(
  a: readonly number[],
  b: readonly number[],
  confidence: number,
  caution: NoteCaution,
): { readonly low: number; readonly high: number } | Failure {
  const [logsA, logsB] = [a.map(Math.log), b.map(Math.log)];
  const margin = welchMargin(logsA, logsB, confidence, 'lives');
  if (typeof margin !== 'number') return margin;
  const centre = mean(logsA) - mean(logsB);
  if (Math.abs(centre) + margin > 300) return failure('#NUM!', 'the lives scatter beyond any number');
  if (Math.abs(centre) <= margin) caution('the interval holds 1: no difference is proven');
  if (a.length < 3 || b.length < 3) caution('fewer than 3 lives of a tool: the interval is very wide');
  return { low: Math.exp(centre - margin), high: Math.exp(centre + margin) };
}
