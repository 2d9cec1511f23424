/** CRANK.FACET_HEIGHT: height of the facets that the edges leave on a journal. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { JOURNAL_FEED } from '../orbit.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CRANK.FACET_HEIGHT',
  family: 'CRANK',
  summary: 'Height of the facets that the edges leave on a journal',
  searchWords: ['crankshaft', 'roundness', 'polygon', 'surface'],
  parameters: [
    parameter('cutter_diameter'),
    JOURNAL_FEED,
    parameter('journal_diameter'),
    parameter('cutter_type'),
  ],
  result: { kind: 'roughness', symbol: 'h_f', meaning: 'height of the facets' },
  equation: 'fj^2 / 4 * IF(cutter_type = "external"; (Dc + Dm) / (Dm * Dc); (Dc - Dm) / (Dm * Dc))',
  refuses: [
    {
      when: 'AND(cutter_type = "internal"; Dc <= Dm)',
      text: 'an internal cutter of {Dc} must be larger than the journal {Dm}',
    },
  ],
  remarks: [
    'Holds only if the inserts run true: with run-out above this height the facets come from the highest insert, and the feed between them is the feed of a whole turn.',
  ],
  sources: ['derived'],
  examples: [
    {
      given: ['200 mm', '1 mm', '80 mm', '"internal"'],
      gives: '1.875 um',
      origin: 'otherProgram',
      how: 'circles sampled point by point: 1.8750',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
