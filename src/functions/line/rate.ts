/** LINE.RATE: output of operations one after the other. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { CYCLE_TIMES, LINE_REFUSALS, MACHINES } from '../line.ts';
import { optional } from '../parameter.ts';

export default {
  name: 'LINE.RATE',
  family: 'LINE',
  summary: 'Output of a line: its slowest operation',
  searchWords: ['parts per hour', 'throughput', 'takt', 'production rate'],
  parameters: [CYCLE_TIMES, MACHINES, optional('availability', '1')],
  result: { kind: 'rate', symbol: 'output', meaning: 'parts in a time' },
  equation: 'MIN(machines / t_cycle) * availability',
  refuses: LINE_REFUSALS,
  remarks: ['Buffers and changeovers are not in it.'],
  sources: ['derived'],
  examples: [
    {
      given: ['{84;140;62} s', '{1;2;1}', '0.9'],
      gives: '38.5714 parts/h',
      origin: 'byHand',
      how: '3600/84 parts, nine tenths of the time',
    },
    {
      given: ['{6} min', '{1}'],
      gives: '10 parts/h',
      origin: 'published',
      how: 'case j06, pallet shuttle',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
