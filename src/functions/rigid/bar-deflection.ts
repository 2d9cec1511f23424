/** RIGID.BAR_DEFLECTION: bend of a rectangular bar held at one end. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { BAR_HEIGHT, BAR_WIDTH } from '../bar.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'RIGID.BAR_DEFLECTION',
  family: 'RIGID',
  summary: 'Deflection of a rectangular bar or work that hangs out of its clamp',
  searchWords: ['bending', 'cantilever', 'vise', 'thin wall', 'square shank', 'workpiece'],
  parameters: [
    BAR_WIDTH,
    { ...BAR_HEIGHT, meaning: 'height of the section along the force' },
    parameter('overhang'),
    parameter('modulus'),
    parameter('force', { meaning: 'force across the bar at its free end' }),
  ],
  result: { kind: 'length', symbol: 'delta', meaning: 'deflection at the free end' },
  equation: '4 * F * l^3 / (E * w * h^3)',
  cautions: [
    { when: 'l < 3 * h', text: '{l} is less than 3 times the height {h}: shear adds to the deflection' },
  ],
  remarks: ['The clamp is taken as rigid: measured deflection is 2 to 5 times as large.'],
  sources: ['R1'],
  examples: [
    {
      given: ['25 mm', '25 mm', '150 mm', '210 GPa', '1000 N'],
      gives: '0.164571 mm',
      origin: 'byHand',
      how: 'F L^3/(3 E I) with I = w h^3/12 = 32552.1 mm4',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
