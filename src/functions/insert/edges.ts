/** INSERT.EDGES: cutting edges, corners of all faces that cut. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { INSERT_DESIGNATION, INSERT_REMARKS, insertOf } from '../insert-designation.ts';

export default {
  name: 'INSERT.EDGES',
  family: 'INSERT',
  summary: 'Cutting edges of an indexable insert',
  searchWords: ['ISO 1832', 'designation', 'corners', 'double-sided', 'indexing'],
  parameters: [INSERT_DESIGNATION],
  result: { kind: 'count', symbol: 'edges', meaning: 'cutting edges, corners of all faces that cut' },
  reading: 'tables of ISO 1832',
  compute({ designation }, _note, caution) {
    const insert = insertOf(designation);
    if ('failure' in insert) return insert;
    const { shape, doubleSided } = insert;
    if (shape.corners === 0)
      return failure('#NUM!', 'a round insert has no counted edges: they follow from the depth of cut');
    if (doubleSided === undefined)
      return failure('#NUM!', 'position 4 (type) X is special: it does not say which faces cut');
    caution('the chip groove may allow fewer edges than the shape has corners: see the insert');
    return shape.corners * (doubleSided ? 2 : 1);
  },
  remarks: INSERT_REMARKS,
  scaling: 'table',
  sources: ['ISO 1832'],
  examples: [
    { given: ['"CNMG 12 04 08"'], gives: '4', origin: 'published', how: '2 corners on two faces' },
    { given: ['"CNMM 12 04 08"'], gives: '2', origin: 'published', how: 'chip groove on one face' },
    { given: ['"SNMG 12 04 08"'], gives: '8', origin: 'published', how: '4 corners on two faces' },
    { given: ['"TCMT 11 02 04"'], gives: '3', origin: 'published', how: 'clearance: one face' },
    { given: ['"WNMG 08 04 08"'], gives: '6', origin: 'published', how: '3 corners on two faces' },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
