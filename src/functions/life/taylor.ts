/** LIFE.TAYLOR: tool life at a cutting speed. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';
import { BEYOND_NUMBERS, LONG_LIFE, ONE_MINUTE, SHORT_LIFE, TESTED_ONLY } from '../taylor.ts';

export default {
  name: 'LIFE.TAYLOR',
  family: 'LIFE',
  summary: 'Tool life at a cutting speed by the law of Taylor',
  searchWords: ['tool life', 'wear', 'v T^n = C', 'cutting speed'],
  parameters: [parameter('cutting_speed'), parameter('constant'), parameter('exponent')],
  result: { kind: 'time', symbol: 'T', meaning: 'tool life, time in the cut' },
  equation: 'T_1 * (C / vc)^(1 / n)',
  constants: [ONE_MINUTE],
  refuses: [BEYOND_NUMBERS],
  cautions: [SHORT_LIFE, LONG_LIFE],
  remarks: [TESTED_ONLY],
  sources: ['T3'],
  examples: [
    {
      given: ['125 ft/min', '200 ft/min', '0.125'],
      gives: '42.9497 min',
      origin: 'published',
      how: 'case d23: 1.6 to the power 8',
    },
    {
      given: ['1 m/s', '240 m/min', '0.2313782'],
      gives: '400.0 min',
      origin: 'published',
      how: 'case d07: 4^(ln 20/ln 2) is 400',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
