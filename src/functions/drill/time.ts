/** DRILL.TIME: time at feed of a hole drilled in one go. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'DRILL.TIME',
  family: 'DRILL',
  summary: 'Time at feed of a hole drilled in one go',
  searchWords: ['cycle time', 'machining time', 'through hole', 'blind hole', 'G81'],
  parameters: [
    parameter('drill_diameter'),
    parameter('feed_rate'),
    parameter('depth', { meaning: 'depth of the full diameter' }),
    optional('point_angle', '140 deg'),
    optional('clearance', '0 mm', { meaning: 'travel at feed before the point touches' }),
    optional('break_through', '0 mm', { meaning: 'travel of the full diameter beyond the far side' }),
  ],
  result: { kind: 'time', symbol: 't', meaning: 'time at feed' },
  steps: [
    {
      symbol: 'L_p',
      meaning: 'length of the point',
      kind: 'length',
      equation: 'D / 2 * SIN((180 deg - sigma) / 2) / SIN(sigma / 2)',
    },
  ],
  equation: '(L + L_p + c + b) / vf',
  remarks: ['Rapid moves, retract and tool change are not in it.'],
  sources: ['G1'],
  examples: [
    {
      given: ['15 mm', '100 mm/min', '50 mm', '118 deg', '2 mm', '2 mm'],
      gives: '35.1 s',
      origin: 'published',
      how: 'GATE 2012 Mechanical, question 28, case e06: 500 1/min at 0.2 mm',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
