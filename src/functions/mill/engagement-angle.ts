/** MILL.ENGAGEMENT_ANGLE: angle over which a tooth is in the work. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { ARC_STEPS, OUTSIDE_CUTTER, SIDE_OFFSET } from '../engagement.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MILL.ENGAGEMENT_ANGLE',
  family: 'MILL',
  summary: 'Angle over which a tooth is in the cut',
  searchWords: ['arc of contact', 'wrap', 'immersion', 'tool engagement'],
  parameters: [parameter('cutter_diameter'), parameter('radial_engagement'), SIDE_OFFSET],
  result: { kind: 'angle', symbol: 'phi', meaning: 'engagement angle' },
  steps: ARC_STEPS.slice(0, 2),
  equation: '2 * ASIN(SQRT(q_in)) - 2 * ASIN(SQRT(q_out))',
  refuses: [OUTSIDE_CUTTER],
  sources: ['A1'],
  examples: [
    { given: ['20 mm', '5 mm'], gives: '60 deg', origin: 'byHand', how: 'cos phi = 1 - 2 times 5/20 = 0.5' },
    { given: ['20 mm', '20 mm'], gives: '180 deg', origin: 'byHand', how: 'full slot: half a turn' },
    {
      given: ['100 mm', '50 mm', '0 mm'],
      gives: '60 deg',
      origin: 'byHand',
      how: 'cut over the middle: twice the angle whose sine is 25/50',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
