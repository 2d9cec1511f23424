/** CHATTER.MILL_LIMIT: largest depth of milling without chatter at a speed. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import {
  MEAN_REMARKS,
  ENGAGEMENT_CAUTIONS,
  LIMIT_PARAMETERS,
  millingSystem,
  MODE_REFUSALS,
  NO_LIMIT,
} from '../milling-chatter.ts';
import { sweepOf } from '../milling-stability.ts';

export default {
  name: 'CHATTER.MILL_LIMIT',
  family: 'CHATTER',
  summary: 'Largest axial depth of milling without chatter at a spindle speed',
  searchWords: ['stability', 'lobes', 'vibration', 'regenerative', 'depth limit'],
  parameters: LIMIT_PARAMETERS,
  result: { kind: 'length', symbol: 'ap_lim', meaning: 'largest axial depth without chatter' },
  reading:
    '-2 pi Re(L) (1 + (Im L/Re L)^2) / (z Kt), L eigenvalue of the mean directed receptance; least over the frequencies whose waves fit the tooth period',
  compute(args) {
    return sweepOf(millingSystem(args)).limit(Number(args['n'])) ?? failure('#NUM!', NO_LIMIT);
  },
  refuses: MODE_REFUSALS,
  cautions: ENGAGEMENT_CAUTIONS,
  remarks: MEAN_REMARKS,
  sources: ['A2', 'A1'],
  examples: [
    {
      given: [
        '20 mm',
        '4',
        '20 mm',
        '"down"',
        '9500 1/min',
        '600 MPa',
        '0.3',
        '600 Hz',
        '0.035',
        '10 N/um',
        '660 Hz',
        '0.035',
        '12 N/um',
      ],
      gives: '4.75047 mm',
      origin: 'otherProgram',
      how: 'swept by another program; semi-discretisation of the full problem gives 4.757 mm',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
