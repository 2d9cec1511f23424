/** CUT.COOLANT_FLOW: coolant flow that carries the cutting heat at a given warming. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'CUT.COOLANT_FLOW',
  family: 'CUT',
  summary: 'Coolant flow that carries away the cutting power',
  searchWords: ['emulsion', 'oil', 'litres per minute', 'heat', 'cooling'],
  parameters: [
    parameter('cutting_power'),
    {
      name: 'temperature_rise',
      symbol: 'dT',
      kind: 'temperature difference',
      metric: 'K',
      inch: 'ddegF',
      hard: { above: '0 K' },
      meaning: 'how much warmer the coolant may flow back',
    },
    optional('share_to_coolant', '1'),
    optional('density', '1000 kg/m3', {
      usual: { from: '800 kg/m3', to: '1100 kg/m3' },
      meaning: 'density of the coolant: emulsion 1000, oil 870 kg/m3',
    }),
    {
      name: 'specific_heat',
      symbol: 'c_p',
      kind: 'specific heat',
      metric: 'J/(kg·K)',
      inch: 'J/(kg·K)',
      hard: { above: '0' },
      default: { value: '4180 J/(kg·K)' },
      meaning: 'specific heat of the coolant: emulsion 4180, oil 1900 J/(kg·K)',
    },
  ],
  result: { kind: 'flow', symbol: 'V_flow', meaning: 'coolant flow' },
  equation: 'Pc * q / (rho * c_p * dT)',
  cautions: [{ when: 'dT > 30 K', text: 'a rise of {dT} is more than a coolant system holds steady' }],
  remarks: [
    'The flow carries the heat; it says nothing of the pressure that the chips need.',
    'Density and heat of an emulsion are from memory, as for water; oil has about 870 kg/m3 and 1900 J/(kg K).',
  ],
  sources: ['mechanics'],
  examples: [
    {
      given: ['4.18 kW', '6 K'],
      gives: '10 l/min',
      origin: 'byHand',
      how: '4180 W over 4180 J/(kg K) times 6 K is 1/6 kg in a second, 10 kg in a minute',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
