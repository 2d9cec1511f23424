/** CUT.FEED_PER_TOOTH: feed per tooth from the feed rate. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CUT.FEED_PER_TOOTH',
  family: 'CUT',
  summary: 'Feed per tooth from teeth, feed rate and spindle speed',
  searchWords: ['chip load', 'fz', 'ipt'],
  parameters: [parameter('teeth'), parameter('feed_rate'), parameter('spindle_speed')],
  result: { kind: 'feed per tooth', symbol: 'fz', meaning: 'feed per tooth' },
  equation: 'vf / (z * n)',
  sources: ['G1'],
  examples: [
    {
      given: ['5', '1200 mm/min', '1600 1/min'],
      gives: '0.15 mm',
      origin: 'byHand',
      how: '1200 mm in 1600 turns are 0.75 mm a turn, over 5 teeth',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
