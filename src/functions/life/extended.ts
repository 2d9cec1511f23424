/** LIFE.EXTENDED: tool life from speed, feed and depth. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'LIFE.EXTENDED',
  family: 'LIFE',
  summary: 'Tool life from speed, feed and depth with an exponent for each',
  searchWords: ['extended Taylor', 'tool life', 'feed', 'depth of cut'],
  parameters: [
    parameter('cutting_speed'),
    parameter('feed_per_revolution', { name: 'feed', meaning: 'feed, as it was counted in the trials' }),
    parameter('axial_depth', { name: 'depth', meaning: 'depth of cut' }),
    parameter('tool_life', {
      name: 'constant',
      symbol: 'C_T',
      meaning: 'life at 1 m/min, 1 mm feed and 1 mm depth',
    }),
    parameter('life_power', { name: 'speed_power', symbol: 'a', meaning: 'exponent of the speed' }),
    parameter('life_power', { name: 'feed_power', symbol: 'b', meaning: 'exponent of the feed' }),
    parameter('life_power', { name: 'depth_power', symbol: 'c', meaning: 'exponent of the depth' }),
  ],
  result: { kind: 'time', symbol: 'T', meaning: 'tool life, time in the cut' },
  constants: [
    { symbol: 'v_1', value: '1 m/min', meaning: 'unit of speed' },
    { symbol: 's_1', value: '1 mm', meaning: 'unit of feed and depth' },
  ],
  steps: [
    {
      symbol: 'power',
      meaning: 'logarithm of life over constant',
      kind: 'number',
      equation: '-a * LN(vc / v_1) - b * LN(f / s_1) - c * LN(ap / s_1)',
    },
  ],
  equation: 'C_T * (vc / v_1)^(-a) * (f / s_1)^(-b) * (ap / s_1)^(-c)',
  refuses: [
    {
      when: 'ABS(power) > 300',
      text: 'these speeds, feeds and exponents do not belong together: the life is beyond any number',
    },
  ],
  cautions: [
    {
      when: 'NOT(AND(a > b; b > c))',
      text: 'usually speed wears most, then feed, then depth: exponents {a}, {b}, {c} are in another order',
    },
  ],
  remarks: ['Holds inside the tested speeds, feeds and depths only.'],
  sources: ['T3'],
  examples: [
    {
      given: ['200 m/min', '0.25 mm', '4 mm', '1e9 min', '3', '1', '0.5'],
      gives: '250 min',
      origin: 'byHand',
      how: '1e9/8e6 is 125; the feed makes it 500, the depth 250',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
