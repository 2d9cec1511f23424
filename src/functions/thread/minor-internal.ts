/** THREAD.MINOR_INTERNAL: basic minor diameter of the internal thread. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { MAJOR, PITCH } from '../thread-profile.ts';

export default {
  name: 'THREAD.MINOR_INTERNAL',
  family: 'THREAD',
  summary: 'Basic minor diameter of the internal thread',
  searchWords: ['D1', 'core diameter', 'hole', 'smallest hole', 'nut'],
  parameters: [MAJOR, PITCH],
  result: { kind: 'length', symbol: 'D1', meaning: 'basic minor diameter of the internal thread' },
  equation: 'd - 5 * SQRT(3) / 8 * P',
  remarks: ['Also the basic minor diameter of the external thread; its root is THREAD.ROOT_EXTERNAL.'],
  sources: ['ISO 724', 'B1.1'],
  examples: [
    {
      given: ['10 mm', '1.5 mm'],
      gives: '8.376 mm',
      origin: 'published',
      how: 'ISO 724, from memory (case f01)',
    },
    {
      given: ['20 mm', '2.5 mm'],
      gives: '17.294 mm',
      origin: 'published',
      how: 'ISO 724, from memory (case f01)',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
