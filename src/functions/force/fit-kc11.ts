/** FORCE.FIT_KC11: specific force at a chip of 1 mm by 1 mm from own trials. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { FIT_PARAMETERS, FIT_REFUSALS, FIT_STEPS, NARROW_FIT } from '../force-fit.ts';

export default {
  name: 'FORCE.FIT_KC11',
  family: 'FORCE',
  summary: 'Specific force kc1.1 from measured specific forces',
  searchWords: ['Kienzle', 'regression', 'own values', 'kc1.1'],
  parameters: FIT_PARAMETERS,
  result: {
    kind: 'specific cutting force',
    symbol: 'kc11',
    meaning: 'specific force for a chip of 1 mm by 1 mm',
  },
  steps: FIT_STEPS,
  equation: '1 MPa * EXP(y_m - slope * x_m)',
  refuses: FIT_REFUSALS,
  cautions: [
    NARROW_FIT,
    {
      when: 'OR(MAX(h) < 1 mm; MIN(h) > 1 mm)',
      text: 'the value at 1 mm lies outside the measured chips: use it only with FORCE.FIT_MC, inside them',
    },
  ],
  sources: ['K1'],
  examples: [
    {
      given: ['{0.1;0.4} mm', '{3023.08;2137.64} MPa'],
      gives: '1700.0 MPa',
      tolerance: '0.05 MPa',
      origin: 'byHand',
      how: 'two points of 1700 MPa (h/1 mm)^-0.25, which the line must give back',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
