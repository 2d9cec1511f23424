/** LIFE.RATIO_LOW: least ratio of lives that the trial still allows. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { LIVES_A, LIVES_B, ratioInterval } from '../life-ratio.ts';
import { numbersOf } from '../numbers.ts';
import { optional } from '../parameter.ts';

export default {
  name: 'LIFE.RATIO_LOW',
  family: 'LIFE',
  summary: 'Low end of the ratio of lives A over B, by the interval of Welch',
  searchWords: ['comparison', 'confidence', 'significance', 'trial', 'better tool'],
  parameters: [LIVES_A, LIVES_B, optional('confidence', '0.95')],
  result: { kind: 'ratio', symbol: 'ratio_low', meaning: 'low end of the ratio of lives' },
  reading: 'exp(mean ln T_a - mean ln T_b - t(nu) sqrt(s_a^2/n_a + s_b^2/n_b))',
  compute({ T_a, T_b, confidence }, _note, caution) {
    const interval = ratioInterval(numbersOf(T_a), numbersOf(T_b), Number(confidence), caution);
    return 'low' in interval ? interval.low : interval;
  },
  remarks: [
    'Two-sided: the true ratio lies between LIFE.RATIO_LOW and LIFE.RATIO_HIGH with this confidence.',
  ],
  sources: ['W1'],
  examples: [
    {
      given: ['{30;36;33;40} min', '{20;26;23} min', '0.95'],
      gives: '1.15998',
      origin: 'otherProgram',
      how: 'Welch interval of the logarithms by a statistics package',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
