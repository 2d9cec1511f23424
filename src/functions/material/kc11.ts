/** MATERIAL.KC11: specific force kc1.1 of a material by its designation. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { materialNamed } from '../material-search.ts';
import { CONFIDENCE } from '../materials.table.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MATERIAL.KC11',
  family: 'MATERIAL',
  summary: 'Specific force kc1.1 of a work material',
  searchWords: ['Kienzle', 'kc1.1', 'material', 'steel', 'titanium', 'cast iron'],
  parameters: [parameter('designation', { meaning: 'designation of the material, as in "42CrMo4"' })],
  result: {
    kind: 'specific cutting force',
    symbol: 'kc11',
    meaning: 'specific force for a chip of 1 mm by 1 mm, turning',
  },
  reading: 'table',
  compute({ designation }, _note, caution) {
    const material = materialNamed(designation);
    if ('failure' in material) return material;
    const { kc11, names, confidence, note } = material;
    if (kc11 === undefined) return failure('#N/A', `the table has no specific force kc1.1 for ${names[0]}`);
    if (confidence) caution(`${names[0]}: ${CONFIDENCE[confidence]}${note === undefined ? '' : `; ${note}`}`);
    return kc11 * 1e6;
  },
  remarks: [
    'Turning with carbide at about 100 m/min, sharp edge: milling takes 1.2 to 1.4 times, drilling about 1.2 times as much.',
  ],
  scaling: 'table',
  sources: ['K1', 'K2', 'T1'],
  examples: [
    {
      given: ['"42CrMo4"'],
      gives: '2500 MPa',
      origin: 'published',
      how: 'main value in textbooks (T1, K2), from memory',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
