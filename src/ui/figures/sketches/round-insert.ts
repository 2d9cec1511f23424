/** A round insert in a cut shallower than its radius: edge angle and the diameter that cuts. */

import { arc, type Drawing, type Point, type Shape } from '../drawing.ts';
import { refuse, valueIfAny, valueOf, type Sketch } from '../sketch.ts';

/** Angle at the insert's centre from its lowest point to the surface; the edge stands at most this steep there. */
export const roundAngle = (insert: number, depth: number): number => Math.acos(1 - (2 * depth) / insert);

/** How far the surface is met from the insert's centre, across. */
export const roundReach = (insert: number, depth: number): number => Math.sqrt(depth * (insert - depth));

export const ROUND_INSERT: Sketch = {
  key: 'round-insert',
  title: 'Round insert at a depth',
  purpose: 'How steep a round edge stands in the cut, and which diameter it cuts.',
  parameters: [
    { key: 'iC', symbol: 'iC', words: 'diameter of the insert', kind: 'length' },
    { key: 'ap', symbol: 'ap', words: 'axial depth', kind: 'length' },
    { key: 'Dc', symbol: 'Dc', words: 'cutter diameter over the inserts', kind: 'length', optional: true },
  ],
  draw(values, say) {
    const insert = valueOf(values, 'iC');
    const depth = valueOf(values, 'ap');
    const cutter = valueIfAny(values, 'Dc');
    const length = (value: number): string => say(value, 'length');
    if (depth > insert / 2)
      return refuse('ap', `the depth ${length(depth)} is above half the insert ${length(insert)}`);
    if (cutter !== undefined && cutter <= insert)
      return refuse('Dc', `the cutter ${length(cutter)} is not larger than its insert ${length(insert)}`);
    const r = insert / 2;
    const angle = roundAngle(insert, depth);
    const reach = roundReach(insert, depth);
    const axis = cutter === undefined ? undefined : -(cutter - insert) / 2;
    const wide = reach + 0.9 * r;
    const edge = arc([0, r], r, -Math.PI / 2, -Math.PI / 2 + angle);
    const centre: Point = [0, r];
    const diameter = cutter === undefined ? undefined : cutter - insert + 2 * reach;
    const left = axis === undefined ? -1.25 * r : Math.min(-1.25 * r, axis);
    const shapes: Shape[] = [
      {
        type: 'line',
        points: [[left, 0], ...edge, [wide, depth], [wide, -0.4 * r], [left, -0.4 * r]],
        stroke: 'outline',
        fill: 'work',
        closed: true,
      },
      { type: 'circle', centre, radius: r, stroke: 'outline', fill: 'tool' },
      { type: 'line', points: edge, stroke: 'edge' },
      { type: 'line', points: [centre, [0, 0]], stroke: 'thin' },
      { type: 'line', points: [centre, [reach, depth]], stroke: 'thin' },
      {
        type: 'angle',
        centre,
        radius: 0.5 * r,
        from: -Math.PI / 2,
        to: -Math.PI / 2 + angle,
        caption: { symbol: 'psi', text: say(angle, 'angle') },
      },
      {
        type: 'dimension',
        from: [wide, 0],
        to: [wide, depth],
        side: 'right',
        caption: { symbol: 'ap', text: length(depth) },
      },
      {
        type: 'dimension',
        from: [-r, r],
        to: [r, r],
        side: 'above',
        caption: { symbol: 'iC', text: length(insert) },
      },
      ...(axis === undefined || diameter === undefined
        ? []
        : [
            {
              type: 'line',
              points: [
                [axis, -0.3 * r],
                [axis, 2.1 * r],
              ],
              stroke: 'centre',
            } as const,
            {
              type: 'dimension',
              from: [axis, depth],
              to: [reach, depth],
              side: 'below',
              caption: { text: `half of ${length(diameter)}` },
            } as const,
          ]),
    ];
    const cuts = diameter === undefined ? '' : ` It cuts a diameter of ${length(diameter)} there.`;
    return {
      views: [{ title: 'Section through the insert', shapes }],
      words: `Round insert of ${length(insert)} diameter, ${length(depth)} deep: the edge is in the cut over ${say(angle, 'angle')} and stands as steep as that at the surface.${cuts}`,
    } satisfies Drawing;
  },
};
