/** FORCE.LAND_RATIO: chip thickness over the land of the edge. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'FORCE.LAND_RATIO',
  family: 'FORCE',
  summary: 'Chip thickness over the land of the edge: is the edge sharp for this cut',
  searchWords: ['edge preparation', 'hone', 'chamfer', 'T-land', 'rubbing', 'minimum chip'],
  parameters: [parameter('chip_thickness'), parameter('land_width')],
  result: { kind: 'ratio', symbol: 'land_ratio', meaning: 'chip thickness over land' },
  equation: 'h / b_gamma',
  cautions: [
    {
      when: 'land_ratio < 1',
      text: 'the chip {h} is thinner than the land {b_gamma}: the rake of the land cuts, not that of the insert',
    },
    { when: 'land_ratio < 0.3', text: 'with a honed edge this rubs more than it cuts' },
  ],
  remarks: [
    'A thin land is sharp, with small forces and a weak edge; a thick land is a strong edge that needs feed.',
  ],
  sources: ['K2', 'practice'],
  examples: [{ given: ['0.12 mm', '0.05 mm'], gives: '2.4', origin: 'byHand', how: '0.12/0.05' }],
  since: '0.1',
} satisfies FunctionDefinition;
