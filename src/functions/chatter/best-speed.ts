/** CHATTER.BEST_SPEED: spindle speed of the greatest depth without chatter. */

import type { FunctionDefinition } from '../../definition/index.ts';
import {
  MEAN_REMARKS,
  FLOOR_PARAMETERS,
  millingSystem,
  MODE_REFUSALS,
  ENGAGEMENT_CAUTIONS,
} from '../milling-chatter.ts';
import { sweepOf } from '../milling-stability.ts';
import { parameter } from '../parameter.ts';

const FIRST = 240;
const LATER = 24;
const ROUNDS = 4;

export default {
  name: 'CHATTER.BEST_SPEED',
  family: 'CHATTER',
  summary: 'Spindle speed of the greatest depth without chatter in a range of speeds',
  searchWords: ['stability', 'pocket', 'lobes', 'sweet spot', 'vibration'],
  parameters: [
    ...FLOOR_PARAMETERS,
    parameter('spindle_speed', { name: 'lowest_speed', symbol: 'n_low', meaning: 'lowest speed' }),
    parameter('spindle_speed', { name: 'highest_speed', symbol: 'n_high', meaning: 'highest speed' }),
  ],
  result: { kind: 'rotational speed', symbol: 'n', meaning: 'speed of the greatest depth' },
  reading: 'speed of the greatest CHATTER.MILL_LIMIT from n_low to n_high, the higher of equal ones',
  compute(args, note, caution) {
    const sweep = sweepOf(millingSystem(args));
    const depthAt = (speed: number): number => sweep.limit(speed) ?? Number.POSITIVE_INFINITY;
    const [lowest, highest] = [Number(args['n_low']), Number(args['n_high'])];
    let [low, high, steps] = [lowest, highest, FIRST];
    let [speed, depth] = [highest, depthAt(highest)];
    for (let round = 0; round < ROUNDS; round += 1) {
      const step = (high - low) / steps;
      for (let i = steps; i >= 0; i -= 1) {
        const tried = low + step * i;
        const reached = depthAt(tried);
        if (reached > depth * (1 + 1e-12)) [speed, depth] = [tried, reached];
      }
      [low, high, steps] = [Math.max(lowest, speed - step), Math.min(highest, speed + step), LATER];
    }
    if (Number.isFinite(depth)) note('ap_lim', depth, 'length');
    const room = 1e-6 * (highest - lowest);
    if (speed - lowest < room || highest - speed < room)
      caution('the best speed lies at an end of the range: a better one may lie outside');
    if (depth > 3 * (sweep.floor() ?? Number.POSITIVE_INFINITY))
      caution('the pocket is narrow, its depth more than 3 times that at any speed: keep 20 % off it');
    return speed;
  },
  refuses: [
    ...MODE_REFUSALS,
    { when: 'n_low >= n_high', text: 'the lowest speed {n_low} is not below the highest {n_high}' },
  ],
  cautions: ENGAGEMENT_CAUTIONS,
  remarks: [...MEAN_REMARKS, 'Stay below the highest speed of tool, holder and spindle.'],
  sources: ['A2', 'A1'],
  examples: [
    {
      given: [
        '20 mm',
        '4',
        '20 mm',
        '"down"',
        '600 MPa',
        '0.3',
        '600 Hz',
        '0.035',
        '10 N/um',
        '660 Hz',
        '0.035',
        '12 N/um',
        '8000 1/min',
        '11000 1/min',
      ],
      gives: '9341 1/min',
      origin: 'otherProgram',
      how: 'speed stepped by 0.1 1/min; the depth there is 5.827 mm',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
