/** RIGID.DEFLECTION: bend of a round bar held at one end, the force at the other. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'RIGID.DEFLECTION',
  family: 'RIGID',
  summary: 'Deflection of a round tool held at one end',
  searchWords: ['bending', 'cantilever', 'overhang', 'boring bar', 'end mill', 'stick-out'],
  parameters: [
    parameter('diameter', { meaning: 'diameter of the bar' }),
    parameter('overhang'),
    parameter('modulus'),
    parameter('force', { meaning: 'force across the bar at its free end' }),
  ],
  result: { kind: 'length', symbol: 'delta', meaning: 'deflection at the free end' },
  equation: '64 * F * l^3 / (3 * PI() * E * D^4)',
  cautions: [
    {
      when: 'l < 3 * D',
      text: '{l} is less than 3 diameters: shear adds 6 % and more (13 % at 2 diameters, 54 % at 1)',
    },
  ],
  remarks: [
    'The clamp is taken as rigid: measured deflection is 2 to 5 times as large.',
    'A fluted part counts with 0.8 times its outside diameter (KV).',
  ],
  sources: ['R1', 'KV'],
  examples: [
    {
      given: ['20 mm', '100 mm', '210 GPa', '500 N'],
      gives: '0.1010503 mm',
      tolerance: '0.000001 mm',
      origin: 'byHand',
      how: 'case g01: F L^3/(3 E I) with I = 7853.98 mm4',
    },
    {
      given: ['40 mm', '200 mm', '210 GPa', '500 N'],
      gives: '0.05052537876 mm',
      origin: 'byHand',
      how: 'case g12, work held in a chuck',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
