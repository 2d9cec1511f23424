/** MACHINE.SPEED_REACHED: cutting speed that the spindle allows at a diameter. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'MACHINE.SPEED_REACHED',
  family: 'MACHINE',
  summary: 'Cutting speed that is really reached at the highest spindle speed',
  searchWords: ['spindle limit', 'small tool', 'maximum speed', 'holder'],
  parameters: [
    parameter('diameter'),
    parameter('wanted_cutting_speed', { symbol: 'vc_wanted' }),
    parameter('max_spindle_speed', { meaning: 'least of the limits of machine, holder, chuck and tool' }),
  ],
  result: { kind: 'cutting speed', symbol: 'vc', meaning: 'cutting speed reached' },
  equation: 'MIN(vc_wanted; PI() * D * n_max)',
  cautions: [{ when: 'vc < vc_wanted', text: 'only {vc} of the wanted {vc_wanted} is reached' }],
  remarks: ['Above the limit of chuck, holder or tool parts can fly off: the least limit counts.'],
  sources: ['geometry'],
  examples: [
    {
      given: ['4 mm', '250 m/min', '12000 1/min'],
      gives: '150.796 m/min',
      origin: 'byHand',
      how: 'pi times 4 mm times 12000',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
