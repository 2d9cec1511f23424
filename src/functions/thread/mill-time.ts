/** THREAD.MILL_TIME: time at feed of milling an internal thread. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';
import {
  CUTTER_LENGTH,
  MAJOR,
  MILL_IN_HOLE,
  MILL_TOO_LARGE,
  PITCH,
  ROWS,
  THREAD_LENGTH,
} from '../thread-profile.ts';

export default {
  name: 'THREAD.MILL_TIME',
  family: 'THREAD',
  summary: 'Time at feed of milling an internal thread',
  searchWords: ['thread milling', 'helical interpolation', 'cycle time', 'thread mill'],
  parameters: [
    parameter('cutter_diameter', { usual: { from: '0.5 mm', to: '120 mm' } }),
    parameter('teeth'),
    parameter('feed_per_tooth'),
    parameter('cutting_speed'),
    MAJOR,
    PITCH,
    THREAD_LENGTH,
    ROWS,
    CUTTER_LENGTH,
    {
      name: 'radial_passes',
      symbol: 'passes',
      kind: 'count',
      hard: { least: '1' },
      usual: { from: '1', to: '10' },
      whole: true,
      default: { value: '1' },
      meaning: 'passes until the thread has its depth',
    },
  ],
  result: { kind: 'time', symbol: 't', meaning: 'time at feed' },
  steps: [
    { symbol: 'e', meaning: 'radius of the path of the axis', kind: 'length', equation: '(d - Dc) / 2' },
    {
      symbol: 'vf',
      meaning: 'feed rate of the axis',
      kind: 'feed rate',
      equation: 'fz * z * vc / (PI() * Dc) * (d - Dc) / d',
    },
    {
      symbol: 'lead',
      meaning: 'path of the half circle to the wall, rising a quarter of the pitch',
      kind: 'length',
      equation: 'SQRT((PI() * e / 2)^2 + (P / 4)^2)',
    },
    {
      symbol: 'turn',
      meaning: 'path of one turn',
      kind: 'length',
      equation: 'SQRT((2 * PI() * e)^2 + P^2)',
    },
    {
      symbol: 'positions',
      meaning: 'positions one below the other',
      kind: 'count',
      equation: 'IF(rows = "single"; 1; CEILING(L / L_c))',
    },
    {
      symbol: 'turns',
      meaning: 'turns around the hole',
      kind: 'count',
      equation: 'IF(rows = "single"; L / P; positions * IF(rows = "every"; 1; 2))',
    },
  ],
  equation: 'passes * (positions * 2 * lead + turns * turn) / vf',
  refuses: [MILL_IN_HOLE],
  cautions: [MILL_TOO_LARGE],
  remarks: [
    'The feed per tooth is not the chip: the arc of contact is that of MILL.CIRCLE_ENGAGEMENT.',
    'Rapid moves between positions are not in it.',
  ],
  sources: ['derived'],
  examples: [
    {
      given: ['8 mm', '4', '0.05 mm', '120 m/min', '10 mm', '1.5 mm', '15 mm', '"every"'],
      gives: '3.04409 s',
      origin: 'otherProgram',
      how: 'path sampled point by point',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
