/** DRILL.REMOVAL_RATE: volume drilled in a time. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'DRILL.REMOVAL_RATE',
  family: 'DRILL',
  summary: 'Metal removal rate in drilling and boring out',
  searchWords: ['MRR', 'chip volume', 'core drilling', 'Q'],
  parameters: [parameter('drill_diameter'), parameter('feed_rate'), optional('hole_before', '0 mm')],
  result: { kind: 'removal rate', symbol: 'Q', meaning: 'volume cut in a time' },
  equation: 'PI() / 4 * (D - d) * (D + d) * vf',
  refuses: [{ when: 'd >= D', text: 'the hole before, {d}, must be less than the drill {D}' }],
  sources: ['G1'],
  examples: [
    {
      given: ['12.7 mm', '188 mm/min'],
      gives: '23800 mm3/min',
      tolerance: '20 mm3/min',
      origin: 'published',
      how: 'Groover, solution to problem 22.10, case e01 (printed rounded)',
    },
    {
      given: ['20 mm', '100 mm/min', '10 mm'],
      gives: '23561.9 mm3/min',
      origin: 'byHand',
      how: 'pi/4 times 300 mm2 times 100 mm/min',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
