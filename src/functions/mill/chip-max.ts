/** MILL.CHIP_MAX: largest chip thickness of a milling cut. */

import type { FunctionDefinition } from '../../definition/index.ts';
import {
  circleModelHigh,
  engagementParameters,
  feedBeyondArc,
  LARGEST_SINE_STEPS,
  OUTSIDE_CUTTER,
} from '../engagement.ts';

export default {
  name: 'MILL.CHIP_MAX',
  family: 'MILL',
  summary: 'Largest chip thickness in milling',
  searchWords: ['chip thinning', 'hmax', 'maximum chip thickness', 'hex'],
  parameters: engagementParameters('feed_per_tooth'),
  result: { kind: 'length', symbol: 'h_max', meaning: 'largest chip thickness' },
  steps: LARGEST_SINE_STEPS,
  equation: 'fz * SIN(kappa_r) * sin_max',
  refuses: [OUTSIDE_CUTTER, feedBeyondArc('fz')],
  cautions: [circleModelHigh('fz')],
  remarks: ['The path of the tooth is taken as a circle.'],
  sources: ['A1', 'M1'],
  examples: [
    {
      given: ['20 mm', '0.1 mm', '2 mm'],
      gives: '0.06 mm',
      origin: 'byHand',
      how: '0.1 mm times 2 sqrt(0.1 times 0.9), the sine of the engagement angle',
    },
    {
      given: ['100 mm', '0.2 mm', '30 mm', '45 deg', '20 mm'],
      gives: '0.140712 mm',
      origin: 'otherProgram',
      how: 'arc sampled point by point',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
