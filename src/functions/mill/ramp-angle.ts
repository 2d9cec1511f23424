/** MILL.RAMP_ANGLE: slope of a helical path. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MILL.RAMP_ANGLE',
  family: 'MILL',
  summary: 'Ramp angle of a helical entry',
  searchWords: ['helical ramping', 'helix interpolation', 'entry', 'plunge angle'],
  parameters: [parameter('drop'), parameter('path_diameter')],
  result: { kind: 'angle', symbol: 'ramp', meaning: 'angle of the path of the cutter axis to the plane' },
  equation: 'ATAN(P / (PI() * Dp))',
  cautions: [
    {
      when: 'ramp > 5 deg',
      text: 'steeper than 5 deg: many cutters can not enter like this (common practice, no source)',
    },
  ],
  sources: ['geometry', 'practice'],
  examples: [
    {
      given: ['2 mm', '20 mm'],
      gives: '1.82317 deg',
      origin: 'byHand',
      how: 'x = 2/62.8319 = 0.0318310; x - x^3/3 = 0.0318202 rad',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
