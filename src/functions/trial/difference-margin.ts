/** TRIAL.DIFFERENCE_MARGIN: how far the difference of two means may be off. */

import type { FunctionDefinition, Parameter } from '../../definition/index.ts';
import { mean } from '../../numeric/index.ts';
import { numbersOf } from '../numbers.ts';
import { optional } from '../parameter.ts';
import { welchMargin } from '../welch.ts';

const values = (name: string, symbol: string, meaning: string): Parameter => ({
  name,
  symbol,
  kind: 'any number',
  list: true,
  meaning,
});

export default {
  name: 'TRIAL.DIFFERENCE_MARGIN',
  family: 'TRIAL',
  summary: 'Half width of the interval of the difference of two means, by Welch',
  searchWords: ['t test', 'confidence interval', 'comparison', 'significance'],
  parameters: [
    values('values_a', 'a', 'values of A'),
    values('values_b', 'b', 'values of B, of the same kind'),
    optional('confidence', '0.95'),
  ],
  result: {
    kind: 'like values_a',
    symbol: 'margin',
    meaning: 'the true difference of the means lies within plus or minus this',
  },
  reading: 't(nu) sqrt(s_a^2/n_a + s_b^2/n_b), nu by Welch, two-sided',
  compute({ a, b, confidence }, note, caution) {
    const [first, second] = [numbersOf(a), numbersOf(b)];
    const margin = welchMargin(first, second, Number(confidence), 'values');
    if (typeof margin !== 'number') return margin;
    const difference = mean(first) - mean(second);
    note('difference', difference, 'number');
    if (margin > Math.abs(difference))
      caution('the margin is larger than the difference of the means: no difference is proven');
    return margin;
  },
  remarks: ['The difference itself is AVERAGE(values_a) - AVERAGE(values_b).'],
  sources: ['W1'],
  examples: [
    {
      given: ['{25.006;25.008;25.007;25.009} mm', '{25.011;25.010;25.013} mm', '0.95'],
      gives: '3.04673 um',
      origin: 'byHand',
      how: 'Welch; the difference of the means is -3.83333 um',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
