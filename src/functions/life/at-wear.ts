/** LIFE.AT_WEAR: tool life read from a wear curve. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { firstCrossing } from '../../numeric/index.ts';
import { numbersOf } from '../numbers.ts';
import { optional } from '../parameter.ts';
import { WEAR_TIMES, WEARS } from '../wear-curve.ts';

const millimetres = (metres: number): string => `${Number((metres * 1000).toPrecision(6))} mm`;

export default {
  name: 'LIFE.AT_WEAR',
  family: 'LIFE',
  summary: 'Time in the cut at which the wear reaches its limit',
  searchWords: ['tool life', 'wear curve', 'flank wear', 'VB', 'criterion'],
  parameters: [WEAR_TIMES, WEARS, optional('wear_limit', '0.3 mm', { name: 'limit' })],
  result: { kind: 'time', symbol: 'T', meaning: 'time in the cut to the wear limit' },
  reading: 'straight line in the first interval where wear goes from below to at or above the limit',
  compute({ t, VB, VB_limit }, _note, caution) {
    const [times, wears, limit] = [numbersOf(t), numbersOf(VB), Number(VB_limit)];
    if (times.length < 2) return failure('#NUM!', 'a wear curve needs at least 2 points');
    if (times.some((time, i) => i > 0 && time <= (times[i - 1] ?? 0)))
      return failure('#NUM!', 'the times must rise from point to point');
    const crossing = firstCrossing(times, wears, limit);
    if (!crossing)
      return failure(
        '#NUM!',
        `the limit ${millimetres(limit)} is not reached: the largest wear is ${millimetres(Math.max(...wears))}`,
      );
    const { x: life, interval } = crossing;
    const [t0 = 0, t1 = 0] = [times[interval - 1], times[interval]];
    const falls = wears.findIndex((wear, i) => i > 0 && wear < (wears[i - 1] ?? 0));
    if (falls > 0)
      caution(
        `point ${falls + 1} shows less wear, ${millimetres(wears[falls] ?? 0)}, than the one before: a reading error?`,
      );
    if (t1 - t0 > 0.3 * life)
      caution('the two readings around the limit lie more than 30 % of the life apart: read more often');
    return life;
  },
  refuses: [
    { when: 'COUNT(t) <> COUNT(VB)', text: 'times and wears differ in count' },
    { when: 'INDEX(VB; 1) >= VB_limit', text: 'the first wear is already at the limit {VB_limit}' },
  ],
  remarks: [
    'ISO 3685 (turning): 0.3 mm mean flank wear, 0.6 mm largest. ISO 8688 (milling): 0.3 mm even, 0.5 mm local.',
  ],
  sources: ['ISO 3685'],
  examples: [
    {
      given: ['{0;5;10;15;20;25} min', '{0;0.12;0.17;0.21;0.26;0.34} mm', '0.3 mm'],
      gives: '22.5 min',
      origin: 'byHand',
      how: 'half way from 0.26 to 0.34 mm',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
