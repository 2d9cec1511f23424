/** DRILL.STEP_GAIN: time that one step tool saves against several operations. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { numbersOf } from '../numbers.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'DRILL.STEP_GAIN',
  family: 'DRILL',
  summary: 'Time that one step tool saves against several operations, for one part',
  searchWords: ['step drill', 'combination tool', 'special tool', 'cycle time', 'tool change'],
  parameters: [
    parameter('cut_time', {
      name: 'step_tool_time',
      symbol: 't_step',
      meaning: 'time of the step tool for one part',
    }),
    parameter('cut_time', {
      name: 'operation_times',
      symbol: 't_op',
      list: true,
      meaning: 'times of the operations that it takes the place of',
    }),
    parameter('change_time', {
      name: 'tool_change_time',
      metric: 's',
      inch: 's',
      meaning: 'time from chip to chip of one tool change',
    }),
  ],
  result: { kind: 'time', symbol: 'gain', meaning: 'time saved for one part; negative where it costs time' },
  reading: 'SUM(t_op) + (COUNT(t_op) - 1) * t_change - t_step',
  compute({ t_step, t_op, t_change }) {
    const times = numbersOf(t_op);
    if (typeof t_step !== 'number' || typeof t_change !== 'number')
      return failure('#VALUE!', 'value missing');
    if (times.length < 2)
      return failure(
        '#NUM!',
        `operation times: ${times.length} given, a step tool takes the place of at least 2`,
      );
    return times.reduce((sum, time) => sum + time, 0) + (times.length - 1) * t_change - t_step;
  },
  cautions: [{ when: 'gain <= 0 s', text: 'the step tool saves no time' }],
  remarks: ['The speed of a step tool is set by its largest step, the feed by its weakest.'],
  sources: ['derived'],
  examples: [
    {
      given: ['20 s', '{12;8;6} s', '5 s'],
      gives: '16 s',
      origin: 'byHand',
      how: '26 s and two changes of 5 s against 20 s',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
