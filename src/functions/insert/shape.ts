/** INSERT.SHAPE: shape of the insert with its angle. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { INSERT_DESIGNATION, INSERT_REMARKS, insertOf } from '../insert-designation.ts';

export default {
  name: 'INSERT.SHAPE',
  family: 'INSERT',
  summary: 'Shape of an indexable insert with its angle',
  searchWords: ['ISO 1832', 'designation', 'rhombus', 'trigon', 'insert code'],
  parameters: [INSERT_DESIGNATION],
  result: { kind: 'text', symbol: 'shape', meaning: 'shape of the insert with its angle' },
  reading: 'tables of ISO 1832',
  compute({ designation }) {
    const insert = insertOf(designation);
    if ('failure' in insert) return insert;
    const { words, angle } = insert.shape;
    return angle === undefined ? words : `${words}, ${angle} deg`;
  },
  remarks: INSERT_REMARKS,
  scaling: 'text',
  sources: ['ISO 1832'],
  examples: [
    {
      given: ['"CNMG 12 04 08"'],
      gives: '"rhombus, 80 deg"',
      origin: 'published',
      how: 'symbol of ISO 1832, from memory',
    },
    {
      given: ['"WNMG 080408"'],
      gives: '"trigon, 80 deg"',
      origin: 'published',
      how: 'symbol of ISO 1832, from memory',
    },
    {
      given: ['"RCMT 12 04 M0"'],
      gives: '"round"',
      origin: 'published',
      how: 'symbol of ISO 1832, from memory',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
