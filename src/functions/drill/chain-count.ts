/** DRILL.CHAIN_COUNT: holes of a chain that opens a slot. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'DRILL.CHAIN_COUNT',
  family: 'DRILL',
  summary: 'Count of overlapping holes that open a slot',
  searchWords: ['chain drilling', 'slot', 'stitch drilling', 'overlapping holes'],
  parameters: [
    parameter('drill_diameter'),
    parameter('pitch', { meaning: 'largest distance from hole to hole' }),
    parameter('length', { name: 'slot_length', meaning: 'length of the slot over its round ends' }),
  ],
  result: { kind: 'count', symbol: 'holes', meaning: 'holes of the chain' },
  steps: [
    {
      symbol: 'gaps',
      meaning: 'steps from hole to hole',
      kind: 'count',
      equation: 'CEILING((L - D) / P)',
    },
    { symbol: 'p', meaning: 'real pitch', kind: 'length', equation: '(L - D) / gaps' },
  ],
  equation: 'gaps + 1',
  refuses: [
    { when: 'L <= D', text: 'the slot {L} must be longer than the drill diameter {D}' },
    { when: 'P >= D', text: 'the pitch {P} must be less than the drill diameter {D}' },
    {
      when: 'p <= D / 2',
      text: 'the real pitch {p} is not above half the drill diameter {D}: the first holes would not be solid',
    },
  ],
  cautions: [
    {
      when: 'holes / 2 = INT(holes / 2)',
      text: '{holes} holes are an even count: the last bridging hole cuts on one side only; use the next odd count',
    },
  ],
  remarks: ['The real pitch is (slot length - drill diameter)/(count - 1). Order: DRILL.CHAIN_ORDER.'],
  sources: ['derived'],
  examples: [
    {
      given: ['10 mm', '7 mm', '60 mm'],
      gives: '9',
      origin: 'byHand',
      how: 'counted along the slot; real pitch 6.25 mm',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
