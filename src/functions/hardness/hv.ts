/** HARDNESS.HV: Vickers hardness. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { converted, HARDNESS_PARAMETERS, INDICATION, TABLE_ORIGIN } from '../hardness.ts';

export default {
  name: 'HARDNESS.HV',
  family: 'HARDNESS',
  summary: 'Vickers hardness from Rockwell C or Brinell',
  searchWords: ['Vickers', 'conversion', 'ISO 18265', 'hardness'],
  parameters: HARDNESS_PARAMETERS,
  result: { kind: 'hardness HV', symbol: 'converted', meaning: 'Vickers hardness' },
  reading: 'straight line between the rows of ISO 18265, table A.1',
  compute: (args, _note, caution) => converted(args, 'HV', caution),
  remarks: [INDICATION, TABLE_ORIGIN],
  scaling: 'table',
  sources: ['I2'],
  examples: [
    {
      given: ['40.8 HRC'],
      gives: '400 HV',
      origin: 'published',
      how: 'row 400 HV of the table, read in a copy',
    },
    {
      given: ['190 HB'],
      gives: '200 HV',
      origin: 'published',
      how: 'row 200 HV of the table, read in a copy',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
