/** TURN.CHIP: chip thickness of a straight edge in turning. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'TURN.CHIP',
  family: 'TURN',
  summary: 'Chip thickness in turning from feed and cutting edge angle',
  searchWords: ['undeformed chip thickness', 'lead angle', 'approach angle', 'hex', 'chip thinning'],
  parameters: [parameter('cutting_edge_angle'), parameter('feed_per_revolution')],
  result: { kind: 'length', symbol: 'h', meaning: 'thickness of the undeformed chip' },
  equation: 'f * SIN(kappa_r)',
  remarks: [
    'Where the depth of cut is below the nose radius the corner alone cuts: take the angle from CUT.ROUND_ANGLE with twice the nose radius as the insert diameter.',
  ],
  sources: ['ISO 3002'],
  examples: [
    {
      given: ['30 deg', '0.4 mm'],
      gives: '0.2 mm',
      origin: 'byHand',
      how: '0.4 mm times sin 30 deg = 0.5',
    },
    {
      given: ['45 deg', '0.3 mm'],
      gives: '0.212132 mm',
      origin: 'byHand',
      how: '0.3 mm over the square root of 2',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
