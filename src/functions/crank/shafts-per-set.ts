/** CRANK.SHAFTS_PER_SET: whole shafts that a set of inserts lasts. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CRANK.SHAFTS_PER_SET',
  family: 'CRANK',
  summary: 'Shafts that a set of inserts lasts with all its edges',
  searchWords: ['crankshaft', 'tool life', 'parts per set'],
  parameters: [
    parameter('tool_life', { name: 'edge_life', meaning: 'time in the cut that an edge lasts' }),
    parameter('cut_time', {
      name: 'contact_time',
      symbol: 't_contact',
      metric: 's',
      inch: 's',
      meaning: 'time of one edge in the cut for one shaft',
    }),
    parameter('edges_per_insert'),
  ],
  result: { kind: 'count', symbol: 'shafts', meaning: 'shafts for one set of inserts' },
  equation: 'INT(T / t_contact) * edges',
  sources: ['derived'],
  examples: [
    {
      given: ['15 min', '7 s', '4'],
      gives: '512',
      origin: 'byHand',
      how: '900 s hold 128 shafts of 7 s, 4 edges',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
