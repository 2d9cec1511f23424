/** RIGID.BAR_FREQUENCY: first bending frequency of a rectangular bar held at one end. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { BAR_HEIGHT } from '../bar.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'RIGID.BAR_FREQUENCY',
  family: 'RIGID',
  summary: 'First bending frequency of a rectangular bar or wall held at one end',
  searchWords: ['natural frequency', 'resonance', 'vibration', 'thin wall', 'workpiece', 'chatter'],
  parameters: [BAR_HEIGHT, parameter('overhang'), parameter('modulus'), parameter('density')],
  result: { kind: 'frequency', symbol: 'fn', meaning: 'first bending frequency' },
  equation: '1.875104068711961^2 / (2 * PI()) * h / (SQRT(12) * l^2) * SQRT(E / rho)',
  cautions: [{ when: 'l < 5 * h', text: '{l} is less than 5 times the height {h}: the value is too high' }],
  remarks: ['Clamped ends are not rigid and lower it by 10 to 40 %: measure where it matters.'],
  sources: ['R2'],
  examples: [
    {
      given: ['5 mm', '50 mm', '70 GPa', '2700 kg/m3'],
      gives: '1645.04 Hz',
      origin: 'byHand',
      how: '3.51602/(2 pi) times 5/(3.46410 50^2 mm) times 5091.75 m/s',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
