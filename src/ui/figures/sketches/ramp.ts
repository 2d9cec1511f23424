/** One turn of a helical ramp, unrolled. */

import type { Drawing } from '../drawing.ts';
import { valueOf, type Sketch } from '../sketch.ts';

export const RAMP: Sketch = {
  key: 'ramp',
  title: 'Helical ramp, one turn unrolled',
  purpose: 'How steep a cutter goes down on a helix.',
  parameters: [
    { key: 'P', symbol: 'P', words: 'drop a turn', kind: 'length' },
    { key: 'Dp', symbol: 'D_p', words: 'diameter of the path', kind: 'length' },
  ],
  draw(values, say) {
    const drop = valueOf(values, 'P');
    const path = valueOf(values, 'Dp');
    const turn = Math.PI * path;
    const angle = Math.atan(drop / turn);
    return {
      views: [
        {
          title: 'One turn of the path, unrolled',
          shapes: [
            {
              type: 'line',
              points: [
                [0, 0],
                [turn, 0],
                [turn, -drop],
              ],
              stroke: 'none',
              fill: 'removed',
              closed: true,
            },
            {
              type: 'line',
              points: [
                [0, 0],
                [turn, -drop],
                [turn, -drop - 0.06 * turn],
                [0, -drop - 0.06 * turn],
              ],
              stroke: 'none',
              fill: 'work',
              closed: true,
            },
            {
              type: 'line',
              points: [
                [0, 0],
                [turn, -drop],
              ],
              stroke: 'path',
              arrow: true,
            },
            {
              type: 'line',
              points: [
                [0, 0],
                [turn, 0],
              ],
              stroke: 'thin',
            },
            {
              type: 'dimension',
              from: [0, 0],
              to: [turn, 0],
              side: 'above',
              caption: { text: `once round ${say(turn, 'length')}` },
            },
            {
              type: 'dimension',
              from: [turn, -drop],
              to: [turn, 0],
              side: 'right',
              caption: { symbol: 'P', text: say(drop, 'length') },
            },
            {
              type: 'note',
              at: [0.45 * turn, -0.45 * drop],
              toward: -60,
              reach: 1.2,
              caption: { text: say(angle, 'angle') },
            },
          ],
        },
      ],
      words: `A helix of ${say(path, 'length')} diameter that drops ${say(drop, 'length')} a turn ramps at ${say(angle, 'angle')}.`,
    } satisfies Drawing;
  },
};
