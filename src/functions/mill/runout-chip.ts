/** MILL.RUNOUT_CHIP: largest chip of the tooth that run-out loads most. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MILL.RUNOUT_CHIP',
  family: 'MILL',
  summary: 'Largest chip thickness of the most loaded tooth with run-out',
  searchWords: ['run-out', 'TIR', 'chip load', 'uneven teeth', 'eccentric'],
  parameters: [parameter('teeth'), parameter('runout'), parameter('chip_max')],
  result: { kind: 'length', symbol: 'h_loaded', meaning: 'largest chip thickness on the most loaded tooth' },
  steps: [
    {
      symbol: 'step',
      meaning: 'largest difference of radius between a tooth and the one before',
      kind: 'length',
      equation: 'IF(z <= 1; 0 mm; TIR * SIN(PI() / z))',
    },
  ],
  equation: 'h_max + step',
  refuses: [
    {
      when: 'step >= h_max',
      text: 'run-out {TIR} is so large that a tooth misses the cut at a chip of {h_max}; the model ends there',
    },
  ],
  cautions: [
    {
      when: 'TIR > h_max / 3',
      text: 'run-out {TIR} is more than a third of the chip: uneven wear, and little is left for the other teeth',
    },
  ],
  remarks: ['The cutter is set off by half the dial reading; teeth are evenly spaced.'],
  sources: ['derived'],
  examples: [
    {
      given: ['4', '0.015 mm', '0.06 mm'],
      gives: '0.0706066 mm',
      origin: 'otherProgram',
      how: 'eccentric circle with 4 teeth, point by point',
    },
    {
      given: ['1', '0.015 mm', '0.06 mm'],
      gives: '0.06 mm',
      origin: 'byHand',
      how: 'one tooth follows itself',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
