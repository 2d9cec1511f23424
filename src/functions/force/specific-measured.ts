/** FORCE.SPECIFIC_MEASURED: specific cutting force of the running process, from the spindle display. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'FORCE.SPECIFIC_MEASURED',
  family: 'FORCE',
  summary: 'Specific cutting force of the running process from the power display',
  searchWords: ['kc', 'measured', 'spindle load', 'power meter'],
  parameters: [
    parameter('loaded_power'),
    parameter('idle_power'),
    parameter('removal_rate'),
    optional('efficiency', '0.85'),
  ],
  result: { kind: 'specific cutting force', symbol: 'kc', meaning: 'specific cutting force of this cut' },
  equation: '(P_loaded - P_idle) * eta / Q',
  refuses: [
    { when: 'P_idle >= P_loaded', text: 'idle power {P_idle} must be less than the loaded power {P_loaded}' },
  ],
  cautions: [
    {
      when: 'P_loaded - P_idle < 0.1 * P_loaded',
      text: 'the cut adds less than a tenth of {P_loaded}: the display is too coarse for this',
    },
  ],
  sources: ['mechanics'],
  examples: [
    {
      given: ['5 kW', '1 kW', '60 cm3/min', '0.85'],
      gives: '3400 MPa',
      origin: 'byHand',
      how: '4 kW times 0.85 over 1 cm3 in a second',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
