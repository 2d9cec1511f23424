/** DRILL.PLAN: how a hole of this depth is usually drilled. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'DRILL.PLAN',
  family: 'DRILL',
  summary: 'How a hole of this depth is usually drilled',
  searchWords: ['deep hole', 'pilot hole', 'length to diameter', 'pecking', 'strategy'],
  parameters: [
    parameter('drill_diameter'),
    parameter('depth', { meaning: 'depth of the hole' }),
    {
      name: 'group',
      symbol: 'group',
      kind: 'text',
      words: ['P', 'M', 'K', 'N', 'S', 'H'],
      default: { meaning: 'the work material is not looked at' },
      meaning: 'group of the work material',
    },
  ],
  result: { kind: 'text', symbol: 'plan', meaning: 'steps in words' },
  steps: [{ symbol: 'ratio', meaning: 'depth over diameter', kind: 'ratio', equation: 'L / D' }],
  reading: 'table of common practice over depth/diameter: up to 12, up to 16, up to 30, above',
  compute({ D, ratio, group }) {
    if (typeof D !== 'number' || typeof ratio !== 'number') return failure('#VALUE!', 'value missing');
    const within = (limit: number): boolean => ratio <= limit * (1 + 1e-9);
    const pilot =
      'pilot hole 2 diameters deep with the same point angle or flatter, to fit the drill; enter it slowly; then full depth in one go without pecking';
    const plan = within(12)
      ? 'one pass without pilot hole'
      : within(16)
        ? 'one pass with polished flutes'
        : within(30)
          ? pilot
          : `${pilot}; reduced speed until the drill is guided; check of straightness`;
    return group === 'M' || group === 'S' ? `${plan}; never peck, the work hardens` : plan;
  },
  cautions: [
    { when: 'ratio > 50', text: 'the hole is {ratio} diameters deep: above 50 the rule does not reach' },
    {
      when: 'AND(OR(group = "M"; group = "S"); ratio > 5)',
      text: 'this material hardens where a drill rubs: keep the feed up, do not peck',
    },
  ],
  remarks: ['A rule of the trade without a source; the maker of the drill has the last word.'],
  scaling: 'text',
  sources: ['practice'],
  examples: [
    {
      given: ['10 mm', '100 mm'],
      gives: '"one pass without pilot hole"',
      origin: 'byHand',
      how: '10 diameters, row up to 12 of the table of common practice',
    },
    {
      given: ['10 mm', '150 mm'],
      gives: '"one pass with polished flutes"',
      origin: 'byHand',
      how: '15 diameters, row up to 16',
    },
    {
      given: ['10 mm', '150 mm', '"M"'],
      gives: '"one pass with polished flutes; never peck, the work hardens"',
      origin: 'byHand',
      how: 'as before, with the sentence for stainless steel',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
