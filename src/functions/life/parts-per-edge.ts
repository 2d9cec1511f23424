/** LIFE.PARTS_PER_EDGE: whole parts that one edge lasts. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'LIFE.PARTS_PER_EDGE',
  family: 'LIFE',
  summary: 'Whole parts that one edge lasts',
  searchWords: ['tool life', 'parts per tool', 'pieces'],
  parameters: [
    parameter('tool_life'),
    parameter('cut_time', { name: 'cut_time_per_part', meaning: 'time in the cut for one part' }),
  ],
  result: { kind: 'count', symbol: 'parts', meaning: 'parts per edge' },
  equation: 'INT(T / t_cut)',
  cautions: [{ when: 'parts < 1', text: 'the edge does not last one part' }],
  sources: ['derived'],
  examples: [
    {
      given: ['6.6 min', '2.2 min'],
      gives: '3',
      origin: 'byHand',
      how: '6.6/2.2 is 3; plain doubles fall just short of it',
    },
    { given: ['20 min', '3 min'], gives: '6', origin: 'byHand', how: '18 of 20 min are used' },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
