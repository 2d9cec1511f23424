/** RIGID.FREQUENCY: first bending frequency of a round bar held at one end. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'RIGID.FREQUENCY',
  family: 'RIGID',
  summary: 'First bending frequency of a round tool held at one end',
  searchWords: ['natural frequency', 'resonance', 'vibration', 'boring bar', 'chatter'],
  parameters: [
    parameter('diameter', { meaning: 'diameter of the bar' }),
    parameter('overhang'),
    parameter('modulus'),
    parameter('density'),
  ],
  result: { kind: 'frequency', symbol: 'fn', meaning: 'first bending frequency' },
  equation: '1.875104068711961^2 / (8 * PI()) * D / l^2 * SQRT(E / rho)',
  cautions: [{ when: 'l < 5 * D', text: '{l} is less than 5 diameters: the value is too high' }],
  remarks: ['Clamped ends are not rigid and lower it by 10 to 40 %: measure where it matters.'],
  sources: ['R2'],
  examples: [
    {
      given: ['20 mm', '100 mm', '210 GPa', '7850 kg/m3'],
      gives: '1447.157192 Hz',
      origin: 'byHand',
      how: 'case g05: (beta L)^2/(2 pi L^2) sqrt(E I/(rho A)), beta L = 1.87510407',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
