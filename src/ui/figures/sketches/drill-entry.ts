/** A drill's point on a face, square or inclined: first touch and the travel to its full diameter. */

import type { Drawing, Point, Shape } from '../drawing.ts';
import { refuse, valueIfAny, valueOf, type Sketch } from '../sketch.ts';
import { pointLength } from './deep-hole.ts';

/** Height of an inclined face over the drill axis at first touch of a point (tip at 0): at most 0, below that the corner touches first. */
export const touchHeight = (diameter: number, pointAngle: number, slope: number): number =>
  Math.min(0, pointLength(diameter, pointAngle) - (diameter / 2) * Math.tan(slope));

/** Travel from first touch until the lower corner is in the face. */
export const entryTravel = (diameter: number, pointAngle: number, slope: number): number =>
  pointLength(diameter, pointAngle) +
  (diameter / 2) * Math.tan(slope) -
  touchHeight(diameter, pointAngle, slope);

export const DRILL_ENTRY: Sketch = {
  key: 'drill-entry',
  title: 'Drill point and entry',
  purpose: 'Length of the point and travel to the full diameter on an inclined face.',
  parameters: [
    { key: 'D', symbol: 'D', words: 'drill diameter', kind: 'length' },
    { key: 'sigma', symbol: 'sigma', words: 'point angle', kind: 'angle' },
    {
      key: 'alpha',
      symbol: 'alpha',
      words: 'angle of the face',
      kind: 'angle',
      optional: true,
      range: 'from 0',
    },
  ],
  draw(values, say) {
    const drill = valueOf(values, 'D');
    const sigma = valueOf(values, 'sigma');
    const slope = valueIfAny(values, 'alpha') ?? 0;
    const length = (value: number): string => say(value, 'length');
    if (sigma > Math.PI) return refuse('sigma', 'the point angle must not be above 180°');
    if (slope >= (80 * Math.PI) / 180) return refuse('alpha', 'the face must be less than 80° off square');
    const r = drill / 2;
    const point = pointLength(drill, sigma);
    const touch = touchHeight(drill, sigma, slope);
    const travel = entryTravel(drill, sigma, slope);
    const face = (x: number): number => x * Math.tan(slope) + touch;
    const wide = 0.95 * drill;
    const floor = Math.min(face(-wide), -travel) - 0.25 * drill;
    const body = (down: number, up: number): Point[] => [
      [-r, up],
      [-r, point - down],
      [0, -down],
      [r, point - down],
      [r, up],
    ];
    const top = Math.max(point, face(wide)) + 0.75 * drill;
    const walks = touch < -1e-9 * drill;
    const shapes: Shape[] = [
      {
        type: 'line',
        points: [
          [-wide, face(-wide)],
          [wide, face(wide)],
          [wide, floor],
          [-wide, floor],
        ],
        stroke: 'none',
        fill: 'work',
        closed: true,
      },
      {
        type: 'line',
        points: [
          [-wide, face(-wide)],
          [wide, face(wide)],
        ],
        stroke: 'outline',
      },
      { type: 'line', points: body(0, top), stroke: 'outline', fill: 'tool' },
      { type: 'line', points: body(travel, point + 0.1 * drill), stroke: 'hidden' },
      {
        type: 'line',
        points: [
          [0, floor + 0.05 * drill],
          [0, top],
        ],
        stroke: 'centre',
      },
      {
        type: 'angle',
        centre: [0, 0],
        radius: 0.42 * drill,
        from: Math.PI / 2 - sigma / 2,
        to: Math.PI / 2 + sigma / 2,
        caption: { symbol: 'sigma', text: say(sigma, 'angle') },
      },
      {
        type: 'dimension',
        from: [-r, top],
        to: [r, top],
        side: 'above',
        caption: { symbol: 'D', text: length(drill) },
      },
      {
        type: 'dimension',
        from: [-r, 0],
        to: [-r, point],
        side: 'left',
        caption: { symbol: 'L_p', text: length(point) },
      },
      {
        type: 'dimension',
        from: [r, point],
        to: [r, point - travel],
        side: 'right',
        caption: { symbol: 'L_e', text: length(travel) },
      },
      ...(slope > 0
        ? [
            {
              type: 'line',
              points: [
                [-wide, face(-wide)],
                [-0.1 * wide, face(-wide)],
              ],
              stroke: 'thin',
            } as const,
            {
              type: 'angle',
              centre: [-wide, face(-wide)],
              radius: 0.6 * wide,
              from: 0,
              to: slope,
              caption: { symbol: 'alpha', text: say(slope, 'angle') },
            } as const,
          ]
        : []),
      {
        type: 'note',
        at: walks ? [r, point] : [0, 0],
        toward: walks ? 60 : -70,
        reach: 2,
        caption: { text: 'first touch' },
      },
    ];
    return {
      views: [{ title: 'First touch; dashed: full diameter in', shapes }],
      words: `Drill of ${length(drill)} diameter with a point of ${say(sigma, 'angle')}, ${length(point)} long, on a face ${slope === 0 ? 'square to it' : `${say(slope, 'angle')} off square`}: ${length(travel)} of travel from first touch to the full diameter.${walks ? ' The corner touches before the tip: the drill walks.' : ''}`,
    } satisfies Drawing;
  },
};
