/** Operations one after the other, each on so many machines. */

import type { Condition, Parameter } from '../definition/index.ts';
import { parameter } from './parameter.ts';

export const CYCLE_TIMES: Parameter = parameter('cycle_time', {
  name: 'cycle_times',
  list: true,
  meaning: 'time of one part on one machine, for each operation',
});

export const MACHINES: Parameter = parameter('machines', { list: true });

export const LINE_REFUSALS: readonly Condition[] = [
  { when: 'COUNT(t_cycle) <> COUNT(machines)', text: 'cycle times and machines differ in count' },
];
