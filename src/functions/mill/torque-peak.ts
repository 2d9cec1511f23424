/** MILL.TORQUE_PEAK: largest torque of an end mill. */

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
  name: 'MILL.TORQUE_PEAK',
  family: 'MILL',
  summary: 'Largest torque of a helical end mill',
  searchWords: ['peak torque', 'spindle', 'holder slip', 'end mill'],
  parameters: END_MILL_PARAMETERS,
  result: { kind: 'torque', symbol: 'M_peak', meaning: 'largest torque over one tooth period' },
  reading: 'largest sum of the tangential forces over one tooth period, times Dc/2',
  compute(args, note) {
    const cut = endMillCut(args);
    note('M_mean', meanTorque(cut), 'torque');
    return (extremeOf(cut, ({ tangential }) => tangential) * cut.cutterDiameter) / 2;
  },
  constants: END_MILL_CONSTANTS,
  steps: END_MILL_STEPS,
  refuses: END_MILL_REFUSALS,
  cautions: END_MILL_CAUTIONS,
  remarks: END_MILL_REMARKS,
  sources: ['A1', 'K1'],
  examples: [
    {
      given: ['20 mm', '4', '38 deg', '0.1 mm', '20 mm', '2 mm', '1700 MPa', '0.25'],
      gives: '9.97762 N·m',
      origin: 'otherProgram',
      how: 'arc integrals by a separate program; slices give 9.981 N·m, mean 9.92538 N·m',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
