/** CHATTER.POCKET_SPEED: spindle speed at which the teeth fall in step with a mode. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CHATTER.POCKET_SPEED',
  family: 'CHATTER',
  summary: 'Spindle speed at which the teeth fall in step with a frequency',
  searchWords: ['stability', 'lobes', 'sweet spot', 'vibration', 'microphone'],
  parameters: [
    parameter('teeth'),
    parameter('frequency', { meaning: 'frequency of the mode, or heard at chatter' }),
    {
      name: 'pocket',
      symbol: 'pocket',
      kind: 'count',
      hard: { least: '1' },
      whole: true,
      usual: { from: '1', to: '20' },
      default: { value: '1' },
      meaning: 'whole waves from tooth to tooth: 1 is the fastest and deepest pocket',
    },
  ],
  result: { kind: 'rotational speed', symbol: 'n', meaning: 'spindle speed' },
  equation: 'fn / (z * pocket)',
  remarks: [
    'The true pocket lies higher by 0.5 to 0.7 times the damping ratio (3 % damping: 1.5 to 1.9 %).',
    'Stay below the highest speed of tool, holder and spindle.',
  ],
  sources: ['A1', 'derived'],
  examples: [
    {
      given: ['4', '730 Hz', '3'],
      gives: '3650 1/min',
      origin: 'byHand',
      how: 'case h14: 730/12 turns in a second',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
