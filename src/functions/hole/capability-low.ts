/** HOLE.CAPABILITY_LOW: lower confidence limit of Cpk. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { normal } from '../../numeric/index.ts';
import { CAPABILITY_PARAMETERS, CPK, NO_TOLERANCE } from '../capability.ts';
import { optional } from '../parameter.ts';

export default {
  name: 'HOLE.CAPABILITY_LOW',
  family: 'HOLE',
  summary: 'Cpk that is reached with a confidence, from a sample of this count',
  searchWords: ['Cpk', 'confidence', 'sample size', 'process capability', 'acceptance'],
  parameters: [
    ...CAPABILITY_PARAMETERS,
    {
      name: 'count',
      symbol: 'k',
      kind: 'count',
      hard: { least: '5' },
      usual: { from: '5', to: '1000' },
      whole: true,
      meaning: 'measured parts',
    },
    optional('confidence', '95 %', { symbol: 'q' }),
  ],
  result: { kind: 'ratio', symbol: 'Cpk_low', meaning: 'lower limit of the capability index' },
  steps: [{ symbol: 'Cpk', meaning: 'capability index of the sample', kind: 'ratio', equation: CPK }],
  reading: 'Cpk - z * SQRT(1 / (9 * k) + Cpk^2 / (2 * (k - 1))), z one-sided normal quantile',
  compute({ Cpk, k, q }, note) {
    if (typeof Cpk !== 'number' || typeof k !== 'number' || typeof q !== 'number')
      return failure('#VALUE!', 'value missing');
    const z = normal().quantile(q);
    note('z', z, 'number');
    return Cpk - z * Math.sqrt(1 / (9 * k) + Cpk ** 2 / (2 * (k - 1)));
  },
  refuses: [NO_TOLERANCE],
  cautions: [{ when: 'k < 25', text: '{k} parts leave the index wide open: measure 25 or more' }],
  sources: ['B1'],
  examples: [
    {
      given: ['25.008 mm', '0.002 mm', '25 mm', '25.021 mm', '30', '95 %'],
      gives: '1.02846',
      origin: 'byHand',
      how: '1.33333 - 1.644854 sqrt(1/270 + 1.77778/58)',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
