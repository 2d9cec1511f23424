/** TURN.REMOVAL_RATE: volume turned off in a time. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'TURN.REMOVAL_RATE',
  family: 'TURN',
  summary: 'Metal removal rate in turning',
  searchWords: ['MRR', 'chip volume', 'stock removal', 'Q'],
  parameters: [
    parameter('cutting_speed'),
    parameter('feed_per_revolution'),
    parameter('depth', {
      symbol: 'ap',
      usual: { from: '0.01 mm', to: '50 mm' },
      meaning: 'depth of cut on the radius',
    }),
  ],
  result: { kind: 'removal rate', symbol: 'Q', meaning: 'volume cut in a time' },
  equation: 'vc * f * ap',
  remarks: [
    'Exact for the cutting speed at the middle of the depth; at a depth above a tenth of the diameter the speed varies noticeably over the depth.',
  ],
  sources: ['G1'],
  examples: [
    {
      given: ['2.3 m/s', '0.32 mm', '1.8 mm'],
      gives: '1324.8 mm3/s',
      origin: 'published',
      how: 'Groover, Fundamentals of Modern Manufacturing, solution to problem 22.1 (printed 1320, rounded)',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
