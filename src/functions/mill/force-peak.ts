/** MILL.FORCE_PEAK: largest force across the axis of an end mill. */

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
import { optional } from '../parameter.ts';

export default {
  name: 'MILL.FORCE_PEAK',
  family: 'MILL',
  summary: 'Largest force across the axis of a helical end mill',
  searchWords: ['cutting force', 'resultant', 'deflection', 'peak force', 'end mill'],
  parameters: [...END_MILL_PARAMETERS, optional('radial_ratio', '0.3')],
  result: { kind: 'force', symbol: 'F_peak', meaning: 'largest resultant in the plane across the axis' },
  reading: 'largest of sqrt(Fx^2 + Fy^2) over one tooth period, tooth forces integrated along the helix',
  compute: (args) => extremeOf(endMillCut(args), ({ x, y }) => Math.hypot(x, y)),
  constants: END_MILL_CONSTANTS,
  steps: END_MILL_STEPS,
  refuses: END_MILL_REFUSALS,
  cautions: END_MILL_CAUTIONS,
  remarks: [...END_MILL_REMARKS, 'The same for up and down milling.'],
  sources: ['A1', 'K1'],
  examples: [
    {
      given: ['20 mm', '4', '38 deg', '0.1 mm', '20 mm', '2 mm', '1700 MPa', '0.25', '0.3'],
      gives: '1028.4 N',
      origin: 'otherProgram',
      how: 'arc integrals by a separate program; 6000 slices give 1028.75 N',
    },
    {
      given: ['20 mm', '1', '0 deg', '0.1 mm', '5 mm', '10 mm', '2000 MPa', '0', '0'],
      gives: '1000 N',
      origin: 'byHand',
      how: 'one straight tooth, half engaged, no rise for thin chips: 2000 MPa times 0.1 mm times 5 mm at the full chip',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
