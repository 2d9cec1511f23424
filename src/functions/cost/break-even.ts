/** COST.BREAK_EVEN: parts above which the dearer purchase pays. */

import type { FunctionDefinition, Parameter } from '../../definition/index.ts';

const money = (name: string, symbol: string, meaning: string): Parameter => ({
  name,
  symbol,
  kind: 'money',
  metric: 'money',
  inch: 'money',
  hard: { least: '0' },
  meaning,
});

export default {
  name: 'COST.BREAK_EVEN',
  family: 'COST',
  summary: 'Parts at which two purchases have cost the same',
  searchWords: ['payback', 'investment', 'special tool', 'batch', 'fixture'],
  parameters: [
    money('price_a', 'price_a', 'price of A, paid once'),
    money('cost_per_part_a', 'cost_a', 'cost of a part with A'),
    money('price_b', 'price_b', 'price of B, paid once'),
    money('cost_per_part_b', 'cost_b', 'cost of a part with B'),
  ],
  result: { kind: 'count', symbol: 'parts', meaning: 'parts at which both cost the same, not rounded' },
  equation: '(price_b - price_a) / (cost_a - cost_b)',
  refuses: [
    {
      when: '(price_b - price_a) * (cost_a - cost_b) <= 0 * price_a * price_a',
      text: 'one of the two is better at any count: prices {price_a} and {price_b}, costs of a part {cost_a} and {cost_b}',
    },
  ],
  sources: ['derived'],
  examples: [
    {
      given: ['0 money', '40 money', '500 money', '16 money'],
      gives: '20.8333',
      origin: 'published',
      how: 'case j04: 30 min at 80 money/h against 6 min at 160 money/h',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
