/** A drill that passes through a hole across its way: where it cuts on one side only. */

import { rectangle, type Drawing, type Point, type Shape } from '../drawing.ts';
import { refuse, valueIfAny, valueOf, type Sketch } from '../sketch.ts';

/** Travel from where the first side of the drill is in the crossed hole to where the last has left it. */
export const crossingTravel = (drill: number, crossed: number, angle: number): number =>
  (crossed + drill * Math.abs(Math.cos(angle))) / Math.sin(angle);

export const CROSSING_HOLE: Sketch = {
  key: 'crossing-hole',
  title: 'Drill through a crossing hole',
  purpose: 'Over which travel a drill is guided on one side only.',
  parameters: [
    { key: 'D', symbol: 'D', words: 'drill diameter', kind: 'length' },
    { key: 'dc', symbol: 'dc', words: 'diameter of the hole that is crossed', kind: 'length' },
    { key: 'gamma', symbol: 'gamma', words: 'angle between the axes', kind: 'angle', optional: true },
  ],
  draw(values, say) {
    const drill = valueOf(values, 'D');
    const crossed = valueOf(values, 'dc');
    const angle = valueIfAny(values, 'gamma') ?? Math.PI / 2;
    if (angle < 0.17 || angle > Math.PI - 0.17)
      return refuse('gamma', 'axes between 10° and 170° to each other can be drawn');
    const length = (value: number): string => say(value, 'length');
    const travel = crossingTravel(drill, crossed, angle);
    const [ux, uy] = [Math.sin(angle), Math.cos(angle)];
    const on = (s: number, aside = 0): Point => [s * ux + aside * uy, s * uy - aside * ux];
    const long = travel / 2 + 1.1 * Math.max(drill, crossed);
    const [w, h] = [Math.abs(long * ux) + 0.2 * drill, Math.abs(long * uy) + 0.9 * Math.max(drill, crossed)];
    const shapes: Shape[] = [
      { type: 'line', points: rectangle(-w, -h, w, h), stroke: 'thin', fill: 'work', closed: true },
      {
        type: 'line',
        points: rectangle(-crossed / 2, -h, crossed / 2, h),
        stroke: 'outline',
        fill: 'blank',
        closed: true,
      },
      {
        type: 'line',
        points: [on(-long, -drill / 2), on(long, -drill / 2), on(long, drill / 2), on(-long, drill / 2)],
        stroke: 'none',
        fill: 'blank',
        closed: true,
      },
      { type: 'line', points: [on(-long, -drill / 2), on(long, -drill / 2)], stroke: 'outline' },
      { type: 'line', points: [on(-long, drill / 2), on(long, drill / 2)], stroke: 'outline' },
      { type: 'line', points: [on(-travel / 2, -drill / 2), on(-travel / 2, drill / 2)], stroke: 'hidden' },
      { type: 'line', points: [on(travel / 2, -drill / 2), on(travel / 2, drill / 2)], stroke: 'hidden' },
      {
        type: 'line',
        points: [
          [0, -h],
          [0, h],
        ],
        stroke: 'centre',
      },
      { type: 'line', points: [on(-long), on(long)], stroke: 'path', arrow: true },
      {
        type: 'dimension',
        from: on(-travel / 2),
        to: on(travel / 2),
        side: 'between',
        caption: { symbol: 'L_x', text: length(travel) },
      },
      {
        type: 'dimension',
        from: [-crossed / 2, h],
        to: [crossed / 2, h],
        side: 'above',
        caption: { symbol: 'dc', text: length(crossed) },
      },
      {
        type: 'note',
        at: on(-long * 0.86, -drill / 2),
        toward: 110,
        caption: { symbol: 'D', text: length(drill) },
      },
      ...(Math.abs(angle - Math.PI / 2) < 1e-6
        ? []
        : [
            {
              type: 'angle',
              centre: [0, 0],
              radius: 0.75 * h,
              from: Math.PI / 2 - angle,
              to: Math.PI / 2,
              caption: { symbol: 'gamma', text: say(angle, 'angle') },
            } as const,
          ]),
    ];
    return {
      views: [{ title: 'Section through both axes', shapes }],
      words: `Drill of ${length(drill)} through a hole of ${length(crossed)} at ${say(angle, 'angle')}: over ${length(travel)} of travel it is not held all round. Reduce the feed there.`,
    } satisfies Drawing;
  },
};
