/** CUT.EFFECTIVE_TEETH: teeth that count for the feed when inserts share the width. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'CUT.EFFECTIVE_TEETH',
  family: 'CUT',
  summary: 'Teeth that count for the feed, from inserts and tracks',
  searchWords: ['long edge cutter', 'porcupine', 'disc', 'crankshaft', 'inserts'],
  parameters: [parameter('inserts'), optional('rows', '1')],
  result: { kind: 'count', symbol: 'z', meaning: 'teeth one after the other; may be a fraction' },
  equation: 'inserts / tracks',
  refuses: [
    { when: 'tracks > inserts', text: '{tracks} rows need at least as many inserts, there are {inserts}' },
  ],
  cautions: [
    {
      when: 'inserts / tracks <> INT(inserts / tracks)',
      text: 'inserts and rows do not divide evenly: the teeth are unevenly loaded',
    },
  ],
  sources: ['geometry'],
  examples: [
    {
      given: ['144', '6'],
      gives: '24',
      origin: 'byHand',
      how: 'a disc for crankshafts with 144 inserts on 6 tracks has 24 in each track',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
