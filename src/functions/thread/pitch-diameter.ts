/** THREAD.PITCH_DIAMETER: basic pitch diameter. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { MAJOR, PITCH } from '../thread-profile.ts';

export default {
  name: 'THREAD.PITCH_DIAMETER',
  family: 'THREAD',
  summary: 'Basic pitch diameter of a 60 deg thread',
  searchWords: ['d2', 'D2', 'flank diameter', 'effective diameter'],
  parameters: [MAJOR, PITCH],
  result: { kind: 'length', symbol: 'd2', meaning: 'basic pitch diameter' },
  equation: 'd - 3 * SQRT(3) / 8 * P',
  sources: ['ISO 724', 'B1.1'],
  examples: [
    {
      given: ['10 mm', '1.5 mm'],
      gives: '9.026 mm',
      origin: 'published',
      how: 'ISO 724, from memory (case f01)',
    },
    {
      given: ['0.25 in', '0.05 in'],
      gives: '0.2175 in',
      origin: 'published',
      how: 'ASME B1.1 as read in a public table, 1/4-20 (case f04)',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
