/** THREAD.TAP_TORQUE: torque of a tap. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';
import { MAJOR, PITCH } from '../thread-profile.ts';

export default {
  name: 'THREAD.TAP_TORQUE',
  family: 'THREAD',
  summary: 'Torque of a tap that cuts the whole thread groove',
  searchWords: ['tapping', 'tap breakage', 'roll tap', 'moment', 'M'],
  parameters: [
    MAJOR,
    PITCH,
    parameter('hole_diameter', { usual: { from: '0.7 * d', to: 'd' } }),
    parameter('specific_force', {
      meaning: 'cutting force for a chip area, at the small chip of a tap (0.02 to 0.1 mm)',
    }),
    {
      name: 'torque_factor',
      symbol: 'k_t',
      kind: 'ratio',
      hard: { above: '0', most: '10' },
      usual: { from: '0.5', to: '3' },
      default: { value: '1' },
      meaning: '1 for a sharp tap; 1.5 to 2.5 for forming, up to 2 for a blunt tap',
    },
  ],
  result: { kind: 'torque', symbol: 'M', meaning: 'torque at the edges of the tap' },
  steps: [
    { symbol: 'y', meaning: 'depth of the groove', kind: 'length', equation: '(d - Dh) / 2' },
    {
      symbol: 'A',
      meaning: 'area of the groove',
      kind: 'area',
      equation: 'P * y / 8 + y^2 / SQRT(3)',
    },
  ],
  equation: 'kc * k_t * (d / 2 * A - P * y^2 / 16 - 2 * y^3 / (3 * SQRT(3)))',
  refuses: [
    { when: 'Dh >= d', text: 'the hole {Dh} must be less than the thread {d}' },
    {
      when: 'Dh < d - 1.3 * P',
      text: 'the hole {Dh} is below the full height of the thread {d}: the tap would ream it too',
    },
  ],
  cautions: [
    {
      when: 'AND(k_t >= 1.5; Dh > d - 0.7 * P)',
      text: 'hole {Dh} is one for forming: the factor {k_t} goes with the groove of a cut thread; give the hole of a cut thread, about diameter minus pitch',
    },
  ],
  remarks: [
    'Forming: the torque of a tap that cuts the same thread, from its smaller hole, times 1.5 to 2.5.',
    'All teeth of the chamfer are in the cut. Friction of the guiding threads and packed chips are not in it.',
  ],
  sources: ['derived'],
  examples: [
    {
      given: ['10 mm', '1.5 mm', '8.5 mm', '3500 MPa'],
      gives: '7.39133 N·m',
      origin: 'otherProgram',
      how: 'groove integrated numerically over its depth',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
