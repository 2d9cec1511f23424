/** MILL.REMOVAL_RATE: volume that a milling cut removes in a time. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MILL.REMOVAL_RATE',
  family: 'MILL',
  summary: 'Removal rate in milling',
  searchWords: ['MRR', 'Q', 'metal removal rate', 'chip volume'],
  parameters: [
    parameter('axial_depth'),
    parameter('radial_engagement', { hard: { above: '0' }, usual: { from: '0.01 mm', to: '1000 mm' } }),
    parameter('feed_rate'),
  ],
  result: { kind: 'removal rate', symbol: 'Q', meaning: 'removal rate' },
  equation: 'ap * ae * vf',
  remarks: ['On circles take MILL.CIRCLE_ENGAGEMENT and the feed rate of the centre.'],
  sources: ['G1'],
  examples: [
    {
      given: ['5 mm', '20 mm', '600 mm/min'],
      gives: '60 cm3/min',
      origin: 'byHand',
      how: '0.5 cm times 2 cm times 60 cm/min',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
