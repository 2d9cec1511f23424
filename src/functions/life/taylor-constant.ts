/** LIFE.TAYLOR_CONSTANT: constant of the law of Taylor from own trials. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
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
  name: 'LIFE.TAYLOR_CONSTANT',
  family: 'LIFE',
  summary: 'Constant C of the law of Taylor, the speed for 1 min, from measured lives',
  searchWords: ['tool life', 'regression', 'v T^n = C', 'wear test'],
  parameters: [SPEEDS, LIVES],
  result: { kind: 'cutting speed', symbol: 'C', meaning: 'cutting speed at which the line gives 1 min' },
  steps: TAYLOR_STEPS,
  constants: [ONE_SPEED, ONE_MINUTE],
  reading: '1 m/min * exp(x_m - y_m / slope)',
  compute({ v, slope, x_m, y_m, v_1 }, _note, caution) {
    for (const words of weakLine(numbersOf(v))) caution(words);
    const exponent = Number(x_m) - Number(y_m) / Number(slope);
    if (Math.abs(exponent) > 300)
      return failure('#NUM!', 'the lives hardly change with speed: no constant follows from them');
    return Number(v_1) * Math.exp(exponent);
  },
  refuses: TAYLOR_REFUSALS,
  remarks: ['Use it only together with the exponent of the same trials.', TESTED_ONLY],
  sources: ['T3'],
  examples: [
    { given: ['{4;2} m/s', '{1;20} min'], gives: '240.000 m/min', origin: 'published', how: 'case d07' },
    {
      given: ['{160;130;100} m/min', '{5;12;41} min'],
      gives: '228.0341561 m/min',
      origin: 'byHand',
      how: 'case d10, least squares of ln T on ln vc',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
