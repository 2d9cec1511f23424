/** COST.ECONOMIC_SPEED: cutting speed of least cost. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { ECONOMIC_LIFE, ECONOMIC_PARAMETERS, GREATEST_OUTPUT } from '../economic-life.ts';
import { parameter } from '../parameter.ts';
import { ONE_MINUTE } from '../taylor.ts';

export default {
  name: 'COST.ECONOMIC_SPEED',
  family: 'COST',
  summary: 'Cutting speed at which a part costs least',
  searchWords: ['economics', 'minimum cost', 'greatest output', 'optimum'],
  parameters: [parameter('constant'), ...ECONOMIC_PARAMETERS],
  result: { kind: 'cutting speed', symbol: 'vc', meaning: 'cutting speed of least cost' },
  constants: [ONE_MINUTE],
  steps: [{ symbol: 'T_e', meaning: 'tool life of least cost', kind: 'time', equation: ECONOMIC_LIFE }],
  equation: 'C / (T_e / T_1)^n',
  cautions: [
    { when: 'T_e < 2 min', text: 'a life of {T_e} is short: the law of Taylor was rarely tested there' },
  ],
  remarks: [
    GREATEST_OUTPUT,
    'Holds inside the tested speeds only; the machine may not reach it: see MACHINE.SPEED_REACHED.',
  ],
  sources: ['G2'],
  examples: [
    {
      given: ['400 m/min', '0.25', '1.5 min', '6 money', '80 money/h'],
      gives: '194.197 m/min',
      origin: 'byHand',
      how: 'life 18 min, its fourth root is 2.05977',
    },
    {
      given: ['1000 ft/min', '0.25', '1.5 min', '0 money', '45 money/h'],
      gives: '687 ft/min',
      origin: 'published',
      how: 'case d40, greatest output',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
