/** RIGID.MODULUS: modulus of elasticity of a material. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { ELASTICITIES } from '../elasticity.table.ts';
import { namedRow } from '../named-row.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'RIGID.MODULUS',
  family: 'RIGID',
  summary: 'Modulus of elasticity of a tool or work material',
  searchWords: ['Young', 'elasticity', 'E', 'steel', 'carbide', 'tungsten'],
  parameters: [
    parameter('designation', { name: 'material', symbol: 'material', meaning: 'material, as in "steel"' }),
  ],
  result: { kind: 'stress', symbol: 'E', meaning: 'modulus of elasticity' },
  reading: 'table',
  compute({ material }, _note, caution) {
    const row = namedRow(ELASTICITIES, material);
    if ('failure' in row) return row;
    if (row.provenance !== '') caution(`${row.names[0]}: ${row.provenance}`);
    return row.modulus * 1e9;
  },
  scaling: 'table',
  sources: ['R1'],
  examples: [
    { given: ['"steel"'], gives: '210 GPa', origin: 'published', how: 'case g01: 200 to 210 GPa' },
    {
      given: ['"Ti-6Al-4V"'],
      gives: '114 GPa',
      origin: 'published',
      how: 'handbook value, from memory',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
