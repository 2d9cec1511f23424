/** CUT.ROUND_ANGLE: cutting edge angle that a round insert or a corner radius shows at a depth of cut. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CUT.ROUND_ANGLE',
  family: 'CUT',
  summary: 'Cutting edge angle of a round insert or corner at a depth of cut',
  searchWords: ['button insert', 'entering angle', 'chip thinning', 'axial thinning', 'corner radius'],
  parameters: [
    parameter('insert_diameter'),
    parameter('axial_depth'),
    {
      name: 'which',
      symbol: 'which',
      kind: 'text',
      words: ['mean', 'largest'],
      default: { value: '"mean"' },
      meaning: '"mean" for MILL.CHIP_MEAN, "largest" for MILL.CHIP_MAX',
    },
  ],
  result: { kind: 'angle', symbol: 'kappa_r', meaning: 'tool cutting edge angle' },
  steps: [
    {
      symbol: 'psi',
      meaning: 'angle of the edge at the full depth',
      kind: 'angle',
      equation: '2 * ASIN(SQRT(ap / iC))',
    },
  ],
  equation: 'IF(which = "largest"; psi; ASIN(2 * ap / (iC * psi)))',
  refuses: [
    {
      when: 'ap > iC / 2',
      text: 'axial depth {ap} is more than half the insert diameter {iC}: the round edge ends there',
    },
  ],
  remarks: [
    'A corner radius counts too, as long as the depth is not more than the radius: give twice the radius as the diameter.',
  ],
  sources: ['geometry'],
  examples: [
    {
      given: ['12 mm', '3 mm', '"mean"'],
      gives: '28.52 deg',
      origin: 'otherProgram',
      how: 'sine of the edge angle averaged along the edge, integrated numerically',
    },
    {
      given: ['12 mm', '3 mm', '"largest"'],
      gives: '60 deg',
      origin: 'byHand',
      how: 'cos psi = 1 - 2 times 3/12 = 0.5',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
