/** TURN.HOLLOW_TORQUE: torque of a hollow mill that turns a post. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'TURN.HOLLOW_TORQUE',
  family: 'TURN',
  summary: 'Torque of a hollow mill turning a post to size',
  searchWords: ['hollow mill', 'box tool', 'spigot', 'post', 'torque'],
  parameters: [
    parameter('feed_per_revolution'),
    parameter('start_diameter', { usual: { from: '1 mm', to: '300 mm' } }),
    parameter('finished_diameter', { usual: { from: '0.5 mm', to: '300 mm' } }),
    parameter('specific_force'),
  ],
  result: { kind: 'torque', symbol: 'M', meaning: 'torque at the cutting edges' },
  equation: 'kc * f * (Ds - Dm) * (Ds + Dm) / 8',
  refuses: [
    { when: 'Dm >= Ds', text: 'the finished diameter {Dm} must be less than the start diameter {Ds}' },
  ],
  remarks: ['The count of edges does not matter: together they take the feed of one turn.'],
  sources: ['derived'],
  examples: [
    {
      given: ['0.2 mm', '20 mm', '12 mm', '2000 MPa'],
      gives: '12.8 N·m',
      origin: 'byHand',
      how: 'chip area 0.2 mm times 4 mm, force 1600 N at the mean radius 8 mm',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
