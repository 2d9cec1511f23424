/** MACHINE.ARC_FEED_LIMIT: largest feed on an arc that an axis can follow. */

import type { FunctionDefinition } from '../../definition/index.ts';

export default {
  name: 'MACHINE.ARC_FEED_LIMIT',
  family: 'MACHINE',
  summary: 'Largest feed rate on an arc that the acceleration of the axes allows',
  searchWords: ['dynamics', 'corner', 'trochoidal', 'centripetal', 'radius'],
  parameters: [
    {
      name: 'path_radius',
      symbol: 'r',
      kind: 'length',
      metric: 'mm',
      inch: 'in',
      hard: { above: '0' },
      usual: { from: '0.1 mm', to: '1000 mm' },
      meaning: 'radius of the path of the tool centre',
    },
    {
      name: 'acceleration',
      symbol: 'a',
      kind: 'acceleration',
      metric: 'm/s2',
      inch: 'ft/s2',
      hard: { above: '0' },
      usual: { from: '0.5 m/s2', to: '30 m/s2' },
      meaning: 'acceleration that the axes keep up',
    },
  ],
  result: { kind: 'feed rate', symbol: 'vf', meaning: 'largest feed rate of the tool centre' },
  equation: 'SQRT(a * r)',
  remarks: ['The control may slow down earlier, for its own limits of jerk and contour error.'],
  sources: ['mechanics'],
  examples: [
    {
      given: ['4 mm', '4 m/s2'],
      gives: '7589.47 mm/min',
      origin: 'byHand',
      how: 'the root of 0.016 is 0.126491 m/s',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
