/** CUT.STAGED_TIME: time at feed over several stretches, each with its own feed rate. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CUT.STAGED_TIME',
  family: 'CUT',
  summary: 'Time at feed over stretches with different feed rates',
  searchWords: ['cycle time', 'sections', 'entry feed', 'reduced feed'],
  parameters: [
    parameter('feed_rate', { name: 'feed_rates', list: true, meaning: 'feed rate of each stretch' }),
    parameter('length', { name: 'lengths', list: true, meaning: 'length of each stretch' }),
  ],
  result: { kind: 'time', symbol: 't', meaning: 'time at feed' },
  equation: 'SUM(L / vf)',
  refuses: [{ when: 'COUNT(L) <> COUNT(vf)', text: 'feed rates and lengths differ in count' }],
  remarks: ['Rapid moves and speeding up are not in it.'],
  sources: ['geometry'],
  examples: [
    {
      given: ['{60;240;120} mm/min', '{10;120;20} mm'],
      gives: '50 s',
      origin: 'byHand',
      how: '10 s for the entry, 30 s for the middle, 10 s for the exit',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
