/** DRILL.CROSSING_RUN: travel of a drill through a crossing hole. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'DRILL.CROSSING_RUN',
  family: 'DRILL',
  summary: 'Travel over which a drill cuts on one side through a crossing hole',
  searchWords: ['cross hole', 'intersecting bores', 'interrupted cut', 'reduced feed', 'oil gallery'],
  parameters: [
    parameter('drill_diameter'),
    parameter('diameter', {
      name: 'crossed_diameter',
      symbol: 'dc',
      usual: { from: '0.1 mm', to: '500 mm' },
      meaning: 'diameter of the hole that is crossed',
    }),
    {
      name: 'crossing_angle',
      symbol: 'gamma',
      kind: 'angle',
      metric: 'deg',
      inch: 'deg',
      hard: { above: '0 deg', below: '180 deg' },
      usual: { from: '30 deg', to: '150 deg' },
      default: { value: '90 deg' },
      meaning: 'angle between the two axes',
    },
  ],
  result: { kind: 'length', symbol: 'L_x', meaning: 'travel of the full diameter through the crossing' },
  equation: '(dc + D * ABS(COS(gamma))) / SIN(gamma)',
  cautions: [
    {
      when: 'D > dc',
      text: 'the drill {D} is larger than the crossed hole {dc}: it cuts all along the sides',
    },
  ],
  remarks: ['The axes meet. Reduce the feed over this travel, plus the length of the point.'],
  sources: ['derived'],
  examples: [
    {
      given: ['6 mm', '8 mm', '60 deg'],
      gives: '12.7017 mm',
      origin: 'otherProgram',
      how: 'two cylinders sampled',
    },
    { given: ['6 mm', '8 mm'], gives: '8 mm', origin: 'byHand', how: 'square crossing: the hole itself' },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
