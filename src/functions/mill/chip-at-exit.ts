/** MILL.CHIP_AT_EXIT: chip thickness where the tooth leaves the work. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { circleModelHigh, feedBeyondArc, OUTSIDE_CUTTER } from '../engagement.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'MILL.CHIP_AT_EXIT',
  family: 'MILL',
  summary: 'Chip thickness where the tooth leaves the work',
  searchWords: ['exit', 'thick exit', 'edge breakage', 'foot formation', 'burr'],
  parameters: [
    parameter('cutter_diameter'),
    parameter('feed_per_tooth'),
    parameter('radial_engagement'),
    optional('cutting_edge_angle', '90 deg'),
    optional('axis_offset', '-((Dc - ae) / 2)', {
      meaning:
        'from the cutter axis to the middle of the cut, negative on the exit side; left out: side milling, down',
    }),
  ],
  result: { kind: 'length', symbol: 'h_exit', meaning: 'chip thickness at the exit' },
  steps: [
    {
      symbol: 'q_exit',
      meaning: 'depth of the exit below the side of the cutter, over the diameter',
      kind: 'ratio',
      equation: 'IF(Dc + 2 * e - ae <= 0.000000001 * Dc; 0; (Dc + 2 * e - ae) / (2 * Dc))',
    },
  ],
  equation: 'fz * SIN(kappa_r) * 2 * SQRT(q_exit * (1 - q_exit))',
  refuses: [OUTSIDE_CUTTER, feedBeyondArc('fz')],
  cautions: [
    circleModelHigh('fz'),
    {
      when: 'h_exit > 0.7 * fz * SIN(kappa_r)',
      text: 'the tooth leaves with a thick chip of {h_exit}: edges break there in hard and tough work; move the cutter',
    },
  ],
  sources: ['geometry'],
  examples: [
    {
      given: ['100 mm', '0.2 mm', '70 mm', '90 deg', '-10 mm'],
      gives: '0.087178 mm',
      origin: 'otherProgram',
      how: 'arc sampled point by point',
    },
    {
      given: ['20 mm', '0.1 mm', '2 mm'],
      gives: '0 mm',
      tolerance: '0.000001 um',
      origin: 'byHand',
      how: 'down milling leaves at the side',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
