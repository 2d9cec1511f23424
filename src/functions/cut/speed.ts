/** CUT.SPEED: speed of the edge from diameter and spindle speed. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CUT.SPEED',
  family: 'CUT',
  summary: 'Cutting speed of a turning tool or work',
  searchWords: ['surface speed', 'vc', 'sfm', 'peripheral speed'],
  parameters: [parameter('diameter'), parameter('spindle_speed')],
  result: { kind: 'cutting speed', symbol: 'vc', meaning: 'cutting speed' },
  equation: 'PI() * D * n',
  sources: ['G1'],
  examples: [
    {
      given: ['38 in', '40 1/min'],
      gives: '398 ft/min',
      tolerance: '0.5 ft/min',
      origin: 'published',
      how: 'G1, solution to problem 22.8, case a17: speed at the outer diameter',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
