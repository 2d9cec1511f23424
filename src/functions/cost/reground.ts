/** COST.REGROUND: cost of one use of a tool that is ground again. */

import type { FunctionDefinition } from '../../definition/index.ts';

export default {
  name: 'COST.REGROUND',
  family: 'COST',
  summary: 'Cost of one use of a tool that is ground again',
  searchWords: ['regrind', 'resharpening', 'solid carbide', 'drill'],
  parameters: [
    {
      name: 'new_price',
      symbol: 'new_price',
      kind: 'money',
      metric: 'money',
      inch: 'money',
      hard: { least: '0' },
      meaning: 'price of the new tool',
    },
    {
      name: 'regrind_price',
      symbol: 'regrind_price',
      kind: 'money',
      metric: 'money',
      inch: 'money',
      hard: { least: '0' },
      meaning: 'price of one regrind with its handling',
    },
    {
      name: 'regrinds',
      symbol: 'k',
      kind: 'count',
      hard: { least: '0' },
      whole: true,
      usual: { from: '0', to: '20' },
      meaning: 'times that the tool is ground again',
    },
  ],
  result: { kind: 'money', symbol: 'C_use', meaning: 'cost of one use' },
  equation: '(new_price + k * regrind_price) / (k + 1)',
  remarks: ['A reground tool is taken to live as long as a new one.'],
  sources: ['derived'],
  examples: [
    {
      given: ['120 money', '30 money', '5'],
      gives: '45 money',
      origin: 'byHand',
      how: '120 and 5 times 30 over 6 uses',
    },
    {
      given: ['20 money', '2 money', '15'],
      gives: '3.125 money',
      origin: 'byHand',
      how: '50 money over 16 uses',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
