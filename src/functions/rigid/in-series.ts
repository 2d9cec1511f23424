/** RIGID.IN_SERIES: stiffness of springs one behind the other. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'RIGID.IN_SERIES',
  family: 'RIGID',
  summary: 'Stiffness of tool, holder, work and fixture one behind the other',
  searchWords: ['springs', 'compliance', 'weakest link', 'system stiffness'],
  parameters: [
    parameter('stiffness', {
      name: 'stiffnesses',
      list: true,
      meaning: 'stiffness of each link, all at the point and in the direction of the force',
    }),
  ],
  result: { kind: 'stiffness', symbol: 'k_s', meaning: 'stiffness of the whole' },
  equation: '1 / SUM(1 / k)',
  remarks: ['The weakest link decides: the whole is softer than the softest of them.'],
  sources: ['mechanics'],
  examples: [
    {
      given: ['{20;30;60} N/um'],
      gives: '10 N/um',
      origin: 'byHand',
      how: '1/20 + 1/30 + 1/60 is 1/10',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
