/** STOCK.PART_COST: material and roughing cost of a part, less what the chips bring. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'STOCK.PART_COST',
  family: 'STOCK',
  summary: 'Cost of material and roughing, less what the chips bring',
  searchWords: ['billet', 'buy-to-fly', 'swarf price', 'material cost'],
  parameters: [
    parameter('bought_mass'),
    parameter('flying_mass'),
    parameter('density'),
    parameter('removal_rate'),
    parameter('material_price'),
    parameter('machine_rate'),
    optional('chip_price', '0 money/kg'),
    optional('recovered', '1'),
    optional('share_in_cut', '1'),
  ],
  result: { kind: 'money', symbol: 'C_part', meaning: 'cost of the roughed part' },
  steps: [
    { symbol: 't_rough', meaning: 'roughing time', kind: 'time', equation: '(m_b - m_f) / (rho * Q * q)' },
  ],
  equation: 'm_b * price + rate * t_rough - (m_b - m_f) * recovered * chip_price',
  refuses: [{ when: 'm_f >= m_b', text: 'flying mass {m_f} must be less than the bought mass {m_b}' }],
  remarks: ['Finishing, tools and inspection are not in it.'],
  sources: ['derived'],
  examples: [
    {
      given: [
        '180 kg',
        '9 kg',
        '4430 kg/m3',
        '90 cm3/min',
        '45 money/kg',
        '110 money/h',
        '4 money/kg',
        '0.8',
        '0.7',
      ],
      gives: '8676.09 money',
      origin: 'byHand',
      how: '8100 for material and 1123.29 for 612.706 min, less 547.20 for chips',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
