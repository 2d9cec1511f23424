/** MILL.TEETH_IN_CUT: teeth in the cut at once, on average. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'MILL.TEETH_IN_CUT',
  family: 'MILL',
  summary: 'Mean number of teeth in the cut at once',
  searchWords: ['simultaneous teeth', 'zc', 'smooth cut'],
  parameters: [
    parameter('cutter_diameter'),
    parameter('teeth'),
    parameter('engagement_angle', { hard: { above: '0 deg', most: '180 deg' } }),
    optional('axial_depth', '0 mm', { hard: { least: '0' }, usual: { from: '0 mm', to: '200 mm' } }),
    optional('helix_angle', '0 deg'),
  ],
  result: { kind: 'count', symbol: 'z_c', meaning: 'teeth in the cut, mean over a turn' },
  steps: [
    {
      symbol: 'lag',
      meaning: 'angle by which the helix lags over the depth',
      kind: 'angle',
      equation: '2 * ap * TAN(lambda) / Dc * 1 rad',
    },
  ],
  equation: 'MIN(z; z * (phi + lag) / (2 * PI()))',
  sources: ['A1'],
  examples: [
    {
      given: ['20 mm', '4', '60 deg', '20 mm', '38 deg'],
      gives: '1.66143',
      origin: 'otherProgram',
      how: 'counted over one turn in small steps',
    },
    { given: ['20 mm', '4', '180 deg'], gives: '2', origin: 'byHand', how: 'full slot: half the teeth' },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
