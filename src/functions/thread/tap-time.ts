/** THREAD.TAP_TIME: time of tapping in and out. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'THREAD.TAP_TIME',
  family: 'THREAD',
  summary: 'Time of tapping a thread and coming back out',
  searchWords: ['tapping', 'rigid tapping', 'G84', 'cycle time', 'synchronous'],
  parameters: [
    parameter('spindle_speed'),
    parameter('pitch', { usual: { from: '0.2 mm', to: '8 mm' }, meaning: 'pitch of the thread' }),
    parameter('depth', { meaning: 'travel of the tap in the work' }),
    parameter('run_in', { default: { value: '0 mm' }, meaning: 'travel before the tap touches' }),
    {
      name: 'return_speed_ratio',
      symbol: 'k_r',
      kind: 'ratio',
      hard: { above: '0', most: '10' },
      usual: { from: '0.5', to: '4' },
      default: { value: '1' },
      meaning: 'spindle speed on the way out over that on the way in',
    },
  ],
  result: { kind: 'time', symbol: 't', meaning: 'time in and out' },
  equation: '(L + run_in) / (P * n) * (1 + 1 / k_r)',
  remarks: ['The reversal of the spindle is not in it: 0.2 to 0.5 s in rigid tapping.'],
  sources: ['geometry'],
  examples: [
    {
      given: ['636.62 1/min', '1.5 mm', '20 mm'],
      gives: '2.51327 s',
      origin: 'byHand',
      how: 'twice the 1.25664 s of case f15 (common practice, no source)',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
