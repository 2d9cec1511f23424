/** TURN.FEED_FOR_ROUGHNESS: feed that leaves a wanted mean roughness. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'TURN.FEED_FOR_ROUGHNESS',
  family: 'TURN',
  summary: 'Feed per revolution for a wanted mean roughness Ra, in theory',
  searchWords: ['Ra', 'surface finish', 'finishing feed', 'nose radius'],
  parameters: [
    parameter('nose_radius'),
    {
      name: 'wanted_roughness',
      symbol: 'Ra',
      kind: 'roughness',
      metric: 'um',
      inch: 'uin',
      hard: { above: '0' },
      usual: { from: '0.05 um', to: '25 um' },
      meaning: 'mean roughness Ra aimed at',
    },
  ],
  result: { kind: 'feed per revolution', symbol: 'f', meaning: 'feed in one turn' },
  equation: 'SQRT(18 * SQRT(3) * r_eps * Ra)',
  refuses: [
    {
      when: 'f >= 2 * r_eps',
      text: 'the feed would be {f}, not below twice the nose radius {r_eps}',
    },
  ],
  cautions: [
    {
      when: 'f > 0.5 * r_eps',
      text: 'the feed {f} is above half the nose radius {r_eps}: the surface gets rougher than asked for',
    },
  ],
  remarks: ['Real Ra is higher than in theory: divide the wanted value by your own ratio of real to theory.'],
  sources: ['derived', 'ISO 21920'],
  examples: [
    {
      given: ['1 mm', '0.32075 um'],
      gives: '0.1 mm',
      tolerance: '1e-5',
      origin: 'byHand',
      how: 'factor 0.032075 of case i12, read backwards',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
