/** CUT.TIME: time to feed along a length, in one or several passes. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CUT.TIME',
  family: 'CUT',
  summary: 'Time at feed over a length, in passes',
  searchWords: ['cycle time', 'machining time', 'minutes'],
  parameters: [
    parameter('feed_rate'),
    parameter('length'),
    {
      name: 'passes',
      symbol: 'passes',
      kind: 'count',
      hard: { least: '1' },
      whole: true,
      default: { value: '1' },
      meaning: 'passes over the same length',
    },
  ],
  result: { kind: 'time', symbol: 't', meaning: 'time at feed' },
  equation: 'passes * L / vf',
  remarks: ['Rapid moves and speeding up are not in it.'],
  sources: ['G1'],
  examples: [
    {
      given: ['1.44 in/min', '3 in'],
      gives: '2.083 min',
      tolerance: '0.0005 min',
      origin: 'published',
      how: 'G1, solution to problem 22.3, case a13: facing from 6 in to the middle',
    },
    {
      given: ['500 mm/min', '250 mm', '4'],
      gives: '2 min',
      origin: 'byHand',
      how: 'half a minute a pass, four passes',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
