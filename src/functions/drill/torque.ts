/** DRILL.TORQUE: torque of a drill at its lips. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'DRILL.TORQUE',
  family: 'DRILL',
  summary: 'Torque in drilling and boring out',
  searchWords: ['drilling moment', 'twist drill', 'core drill', 'step drill', 'M'],
  parameters: [
    parameter('drill_diameter'),
    parameter('feed_per_revolution'),
    parameter('specific_force', { meaning: 'cutting force for a chip area, at the chip of DRILL.CHIP' }),
    optional('hole_before', '0 mm'),
  ],
  result: { kind: 'torque', symbol: 'M', meaning: 'torque at the lips' },
  equation: 'kc * f * (D - d) * (D + d) / 8',
  refuses: [{ when: 'd >= D', text: 'the hole before, {d}, must be less than the drill {D}' }],
  remarks: [
    'Step drills: one call a step, added up.',
    'Friction of the margins and packed chips are not in it: up to twice as much in deep holes.',
  ],
  sources: ['K2', 'S1'],
  examples: [
    {
      given: ['10 mm', '0.2 mm', '2000 MPa'],
      gives: '5 N·m',
      origin: 'byHand',
      how: 'each lip: 1000 N over 0.1 mm by 5 mm, at 2.5 mm from the axis, two of them',
    },
    {
      given: ['12.7 mm', '0.254 mm', '4011 MPa'],
      gives: '20.54 N·m',
      tolerance: '0.01 N·m',
      origin: 'byHand',
      how: 'Oxford and Shaw 1955 (from memory), case e18: 181.78 lbf·in; 4011 MPa is their power law read as a specific force',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
