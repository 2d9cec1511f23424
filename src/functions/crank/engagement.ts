/** CRANK.ENGAGEMENT: angle over which an edge cuts while the cutter goes around a journal. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { CENTRE_DISTANCE, ORBIT_ARC, ORBIT_REFUSALS } from '../orbit.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CRANK.ENGAGEMENT',
  family: 'CRANK',
  summary: 'Engagement angle of a cutter going around a journal',
  searchWords: ['crankshaft', 'orbital milling', 'whirling', 'internal milling', 'pin', 'arc of contact'],
  parameters: [
    parameter('cutter_diameter'),
    parameter('start_diameter'),
    parameter('finished_diameter'),
    parameter('cutter_type'),
  ],
  result: { kind: 'angle', symbol: 'phi', meaning: 'engagement angle' },
  steps: [CENTRE_DISTANCE, ORBIT_ARC],
  equation: '2 * ASIN(SQRT(q_arc))',
  refuses: ORBIT_REFUSALS,
  remarks: ['During the plunge the arc lies on both sides: double.'],
  sources: ['derived'],
  examples: [
    {
      given: ['700 mm', '90 mm', '80 mm', '"external"'],
      gives: '3.19747 deg',
      origin: 'otherProgram',
      how: 'two circles sampled point by point',
    },
    {
      given: ['200 mm', '66 mm', '60 mm', '"internal"'],
      gives: '9.425281058 deg',
      origin: 'byHand',
      how: 'law of cosines, case n01; a sampled cutter circle gives the same',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
