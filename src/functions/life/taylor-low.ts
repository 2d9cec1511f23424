/** LIFE.TAYLOR_LOW: life that the next single edge will reach with a stated confidence. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { deviationProducts, deviationSquares, mean, student, sum } from '../../numeric/index.ts';
import { numbersOf } from '../numbers.ts';
import { optional, parameter } from '../parameter.ts';
import { LIVES, SPEEDS } from '../taylor.ts';

export default {
  name: 'LIFE.TAYLOR_LOW',
  family: 'LIFE',
  summary: 'Life that one more edge will reach with this confidence, from trials',
  searchWords: ['tool life', 'prediction', 'confidence', 'scatter', 'safe life'],
  parameters: [SPEEDS, LIVES, parameter('cutting_speed'), optional('confidence', '0.95')],
  result: { kind: 'time', symbol: 'T_low', meaning: 'life that one edge reaches with this confidence' },
  reading: 'exp(y - t(n - 2) s sqrt(1 + 1/n + (x - x_m)^2 / Sxx)), y the line of ln T over x = ln vc',
  compute({ v, lives, vc, confidence }, note) {
    const x = numbersOf(v).map(Math.log);
    const y = numbersOf(lives).map(Math.log);
    if (x.length < 3) return failure('#NUM!', 'a prediction needs at least 3 points');
    const [xMean, yMean, squares] = [mean(x), mean(y), deviationSquares(x)];
    const slope = deviationProducts(x, y) / squares;
    const away = Math.log(Number(vc)) - xMean;
    const rest = sum(x.map((each, i) => ((y[i] ?? 0) - yMean - slope * (each - xMean)) ** 2));
    const spread = Math.sqrt(rest / (x.length - 2));
    note('s', spread, 'number');
    const room =
      student(x.length - 2).quantile(Number(confidence)) *
      spread *
      Math.sqrt(1 + 1 / x.length + away ** 2 / squares);
    const exponent = yMean + slope * away - room;
    return Math.abs(exponent) < 600
      ? Math.exp(exponent)
      : failure('#NUM!', 'the cutting speed lies too far from the speeds of the trials');
  },
  refuses: [
    { when: 'COUNT(v) <> COUNT(lives)', text: 'speeds and lives differ in count' },
    { when: 'MAX(v) <= MIN(v) * (1 + 1E-6)', text: 'a line needs at least 2 different speeds' },
  ],
  cautions: [
    {
      when: 'OR(vc < MIN(v); vc > MAX(v))',
      text: 'cutting speed {vc} lies outside the speeds of the trials',
    },
  ],
  sources: ['T3', 'statistics'],
  examples: [
    {
      given: ['{150;180;220;260} m/min', '{44;24;11.5;6.2} min', '200 m/min', '0.95'],
      gives: '14.7738 min',
      origin: 'byHand',
      how: 'least squares on logarithms, t = 2.91999 on 2 degrees of freedom',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
