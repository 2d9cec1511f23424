/** MILL.ENGAGEMENT_FOR_ANGLE: radial engagement that gives an engagement angle in side milling. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MILL.ENGAGEMENT_FOR_ANGLE',
  family: 'MILL',
  summary: 'Radial engagement for an engagement angle, side milling',
  searchWords: ['stepover', 'constant engagement', 'trochoidal', 'ae'],
  parameters: [
    parameter('cutter_diameter'),
    parameter('engagement_angle', { hard: { above: '0 deg', most: '180 deg' } }),
  ],
  result: { kind: 'length', symbol: 'ae', meaning: 'radial engagement' },
  equation: 'Dc * SIN(phi / 2)^2',
  sources: ['A1'],
  examples: [
    {
      given: ['20 mm', '60 deg'],
      gives: '5 mm',
      origin: 'byHand',
      how: '20 mm times the square of sin 30 deg',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
