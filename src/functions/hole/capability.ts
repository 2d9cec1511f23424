/** HOLE.CAPABILITY: capability index Cpk of a size. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { CAPABILITY_PARAMETERS, CPK, NO_TOLERANCE } from '../capability.ts';

export default {
  name: 'HOLE.CAPABILITY',
  family: 'HOLE',
  summary: 'Capability index Cpk from mean, standard deviation and limits',
  searchWords: ['Cpk', 'Cp', 'process capability', 'statistics', 'SPC'],
  parameters: CAPABILITY_PARAMETERS,
  result: { kind: 'ratio', symbol: 'Cpk', meaning: 'capability index' },
  equation: CPK,
  refuses: [NO_TOLERANCE],
  cautions: [{ when: 'Cpk < 1.33', text: 'Cpk {Cpk} is below 1.33' }],
  remarks: [
    'Holds for a steady process with normally spread sizes. From few parts the index itself is uncertain: HOLE.CAPABILITY_LOW.',
  ],
  sources: ['ISO 22514'],
  examples: [
    {
      given: ['25.008 mm', '0.002 mm', '25 mm', '25.021 mm'],
      gives: '1.33333',
      origin: 'byHand',
      how: '8 um to the lower limit over 6 um',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
