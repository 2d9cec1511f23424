/** MILL.CHIP_MEAN: mean chip thickness over the arc of a milling cut. */

import type { FunctionDefinition } from '../../definition/index.ts';
import {
  ARC_STEPS,
  circleModelHigh,
  engagementParameters,
  feedBeyondArc,
  OUTSIDE_CUTTER,
} from '../engagement.ts';

export default {
  name: 'MILL.CHIP_MEAN',
  family: 'MILL',
  summary: 'Mean chip thickness over the arc in milling',
  searchWords: ['hm', 'average chip thickness', 'chip thinning'],
  parameters: engagementParameters('feed_per_tooth'),
  result: { kind: 'length', symbol: 'h_mean', meaning: 'mean chip thickness' },
  steps: ARC_STEPS,
  equation: 'fz * SIN(kappa_r) * 2 * ae / (Dc * phi_s)',
  refuses: [OUTSIDE_CUTTER, feedBeyondArc('fz')],
  cautions: [circleModelHigh('fz')],
  remarks: [
    'True for every offset: the sine integrated over the arc is twice the engagement over the diameter.',
  ],
  sources: ['A1', 'K2'],
  examples: [
    {
      given: ['80 mm', '0.15 mm', '8 mm'],
      gives: '0.0466200 mm',
      origin: 'published',
      how: 'KU Leuven course notes on production technology (2024), section 11.4, case c43, exact mean',
    },
    {
      given: ['20 mm', '0.1 mm', '20 mm'],
      gives: '0.0636620 mm',
      origin: 'byHand',
      how: 'full slot: 2/pi times the feed',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
