/** RIGID.STEPPED_DEFLECTION: bend of a bar of several diameters and materials. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { numbersOf } from '../numbers.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'RIGID.STEPPED_DEFLECTION',
  family: 'RIGID',
  summary: 'Deflection of a stepped tool, from the cutting end to the clamp',
  searchWords: ['bending', 'cantilever', 'holder', 'extension', 'tool assembly', 'stick-out'],
  parameters: [
    parameter('length', {
      name: 'lengths',
      symbol: 'lengths',
      list: true,
      meaning: 'lengths of the steps, from the cutting end',
    }),
    parameter('diameter', {
      name: 'diameters',
      symbol: 'diameters',
      list: true,
      meaning: 'diameters of the steps',
    }),
    parameter('modulus', { name: 'moduli', symbol: 'moduli', list: true, meaning: 'moduli of the steps' }),
    parameter('force', { meaning: 'force across the tool at the cutting end' }),
  ],
  result: { kind: 'length', symbol: 'delta', meaning: 'deflection at the cutting end' },
  reading: 'F * sum of 64 (x_(i+1)^3 - x_i^3) / (3 pi E_i d_i^4), x from the cutting end',
  compute({ lengths, diameters, moduli, F }) {
    const [d, E] = [numbersOf(diameters), numbersOf(moduli)];
    let from = 0;
    let sum = 0;
    for (const [index, length] of numbersOf(lengths).entries()) {
      const to = from + length;
      const cubes = length * (to * to + to * from + from * from);
      sum += (64 * cubes) / (3 * Math.PI * (E[index] ?? Number.NaN) * (d[index] ?? Number.NaN) ** 4);
      from = to;
    }
    return Number(F) * sum;
  },
  refuses: [
    {
      when: 'OR(COUNT(lengths) <> COUNT(diameters); COUNT(lengths) <> COUNT(moduli))',
      text: 'lengths, diameters and moduli differ in count',
    },
  ],
  cautions: [
    {
      when: 'SUM(lengths) < 3 * MAX(diameters)',
      text: 'the tool is shorter than 3 diameters: shear adds 6 % and more',
    },
  ],
  remarks: [
    'The clamp and the joints are taken as rigid: measured deflection is 2 to 5 times as large.',
    'A fluted part counts with 0.8 times its outside diameter (KV).',
  ],
  sources: ['R1', 'KV'],
  examples: [
    {
      given: ['{40;60;50} mm', '{16;20;32} mm', '{580;210;210} GPa', '500 N'],
      gives: '136.921 um',
      origin: 'otherProgram',
      how: 'bending moment integrated twice: 136.921 um',
    },
    {
      given: ['{50;50} mm', '{20;20} mm', '{210;210} GPa', '500 N'],
      gives: '0.1010503 mm',
      tolerance: '0.000001 mm',
      origin: 'byHand',
      how: 'two steps that make the plain bar of case g01',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
