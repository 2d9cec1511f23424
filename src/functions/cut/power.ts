/** CUT.POWER: cutting power from removal rate and specific force. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CUT.POWER',
  family: 'CUT',
  summary: 'Cutting power at the edges from removal rate and specific force',
  searchWords: ['kW', 'horsepower', 'spindle power', 'net power'],
  parameters: [parameter('removal_rate'), parameter('specific_force')],
  result: {
    kind: 'power',
    symbol: 'Pc',
    meaning: 'cutting power; the same for milling, turning and drilling',
  },
  equation: 'Q * kc',
  remarks: [
    'Take the specific force at the mean chip thickness of this cut.',
    'This is the power at the cutter; what the drive must give is more (MACHINE.LOAD).',
  ],
  sources: ['K1'],
  examples: [
    {
      given: ['60 cm3/min', '2000 MPa'],
      gives: '2 kW',
      origin: 'byHand',
      how: '1 cm3 in a second times 2000 J/cm3',
    },
    {
      given: ['166.667 mm3/s', '4928.793845 MPa'],
      gives: '821 W',
      tolerance: '1 W',
      origin: 'published',
      how: 'Ghosh and Mallik, Manufacturing Science, example 4.16, case c39 (recomputed; the book prints 817 W)',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
