/** LIFE.RATIO_HIGH: largest ratio of lives that the trial still allows. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { LIVES_A, LIVES_B, ratioInterval } from '../life-ratio.ts';
import { numbersOf } from '../numbers.ts';
import { optional } from '../parameter.ts';

export default {
  name: 'LIFE.RATIO_HIGH',
  family: 'LIFE',
  summary: 'High end of the ratio of lives A over B, by the interval of Welch',
  searchWords: ['comparison', 'confidence', 'significance', 'trial', 'better tool'],
  parameters: [LIVES_A, LIVES_B, optional('confidence', '0.95')],
  result: { kind: 'ratio', symbol: 'ratio_high', meaning: 'high end of the ratio of lives' },
  reading: 'exp(mean ln T_a - mean ln T_b + t(nu) sqrt(s_a^2/n_a + s_b^2/n_b))',
  compute({ T_a, T_b, confidence }, _note, caution) {
    const interval = ratioInterval(numbersOf(T_a), numbersOf(T_b), Number(confidence), caution);
    return 'high' in interval ? interval.high : interval;
  },
  remarks: [
    'Two-sided: the true ratio lies between LIFE.RATIO_LOW and LIFE.RATIO_HIGH with this confidence.',
  ],
  sources: ['W1'],
  examples: [
    {
      given: ['{30;36;33;40} min', '{20;26;23} min', '0.95'],
      gives: '1.96815',
      origin: 'otherProgram',
      how: 'Welch interval of the logarithms by a statistics package',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
