/** LIFE.TAYLOR_SPEED: cutting speed for a wanted tool life. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';
import { LONG_LIFE, ONE_MINUTE, SHORT_LIFE, TESTED_ONLY } from '../taylor.ts';

export default {
  name: 'LIFE.TAYLOR_SPEED',
  family: 'LIFE',
  summary: 'Cutting speed for a wanted tool life by the law of Taylor',
  searchWords: ['tool life', 'wear', 'v T^n = C', 'v15', 'v60'],
  parameters: [parameter('tool_life'), parameter('constant'), parameter('exponent')],
  result: { kind: 'cutting speed', symbol: 'vc', meaning: 'cutting speed' },
  equation: 'C / (T / T_1)^n',
  constants: [ONE_MINUTE],
  cautions: [SHORT_LIFE, LONG_LIFE],
  remarks: [TESTED_ONLY],
  sources: ['T3'],
  examples: [
    {
      given: ['18 min', '400 m/min', '0.25'],
      gives: '194.197 m/min',
      origin: 'byHand',
      how: 'the fourth root of 18 is 2.05977, from 400 m/min',
    },
    {
      given: ['32 min', '150 m/min', '0.1'],
      gives: '106.066 m/min',
      origin: 'byHand',
      how: 'case d29: 150 over the root of 2',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
