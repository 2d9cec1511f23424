/** MACHINE.POWER_AT: power of the spindle at a speed, from its curve. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { powerAt } from '../power-curve.ts';
import { numbersOf } from '../numbers.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MACHINE.POWER_AT',
  family: 'MACHINE',
  summary: 'Power of the spindle at a speed, from its power curve',
  searchWords: ['spindle curve', 'power diagram', 'rated power'],
  parameters: [parameter('spindle_speed'), parameter('speeds'), parameter('powers')],
  result: { kind: 'power', symbol: 'P', meaning: 'power of the spindle at this speed' },
  reading: 'straight lines between the points of the curve',
  compute({ n, speeds, powers }) {
    return typeof n === 'number'
      ? powerAt(n, numbersOf(speeds), numbersOf(powers))
      : failure('#VALUE!', 'value missing: spindle speed');
  },
  remarks: ['The curve of a data sheet is often a short-time rating; what holds all day is less.'],
  sources: ['geometry'],
  examples: [
    {
      given: ['3000 1/min', '{500;1500;6000;12000} 1/min', '{5;15;15;10} kW'],
      gives: '15 kW',
      origin: 'byHand',
      how: 'the flat part of the curve',
    },
    {
      given: ['1000 1/min', '{500;1500;6000;12000} 1/min', '{5;15;15;10} kW'],
      gives: '10 kW',
      origin: 'byHand',
      how: 'half way up the rising part',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
