/** MILL.BALL_DIAMETER: effective diameter of a ball end, tilted or not. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MILL.BALL_DIAMETER',
  family: 'MILL',
  summary: 'Effective diameter of a ball end mill at a depth and tilt',
  searchWords: ['ball nose', 'effective diameter', 'tilt', 'lead', 'finishing'],
  parameters: [
    parameter('cutter_diameter', { meaning: 'diameter of the ball' }),
    parameter('axial_depth'),
    {
      name: 'tilt',
      symbol: 'tilt',
      kind: 'angle',
      metric: 'deg',
      inch: 'deg',
      hard: { least: '-90 deg', most: '90 deg' },
      default: { value: '0 deg' },
      meaning: 'angle of the axis to the normal of the surface',
    },
  ],
  result: { kind: 'length', symbol: 'D_eff', meaning: 'largest diameter that cuts' },
  steps: [
    {
      symbol: 'cap',
      meaning: 'angle of the cap that cuts',
      kind: 'angle',
      equation: '2 * ASIN(SQRT(ap / Dc))',
    },
    {
      symbol: 'a',
      meaning: 'angle from the tip to the far rim of the cap',
      kind: 'angle',
      equation: 'ABS(tilt) + cap',
    },
  ],
  equation: 'IF(a >= 90 deg; Dc; Dc * SIN(a))',
  refuses: [{ when: 'ap > Dc / 2', text: 'axial depth {ap} is more than the radius of the ball of {Dc}' }],
  cautions: [
    {
      when: 'ABS(tilt) < cap',
      text: 'the tip, with speed 0, is in the cut; passes beside each other may use less than this largest diameter',
    },
  ],
  sources: ['geometry'],
  examples: [
    {
      given: ['10 mm', '0.3 mm', '15 deg'],
      gives: '5.72839 mm',
      origin: 'otherProgram',
      how: 'spherical cap sampled point by point',
    },
    { given: ['10 mm', '1 mm'], gives: '6 mm', origin: 'byHand', how: 'twice sqrt(1 times 9)' },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
