/** MILL.AXIAL_PITCH: axial distance from tooth to tooth along the helix. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MILL.AXIAL_PITCH',
  family: 'MILL',
  summary: 'Axial distance from tooth to tooth along the helix',
  searchWords: ['even torque depth', 'constant force', 'helix pitch'],
  parameters: [
    parameter('cutter_diameter'),
    parameter('teeth'),
    parameter('helix_angle', {
      hard: { above: '0 deg', below: '80 deg' },
      usual: { from: '5 deg', to: '60 deg' },
    }),
  ],
  result: { kind: 'length', symbol: 'p_ax', meaning: 'axial pitch' },
  equation: 'PI() * Dc / (z * TAN(lambda))',
  remarks: [
    'At 1, 2, 3 times this axial depth the torque is even.',
    'With unequal tooth spacing or unequal helix it does not hold.',
  ],
  sources: ['A1'],
  examples: [
    {
      given: ['20 mm', '4', '45 deg'],
      gives: '15.7080 mm',
      origin: 'byHand',
      how: 'a quarter of the circumference, the helix rises as it turns',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
