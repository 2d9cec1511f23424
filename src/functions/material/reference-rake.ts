/** MATERIAL.REFERENCE_RAKE: reference rake of a material by its designation. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { materialNamed } from '../material-search.ts';

import { parameter } from '../parameter.ts';

export default {
  name: 'MATERIAL.REFERENCE_RAKE',
  family: 'MATERIAL',
  summary: 'Rake angle at which the force values of a material were measured',
  searchWords: ['rake', 'Kienzle', 'material'],
  parameters: [parameter('designation', { meaning: 'designation of the material, as in "42CrMo4"' })],
  result: { kind: 'angle', symbol: 'gamma_0', meaning: 'reference rake of the force values' },
  reading: 'table: 2 deg for cast iron, 6 deg for the others',
  compute({ designation }, _note, caution) {
    const material = materialNamed(designation);
    if ('failure' in material) return material;
    const { referenceRake, names } = material;
    if (referenceRake === undefined)
      return failure('#N/A', `the table has no reference rake for ${names[0]}`);
    caution(`${names[0]}: from memory`);
    return referenceRake * (Math.PI / 180);
  },
  scaling: 'table',
  sources: ['K2', 'T1'],
  examples: [
    {
      given: ['"EN-GJL-250"'],
      gives: '2 deg',
      origin: 'published',
      how: 'reference rake of cast iron rows in textbooks (K2, T1), from memory',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
