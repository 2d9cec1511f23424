/** CHATTER.MILL_FLOOR: depth of milling without chatter at any speed. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import {
  MEAN_REMARKS,
  FLOOR_PARAMETERS,
  millingSystem,
  MODE_REFUSALS,
  NO_LIMIT,
} from '../milling-chatter.ts';
import { sweepOf } from '../milling-stability.ts';

export default {
  name: 'CHATTER.MILL_FLOOR',
  family: 'CHATTER',
  summary: 'Axial depth of milling that is free of chatter at any spindle speed',
  searchWords: ['stability', 'lobes', 'vibration', 'regenerative', 'absolute limit'],
  parameters: FLOOR_PARAMETERS,
  result: { kind: 'length', symbol: 'ap_floor', meaning: 'axial depth without chatter at any speed' },
  reading: 'least of the positive limits of CHATTER.MILL_LIMIT over all frequencies',
  compute(args) {
    return sweepOf(millingSystem(args)).floor() ?? failure('#NUM!', NO_LIMIT);
  },
  refuses: MODE_REFUSALS,
  cautions: [
    {
      when: 'ae < 0.5 * Dc',
      text: '{ae} is less than half of {Dc}: the mean of the forces describes the cut less well',
    },
  ],
  remarks: MEAN_REMARKS,
  sources: ['A2', 'A1'],
  examples: [
    {
      given: [
        '20 mm',
        '2',
        '10 mm',
        '"down"',
        '1319.4 MPa',
        '0.5978475064423222',
        '{456.780432115313;1448.88914030656} Hz',
        '{0.111705399393456;0.0170370095790783}',
        '{7933097.18086825;14691778.4389479} N/m',
        '{516.51818914797;1408.44814086966} Hz',
        '{0.0245796327070992;0.0313576019295683}',
        '{9374613.81193087;12406389.7145168} N/m',
      ],
      gives: '0.957104 mm',
      origin: 'otherProgram',
      how: 'case h15: the pair of depth and speed makes the determinant vanish',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
