/** INSERT.INSCRIBED_CIRCLE: diameter of the inscribed circle. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { INSERT_DESIGNATION, INSERT_REMARKS, insertOf } from '../insert-designation.ts';

export default {
  name: 'INSERT.INSCRIBED_CIRCLE',
  family: 'INSERT',
  summary: 'Diameter of the inscribed circle of an indexable insert',
  searchWords: ['ISO 1832', 'designation', 'IC', 'size', 'insert code'],
  parameters: [INSERT_DESIGNATION],
  result: { kind: 'length', symbol: 'iC', meaning: 'diameter of the inscribed circle' },
  reading: 'tables of ISO 1832',
  compute({ designation }) {
    const insert = insertOf(designation);
    if ('failure' in insert) return insert;
    return insert.inscribedCircle;
  },
  remarks: INSERT_REMARKS,
  scaling: 'table',
  sources: ['ISO 1832'],
  examples: [
    {
      given: ['"CNMG 12 04 08"'],
      gives: '12.7 mm',
      origin: 'published',
      how: 'symbol of ISO 1832, from memory',
    },
    {
      given: ['"TNMG 16 04 08"'],
      gives: '9.525 mm',
      origin: 'published',
      how: 'symbol of ISO 1832, from memory',
    },
    {
      given: ['"CCMT 09 T3 04"'],
      gives: '9.525 mm',
      origin: 'published',
      how: 'symbol of ISO 1832, from memory',
    },
    {
      given: ['"WNMG 08 04 08"'],
      gives: '12.7 mm',
      origin: 'published',
      how: 'symbol of ISO 1832, from memory',
    },
    { given: ['"CNMG 432"'], gives: '0.5 in', origin: 'published', how: '4 eighths of an inch' },
    {
      given: ['"RCMT 12 04 M0"'],
      gives: '12 mm',
      origin: 'published',
      how: 'M0: the size is the diameter in millimetres',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
