/** MACHINE.LOAD: share of the spindle power that a cut takes. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure, isFailure } from '../../expression/index.ts';
import { numbersOf } from '../numbers.ts';
import { optional, parameter } from '../parameter.ts';
import { powerAt } from '../power-curve.ts';

export default {
  name: 'MACHINE.LOAD',
  family: 'MACHINE',
  summary: 'Share of the spindle power at this speed that a cut takes',
  searchWords: ['spindle load', 'utilisation', 'power limit', 'percent'],
  parameters: [
    parameter('cutting_power'),
    parameter('spindle_speed'),
    parameter('speeds'),
    parameter('powers'),
    optional('efficiency', '0.85'),
  ],
  result: {
    kind: 'share',
    symbol: 'load',
    meaning: 'power of the cut over power of the drive at this speed',
  },
  reading: 'P / (efficiency * power of the curve at n)',
  compute({ Pc, n, speeds, powers, eta }, note) {
    if (typeof Pc !== 'number' || typeof n !== 'number' || typeof eta !== 'number')
      return failure('#VALUE!', 'value missing');
    const power = powerAt(n, numbersOf(speeds), numbersOf(powers));
    if (isFailure(power)) return power;
    note('P', power, 'power');
    return Pc / (eta * power);
  },
  cautions: [
    {
      when: 'AND(load > 0.8; load <= 1)',
      text: 'the cut takes {load} of the power at this speed: little is left for wear',
    },
    { when: 'load > 1', text: 'the cut takes {load} of the power at this speed: the spindle will stall' },
  ],
  sources: ['practice', 'mechanics'],
  examples: [
    {
      given: ['10.2 kW', '3000 1/min', '{500;1500;6000;12000} 1/min', '{5;15;15;10} kW', '0.85'],
      gives: '0.8',
      origin: 'byHand',
      how: '10.2 kW at the cutter are 12 kW at the drive, of 15 kW',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
