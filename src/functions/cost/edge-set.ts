/** COST.EDGE_SET: cost of one set of edges. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'COST.EDGE_SET',
  family: 'COST',
  summary: 'Cost of one set of edges',
  searchWords: ['insert cost', 'cost per edge', 'tool cost'],
  parameters: [
    parameter('insert_price'),
    parameter('inserts'),
    parameter('edges_per_insert'),
    optional('share_used', '1'),
    {
      name: 'body_price',
      symbol: 'C_body',
      kind: 'money',
      metric: 'money',
      inch: 'money',
      hard: { least: '0' },
      default: { value: '0 money' },
      meaning: 'price of the tool body',
    },
    {
      name: 'body_life_in_sets',
      symbol: 'N_body',
      kind: 'count',
      hard: { above: '0' },
      default: { value: '1' },
      meaning: 'sets of edges that the body lasts',
    },
  ],
  result: { kind: 'money', symbol: 'C_set', meaning: 'cost of one set of edges' },
  equation: 'price * inserts / (edges * q) + C_body / N_body',
  sources: ['G2'],
  examples: [
    {
      given: ['12 money', '6', '4', '0.9', '800 money', '200'],
      gives: '24 money',
      origin: 'byHand',
      how: '72 money over 3.6 edges are 20, and 4 for the body',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
