/** DRILL.CHIP: chip thickness at the lips of a drill. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'DRILL.CHIP',
  family: 'DRILL',
  summary: 'Chip thickness at the lips of a drill',
  searchWords: ['undeformed chip thickness', 'feed per edge', 'point angle', 'twist drill'],
  parameters: [
    parameter('feed_per_revolution'),
    optional('point_angle', '140 deg'),
    optional('edges', '2', { usual: { from: '1', to: '4' }, meaning: 'cutting edges of the drill' }),
  ],
  result: { kind: 'length', symbol: 'h', meaning: 'thickness of the undeformed chip' },
  equation: 'f / edges * SIN(sigma / 2)',
  sources: ['K2'],
  examples: [
    {
      given: ['0.2 mm', '180 deg'],
      gives: '0.1 mm',
      origin: 'byHand',
      how: 'a flat drill with two lips: half the feed',
    },
    {
      given: ['0.3 mm', '120 deg', '3'],
      gives: '0.0866025 mm',
      origin: 'byHand',
      how: '0.1 mm times sin 60 deg',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
