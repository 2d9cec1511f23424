/** LIFE.SAMPLE_SIZE: edges to run of each tool so that a difference shows. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { optional } from '../parameter.ts';
import { powerOfWelch } from '../test-power.ts';

const MOST = 1000;

export default {
  name: 'LIFE.SAMPLE_SIZE',
  family: 'LIFE',
  summary: 'Edges to run of each tool so that a ratio of lives shows',
  searchWords: ['trial', 'test plan', 'power', 'how many', 'significance'],
  parameters: [
    {
      name: 'ratio',
      symbol: 'ratio',
      kind: 'ratio',
      hard: { above: '0' },
      usual: { from: '1.05', to: '5' },
      meaning: 'ratio of lives that the trial shall show',
    },
    {
      name: 'variation',
      symbol: 'variation',
      kind: 'ratio',
      hard: { above: '0' },
      usual: { from: '0.05', to: '0.6' },
      meaning: 'standard deviation over mean of the lives of one tool',
    },
    optional('confidence', '0.95'),
    optional('power_of_test', '0.8'),
  ],
  result: { kind: 'count', symbol: 'edges', meaning: 'edges of each of the two tools' },
  reading:
    'smallest n >= 2 whose two-sided t test on ln T has the wanted power; s = sqrt(ln(1 + variation^2))',
  compute({ ratio, variation, confidence, power_of_test }, note) {
    const difference = Math.abs(Math.log(Number(ratio)));
    const spread = Math.sqrt(Math.log1p(Number(variation) ** 2));
    if (!(difference > 0)) return failure('#NUM!', 'a ratio of 1 is no difference: no trial can show it');
    const enough = (n: number): boolean =>
      powerOfWelch(n, difference / spread, Number(confidence)) >= Number(power_of_test);
    let [low, high] = [1, 2];
    while (high <= MOST && !enough(high)) [low, high] = [high, Math.min(high * 2, MOST + 1)];
    if (high > MOST) return failure('#NUM!', `more than ${MOST} edges of each tool would be needed`);
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (enough(middle)) high = middle;
      else low = middle;
    }
    note('power', powerOfWelch(high, difference / spread, Number(confidence)), 'share');
    return high;
  },
  cautions: [
    { when: 'edges > 10', text: '{edges} edges of each tool: the trial may cost more than it tells' },
  ],
  sources: ['W1'],
  examples: [
    {
      given: ['1.3', '0.2', '0.95', '0.8'],
      gives: '11',
      origin: 'otherProgram',
      how: 'exact power at 10 is 0.79991, at 11 0.84008; the normal approximation says 10',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
