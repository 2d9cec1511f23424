/** DRILL.CHAIN_ORDER: order in which the holes of a chain are drilled. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';

export default {
  name: 'DRILL.CHAIN_ORDER',
  family: 'DRILL',
  summary: 'Order of the holes of a chain: first the solid ones, then the bridges',
  searchWords: ['chain drilling', 'sequence', 'slot', 'skip drilling'],
  parameters: [
    {
      name: 'count',
      symbol: 'holes',
      kind: 'count',
      hard: { least: '2', most: '999' },
      whole: true,
      meaning: 'holes of the chain',
    },
  ],
  result: {
    kind: 'count',
    symbol: 'order',
    meaning: 'numbers of the holes, one below the other',
    list: true,
  },
  reading: '1, 3, 5, ... then 2, 4, 6, ...',
  compute({ holes }) {
    if (typeof holes !== 'number') return failure('#VALUE!', 'value missing: count');
    const numbers = Array.from({ length: holes }, (_, index) => index + 1);
    const ordered = [
      ...numbers.filter((hole) => hole % 2 === 1),
      ...numbers.filter((hole) => hole % 2 === 0),
    ];
    return { grid: ordered.map((hole) => [hole]) };
  },
  cautions: [
    {
      when: 'holes / 2 = INT(holes / 2)',
      text: '{holes} holes are an even count: the last bridging hole cuts on one side only; use the next odd count',
    },
  ],
  sources: ['practice'],
  examples: [
    {
      given: ['7'],
      gives: ['1', '3', '5', '7', '2', '4', '6'],
      origin: 'byHand',
      how: 'odd holes stand in solid metal, each even one bridges two of them',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
