/** CUT.SPINDLE_SPEED: spindle speed that gives a cutting speed. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CUT.SPINDLE_SPEED',
  family: 'CUT',
  summary: 'Spindle speed for a cutting speed at a diameter',
  searchWords: ['rpm', 'revolutions', 'n', 'turns'],
  parameters: [parameter('diameter'), parameter('cutting_speed')],
  result: { kind: 'rotational speed', symbol: 'n', meaning: 'spindle speed' },
  equation: 'vc / (PI() * D)',
  sources: ['G1'],
  examples: [
    {
      given: ['200 mm', '2.3 m/s'],
      gives: '3.6606 1/s',
      tolerance: '0.00005 1/s',
      origin: 'published',
      how: 'G1, solution to problem 22.1, case a11',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
