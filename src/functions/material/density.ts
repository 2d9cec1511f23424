/** MATERIAL.DENSITY: density of a material by its designation. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { materialNamed } from '../material-search.ts';

import { parameter } from '../parameter.ts';

export default {
  name: 'MATERIAL.DENSITY',
  family: 'MATERIAL',
  summary: 'Density of a work or tool material',
  searchWords: ['mass', 'weight', 'rho', 'material', 'tungsten', 'carbide'],
  parameters: [parameter('designation', { meaning: 'designation of the material, as in "42CrMo4"' })],
  result: { kind: 'density', symbol: 'rho', meaning: 'density' },
  reading: 'table',
  compute({ designation }, _note, caution) {
    const material = materialNamed(designation);
    if ('failure' in material) return material;
    const { density, names, densityProvenance } = material;
    if (density === undefined) return failure('#N/A', `the table has no density for ${names[0]}`);
    if (densityProvenance !== '') caution(`${names[0]}: ${densityProvenance}`);
    return density;
  },
  scaling: 'table',
  sources: ['B777', 'R1'],
  examples: [
    { given: ['"Ti-6Al-4V"'], gives: '4430 kg/m3', origin: 'published', how: 'handbook value, from memory' },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
