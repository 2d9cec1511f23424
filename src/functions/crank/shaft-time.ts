/** CRANK.SHAFT_TIME: time for all journals of a shaft, handling included. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { CUTTERS, INDEX_TIME, JOURNALS, LOAD_TIME } from '../orbit.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CRANK.SHAFT_TIME',
  family: 'CRANK',
  summary: 'Time for all journals of a shaft with indexing and loading',
  searchWords: ['crankshaft', 'cycle time', 'pins', 'mains'],
  parameters: [
    parameter('cut_time', {
      name: 'journal_time',
      symbol: 't_j',
      metric: 's',
      inch: 's',
      meaning: 'time for one journal',
    }),
    JOURNALS,
    CUTTERS,
    INDEX_TIME,
    LOAD_TIME,
  ],
  result: { kind: 'time', symbol: 't_shaft', meaning: 'time for one shaft' },
  steps: [
    {
      symbol: 'settings',
      meaning: 'positions one after the other',
      kind: 'count',
      equation: 'CEILING(journals / cutters)',
    },
  ],
  equation: 'settings * (t_j + t_index) + t_load',
  refuses: [
    { when: 'cutters > journals', text: '{cutters} cutters at once are more than the {journals} journals' },
  ],
  cautions: [
    {
      when: 'journals / cutters <> CEILING(journals / cutters)',
      text: 'the journals do not divide by the cutters: in the last position some stand idle',
    },
  ],
  sources: ['derived'],
  examples: [
    {
      given: ['20 s', '5', '2', '6 s', '20 s'],
      gives: '98 s',
      origin: 'byHand',
      how: '3 positions of 26 s and 20 s',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
