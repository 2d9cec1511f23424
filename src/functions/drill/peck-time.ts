/** DRILL.PECK_TIME: time of a hole drilled in pecks. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'DRILL.PECK_TIME',
  family: 'DRILL',
  summary: 'Time of a hole drilled in pecks, with or without full retract',
  searchWords: ['pecking', 'deep hole', 'chip breaking', 'G83', 'G73', 'woodpecker', 'cycle time'],
  parameters: [
    parameter('feed_rate'),
    parameter('rapid_rate'),
    parameter('depth', { name: 'peck', symbol: 'peck', meaning: 'depth of one peck' }),
    parameter('depth', { meaning: 'depth of the hole to the tip of the drill' }),
    parameter('clearance', {
      meaning: 'start above the work, and distance kept from the last depth when coming back',
    }),
    {
      name: 'dwell',
      symbol: 't_d',
      kind: 'time',
      metric: 's',
      inch: 's',
      hard: { least: '0' },
      usual: { from: '0 s', to: '5 s' },
      default: { value: '0 s' },
      meaning: 'dwell at the bottom of each peck',
    },
    {
      name: 'full_retract',
      symbol: 'full',
      kind: 'logical',
      default: { value: 'TRUE' },
      meaning: 'TRUE: out of the hole after each peck; FALSE: back by the clearance only',
    },
  ],
  result: { kind: 'time', symbol: 't', meaning: 'time from the start above the work until back there' },
  steps: [
    { symbol: 'N', meaning: 'pecks', kind: 'count', equation: 'CEILING(L / peck)' },
    {
      symbol: 'L_in',
      meaning: 'sum of the depths of all pecks but the last',
      kind: 'length',
      equation: 'peck * N * (N - 1) / 2',
    },
  ],
  equation: '(L + N * c) / vf + N * t_d + IF(full; 2 * L_in + L + N * c; N * c + L) / vr',
  refuses: [
    {
      when: 'vr < vf',
      text: 'the rapid rate {vr} is less than the feed rate {vf}',
    },
    { when: 'N > 10000', text: '{N} pecks are more than 10000' },
  ],
  cautions: [
    { when: 'peck > L', text: 'the peck {peck} is more than the depth {L}: one peck' },
    {
      when: 'AND(c < 0.2 mm; N > 1)',
      text: 'with a clearance of {c} the drill comes back at rapid almost onto the bottom of the hole',
    },
  ],
  remarks: [
    'The drill starts at the clearance above the work and comes back to the clearance short of the last depth.',
    'Stainless steel and heat-resistant alloys (groups M and S) harden under a rubbing drill: do not peck them where it can be helped.',
    'Speeding up and slowing down of the axis are not in it.',
  ],
  sources: ['derived'],
  examples: [
    {
      given: ['300 mm/min', '10 m/min', '10 mm', '55 mm', '2 mm', '0.2 s', 'TRUE'],
      gives: '16.802 s',
      origin: 'otherProgram',
      how: 'simulated move by move',
    },
    {
      given: ['60 mm/min', '6000 mm/min', '10 mm', '20 mm', '0 mm', '0 s', 'FALSE'],
      gives: '20.2 s',
      origin: 'byHand',
      how: '20 mm down at 1 mm/s, 20 mm up at 100 mm/s',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
