/** MILL.FEED_FOR_CHIP_MEAN: feed per tooth for a wanted mean chip thickness. */

import type { FunctionDefinition } from '../../definition/index.ts';
import {
  ARC_STEPS,
  circleModelHigh,
  engagementParameters,
  feedBeyondArc,
  OUTSIDE_CUTTER,
} from '../engagement.ts';

export default {
  name: 'MILL.FEED_FOR_CHIP_MEAN',
  family: 'MILL',
  summary: 'Feed per tooth for a wanted mean chip thickness',
  searchWords: ['chip thinning compensation', 'programmed feed', 'hm'],
  parameters: engagementParameters('wanted_chip'),
  result: { kind: 'feed per tooth', symbol: 'fz', meaning: 'feed per tooth' },
  steps: ARC_STEPS,
  equation: 'h * Dc * phi_s / (2 * ae * SIN(kappa_r))',
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
      given: ['80 mm', '0.04661996629 mm', '8 mm'],
      gives: '0.15 mm',
      tolerance: '0.000000001',
      origin: 'published',
      how: 'KU Leuven course notes on production technology (2024), section 11.4, case c43, read backwards',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
