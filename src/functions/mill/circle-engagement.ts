/** MILL.CIRCLE_ENGAGEMENT: radial engagement on a straight path that has the same arc as a cut on a circle. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MILL.CIRCLE_ENGAGEMENT',
  family: 'MILL',
  summary: 'Equivalent radial engagement when milling a bore or a boss',
  searchWords: ['circular interpolation', 'helical', 'bore', 'boss', 'equivalent ae'],
  parameters: [
    parameter('cutter_diameter'),
    parameter('start_diameter'),
    parameter('finished_diameter'),
    parameter('side'),
  ],
  result: { kind: 'length', symbol: 'ae', meaning: 'equivalent radial engagement' },
  equation:
    'IF(side = "inside"; (Dm - Ds) * (Dm + Ds) / (4 * (Dm - Dc)); (Ds - Dm) * (Ds + Dm) / (4 * (Dm + Dc)))',
  refuses: [
    {
      when: 'AND(side = "inside"; Ds >= Dm)',
      text: 'the start diameter {Ds} must be less than the finished bore {Dm}',
    },
    {
      when: 'AND(side = "inside"; Dc >= Dm)',
      text: 'cutter diameter {Dc} must be less than the finished bore {Dm}',
    },
    {
      when: 'AND(side = "inside"; Ds < ABS(Dm - 2 * Dc))',
      text: 'from a start diameter of {Ds} the cutter cuts its full width: use the cutter diameter {Dc} as the radial engagement',
    },
    {
      when: 'AND(side = "outside"; Ds <= Dm)',
      text: 'the start diameter {Ds} must be more than the finished boss {Dm}',
    },
    { when: 'ae > Dc', text: 'the cut is wider than the cutter diameter {Dc}' },
  ],
  remarks: [
    'Exact for the arc, the chip and the removal rate when used with the feed rate of the centre (MILL.CIRCLE_FEED).',
  ],
  sources: ['geometry'],
  examples: [
    {
      given: ['20 mm', '50 mm', '60 mm', '"inside"'],
      gives: '6.875 mm',
      origin: 'otherProgram',
      how: 'two circles sampled: engagement angle 71.790 deg both ways; 1100/160 by hand',
    },
    {
      given: ['20 mm', '70 mm', '60 mm', '"outside"'],
      gives: '4.0625 mm',
      origin: 'byHand',
      how: '(4900 - 3600)/(4 times 80)',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
