/** HARDNESS.HRC: Rockwell C hardness. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { converted, HARDNESS_PARAMETERS, INDICATION, TABLE_ORIGIN } from '../hardness.ts';

export default {
  name: 'HARDNESS.HRC',
  family: 'HARDNESS',
  summary: 'Rockwell C hardness from Brinell or Vickers',
  searchWords: ['Rockwell', 'conversion', 'ISO 18265', 'hardness'],
  parameters: HARDNESS_PARAMETERS,
  result: { kind: 'hardness HRC', symbol: 'converted', meaning: 'Rockwell C hardness' },
  reading: 'straight line between the rows of ISO 18265, table A.1',
  compute: (args, _note, caution) => converted(args, 'HRC', caution),
  remarks: [INDICATION, TABLE_ORIGIN],
  scaling: 'table',
  sources: ['I2'],
  examples: [
    {
      given: ['460 HV'],
      gives: '46.1 HRC',
      origin: 'published',
      how: 'row 460 HV of the table, read in a copy',
    },
    {
      given: ['333 HB'],
      gives: '35.5 HRC',
      origin: 'published',
      how: 'row 350 HV of the table, read in a copy',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
