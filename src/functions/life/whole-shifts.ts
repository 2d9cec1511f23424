/** LIFE.WHOLE_SHIFTS: whole shifts that a set of edges lasts. */

import type { FunctionDefinition } from '../../definition/index.ts';

export default {
  name: 'LIFE.WHOLE_SHIFTS',
  family: 'LIFE',
  summary: 'Whole shifts that a set of edges lasts',
  searchWords: ['tool change', 'shift', 'planned change'],
  parameters: [
    {
      name: 'parts_per_set',
      symbol: 'parts',
      kind: 'count',
      hard: { least: '0' },
      meaning: 'parts that a set of edges lasts',
    },
    {
      name: 'parts_per_shift',
      symbol: 'shift_parts',
      kind: 'count',
      hard: { above: '0' },
      meaning: 'parts made in a shift',
    },
  ],
  result: { kind: 'count', symbol: 'shifts', meaning: 'whole shifts between changes' },
  equation: 'INT(parts / shift_parts)',
  cautions: [{ when: 'shifts < 1', text: 'the set must be changed inside the shift' }],
  remarks: ['Changed at the end of a shift, 1.5 shifts of life count as 1.'],
  sources: ['practice'],
  examples: [
    { given: ['600', '400'], gives: '1', origin: 'byHand', how: 'one and a half shifts count as one' },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
