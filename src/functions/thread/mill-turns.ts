/** THREAD.MILL_TURNS: turns of a thread mill around the hole. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';
import { CUTTER_LENGTH, ROWS, THREAD_LENGTH } from '../thread-profile.ts';

export default {
  name: 'THREAD.MILL_TURNS',
  family: 'THREAD',
  summary: 'Turns around the hole that a thread mill needs',
  searchWords: ['thread milling', 'helical interpolation', 'single point', 'passes'],
  parameters: [
    parameter('pitch', { usual: { from: '0.2 mm', to: '8 mm' }, meaning: 'pitch of the thread' }),
    THREAD_LENGTH,
    ROWS,
    CUTTER_LENGTH,
  ],
  result: { kind: 'count', symbol: 'turns', meaning: 'turns around the hole' },
  equation: 'IF(rows = "single"; L / P; CEILING(L / L_c) * IF(rows = "every"; 1; 2))',
  sources: ['geometry'],
  examples: [
    { given: ['1.5 mm', '15 mm', '"single"'], gives: '10', origin: 'byHand', how: '15 over 1.5' },
    {
      given: ['1.5 mm', '25 mm', '"every other"', '10 mm'],
      gives: '6',
      origin: 'byHand',
      how: 'three positions of 10 mm, two turns each',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
