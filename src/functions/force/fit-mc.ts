/** FORCE.FIT_MC: exponent of the specific force from own trials. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { FIT_PARAMETERS, FIT_REFUSALS, FIT_STEPS, NARROW_FIT } from '../force-fit.ts';

export default {
  name: 'FORCE.FIT_MC',
  family: 'FORCE',
  summary: 'Exponent mc from measured specific forces',
  searchWords: ['Kienzle', 'regression', 'own values', 'mc'],
  parameters: FIT_PARAMETERS,
  result: { kind: 'ratio', symbol: 'mc', meaning: 'minus the slope of ln kc over ln h' },
  steps: FIT_STEPS,
  equation: '-slope',
  refuses: FIT_REFUSALS,
  cautions: [
    NARROW_FIT,
    {
      when: 'OR(mc < 0.1; mc > 0.45)',
      text: 'an exponent of {mc} is unusual: look at the measured values again',
    },
  ],
  sources: ['K1'],
  examples: [
    {
      given: ['{0.1;0.4} mm', '{3023.08;2137.64} MPa'],
      gives: '0.25',
      tolerance: '0.00001',
      origin: 'byHand',
      how: 'two points of 1700 MPa (h/1 mm)^-0.25, which the line must give back',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
