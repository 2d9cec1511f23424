/** HOLE.TOLERANCE: standard tolerance of a size and a grade. */

import { valueWords, type FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { GRADES, standardTolerance } from '../hole-tolerance.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'HOLE.TOLERANCE',
  family: 'HOLE',
  summary: 'Standard tolerance of a nominal diameter and a grade',
  searchWords: ['IT7', 'ISO 286', 'fit', 'limits', 'tolerance grade'],
  parameters: [
    parameter('diameter', {
      usual: { from: '0.1 mm', to: '500 mm' },
      meaning: 'nominal diameter of the hole, up to 500 mm',
    }),
    {
      name: 'grade',
      symbol: 'grade',
      kind: 'text',
      words: GRADES,
      meaning: 'standard tolerance grade, "IT5" to "IT12"',
    },
  ],
  result: { kind: 'length', symbol: 'IT', meaning: 'width of the tolerance' },
  reading: 'table',
  compute({ D, grade }) {
    if (typeof D !== 'number' || typeof grade !== 'string') return failure('#VALUE!', 'value missing');
    const tolerance = standardTolerance(D, grade);
    return (
      tolerance ?? failure('#NUM!', `diameter ${valueWords(D, 'mm')} is outside the table: up to 500 mm`)
    );
  },
  scaling: 'table',
  remarks: ['IT6 to IT10 were read in a copy of the standard, IT5, IT11 and IT12 are from memory.'],
  sources: ['I1'],
  examples: [
    {
      given: ['25 mm', '"IT7"'],
      gives: '21 um',
      origin: 'published',
      how: 'ISO 286-1, range over 18 to 30 mm (case g06)',
    },
    {
      given: ['30 mm', '"IT6"'],
      gives: '13 um',
      origin: 'published',
      how: 'ISO 286-1: 30 mm belongs to the range that ends there (case g06)',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
