/** CRANK.JOURNAL_TIME: time to plunge and go once around a journal. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { JOURNAL_FEED, OVERLAP, PLUNGE_FEED, PLUNGE_LENGTH } from '../orbit.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CRANK.JOURNAL_TIME',
  family: 'CRANK',
  summary: 'Time to plunge and go once around a journal',
  searchWords: ['crankshaft', 'orbital milling', 'pin', 'cycle time'],
  parameters: [
    parameter('teeth'),
    parameter('spindle_speed'),
    PLUNGE_FEED,
    JOURNAL_FEED,
    parameter('journal_diameter'),
    PLUNGE_LENGTH,
    OVERLAP,
  ],
  result: { kind: 'time', symbol: 't_j', meaning: 'time for one journal' },
  equation: '(L_p / fp + PI() * Dm * (1 + overlap / 360 deg) / fj) / (z * n)',
  sources: ['derived'],
  examples: [
    {
      given: ['7', '90 1/min', '0.25 mm', '0.9 mm', '50 mm', '8 mm', '5 deg'],
      gives: '19.9007 s',
      origin: 'byHand',
      how: '32 and 176.957 teeth, at 10.5 teeth in a second',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
