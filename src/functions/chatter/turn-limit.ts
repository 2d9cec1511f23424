/** CHATTER.TURN_LIMIT: chip width of turning without chatter at any speed. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CHATTER.TURN_LIMIT',
  family: 'CHATTER',
  summary: 'Chip width of turning or boring that is free of chatter at any speed',
  searchWords: ['stability', 'vibration', 'boring bar', 'regenerative', 'depth limit'],
  parameters: [
    parameter('stiffness', { meaning: 'modal stiffness of the mode' }),
    parameter('damping_ratio'),
    parameter('specific_force'),
    {
      name: 'direction_factor',
      symbol: 'mu',
      kind: 'ratio',
      hard: { above: '0' },
      usual: { from: '0.1', to: '1' },
      default: { value: '1' },
      meaning: 'share of the cutting force that moves the mode across the chip',
    },
  ],
  result: { kind: 'length', symbol: 'b_lim', meaning: 'largest chip width without chatter' },
  equation: '2 * k * zeta * (1 + zeta) / (kc * mu)',
  remarks: [
    'One mode only; the specific force is that of this chip thickness.',
    'Low speed is better than this: rubbing on the wave damps.',
  ],
  sources: ['T2', 'A1'],
  examples: [
    {
      given: ['301.3333 N/um', '0.012', '1000 MPa'],
      gives: '7.31878 mm',
      origin: 'byHand',
      how: 'case h03: 2 k zeta (1 + zeta)/Kf',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
