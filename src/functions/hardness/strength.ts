/** HARDNESS.STRENGTH: tensile strength. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { converted, HARDNESS_PARAMETERS, INDICATION, TABLE_ORIGIN } from '../hardness.ts';

export default {
  name: 'HARDNESS.STRENGTH',
  family: 'HARDNESS',
  summary: 'Tensile strength of steel from its hardness',
  searchWords: ['tensile strength', 'Rm', 'conversion', 'ISO 18265', 'hardness'],
  parameters: HARDNESS_PARAMETERS,
  result: { kind: 'stress', symbol: 'Rm', meaning: 'tensile strength' },
  reading: 'straight line between the rows of ISO 18265, table A.1',
  compute(args, _note, caution) {
    const strength = converted(args, 'Rm', caution);
    return typeof strength === 'number' ? strength * 1e6 : strength;
  },
  remarks: [INDICATION, TABLE_ORIGIN, 'Strength is the least reliable of the converted values.'],
  scaling: 'table',
  sources: ['I2'],
  examples: [
    {
      given: ['250 HV'],
      gives: '800 MPa',
      origin: 'published',
      how: 'row 250 HV of the table, read in a copy',
    },
    {
      given: ['360 HV'],
      gives: '1155 MPa',
      origin: 'published',
      how: 'row 360 HV; 1115 in print is a known misprint',
    },
    {
      given: ['190 HB'],
      gives: '640 MPa',
      origin: 'published',
      how: 'row 200 HV of the table, read in a copy',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
