/** MILL.SCALLOP: height of the ridge between two passes of a ball end on a flat face. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MILL.SCALLOP',
  family: 'MILL',
  summary: 'Scallop height between passes of a ball end mill',
  searchWords: ['cusp', 'ball nose', 'surface finish', 'stepover'],
  parameters: [parameter('ball_diameter'), parameter('stepover')],
  result: { kind: 'roughness', symbol: 'h_s', meaning: 'height of the ridge' },
  steps: [{ symbol: 'R', meaning: 'radius of the ball', kind: 'length', equation: 'Db / 2' }],
  equation: '(s^2 / 4) / (R + SQRT(R^2 - s^2 / 4))',
  refuses: [{ when: 's >= Db', text: 'stepover {s} must be less than the ball diameter {Db}' }],
  cautions: [
    { when: 's > 0.3 * Db', text: 'a stepover above 0.3 of the ball diameter: not a finishing pass' },
  ],
  remarks: ['Flat faces only; on curved faces the ridge is higher or lower.'],
  sources: ['geometry'],
  examples: [
    { given: ['10 mm', '6 mm'], gives: '1 mm', origin: 'byHand', how: '5 - sqrt(25 - 9)' },
    {
      given: ['20 mm', '0.05 mm'],
      gives: '0.0312500488 um',
      origin: 'byHand',
      how: 's^2/(8 R) (1 + s^2/(16 R^2)), the series of the same circle',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
