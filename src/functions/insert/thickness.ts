/** INSERT.THICKNESS: thickness of the insert. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { INSERT_DESIGNATION, INSERT_REMARKS, insertOf } from '../insert-designation.ts';

export default {
  name: 'INSERT.THICKNESS',
  family: 'INSERT',
  summary: 'Thickness of an indexable insert',
  searchWords: ['ISO 1832', 'designation', 'T3', 'size', 'insert code'],
  parameters: [INSERT_DESIGNATION],
  result: { kind: 'length', symbol: 's', meaning: 'thickness of the insert' },
  reading: 'tables of ISO 1832',
  compute({ designation }) {
    const insert = insertOf(designation);
    if ('failure' in insert) return insert;
    return insert.thickness;
  },
  remarks: INSERT_REMARKS,
  scaling: 'table',
  sources: ['ISO 1832'],
  examples: [
    {
      given: ['"CNMG 12 04 08"'],
      gives: '4.76 mm',
      origin: 'published',
      how: 'symbol of ISO 1832, from memory',
    },
    {
      given: ['"CCMT 09 T3 04"'],
      gives: '3.97 mm',
      origin: 'published',
      how: 'symbol of ISO 1832, from memory',
    },
    { given: ['"CNMG 432"'], gives: '0.1875 in', origin: 'published', how: '3 sixteenths of an inch' },
    { given: ['"CCMT 32.51"'], gives: '0.15625 in', origin: 'published', how: '2.5 sixteenths of an inch' },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
