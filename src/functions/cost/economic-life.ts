/** COST.ECONOMIC_LIFE: tool life of least cost. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { ECONOMIC_LIFE, ECONOMIC_PARAMETERS, GREATEST_OUTPUT } from '../economic-life.ts';

export default {
  name: 'COST.ECONOMIC_LIFE',
  family: 'COST',
  summary: 'Tool life, time in the cut, at which a part costs least',
  searchWords: ['economics', 'minimum cost', 'greatest output', 'optimum'],
  parameters: ECONOMIC_PARAMETERS,
  result: { kind: 'time', symbol: 'T_e', meaning: 'tool life of least cost, time in the cut' },
  equation: ECONOMIC_LIFE,
  cautions: [
    { when: 'T_e < 2 min', text: 'a life of {T_e} is short: the law of Taylor was rarely tested there' },
  ],
  remarks: [GREATEST_OUTPUT],
  sources: ['G2'],
  examples: [
    {
      given: ['0.25', '1.5 min', '6 money', '80 money/h'],
      gives: '18 min',
      origin: 'byHand',
      how: '3 times 1.5 + 4.5 min; the cost curve has its least at 18.0000',
    },
    {
      given: ['0.25', '1.5 min', '0 money', '45 money/h'],
      gives: '4.5 min',
      origin: 'published',
      how: 'case d40, greatest output',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
