/** A ball end in a cut of some depth, upright or tilted: the largest diameter that cuts. */

import { arc, type Drawing, type Point } from '../drawing.ts';
import { refuse, valueIfAny, valueOf, type Sketch } from '../sketch.ts';

/** Point of the contact that is farthest from the tool axis, and its mirror image beyond the axis; ball's lowest point at 0, 0. */
export function widestContact(ball: number, depth: number, tilt: number): readonly [Point, Point] {
  const r = ball / 2;
  const edge = Math.acos(1 - depth / r);
  // Beyond the widest circle of the ball, that circle itself cuts.
  const out = Math.min(edge, Math.PI / 2 - Math.abs(tilt)) * (tilt < 0 ? -1 : 1);
  const at = (angle: number): Point => [r * Math.sin(angle), r - r * Math.cos(angle)];
  return [at(out), at(-2 * tilt - out)];
}

export const BALL_DEPTH: Sketch = {
  key: 'ball-depth',
  title: 'Ball end at a depth, tilted or not',
  purpose: 'Which diameter of a ball end really cuts.',
  parameters: [
    { key: 'Dc', symbol: 'Dc', words: 'diameter of the ball', kind: 'length' },
    { key: 'ap', symbol: 'ap', words: 'axial depth', kind: 'length' },
    { key: 'tilt', symbol: 'tilt', words: 'tilt of the axis', kind: 'angle', optional: true, range: 'any' },
  ],
  draw(values, say) {
    const ball = valueOf(values, 'Dc');
    const depth = valueOf(values, 'ap');
    const tilt = valueIfAny(values, 'tilt') ?? 0;
    const length = (value: number): string => say(value, 'length');
    if (depth > ball / 2)
      return refuse('ap', `the depth ${length(depth)} is above half the ball ${length(ball)}`);
    if (Math.abs(tilt) > Math.PI / 2) return refuse('tilt', 'a tilt of at most 90° can be drawn');
    const r = ball / 2;
    const [far, mirror] = widestContact(ball, depth, tilt);
    const diameter = Math.hypot(far[0] - mirror[0], far[1] - mirror[1]);
    const up: Point = [Math.sin(tilt), Math.cos(tilt)];
    const along = (by: number, aside = 0): Point => [
      by * up[0] + aside * up[1],
      r + by * up[1] - aside * up[0],
    ];
    const half = Math.acos(1 - depth / r);
    const wide = 1.25 * r;
    const trough = arc([0, r], r, -Math.PI / 2 - half, -Math.PI / 2 + half);
    return {
      views: [
        {
          title: 'Section across the feed',
          shapes: [
            {
              type: 'line',
              points: [[-wide, depth], ...trough, [wide, depth], [wide, -0.35 * r], [-wide, -0.35 * r]],
              stroke: 'outline',
              fill: 'work',
              closed: true,
            },
            {
              type: 'line',
              points: [
                along(1.3 * r, -r),
                ...arc([0, r], r, Math.PI - tilt, 2 * Math.PI - tilt),
                along(1.3 * r, r),
              ],
              stroke: 'outline',
              fill: 'tool',
            },
            { type: 'line', points: [along(-1.15 * r), along(1.45 * r)], stroke: 'centre' },
            { type: 'line', points: trough, stroke: 'edge' },
            { type: 'line', points: [far, mirror], stroke: 'thin' },
            {
              type: 'dimension',
              from: mirror,
              to: far,
              side: 'between',
              caption: { symbol: 'D_eff', text: length(diameter) },
            },
            {
              type: 'dimension',
              from: [wide, 0],
              to: [wide, depth],
              side: 'right',
              caption: { symbol: 'ap', text: length(depth) },
            },
            {
              type: 'note',
              at: along(0.9 * r, -r),
              toward: 160,
              caption: { symbol: 'Dc', text: length(ball) },
            },
          ],
        },
      ],
      words: `Ball end of ${length(ball)} diameter, ${length(depth)} deep${tilt === 0 ? ' and upright' : `, its axis tilted by ${say(tilt, 'angle')}`}: the largest diameter that cuts is ${length(diameter)}.`,
    } satisfies Drawing;
  },
};
