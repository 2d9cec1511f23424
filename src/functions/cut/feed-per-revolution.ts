/** CUT.FEED_PER_REVOLUTION: feed in one turn from the feed rate. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CUT.FEED_PER_REVOLUTION',
  family: 'CUT',
  summary: 'Feed per revolution from feed rate and spindle speed',
  searchWords: ['feed', 'f', 'ipr', 'mm/rev'],
  parameters: [parameter('feed_rate'), parameter('spindle_speed')],
  result: { kind: 'feed per revolution', symbol: 'f', meaning: 'feed per revolution' },
  equation: 'vf / n',
  sources: ['G1'],
  examples: [
    {
      given: ['1.44 in/min', '180 1/min'],
      gives: '0.008 in',
      origin: 'published',
      how: 'G1, solution to problem 22.3, case a13, read backwards',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
