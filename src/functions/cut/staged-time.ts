/** CUT.STAGED_TIME: time at feed over several stretches, each with its own feed rate. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { numbersOf } from '../numbers.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CUT.STAGED_TIME',
  family: 'CUT',
  summary: 'Time at feed over stretches with different feed rates',
  searchWords: ['cycle time', 'sections', 'entry feed', 'reduced feed'],
  parameters: [
    parameter('feed_rate', {
      name: 'feed_rates',
      symbol: 'vf',
      list: true,
      meaning: 'feed rate of each stretch',
    }),
    parameter('length', { name: 'lengths', list: true, meaning: 'length of each stretch' }),
  ],
  result: { kind: 'time', symbol: 't', meaning: 'time at feed' },
  reading: 'sum of L_i / vf_i',
  compute({ vf, L }) {
    const rates = numbersOf(vf);
    const lengths = numbersOf(L);
    if (rates.length !== lengths.length)
      return failure('#VALUE!', `${rates.length} feed rates do not go with ${lengths.length} lengths`);
    return lengths.reduce((sum, length, i) => sum + length / (rates[i] ?? Number.NaN), 0);
  },
  sources: ['geometry'],
  examples: [
    {
      given: ['{60;240;120} mm/min', '{10;120;20} mm'],
      gives: '50 s',
      origin: 'byHand',
      how: '10 s for the entry, 30 s for the middle, 10 s for the exit',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
