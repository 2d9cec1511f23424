/** THREAD.FORM_HOLE: hole for a formed thread. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional } from '../parameter.ts';
import { MAJOR, PITCH } from '../thread-profile.ts';

export default {
  name: 'THREAD.FORM_HOLE',
  family: 'THREAD',
  summary: 'Hole for a formed internal thread from the wanted thread height',
  searchWords: ['roll tap', 'forming tap', 'thread forming', 'fluteless', 'drill size'],
  parameters: [MAJOR, PITCH, optional('percent', '65 %', { usual: { from: '55 %', to: '75 %' } })],
  result: { kind: 'length', symbol: 'Dh', meaning: 'diameter of the hole' },
  equation: 'd - 0.68 * P * percent',
  remarks: [
    'A rule of the trade: the balance of areas of the profile wants a smaller hole (M10 at 65 %: 9.20 mm against 9.34 mm). Make a trial hole and gauge the thread.',
    'The hole must be held within about 0.03 to 0.05 mm to either side.',
  ],
  sources: ['form hole'],
  examples: [
    {
      given: ['10 mm', '1.5 mm', '65 %'],
      gives: '9.337 mm',
      origin: 'byHand',
      how: '10 - 0.68 times 1.5 times 0.65; 9.34 mm in the rule of the trade (from memory)',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
