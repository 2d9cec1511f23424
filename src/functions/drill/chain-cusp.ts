/** DRILL.CHAIN_CUSP: ridge between two holes of a chain. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'DRILL.CHAIN_CUSP',
  family: 'DRILL',
  summary: 'Height of the ridges that overlapping holes leave on each wall',
  searchWords: ['chain drilling', 'scallop', 'slot', 'finishing allowance'],
  parameters: [parameter('drill_diameter'), parameter('pitch', { meaning: 'distance from hole to hole' })],
  result: { kind: 'length', symbol: 'cusp', meaning: 'height of the ridge' },
  equation: '(P^2 / 4) / (D / 2 + SQRT(D^2 / 4 - P^2 / 4))',
  refuses: [{ when: 'P >= D', text: 'the pitch {P} must be less than the drill diameter {D}' }],
  cautions: [
    { when: 'cusp > D / 4', text: 'ridges of {cusp} are above a quarter of the drill diameter {D}' },
  ],
  sources: ['geometry'],
  examples: [{ given: ['10 mm', '6 mm'], gives: '1 mm', origin: 'byHand', how: '5 - sqrt(25 - 9)' }],
  since: '0.1',
} satisfies FunctionDefinition;
