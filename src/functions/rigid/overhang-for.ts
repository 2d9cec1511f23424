/** RIGID.OVERHANG_FOR: longest overhang for an allowed deflection. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'RIGID.OVERHANG_FOR',
  family: 'RIGID',
  summary: 'Longest overhang of a round tool for an allowed deflection',
  searchWords: ['stick-out', 'boring bar', 'cantilever', 'bending', 'reach'],
  parameters: [
    parameter('diameter', { meaning: 'diameter of the bar' }),
    parameter('modulus'),
    parameter('force', { meaning: 'force across the bar at its free end' }),
    {
      name: 'allowed_deflection',
      symbol: 'delta',
      kind: 'length',
      metric: 'um',
      inch: 'uin',
      hard: { above: '0' },
      usual: { from: '1 um', to: '500 um' },
      meaning: 'deflection that may not be passed',
    },
  ],
  result: { kind: 'length', symbol: 'l', meaning: 'longest overhang' },
  equation: '(3 * PI() * E * D^4 * delta / (64 * F))^(1 / 3)',
  cautions: [{ when: 'l < 3 * D', text: '{l} is less than 3 diameters: shear makes the deflection larger' }],
  remarks: ['The clamp is taken as rigid: measured deflection is 2 to 5 times as large.'],
  sources: ['R1'],
  examples: [
    {
      given: ['20 mm', '210 GPa', '500 N', '101.0503 um'],
      gives: '100.0000 mm',
      tolerance: '0.0005 mm',
      origin: 'byHand',
      how: 'case g01 read backwards',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
