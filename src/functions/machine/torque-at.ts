/** MACHINE.TORQUE_AT: torque of the spindle at a speed, from its power curve. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { isFailure } from '../../expression/index.ts';
import { numbersOf } from '../numbers.ts';
import { parameter } from '../parameter.ts';
import { powerAt } from '../power-curve.ts';

export default {
  name: 'MACHINE.TORQUE_AT',
  family: 'MACHINE',
  summary: 'Torque of the spindle at a speed, from its power curve',
  searchWords: ['spindle curve', 'torque diagram', 'rated torque'],
  parameters: [parameter('spindle_speed'), parameter('speeds'), parameter('powers')],
  result: { kind: 'torque', symbol: 'M', meaning: 'torque of the spindle at this speed' },
  reading: 'P / (2 pi n), P straight lines between the points of the power curve',
  compute({ n, speeds, powers }, note) {
    const power = powerAt(Number(n), numbersOf(speeds), numbersOf(powers));
    if (isFailure(power)) return power;
    note('P', power, 'power');
    return power / (2 * Math.PI * Number(n));
  },
  remarks: [
    'Taken from the power, never by straight lines between torques: those are far too high where the power is even.',
    'The curve of a data sheet is often a short-time rating; what holds all day is less.',
  ],
  sources: ['mechanics'],
  examples: [
    {
      given: ['3000 1/min', '{500;1500;6000;12000} 1/min', '{5;15;15;10} kW'],
      gives: '47.7465 N·m',
      origin: 'byHand',
      how: '15 kW over 2 pi 50/s; a straight line through torques would say 71.6',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
