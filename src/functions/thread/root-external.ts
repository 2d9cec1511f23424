/** THREAD.ROOT_EXTERNAL: root diameter of the external thread with a rounded root. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { MAJOR, PITCH } from '../thread-profile.ts';

export default {
  name: 'THREAD.ROOT_EXTERNAL',
  family: 'THREAD',
  summary: 'Root diameter d3 of the external thread with rounded root',
  searchWords: ['d3', 'core diameter', 'bolt', 'stress area', 'root'],
  parameters: [MAJOR, PITCH],
  result: { kind: 'length', symbol: 'd3', meaning: 'root diameter of the external thread' },
  equation: 'd - 17 * SQRT(3) / 24 * P',
  remarks: [
    'Not the minor diameter of ISO 724. The stress area of a bolt is pi/4 ((d2 + d3)/2)^2 with THREAD.PITCH_DIAMETER.',
  ],
  sources: ['ISO 898-1'],
  examples: [
    {
      given: ['10 mm', '1.5 mm'],
      gives: '8.160 mm',
      origin: 'published',
      how: 'DIN 13-1, d3 of M10, from memory',
    },
    {
      given: ['0.5 in', '0.0769230769 in'],
      gives: '0.4056 in',
      tolerance: '0.00011 in',
      origin: 'published',
      how: 'ASME B1.1 as read in a public table, 1/2-13 (case f04)',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
