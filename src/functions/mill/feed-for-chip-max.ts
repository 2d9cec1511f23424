/** MILL.FEED_FOR_CHIP_MAX: feed per tooth for a wanted largest chip thickness. */

import type { FunctionDefinition } from '../../definition/index.ts';
import {
  circleModelHigh,
  engagementParameters,
  feedBeyondArc,
  LARGEST_SINE_STEPS,
  OUTSIDE_CUTTER,
} from '../engagement.ts';

export default {
  name: 'MILL.FEED_FOR_CHIP_MAX',
  family: 'MILL',
  summary: 'Feed per tooth for a wanted largest chip thickness',
  searchWords: ['chip thinning compensation', 'programmed feed', 'hmax', 'high feed'],
  parameters: engagementParameters('wanted_chip'),
  result: { kind: 'feed per tooth', symbol: 'fz', meaning: 'feed per tooth' },
  steps: LARGEST_SINE_STEPS,
  equation: 'h / (SIN(kappa_r) * sin_max)',
  refuses: [OUTSIDE_CUTTER, feedBeyondArc('fz', 'the feed per tooth for this chip,')],
  cautions: [
    circleModelHigh('fz'),
    {
      when: 'fz > 3 * h',
      text: 'the feed is more than 3 times the chip: check the run-out and the corner radius',
    },
  ],
  sources: ['A1'],
  examples: [
    {
      given: ['20 mm', '0.06 mm', '2 mm'],
      gives: '0.1 mm',
      origin: 'byHand',
      how: 'the cut of MILL.CHIP_MAX backwards: 0.06 mm over 0.6',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
