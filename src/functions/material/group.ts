/** MATERIAL.GROUP: group of a material by its designation. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { materialNamed } from '../material-search.ts';

import { parameter } from '../parameter.ts';

export default {
  name: 'MATERIAL.GROUP',
  family: 'MATERIAL',
  summary: 'Group of a work material: P M K N S H',
  searchWords: ['ISO 513', 'material group', 'application'],
  parameters: [parameter('designation', { meaning: 'designation of the material, as in "42CrMo4"' })],
  result: { kind: 'text', symbol: 'group', meaning: 'group of ISO 513' },
  reading: 'table',
  compute({ designation }) {
    const material = materialNamed(designation);
    if ('failure' in material) return material;
    const { group, names } = material;
    if (group === undefined) return failure('#N/A', `the table has no group for ${names[0]}`);
    return group;
  },
  scaling: 'text',
  sources: ['ISO 513'],
  examples: [
    {
      given: ['"Ti-6Al-4V"'],
      gives: '"S"',
      origin: 'published',
      how: 'ISO 513: S holds heat-resistant alloys and titanium, from memory',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
