/** LIFE.WEIBULL_SHAPE: how far lives scatter, as the shape of a Weibull distribution. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { numbersOf } from '../numbers.ts';
import { FEW_LIVES, WEIBULL_LIVES, weibullFit } from '../weibull-fit.ts';

export default {
  name: 'LIFE.WEIBULL_SHAPE',
  family: 'LIFE',
  summary: 'Shape of the Weibull distribution of tool lives',
  searchWords: ['reliability', 'scatter', 'maximum likelihood', 'beta', 'failure'],
  parameters: [WEIBULL_LIVES],
  result: {
    kind: 'ratio',
    symbol: 'shape',
    meaning: 'shape: above 1 the edges wear out, below 1 they fail early',
  },
  reading: 'maximum likelihood: sum(T^k ln T) / sum(T^k) - 1/k = mean ln T',
  compute({ lives }, _note, caution) {
    const fit = weibullFit(numbersOf(lives));
    if (!('shape' in fit)) return fit;
    if (numbersOf(lives).length < 10) caution(FEW_LIVES);
    return fit.shape;
  },
  sources: ['W2'],
  examples: [
    {
      given: ['{38;45;52;60;71} min'],
      gives: '5.1014',
      origin: 'otherProgram',
      how: 'likelihood maximised by a statistics package: 5.10139',
    },
    {
      given: ['{16;34;53;75;93;120} h'],
      gives: '1.933',
      tolerance: '0.0006',
      origin: 'published',
      how: 'case l30',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
