/** TURN.MEAN_ROUGHNESS: mean roughness of the feed marks of a round corner. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'TURN.MEAN_ROUGHNESS',
  family: 'TURN',
  summary: 'Mean roughness Ra of the feed marks of a round corner, in theory',
  searchWords: ['Ra', 'surface finish', 'kinematic roughness', 'arithmetic mean', 'AA'],
  parameters: [parameter('nose_radius'), parameter('feed_per_revolution')],
  result: { kind: 'roughness', symbol: 'Ra', meaning: 'mean roughness of the feed marks' },
  equation: 'f^2 / (18 * SQRT(3) * r_eps)',
  refuses: [{ when: 'f >= 2 * r_eps', text: 'the feed {f} must be less than twice the nose radius {r_eps}' }],
  cautions: [
    {
      when: 'f > 0.5 * r_eps',
      text: 'a feed of {f} is above half the nose radius {r_eps}: the arc is rougher than the parabola, 1.3 % at 0.5, 9.3 % at 1.25',
    },
  ],
  remarks: [
    'Real Ra is higher: side flow, vibration, built-up edge, wear.',
    'Textbooks round 18 sqrt(3) = 31.18 to 32, 2.6 % low.',
  ],
  sources: ['derived', 'ISO 21920'],
  examples: [
    {
      given: ['1 mm', '0.1 mm'],
      gives: '0.32075 um',
      origin: 'otherProgram',
      how: 'mean deviation of the parabolic profile: factor 0.032075 of case i12',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
