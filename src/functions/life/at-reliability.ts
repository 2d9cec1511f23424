/** LIFE.AT_RELIABILITY: life that a stated share of the edges passes. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'LIFE.AT_RELIABILITY',
  family: 'LIFE',
  summary: 'Life that a stated share of the edges passes, by a Weibull distribution',
  searchWords: ['Weibull', 'B10', 'safe life', 'change interval'],
  parameters: [
    {
      name: 'shape',
      symbol: 'shape',
      kind: 'ratio',
      hard: { above: '0' },
      usual: { from: '0.5', to: '20' },
      meaning: 'shape of the distribution',
    },
    parameter('tool_life', { name: 'scale', symbol: 'scale', meaning: 'scale of the distribution' }),
    parameter('reliability'),
  ],
  result: { kind: 'time', symbol: 'T', meaning: 'life that this share of the edges passes' },
  steps: [
    {
      symbol: 'power',
      meaning: 'logarithm of life over scale',
      kind: 'number',
      equation: 'LN(-LN(R)) / shape',
    },
  ],
  equation: 'scale * (-LN(R))^(1 / shape)',
  refuses: [{ when: 'ABS(power) > 300', text: 'a shape of {shape} gives a life beyond any number' }],
  cautions: [{ when: 'R > 0.99', text: 'so far out in the tail the distribution is not known from trials' }],
  sources: ['W2'],
  examples: [
    {
      given: ['2', '100 min', '0.9'],
      gives: '32.45928459745 min',
      origin: 'byHand',
      how: 'case l32: 100 sqrt(-ln 0.9)',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
