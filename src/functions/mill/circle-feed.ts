/** MILL.CIRCLE_FEED: feed rate of the cutter axis for a feed rate at the edge on a circle. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MILL.CIRCLE_FEED',
  family: 'MILL',
  summary: 'Feed rate of the cutter centre when milling a bore or a boss',
  searchWords: ['circular interpolation', 'helical', 'bore', 'boss', 'centre feed'],
  parameters: [
    parameter('cutter_diameter'),
    parameter('edge_feed_rate'),
    parameter('finished_diameter'),
    parameter('side'),
  ],
  result: { kind: 'feed rate', symbol: 'v_centre', meaning: 'feed rate of the cutter axis' },
  equation: 'IF(side = "inside"; vf * (Dm - Dc) / Dm; vf * (Dm + Dc) / Dm)',
  refuses: [
    {
      when: 'AND(side = "inside"; Dc >= Dm)',
      text: 'cutter diameter {Dc} must be less than the bore of {Dm}',
    },
  ],
  cautions: [
    {
      when: 'AND(side = "inside"; Dc > 0.9 * Dm)',
      text: 'the cutter nearly fills the bore: contact over its full width, chips can not leave',
    },
  ],
  sources: ['geometry'],
  examples: [
    {
      given: ['20 mm', '600 mm/min', '60 mm', '"inside"'],
      gives: '400 mm/min',
      origin: 'byHand',
      how: 'the axis runs on 40 mm while the edge runs on 60 mm',
    },
    {
      given: ['20 mm', '600 mm/min', '60 mm', '"outside"'],
      gives: '800 mm/min',
      origin: 'byHand',
      how: 'the axis runs on 80 mm while the edge runs on 60 mm',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
