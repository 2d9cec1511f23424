/** LIFE.TAYLOR_EXPONENT: exponent of the law of Taylor from own trials. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { numbersOf } from '../numbers.ts';
import {
  LIVES,
  ONE_MINUTE,
  ONE_SPEED,
  SPEEDS,
  TAYLOR_REFUSALS,
  TAYLOR_STEPS,
  TESTED_ONLY,
  weakLine,
} from '../taylor.ts';

export default {
  name: 'LIFE.TAYLOR_EXPONENT',
  family: 'LIFE',
  summary: 'Exponent n of the law of Taylor from measured tool lives',
  searchWords: ['tool life', 'regression', 'v T^n = C', 'wear test'],
  parameters: [SPEEDS, LIVES],
  result: { kind: 'ratio', symbol: 'n', meaning: 'exponent' },
  steps: TAYLOR_STEPS,
  constants: [ONE_SPEED, ONE_MINUTE],
  reading: '-1 / slope',
  compute({ v, slope }, _note, caution) {
    for (const words of weakLine(numbersOf(v))) caution(words);
    return -1 / Number(slope);
  },
  refuses: TAYLOR_REFUSALS,
  remarks: [
    'Speed is set and life is measured, so ln T is fitted on ln vc; the other way round gives a slightly smaller exponent.',
    TESTED_ONLY,
  ],
  sources: ['T3'],
  examples: [
    {
      given: ['{4;2} m/s', '{1;20} min'],
      gives: '0.2314',
      origin: 'published',
      how: 'case d07: ln 2 over ln 20',
    },
    {
      given: ['{160;130;100} m/min', '{5;12;41} min'],
      gives: '0.2229285873',
      origin: 'byHand',
      how: 'case d10, least squares of ln T on ln vc',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
