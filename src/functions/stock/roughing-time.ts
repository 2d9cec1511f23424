/** STOCK.ROUGHING_TIME: time to remove what does not stay in the part. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'STOCK.ROUGHING_TIME',
  family: 'STOCK',
  summary: 'Time to remove the difference of bought and flying mass',
  searchWords: ['billet', 'roughing hours', 'removal', 'aerospace'],
  parameters: [
    parameter('bought_mass'),
    parameter('flying_mass'),
    parameter('density'),
    parameter('removal_rate'),
    optional('share_in_cut', '1'),
  ],
  result: { kind: 'time', symbol: 't_rough', meaning: 'roughing time' },
  equation: '(m_b - m_f) / (rho * Q * q)',
  refuses: [{ when: 'm_f >= m_b', text: 'flying mass {m_f} must be less than the bought mass {m_b}' }],
  cautions: [
    {
      when: 'q >= 1',
      text: 'a share in the cut of 100 % is never reached: links, approaches and corners take time',
    },
  ],
  sources: ['derived'],
  examples: [
    {
      given: ['180 kg', '9 kg', '4430 kg/m3', '90 cm3/min', '0.7'],
      gives: '612.706 min',
      origin: 'byHand',
      how: '171 kg are 38600.451 cm3; over 90 are 428.8939; over 0.7',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
