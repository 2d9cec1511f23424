/** HOLE.TOLERANCE: standard tolerance of a size and a grade. */

import { valueWords, type FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { GRADES, standardTolerance, tooCoarse } from '../hole-tolerance.ts';
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
      numbered: 'IT',
      meaning: 'standard tolerance grade, "IT1" to "IT18", or its number alone',
    },
  ],
  result: { kind: 'length', symbol: 'IT', meaning: 'width of the tolerance' },
  reading: 'table',
  compute({ D, grade }) {
    if (typeof D !== 'number' || typeof grade !== 'string') return failure('#VALUE!', 'value missing');
    if (tooCoarse(D, grade))
      return failure('#NUM!', `grade ${grade} is not for diameters up to 1 mm (${valueWords(D, 'mm')})`);
    const tolerance = standardTolerance(D, grade);
    return (
      tolerance ?? failure('#NUM!', `diameter ${valueWords(D, 'mm')} is outside the table: up to 500 mm`)
    );
  },
  scaling: 'table',
  remarks: [
    'The table was read in stored copies; the range of 250 to 315 mm, IT1 to IT4, IT17 and IT18 in one copy only.',
  ],
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
    {
      given: ['100 mm', '11'],
      gives: '220 um',
      origin: 'published',
      how: 'ISO 286-1, IT11 over 80 to 120 mm, read in two copies',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
