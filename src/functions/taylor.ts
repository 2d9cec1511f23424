/** Taylor's law vc T^n = C and the straight line of ln T over ln vc, shared by the functions that read it. */

import type { Condition, Constant, EquationStep, Parameter } from '../definition/index.ts';
import { parameter } from './parameter.ts';

export const ONE_MINUTE: Constant = { symbol: 'T_1', value: '1 min', meaning: 'the life to which C belongs' };
export const ONE_SPEED: Constant = { symbol: 'v_1', value: '1 m/min', meaning: 'unit of speed' };

/** Lives of a trial may be as long as one likes; the range only keeps the law finite. */
export const SPEEDS: Parameter = parameter('cutting_speed', {
  name: 'speeds',
  symbol: 'v',
  list: true,
  meaning: 'cutting speeds of the trials',
});

export const LIVES: Parameter = parameter('tool_life', {
  name: 'lives',
  symbol: 'lives',
  list: true,
  meaning: 'tool lives measured at them',
});

/** Speed is set and life is measured: ln T on ln vc. */
export const TAYLOR_STEPS: readonly EquationStep[] = [
  { symbol: 'x_m', meaning: 'mean of ln(vc / 1 m/min)', kind: 'number', equation: 'AVERAGE(LN(v / v_1))' },
  { symbol: 'y_m', meaning: 'mean of ln(T / 1 min)', kind: 'number', equation: 'AVERAGE(LN(lives / T_1))' },
  {
    symbol: 'slope',
    meaning: 'slope of ln T over ln vc',
    kind: 'number',
    equation: 'SUM((LN(v / v_1) - x_m) * (LN(lives / T_1) - y_m)) / SUM((LN(v / v_1) - x_m)^2)',
  },
];

export const TAYLOR_REFUSALS: readonly Condition[] = [
  { when: 'COUNT(v) <> COUNT(lives)', text: 'speeds and lives differ in count' },
  { when: 'MAX(v) <= MIN(v)', text: 'a line needs at least 2 different speeds' },
  { when: 'slope >= 0', text: 'the lives do not fall with speed: no exponent follows from them' },
];

/** What makes the line weak, in words. */
export function weakLine(speeds: readonly number[]): string[] {
  const words: string[] = [];
  if (speeds.length < 4)
    words.push(`${speeds.length} points only: too few to see how far they scatter about the line`);
  if (Math.max(...speeds) < 1.3 * Math.min(...speeds) * (1 - 1e-9))
    words.push('the largest speed is less than 1.3 times the smallest: the slope is uncertain');
  return words;
}

/** Lives for which the law gives no usable number. */
export const BEYOND_NUMBERS: Condition = {
  when: 'ABS(LN(C / vc)) / n > 300',
  text: 'speed {vc}, constant {C} and exponent {n} do not belong together: the life is beyond any number',
};

export const SHORT_LIFE: Condition = {
  when: 'T < 2 min',
  text: 'a life of {T} is short: the law was rarely tested there',
};
export const LONG_LIFE: Condition = {
  when: 'T > 240 min',
  text: 'a life of {T} is long: the law was rarely tested there',
};
export const TESTED_ONLY = 'Holds inside the tested speeds only, for the wear limit and the cut of the test.';
