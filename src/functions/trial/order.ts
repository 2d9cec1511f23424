/** TRIAL.ORDER: runs in an order of chance that anyone can repeat. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { randomOrder } from '../../numeric/index.ts';

export default {
  name: 'TRIAL.ORDER',
  family: 'TRIAL',
  summary: 'Runs of a trial in an order of chance, the same for the same seed',
  searchWords: ['randomise', 'random order', 'shuffle', 'test plan', 'run order'],
  parameters: [
    {
      name: 'runs',
      symbol: 'runs',
      kind: 'count',
      hard: { least: '2', most: '1000' },
      whole: true,
      meaning: 'runs of the trial',
    },
    {
      name: 'seed',
      symbol: 'seed',
      kind: 'count',
      hard: { least: '0' },
      whole: true,
      usual: { from: '0', to: '999999999' },
      meaning: 'any whole number, a date as 20260309',
    },
  ],
  result: {
    kind: 'count',
    symbol: 'order',
    meaning: 'numbers of the runs, one below the other',
    list: true,
  },
  reading: 'swap from the last down: x = (1664525 x + 1013904223) mod 2^32, place floor(x (i + 1) / 2^32)',
  compute({ runs, seed }) {
    return { grid: randomOrder(Number(runs), Number(seed)).map((place) => [place + 1]) };
  },
  remarks: ['Run the trial in this order, so that what drifts (temperature, bar, operator) hits all alike.'],
  sources: ['shuffle'],
  examples: [
    {
      given: ['8', '20260309'],
      gives: ['1', '8', '7', '3', '4', '6', '5', '2'],
      origin: 'byHand',
      how: 'generator followed by hand',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
