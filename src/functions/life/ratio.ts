/** LIFE.RATIO: lives of one tool over those of another. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { LIVES_A, LIVES_B } from '../life-ratio.ts';

export default {
  name: 'LIFE.RATIO',
  family: 'LIFE',
  summary: 'Lives of tool A over lives of tool B, geometric means',
  searchWords: ['comparison', 'trial', 'competition', 'better tool'],
  parameters: [LIVES_A, LIVES_B],
  result: { kind: 'ratio', symbol: 'ratio', meaning: 'life of A over life of B' },
  constants: [{ symbol: 'T_1', value: '1 min', meaning: 'unit of life' }],
  equation: 'EXP(AVERAGE(LN(T_a / T_1)) - AVERAGE(LN(T_b / T_1)))',
  remarks: ['Says nothing of chance: see LIFE.RATIO_LOW and LIFE.RATIO_HIGH.'],
  sources: ['statistics'],
  examples: [
    {
      given: ['{10;40} min', '{5;20} min'],
      gives: '2',
      origin: 'byHand',
      how: 'geometric means 20 and 10 min',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
