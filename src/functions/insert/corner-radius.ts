/** INSERT.CORNER_RADIUS: radius of the corner. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { INSERT_DESIGNATION, INSERT_REMARKS, insertOf } from '../insert-designation.ts';

export default {
  name: 'INSERT.CORNER_RADIUS',
  family: 'INSERT',
  summary: 'Corner radius of an indexable insert',
  searchWords: ['ISO 1832', 'designation', 'nose radius', 'insert code'],
  parameters: [INSERT_DESIGNATION],
  result: { kind: 'length', symbol: 'r_eps', meaning: 'radius of the corner' },
  reading: 'tables of ISO 1832',
  compute({ designation }) {
    const insert = insertOf(designation);
    if ('failure' in insert) return insert;
    return insert.cornerRadius;
  },
  remarks: INSERT_REMARKS,
  scaling: 'table',
  sources: ['ISO 1832'],
  examples: [
    {
      given: ['"CNMG 12 04 08"'],
      gives: '0.8 mm',
      origin: 'published',
      how: 'symbol of ISO 1832, from memory',
    },
    {
      given: ['"CCMT 09 T3 04"'],
      gives: '0.4 mm',
      origin: 'published',
      how: 'symbol of ISO 1832, from memory',
    },
    { given: ['"CNMG 432"'], gives: '0.03125 in', origin: 'published', how: '2 parts of 64 of an inch' },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
