/** LIFE.INSERTS_FOR: inserts to buy for an order. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'LIFE.INSERTS_FOR',
  family: 'LIFE',
  summary: 'Inserts to buy for a number of parts',
  searchWords: ['order', 'purchase', 'stock', 'insert consumption', 'batch'],
  parameters: [
    {
      name: 'parts',
      symbol: 'parts',
      kind: 'count',
      hard: { least: '1' },
      whole: true,
      usual: { from: '1', to: '1000000' },
      meaning: 'parts to make',
    },
    {
      name: 'parts_per_edge',
      symbol: 'per_edge',
      kind: 'count',
      hard: { least: '1' },
      usual: { from: '1', to: '10000' },
      meaning: 'parts that one set of edges lasts',
    },
    parameter('edges_per_insert'),
    parameter('inserts', { name: 'inserts_per_tool', meaning: 'inserts on the tool' }),
  ],
  result: { kind: 'count', symbol: 'to_buy', meaning: 'inserts to buy' },
  steps: [
    {
      symbol: 'edge_sets',
      meaning: 'sets of edges',
      kind: 'count',
      equation: 'CEILING(parts / per_edge)',
    },
  ],
  equation: 'CEILING(edge_sets / edges) * inserts',
  remarks: ['Broken edges are not in it.'],
  sources: ['derived'],
  examples: [
    {
      given: ['5000', '13', '4', '6'],
      gives: '582',
      origin: 'byHand',
      how: '385 sets of edges, 97 sets of inserts',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
