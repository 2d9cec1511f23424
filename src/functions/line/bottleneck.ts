/** LINE.BOTTLENECK: the operation that limits the output. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { CYCLE_TIMES, LINE_REFUSALS, MACHINES } from '../line.ts';
import { numbersOf } from '../numbers.ts';

export default {
  name: 'LINE.BOTTLENECK',
  family: 'LINE',
  summary: 'Number of the operation that limits the output of a line',
  searchWords: ['slowest operation', 'constraint', 'takt', 'balance'],
  parameters: [CYCLE_TIMES, MACHINES],
  result: { kind: 'count', symbol: 'operation', meaning: 'number of the operation, the first of equal ones' },
  reading: 'operation with the least machines / t_cycle',
  compute({ t_cycle, machines }, _note, caution) {
    const counts = numbersOf(machines);
    const rates = numbersOf(t_cycle).map((time, i) => (counts[i] ?? 0) / time);
    const least = Math.min(...rates);
    const place = rates.findIndex((rate) => rate <= least * (1 + 1e-9));
    const next = rates.findIndex((rate, i) => i !== place && rate <= least * 1.05);
    if (next >= 0)
      caution(`operation ${next + 1} is within 5 % of it: easing one alone gains next to nothing`);
    return place + 1;
  },
  refuses: LINE_REFUSALS,
  sources: ['derived'],
  examples: [
    {
      given: ['{84;140;62} s', '{1;2;1}'],
      gives: '1',
      origin: 'byHand',
      how: '84 s against 70 s and 62 s',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
