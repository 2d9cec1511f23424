/** MILL.THINNING: largest chip thickness over feed per tooth. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { LARGEST_SINE_STEPS, OUTSIDE_CUTTER, SIDE_OFFSET } from '../engagement.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'MILL.THINNING',
  family: 'MILL',
  summary: 'Chip thinning: largest chip thickness over feed per tooth',
  searchWords: ['radial chip thinning', 'axial chip thinning', 'RCTF', 'high feed'],
  parameters: [
    parameter('cutter_diameter'),
    parameter('radial_engagement'),
    optional('cutting_edge_angle', '90 deg'),
    SIDE_OFFSET,
  ],
  result: { kind: 'ratio', symbol: 'thinning', meaning: 'largest chip thickness over feed per tooth' },
  steps: LARGEST_SINE_STEPS,
  equation: 'SIN(kappa_r) * sin_max',
  refuses: [OUTSIDE_CUTTER],
  cautions: [
    { when: 'thinning < 0.3', text: 'below 0.3 the run-out and the corner radius decide, not this formula' },
  ],
  remarks: ['1 over this value is how much the feed may rise for the same chip.'],
  sources: ['A1'],
  examples: [
    { given: ['20 mm', '2 mm'], gives: '0.6', origin: 'byHand', how: '2 sqrt(0.1 times 0.9)' },
    {
      given: ['50 mm', '25 mm', '30 deg'],
      gives: '0.5',
      origin: 'byHand',
      how: 'sin 30 deg, cut to the middle of the cutter',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
