/** CRANK.CONTACT_TIME: time that one edge is in the cut for one shaft. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CRANK.CONTACT_TIME',
  family: 'CRANK',
  summary: 'Time that one edge is in the cut for one shaft',
  searchWords: ['crankshaft', 'time in cut', 'tool life'],
  parameters: [
    parameter('engagement_angle', { hard: { above: '0 deg', most: '360 deg' } }),
    parameter('cut_time', {
      name: 'cutter_time_per_shaft',
      symbol: 't',
      meaning: 'time at feed of the cutter for one shaft',
    }),
  ],
  result: { kind: 'time', symbol: 't_contact', meaning: 'time of one edge in the cut for one shaft' },
  equation: 'phi / (2 * PI()) * t',
  sources: ['derived'],
  examples: [{ given: ['9 deg', '80 s'], gives: '2 s', origin: 'byHand', how: 'a fortieth of the turn' }],
  since: '0.1',
} satisfies FunctionDefinition;
