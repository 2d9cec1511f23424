/** DRILL.THRUST: thrust of a drill. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'DRILL.THRUST',
  family: 'DRILL',
  summary: 'Thrust of a drill with its chisel edge',
  searchWords: ['feed force', 'axial force', 'chisel edge', 'web thinning', 'twist drill'],
  parameters: [
    parameter('drill_diameter'),
    parameter('feed_per_revolution'),
    parameter('specific_force', { meaning: 'cutting force for a chip area, at the chip of DRILL.CHIP' }),
    optional('point_angle', '140 deg'),
    optional('thrust_ratio', '0.5'),
    optional('chisel_share', '30 %', {
      usual: { from: '10 %', to: '60 %' },
      meaning: 'share of the thrust that the chisel edge takes: 10 to 20 % thinned, 40 % unthinned',
    }),
  ],
  result: { kind: 'force', symbol: 'Fz', meaning: 'force along the axis' },
  equation: 'ct * kc * f * D / 2 * SIN(sigma / 2) / (1 - q_ch)',
  remarks: ['Within plus or minus 30 %; measure where it matters.'],
  sources: ['derived', 'S1'],
  examples: [
    {
      given: ['12.7 mm', '0.254 mm', '4011 MPa', '118 deg', '0.5', '0.37'],
      gives: '4401.04 N',
      origin: 'byHand',
      how: '0.5 times 4011 times 0.254 times 6.35 times sin 59 deg over 0.63; Oxford and Shaw (case e18) say 4385 N',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
