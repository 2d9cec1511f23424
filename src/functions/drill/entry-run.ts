/** DRILL.ENTRY_RUN: travel of a drill from first touch on an inclined face to the full diameter. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'DRILL.ENTRY_RUN',
  family: 'DRILL',
  summary: 'Travel from first touch on an inclined face to the full diameter',
  searchWords: ['inclined entry', 'slanted surface', 'inclined exit', 'reduced feed', 'spot facing'],
  parameters: [
    parameter('drill_diameter'),
    {
      name: 'surface_angle',
      symbol: 'alpha',
      kind: 'angle',
      metric: 'deg',
      inch: 'deg',
      hard: { least: '0 deg', below: '80 deg' },
      usual: { from: '0 deg', to: '45 deg' },
      meaning: 'angle of the face to a plane square to the drill; 0 deg is square',
    },
    optional('point_angle', '140 deg'),
  ],
  result: { kind: 'length', symbol: 'L_e', meaning: 'travel from first touch to the full diameter' },
  equation: 'MAX(D * TAN(alpha); D / 2 * SIN((180 deg - sigma) / 2) / SIN(sigma / 2) + D / 2 * TAN(alpha))',
  cautions: [
    {
      when: 'TAN(alpha) * TAN(sigma / 2) > 1',
      text: 'the corner touches before the tip: the drill walks; mill or spot-face a flat first',
    },
  ],
  remarks: ['The same travel holds at an inclined exit.'],
  sources: ['derived'],
  examples: [
    {
      given: ['10 mm', '10 deg', '140 deg'],
      gives: '2.70149 mm',
      origin: 'otherProgram',
      how: 'cone against plane sampled',
    },
    {
      given: ['10 mm', '45 deg', '180 deg'],
      gives: '10 mm',
      origin: 'byHand',
      how: 'a flat drill on a face of 45 deg: the whole diameter',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
