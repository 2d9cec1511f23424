/** MILL.WALL_FORCE: force square to the milled wall that decides whether the wall comes out too big or too small. */

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
import { extremeOf } from '../milling-force.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'MILL.WALL_FORCE',
  family: 'MILL',
  summary: 'Force of a helical end mill square to the wall, with its sense',
  searchWords: ['deflection', 'form error', 'wall', 'push off', 'normal force', 'end mill'],
  parameters: [...END_MILL_PARAMETERS, parameter('milling_sense'), optional('radial_ratio', '0.3')],
  result: {
    kind: 'force',
    symbol: 'F_wall',
    meaning:
      'positive pushes the cutter off the wall (part stays big), negative pulls it in (part too small)',
  },
  reading: 'value of largest size of the force square to the wall over one tooth period',
  compute(args) {
    const cut = endMillCut(args);
    return extremeOf(cut, ({ y }) => (cut.sense === 'down' ? y : -y));
  },
  constants: END_MILL_CONSTANTS,
  steps: END_MILL_STEPS,
  refuses: END_MILL_REFUSALS,
  cautions: END_MILL_CAUTIONS,
  remarks: END_MILL_REMARKS,
  sources: ['A1', 'K1'],
  examples: [
    {
      given: ['20 mm', '4', '38 deg', '0.1 mm', '20 mm', '2 mm', '1700 MPa', '0.25', '"down"', '0.3'],
      gives: '661.611 N',
      origin: 'otherProgram',
      how: 'arc integrals by a separate program; slices give 661.90 N',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
