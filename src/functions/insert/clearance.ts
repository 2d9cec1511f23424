/** INSERT.CLEARANCE: clearance angle of the insert. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { INSERT_DESIGNATION, INSERT_REMARKS, insertOf } from '../insert-designation.ts';

export default {
  name: 'INSERT.CLEARANCE',
  family: 'INSERT',
  summary: 'Clearance angle of an indexable insert',
  searchWords: ['ISO 1832', 'designation', 'relief angle', 'positive', 'negative'],
  parameters: [INSERT_DESIGNATION],
  result: { kind: 'angle', symbol: 'alpha', meaning: 'clearance angle of the insert' },
  reading: 'tables of ISO 1832',
  compute({ designation }) {
    const insert = insertOf(designation);
    if ('failure' in insert) return insert;
    return insert.clearance;
  },
  remarks: INSERT_REMARKS,
  scaling: 'table',
  sources: ['ISO 1832'],
  examples: [
    {
      given: ['"CCMT 09 T3 04"'],
      gives: '7 deg',
      origin: 'published',
      how: 'symbol of ISO 1832, from memory',
    },
    {
      given: ['"CNMG 12 04 08"'],
      gives: '0 deg',
      origin: 'published',
      how: 'symbol of ISO 1832, from memory',
    },
    {
      given: ['"SPMT 12 04 08"'],
      gives: '11 deg',
      origin: 'published',
      how: 'symbol of ISO 1832, from memory',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
