/** CRANK.CHIP_MAX: largest chip thickness of a cutter going around a journal. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { CENTRE_DISTANCE, JOURNAL_FEED, ORBIT_ARC, ORBIT_REFUSALS } from '../orbit.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CRANK.CHIP_MAX',
  family: 'CRANK',
  summary: 'Largest chip thickness of a cutter going around a journal',
  searchWords: ['crankshaft', 'orbital milling', 'whirling', 'chip load', 'pin'],
  parameters: [
    parameter('cutter_diameter'),
    JOURNAL_FEED,
    parameter('start_diameter'),
    parameter('finished_diameter'),
    parameter('cutter_type'),
  ],
  result: { kind: 'length', symbol: 'h_max', meaning: 'largest chip thickness' },
  steps: [CENTRE_DISTANCE, ORBIT_ARC],
  equation: 'fj * 2 * e / Dm * IF(q_arc < 0.5; 2 * SQRT(q_arc * (1 - q_arc)); 1)',
  refuses: ORBIT_REFUSALS,
  cautions: [
    {
      when: 'fj > 0.02 * Dm',
      text: 'a feed of {fj} on a journal of {Dm}: the value is 2 % and more too high',
    },
  ],
  sources: ['derived'],
  examples: [
    {
      given: ['700 mm', '1 mm', '90 mm', '80 mm', '"external"'],
      gives: '0.543831 mm',
      origin: 'byHand',
      how: 'feed of the axis 9.75 mm times the sine of 3.19747 deg; the sampled path gives 0.530 mm, second order of the feed',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
