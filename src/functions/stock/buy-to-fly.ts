/** STOCK.BUY_TO_FLY: mass bought over mass that stays in the part. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'STOCK.BUY_TO_FLY',
  family: 'STOCK',
  summary: 'Buy-to-fly ratio: mass bought over mass of the part',
  searchWords: ['billet', 'aerospace', 'titanium', 'material use', 'chips'],
  parameters: [parameter('bought_mass'), parameter('flying_mass')],
  result: { kind: 'ratio', symbol: 'BTF', meaning: 'buy-to-fly ratio' },
  equation: 'm_b / m_f',
  refuses: [{ when: 'm_f > m_b', text: 'flying mass {m_f} is more than the bought mass {m_b}' }],
  cautions: [{ when: 'BTF > 40', text: 'a ratio above 40 is rare even for titanium from plate' }],
  remarks: [
    'Titanium structures commonly lie at 10 to 20 (common practice, no source); 1 - 1/ratio becomes chips.',
  ],
  sources: ['practice'],
  examples: [{ given: ['180 kg', '9 kg'], gives: '20', origin: 'byHand', how: '180/9' }],
  since: '0.1',
} satisfies FunctionDefinition;
