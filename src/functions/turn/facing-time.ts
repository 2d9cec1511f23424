/** TURN.FACING_TIME: time of a facing cut at constant cutting speed up to the largest spindle speed. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'TURN.FACING_TIME',
  family: 'TURN',
  summary: 'Time of a facing cut at constant cutting speed with a speed limit',
  searchWords: ['facing', 'constant surface speed', 'G96', 'parting off', 'cross slide'],
  parameters: [
    parameter('cutting_speed'),
    parameter('feed_per_revolution'),
    parameter('outer_diameter', { usual: { from: '1 mm', to: '3000 mm' } }),
    parameter('inner_diameter', { usual: { from: '0 mm', to: '3000 mm' } }),
    parameter('max_spindle_speed'),
  ],
  result: { kind: 'time', symbol: 't', meaning: 'time at feed' },
  steps: [
    {
      symbol: 'Dt',
      meaning: 'diameter below which the spindle turns at its largest speed',
      kind: 'length',
      equation: 'MIN(MAX(vc / (PI() * n_max); Di); Do)',
    },
  ],
  equation: 'PI() * (Do - Dt) * (Do + Dt) / (4 * f * vc) + (Dt - Di) / (2 * f * n_max)',
  refuses: [{ when: 'Di >= Do', text: 'the inner diameter {Di} must be less than the outer diameter {Do}' }],
  remarks: ['The speeding up of the spindle and the chuck is not in it.'],
  sources: ['derived'],
  examples: [
    {
      given: ['200 m/min', '0.25 mm', '200 mm', '0 mm', '2500 1/min'],
      gives: '38.3103 s',
      origin: 'otherProgram',
      how: 'integrated numerically',
    },
    {
      given: ['100000 m/min', '0.008 in', '6 in', '0 in', '180 1/min'],
      gives: '2.0833 min',
      origin: 'published',
      how: 'Groover, solution to problem 22.3, case a13: the spindle turns at 180 1/min all the time',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
