/** CUT.FEED_RATE: speed of the feed from the feed per tooth. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CUT.FEED_RATE',
  family: 'CUT',
  summary: 'Feed rate from teeth, feed per tooth and spindle speed',
  searchWords: ['table feed', 'vf', 'mm/min', 'ipm'],
  parameters: [parameter('teeth'), parameter('feed_per_tooth'), parameter('spindle_speed')],
  result: { kind: 'feed rate', symbol: 'vf', meaning: 'feed rate' },
  equation: 'z * fz * n',
  remarks: [
    'With one tooth (a drill taken as one edge, a turning tool) give the feed per revolution as the feed per tooth.',
  ],
  sources: ['G1'],
  examples: [
    {
      given: ['4', '0.1 mm', '1000 1/min'],
      gives: '400 mm/min',
      origin: 'byHand',
      how: '4 teeth times 0.1 mm make 0.4 mm in a turn, 1000 turns a minute',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
