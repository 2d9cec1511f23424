/** DRILL.POINT_LENGTH: length of the conical point of a drill. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'DRILL.POINT_LENGTH',
  family: 'DRILL',
  summary: 'Length of the conical point of a drill',
  searchWords: ['cone', 'approach', 'point height', 'tip', 'blind hole depth'],
  parameters: [parameter('drill_diameter'), optional('point_angle', '140 deg')],
  result: { kind: 'length', symbol: 'L_p', meaning: 'from the tip to the full diameter' },
  equation: 'D / 2 * SIN((180 deg - sigma) / 2) / SIN(sigma / 2)',
  sources: ['G1'],
  examples: [
    {
      given: ['12.7 mm', '118 deg'],
      gives: '3.82 mm',
      origin: 'published',
      how: 'Groover, solution to problem 22.10, case e01',
    },
    { given: ['10 mm', '90 deg'], gives: '5 mm', origin: 'byHand', how: 'half the diameter at 45 deg' },
    {
      given: ['20 mm', '118 deg'],
      gives: '6.0086 mm',
      origin: 'byHand',
      how: 'case e12: 10 mm over tan 59 deg (a course page prints it upside down, 16.64 mm)',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
