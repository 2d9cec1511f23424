/** LINE.MACHINES_FOR: machines of one operation for a wanted output. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'LINE.MACHINES_FOR',
  family: 'LINE',
  summary: 'Machines that one operation needs for a wanted output',
  searchWords: ['capacity', 'how many machines', 'parts per hour', 'takt'],
  parameters: [
    parameter('cycle_time'),
    {
      name: 'wanted_rate',
      symbol: 'wanted_rate',
      kind: 'rate',
      metric: 'parts/h',
      inch: 'parts/h',
      hard: { above: '0' },
      usual: { from: '1 parts/h', to: '2000 parts/h' },
      meaning: 'parts wanted in a time',
    },
    optional('availability', '1'),
  ],
  result: { kind: 'count', symbol: 'machines', meaning: 'machines, whole' },
  equation: 'CEILING(t_cycle * wanted_rate / availability)',
  sources: ['derived'],
  examples: [
    {
      given: ['84 s', '90 parts/h', '0.85'],
      gives: '3',
      origin: 'byHand',
      how: '2.1 machines that never stop are 2.47 at 85 %',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
