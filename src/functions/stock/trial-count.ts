/** STOCK.TRIAL_COUNT: edges that a length of cut wears out. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'STOCK.TRIAL_COUNT',
  family: 'STOCK',
  summary: 'Edges that a length of cut carries to the wear limit',
  searchWords: ['trial', 'test block', 'tool life test', 'repeats'],
  parameters: [
    parameter('feed_rate'),
    parameter('tool_life'),
    parameter('length', { name: 'cut_length', meaning: 'length of cut that there is' }),
  ],
  result: { kind: 'count', symbol: 'edges', meaning: 'edges to the wear limit' },
  equation: 'INT(L / (vf * T))',
  cautions: [{ when: 'edges < 3', text: 'fewer than 3 edges show no scatter' }],
  sources: ['derived'],
  examples: [
    { given: ['500 mm/min', '20 min', '45 m'], gives: '4', origin: 'byHand', how: 'an edge makes 10 m' },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
