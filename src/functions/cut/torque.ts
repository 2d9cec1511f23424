/** CUT.TORQUE: cutting torque from power and spindle speed. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CUT.TORQUE',
  family: 'CUT',
  summary: 'Cutting torque at the spindle from power and spindle speed',
  searchWords: ['moment', 'N·m', 'spindle torque'],
  parameters: [parameter('cutting_power'), parameter('spindle_speed')],
  result: { kind: 'torque', symbol: 'M', meaning: 'mean cutting torque' },
  equation: 'Pc / (2 * PI() * n)',
  sources: ['G1'],
  examples: [
    {
      given: ['15 kW', '3000 1/min'],
      gives: '47.7465 N·m',
      origin: 'byHand',
      how: '15000 W over 2 pi times 50 turns a second',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
