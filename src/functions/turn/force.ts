/** TURN.FORCE: cutting force in turning. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'TURN.FORCE',
  family: 'TURN',
  summary: 'Cutting force in turning',
  searchWords: ['tangential force', 'main force', 'Fc', 'chip area', 'tool holder load'],
  parameters: [
    parameter('feed_per_revolution'),
    parameter('depth', {
      symbol: 'ap',
      usual: { from: '0.01 mm', to: '50 mm' },
      meaning: 'depth of cut on the radius',
    }),
    parameter('specific_force'),
  ],
  result: { kind: 'force', symbol: 'Fc', meaning: 'force in the direction of the cutting speed' },
  equation: 'ap * f * kc',
  remarks: [
    'Take the specific force at the chip thickness of TURN.CHIP. Feed force and passive force are smaller and grow faster with wear.',
  ],
  sources: ['K1'],
  examples: [
    {
      given: ['0.25 mm', '4 mm', '2000 MPa'],
      gives: '2000 N',
      origin: 'byHand',
      how: 'a chip of 1 mm2 times 2000 N/mm2',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
