/** LIFE.WEIBULL_SCALE: life that 63.2 % of the edges do not pass. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { numbersOf } from '../numbers.ts';
import { FEW_LIVES, WEIBULL_LIVES, weibullFit } from '../weibull-fit.ts';

export default {
  name: 'LIFE.WEIBULL_SCALE',
  family: 'LIFE',
  summary: 'Scale of the Weibull distribution of tool lives: 63.2 % fail before it',
  searchWords: ['reliability', 'scatter', 'maximum likelihood', 'characteristic life', 'eta'],
  parameters: [WEIBULL_LIVES],
  result: { kind: 'time', symbol: 'scale', meaning: 'life that 63.2 % of the edges do not pass' },
  reading: 'maximum likelihood: (mean of T^k)^(1/k), k the shape',
  compute({ lives }, note, caution) {
    const fit = weibullFit(numbersOf(lives));
    if (!('shape' in fit)) return fit;
    note('shape', fit.shape, 'ratio');
    if (numbersOf(lives).length < 10) caution(FEW_LIVES);
    return fit.scale;
  },
  sources: ['W2'],
  examples: [
    {
      given: ['{16;34;53;75;93;120} h'],
      gives: '73.526 h',
      tolerance: '0.001 h',
      origin: 'published',
      how: 'case l30',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
