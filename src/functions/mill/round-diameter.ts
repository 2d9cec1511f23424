/** MILL.ROUND_DIAMETER: effective diameter of a cutter with round inserts at a depth of cut. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MILL.ROUND_DIAMETER',
  family: 'MILL',
  summary: 'Effective diameter of a round insert cutter at a depth of cut',
  searchWords: ['button cutter', 'toroidal', 'effective cutting diameter'],
  parameters: [
    parameter('cutter_diameter', { meaning: 'diameter over the inserts' }),
    parameter('insert_diameter'),
    parameter('axial_depth'),
  ],
  result: { kind: 'length', symbol: 'D_eff', meaning: 'largest diameter that cuts' },
  equation: 'Dc - iC + 2 * SQRT(ap * (iC - ap))',
  refuses: [
    {
      when: 'ap > iC / 2',
      text: 'axial depth {ap} is more than half the insert diameter {iC}: the round edge ends there',
    },
    { when: 'iC >= Dc', text: 'insert diameter {iC} must be less than the cutter diameter {Dc}' },
  ],
  sources: ['geometry'],
  examples: [
    {
      given: ['50 mm', '10 mm', '1 mm'],
      gives: '46 mm',
      origin: 'byHand',
      how: '40 mm to the insert centres and twice sqrt(1 times 9) = 3 mm',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
