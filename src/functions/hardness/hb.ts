/** HARDNESS.HB: Brinell hardness. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { converted, HARDNESS_PARAMETERS, INDICATION, TABLE_ORIGIN } from '../hardness.ts';

export default {
  name: 'HARDNESS.HB',
  family: 'HARDNESS',
  summary: 'Brinell hardness from Rockwell C or Vickers',
  searchWords: ['Brinell', 'conversion', 'ISO 18265', 'hardness'],
  parameters: HARDNESS_PARAMETERS,
  result: { kind: 'hardness HB', symbol: 'converted', meaning: 'Brinell hardness' },
  reading: 'straight line between the rows of ISO 18265, table A.1',
  compute: (args, _note, caution) => converted(args, 'HB', caution),
  remarks: [INDICATION, TABLE_ORIGIN],
  scaling: 'table',
  sources: ['I2'],
  examples: [
    {
      given: ['300 HV'],
      gives: '285 HB',
      origin: 'published',
      how: 'row 300 HV of the table, read in a copy',
    },
    {
      given: ['35.5 HRC'],
      gives: '333 HB',
      origin: 'published',
      how: 'row 350 HV of the table, read in a copy',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
