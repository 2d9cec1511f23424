/** Passes of a ball end mill side by side, and the ridge between them. */

import { arc, type Drawing, type Point } from '../drawing.ts';
import { refuse, valueOf, type Sketch } from '../sketch.ts';
import { grooveHeight, grooves } from './turned-surface.ts';

export const BALL_SCALLOP: Sketch = {
  key: 'ball-scallop',
  title: 'Scallops of a ball end mill',
  purpose: 'Height of the ridges between passes on a flat face.',
  parameters: [
    { key: 'Db', symbol: 'Db', words: 'ball diameter', kind: 'length' },
    { key: 's', symbol: 's', words: 'stepover', kind: 'length' },
  ],
  draw(values, say) {
    const ball = valueOf(values, 'Db');
    const step = valueOf(values, 's');
    const length = (value: number): string => say(value, 'length');
    if (step >= ball)
      return refuse('s', `the stepover ${length(step)} must be below the ball diameter ${length(ball)}`);
    const r = ball / 2;
    const height = grooveHeight(r, step / 2);
    const count = Math.max(3, Math.min(9, Math.round((1.6 * ball) / step)));
    const line = grooves(r, step, count);
    const floor = -0.22 * ball;
    const middle = Math.floor(count / 2);
    const at = (k: number): Point => [(k + 0.5) * step, r];
    const close = grooves(r, step, 2);
    const room = Math.max(0.7 * height, 0.12 * step);
    return {
      views: [
        {
          title: 'Passes across the feed',
          shapes: [
            {
              type: 'line',
              points: [...line, [count * step, floor], [0, floor]],
              stroke: 'none',
              fill: 'work',
              closed: true,
            },
            { type: 'line', points: line, stroke: 'outline' },
            { type: 'circle', centre: at(middle), radius: r, stroke: 'outline', fill: 'tool' },
            { type: 'line', points: arc(at(middle - 1), r, Math.PI, 2 * Math.PI), stroke: 'hidden' },
            {
              type: 'line',
              points: [
                [at(middle)[0], -0.1 * ball],
                [at(middle)[0], ball * 1.08],
              ],
              stroke: 'centre',
            },
            {
              type: 'line',
              points: [
                [at(middle - 1)[0], -0.1 * ball],
                [at(middle - 1)[0], ball * 0.7],
              ],
              stroke: 'centre',
            },
            {
              type: 'dimension',
              from: at(middle - 1),
              to: at(middle),
              side: 'below',
              caption: { symbol: 's', text: length(step) },
            },
            {
              type: 'dimension',
              from: [at(middle)[0] - r, r],
              to: [at(middle)[0] + r, r],
              side: 'above',
              caption: { symbol: 'Db', text: length(ball) },
            },
          ],
        },
        {
          title: 'One ridge, enlarged',
          shapes: [
            {
              type: 'line',
              points: [...close.slice(12, 37), [1.5 * step, -room], [0.5 * step, -room]],
              stroke: 'none',
              fill: 'work',
              closed: true,
            },
            { type: 'line', points: close.slice(12, 37), stroke: 'outline' },
            {
              type: 'line',
              points: [
                [0.5 * step, 0],
                [1.5 * step, 0],
              ],
              stroke: 'hidden',
            },
            {
              type: 'dimension',
              from: [step, 0],
              to: [step, height],
              side: 'right',
              caption: { symbol: 'h_s', text: say(height, 'roughness') },
            },
          ],
        },
      ],
      words: `Passes of a ball of ${length(ball)} diameter, ${length(step)} apart on a flat face, leave ridges of ${say(height, 'roughness')}.`,
    } satisfies Drawing;
  },
};
