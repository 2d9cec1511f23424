/** MILL.TORQUE_RIPPLE: largest over mean torque of an end mill. */

import type { FunctionDefinition } from '../../definition/index.ts';
import {
  END_MILL_CAUTIONS,
  END_MILL_CONSTANTS,
  END_MILL_PARAMETERS,
  END_MILL_REFUSALS,
  END_MILL_REMARKS,
  END_MILL_STEPS,
  endMillCut,
} from '../end-mill-cut.ts';
import { extremeOf, meanTorque } from '../milling-force.ts';

export default {
  name: 'MILL.TORQUE_RIPPLE',
  family: 'MILL',
  summary: 'Largest over mean torque of a helical end mill',
  searchWords: ['smooth cut', 'impact', 'even torque', 'axial pitch', 'end mill'],
  parameters: END_MILL_PARAMETERS,
  result: { kind: 'ratio', symbol: 'ripple', meaning: 'largest torque over mean torque' },
  reading: 'largest torque over one tooth period over its mean',
  compute(args, note) {
    const cut = endMillCut(args);
    const mean = meanTorque(cut);
    note('M_mean', mean, 'torque');
    return (extremeOf(cut, ({ tangential }) => tangential) * cut.cutterDiameter) / (2 * mean);
  },
  constants: END_MILL_CONSTANTS,
  steps: END_MILL_STEPS,
  refuses: END_MILL_REFUSALS,
  cautions: [
    ...END_MILL_CAUTIONS,
    {
      when: 'ripple > 3',
      text: 'the torque rises to {ripple} times its mean: every tooth enters with a blow',
    },
  ],
  remarks: [...END_MILL_REMARKS, 'Exactly 1 at whole multiples of MILL.AXIAL_PITCH.'],
  sources: ['derived', 'A1'],
  examples: [
    {
      given: ['20 mm', '4', '38 deg', '0.1 mm', '20 mm', '2 mm', '1700 MPa', '0.25'],
      gives: '1.00526',
      origin: 'otherProgram',
      how: '9.97762 over 9.92538 N·m, arc integrals by a separate program',
    },
    {
      given: ['20 mm', '4', '45 deg', '0.1 mm', '15.707963267948966 mm', '2 mm', '1700 MPa', '0.25'],
      gives: '1',
      tolerance: '0.000000001',
      origin: 'byHand',
      how: 'the depth is one axial pitch: as one tooth leaves a height the next takes its place',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
