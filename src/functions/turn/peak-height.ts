/** TURN.PEAK_HEIGHT: height of the feed marks of a round corner. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'TURN.PEAK_HEIGHT',
  family: 'TURN',
  summary: 'Height of the feed marks of a round corner, Rt in theory',
  searchWords: ['Rt', 'Rz', 'surface finish', 'kinematic roughness', 'nose radius', 'feed marks'],
  parameters: [parameter('nose_radius'), parameter('feed_per_revolution')],
  result: { kind: 'roughness', symbol: 'Rt', meaning: 'height of the feed marks' },
  equation: '(f^2 / 4) / (r_eps + SQRT(r_eps^2 - f^2 / 4))',
  refuses: [{ when: 'f >= 2 * r_eps', text: 'the feed {f} must be less than twice the nose radius {r_eps}' }],
  remarks: [
    'Where the feed is above 2 r sin(minor cutting edge angle) the straight flanks show and the marks differ.',
    'Wiper corners do not follow it. Real marks are higher: side flow, vibration, built-up edge.',
  ],
  sources: ['geometry'],
  examples: [
    {
      given: ['0.8 mm', '0.3 mm'],
      gives: '14.18831772 um',
      origin: 'byHand',
      how: 'case i13: 0.8 - sqrt(0.64 - 0.0225)',
    },
    { given: ['0.5 mm', '0.6 mm'], gives: '100 um', origin: 'byHand', how: '0.5 - sqrt(0.25 - 0.09)' },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
