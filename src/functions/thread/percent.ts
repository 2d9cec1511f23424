/** THREAD.PERCENT: height of the thread that a hole leaves. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';
import { MAJOR, PITCH } from '../thread-profile.ts';

export default {
  name: 'THREAD.PERCENT',
  family: 'THREAD',
  summary: 'Height of the thread that a hole leaves, in percent of the full height',
  searchWords: ['percent of thread', 'engagement', 'tap drill', 'thread height'],
  parameters: [
    parameter('hole_diameter', { usual: { from: '0.7 * d', to: 'd' } }),
    MAJOR,
    PITCH,
    {
      name: 'method',
      symbol: 'method',
      kind: 'text',
      words: ['cut', 'form'],
      default: { value: '"cut"' },
      meaning: '"cut" or "form"',
    },
  ],
  result: { kind: 'share', symbol: 'percent', meaning: 'height of the thread over its full height' },
  equation: '(d - Dh) / (IF(method = "cut"; 3 * SQRT(3) / 4; 0.68) * P)',
  refuses: [
    { when: 'Dh >= d', text: 'the hole {Dh} must be less than the thread {d}' },
    {
      when: 'Dh <= d - 2 * P',
      text: 'the hole {Dh} is more than two pitches below the thread {d}: no thread is like that',
    },
  ],
  cautions: [
    {
      when: 'percent > 85 %',
      text: 'a height of {percent} asks much of the tap and gains hardly any strength',
    },
    { when: 'percent < 55 %', text: 'a height of {percent} leaves a shallow thread' },
  ],
  sources: ['tap hole', 'form hole'],
  examples: [
    {
      given: ['0.201 in', '0.25 in', '0.05 in'],
      gives: '75.4 %',
      origin: 'published',
      how: 'drill no. 7 for 1/4-20, read in a public page (case f07)',
    },
    {
      given: ['9.337 mm', '10 mm', '1.5 mm', '"form"'],
      gives: '65.0 %',
      origin: 'byHand',
      how: '0.663 over 1.02',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
