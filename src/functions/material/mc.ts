/** MATERIAL.MC: exponent mc of a material by its designation. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { materialNamed } from '../material-search.ts';
import { CONFIDENCE } from '../materials.table.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MATERIAL.MC',
  family: 'MATERIAL',
  summary: 'Exponent mc of a work material',
  searchWords: ['Kienzle', 'mc', 'material'],
  parameters: [parameter('designation', { meaning: 'designation of the material, as in "42CrMo4"' })],
  result: { kind: 'ratio', symbol: 'mc', meaning: 'how fast the specific force rises for thinner chips' },
  reading: 'table',
  compute({ designation }, _note, caution) {
    const material = materialNamed(designation);
    if ('failure' in material) return material;
    const { mc, names, confidence, note } = material;
    if (mc === undefined) return failure('#N/A', `the table has no exponent mc for ${names[0]}`);
    if (confidence) caution(`${names[0]}: ${CONFIDENCE[confidence]}${note === undefined ? '' : `; ${note}`}`);
    return mc;
  },
  scaling: 'table',
  sources: ['K1', 'K2', 'T1', 'K3'],
  examples: [
    {
      given: ['"42CrMo4"'],
      gives: '0.26',
      origin: 'published',
      how: 'main value in textbooks (T1, K2), from memory',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
