/** MILL.CONTACT_TIME: time in which one tooth cuts in each turn. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MILL.CONTACT_TIME',
  family: 'MILL',
  summary: 'Time in the cut of one tooth in each turn',
  searchWords: ['heating', 'thermal', 'interrupted cut', 'time in cut'],
  parameters: [
    parameter('engagement_angle', { hard: { above: '0 deg', most: '360 deg' } }),
    parameter('spindle_speed'),
  ],
  result: { kind: 'time', symbol: 't', meaning: 'time in the cut in one turn' },
  equation: 'phi / (2 * PI() * n)',
  remarks: ['The rest of the turn is cooling.'],
  sources: ['geometry'],
  examples: [
    { given: ['90 deg', '3000 1/min'], gives: '5 ms', origin: 'byHand', how: 'a quarter of a turn of 20 ms' },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
