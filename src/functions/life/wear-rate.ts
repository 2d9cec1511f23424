/** LIFE.WEAR_RATE: how fast the wear grows. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { deviationProducts, deviationSquares } from '../../numeric/index.ts';
import { numbersOf } from '../numbers.ts';
import { parameter } from '../parameter.ts';
import { WEAR_TIMES, WEARS } from '../wear-curve.ts';

export default {
  name: 'LIFE.WEAR_RATE',
  family: 'LIFE',
  summary: 'How fast the wear grows: slope of the readings between two times',
  searchWords: ['wear curve', 'flank wear', 'slope', 'steady wear'],
  parameters: [
    WEAR_TIMES,
    WEARS,
    parameter('tool_life', {
      name: 'from',
      symbol: 't_from',
      hard: { least: '0' },
      default: { meaning: 'from the first reading' },
      meaning: 'readings from this time on',
    }),
    parameter('tool_life', {
      name: 'to',
      symbol: 't_to',
      hard: { least: '0' },
      default: { meaning: 'to the last reading' },
      meaning: 'readings up to this time',
    }),
  ],
  result: { kind: 'wear rate', symbol: 'wear_rate', meaning: 'growth of the wear in a time' },
  reading: 'least-squares slope of the readings from t_from to t_to',
  compute({ t, VB, t_from, t_to }) {
    const first = typeof t_from === 'number' ? t_from * (1 - 1e-9) : -Infinity;
    const last = typeof t_to === 'number' ? t_to * (1 + 1e-9) : Infinity;
    const times = numbersOf(t);
    const wears = numbersOf(VB);
    const inside = [...times.keys()].filter((i) => (times[i] ?? 0) >= first && (times[i] ?? 0) <= last);
    const x = inside.map((i) => times[i] ?? 0);
    const squares = deviationSquares(x);
    if (inside.length < 2 || !(squares > 0))
      return failure(
        '#NUM!',
        `${inside.length} readings lie in this time: a slope needs 2 at different times`,
      );
    return (
      deviationProducts(
        x,
        inside.map((i) => wears[i] ?? 0),
      ) / squares
    );
  },
  refuses: [{ when: 'COUNT(t) <> COUNT(VB)', text: 'times and wears differ in count' }],
  cautions: [
    {
      when: 'wear_rate <= 0 um/min',
      text: 'the wear does not grow: a reading error, or an edge that builds up',
    },
  ],
  sources: ['statistics'],
  examples: [
    {
      given: ['{0;5;10;15;20;25} min', '{0;0.12;0.17;0.21;0.26;0.34} mm', '5 min', '20 min'],
      gives: '9.2 um/min',
      origin: 'byHand',
      how: 'four readings: (-7.5*120 - 2.5*170 + 2.5*210 + 7.5*260)/125',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
