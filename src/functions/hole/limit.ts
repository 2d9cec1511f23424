/** HOLE.LIMIT: upper or lower limit of a hole with a tolerance class. */

import { valueWords, type FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { HOLE_CLASSES, holeDeviations, tooCoarse } from '../hole-tolerance.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'HOLE.LIMIT',
  family: 'HOLE',
  summary: 'Upper or lower limit of a hole with a tolerance class such as H7',
  searchWords: ['H7', 'ISO 286', 'fit', 'reamer', 'tolerance', 'deviation'],
  parameters: [
    parameter('diameter', {
      usual: { from: '0.1 mm', to: '500 mm' },
      meaning: 'nominal diameter of the hole, up to 500 mm',
    }),
    {
      name: 'class',
      symbol: 'class',
      kind: 'text',
      meaning: 'tolerance class of a hole: E, F or G with 5 to 12, H or JS with 1 to 18, as in "H7"',
    },
    {
      name: 'which',
      symbol: 'which',
      kind: 'text',
      words: ['upper', 'lower'],
      meaning: '"upper" or "lower" limit',
    },
  ],
  result: { kind: 'length', symbol: 'limit', meaning: 'limit of the diameter' },
  reading: 'D + EI, for the upper limit D + EI + IT (tables); JS: D - IT/2 and D + IT/2',
  compute({ D, class: typed, which }, note) {
    if (typeof D !== 'number' || typeof typed !== 'string') return failure('#VALUE!', 'value missing');
    const holeClass = typed.trim().toUpperCase();
    if (!HOLE_CLASSES.includes(holeClass))
      return failure(
        '#N/A',
        `class "${typed}" is not in the table: E, F or G with 5 to 12, H or JS with 1 to 18, as in "H7"`,
      );
    const grade = `IT${holeClass.replace(/^\D+/, '')}`;
    if (tooCoarse(D, grade))
      return failure('#NUM!', `grade ${grade} is not for diameters up to 1 mm (${valueWords(D, 'mm')})`);
    const deviations = holeDeviations(D, holeClass);
    if (!deviations)
      return failure('#NUM!', `diameter ${valueWords(D, 'mm')} is outside the table: up to 500 mm`);
    const { lower, upper } = deviations;
    note('lower deviation', lower, 'length');
    note('upper deviation', upper, 'length');
    return D + (which === 'upper' ? upper : lower);
  },
  scaling: 'table',
  remarks: ['The deviations of E, F and G were read in two stored copies of the table.'],
  sources: ['I1'],
  examples: [
    {
      given: ['25 mm', '"H7"', '"upper"'],
      gives: '25.021 mm',
      origin: 'published',
      how: 'ISO 286-1: EI 0, IT7 21 um over 18 to 30 mm',
    },
    {
      given: ['40 mm', '"F8"', '"lower"'],
      gives: '40.025 mm',
      origin: 'published',
      how: 'ISO 286-1, EI of F over 30 to 50 mm',
    },
    {
      given: ['10 mm', '"JS9"', '"lower"'],
      gives: '9.982 mm',
      origin: 'byHand',
      how: 'half of IT9 36 um below the nominal size',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
