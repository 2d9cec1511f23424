/** A deep hole lying down: pilot, full depth, pecks and crossing holes. */

import { rectangle, type Drawing, type Point, type Shape } from '../drawing.ts';
import { refuse, valueIfAny, valueOf, type Sketch } from '../sketch.ts';

/** Length of a drill's point: half the diameter over the tangent of half the point angle. */
export const pointLength = (diameter: number, pointAngle: number): number =>
  diameter / 2 / Math.tan(pointAngle / 2);

/** Depths at which a pecked drill turns back, the last one the bottom; metres. */
export const peckDepths = (depth: number, peck: number): number[] => {
  const count = Math.max(1, Math.ceil((depth / peck) * (1 - 1e-12) - 1e-9));
  return Array.from({ length: count }, (_, k) => (k === count - 1 ? depth : (k + 1) * peck));
};

const MOST_PECKS = 60;

export const DEEP_HOLE: Sketch = {
  key: 'deep-hole',
  title: 'Stages of a deep hole',
  purpose: 'Pilot hole, full depth, pecks and crossing holes to scale.',
  parameters: [
    { key: 'D', symbol: 'D', words: 'drill diameter', kind: 'length' },
    { key: 'L', symbol: 'L', words: 'depth of the hole', kind: 'length' },
    { key: 'sigma', symbol: 'sigma', words: 'point angle', kind: 'angle', optional: true },
    { key: 'Dp', symbol: 'D_p', words: 'pilot drill diameter', kind: 'length', optional: true },
    { key: 'L_pilot', symbol: 'L_pilot', words: 'pilot depth', kind: 'length', optional: true },
    { key: 'peck', symbol: 'peck', words: 'peck', kind: 'length', optional: true },
    { key: 'dc', symbol: 'dc', words: 'diameter of a crossing hole', kind: 'length', optional: true },
    {
      key: 'at',
      symbol: 'x',
      words: 'depth at which it crosses',
      kind: 'length',
      list: true,
      optional: true,
    },
  ],
  draw(values, say) {
    const drill = valueOf(values, 'D');
    const depth = valueOf(values, 'L');
    const angle = valueIfAny(values, 'sigma') ?? (140 * Math.PI) / 180;
    const pilot = valueIfAny(values, 'L_pilot');
    const wide = valueIfAny(values, 'Dp') ?? drill;
    const peck = valueIfAny(values, 'peck');
    const crossed = valueIfAny(values, 'dc');
    const length = (value: number): string => say(value, 'length');
    if (angle >= Math.PI) return refuse('sigma', 'the point angle must be below 180°');
    if (pilot !== undefined && pilot >= depth)
      return refuse(
        'L_pilot',
        `the pilot hole ${length(pilot)} is not shallower than the hole ${length(depth)}`,
      );
    const point = pointLength(drill, angle);
    const [r, w] = [drill / 2, wide / 2];
    const wall = Math.max(2.4 * r, 0.07 * depth);
    const end = depth + point + wall;
    const body: Shape = {
      type: 'line',
      points: rectangle(0, -r - wall, end, r + wall),
      stroke: 'outline',
      fill: 'work',
      closed: true,
    };
    const from = pilot ?? 0;
    const deep: Point[] = [
      [from, r],
      [depth, r],
      [depth + point, 0],
      [depth, -r],
      [from, -r],
    ];
    const pecks = peck === undefined ? [] : peckDepths(depth, peck);
    const places = values.get('at');
    const crossings = crossed === undefined ? [] : typeof places === 'number' ? [places] : (places ?? []);
    const ratio = say(depth / drill, 'ratio');
    const shapes: Shape[] = [
      body,
      ...crossings.map((at): Shape => ({
        type: 'line',
        points: rectangle(at - (crossed ?? 0) / 2, -r - wall, at + (crossed ?? 0) / 2, r + wall),
        stroke: 'thin',
        fill: 'blank',
        closed: true,
      })),
      { type: 'line', points: deep, stroke: 'outline', fill: 'blank', closed: true },
      ...(pilot === undefined
        ? []
        : [
            {
              type: 'line',
              points: rectangle(0, -w, pilot, w),
              stroke: 'outline',
              fill: 'finished',
              closed: true,
            } as const,
          ]),
      ...(pecks.length > MOST_PECKS
        ? []
        : pecks.slice(0, -1).map((at): Shape => ({
            type: 'line',
            points: [
              [at, r],
              [at + point, 0],
              [at, -r],
            ],
            stroke: 'thin',
          }))),
      {
        type: 'line',
        points: [
          [-0.02 * end, 0],
          [depth + point + 0.4 * wall, 0],
        ],
        stroke: 'centre',
      },
      {
        type: 'dimension',
        from: [0, -r],
        to: [depth, -r],
        side: 'below',
        level: pilot === undefined ? 0 : 1,
        caption: { symbol: 'L', text: `${length(depth)}, ${ratio} diameters` },
      },
      ...(pilot === undefined
        ? []
        : [
            {
              type: 'dimension',
              from: [0, -w],
              to: [pilot, -w],
              side: 'below',
              caption: { text: `pilot ${length(pilot)}` },
            } as const,
            {
              type: 'note',
              at: [pilot * 0.6, w],
              toward: 118,
              reach: 1.2,
              caption: { symbol: 'D_p', text: length(wide) },
            } as const,
          ]),
      {
        type: 'note',
        at: [depth * 0.86, r],
        toward: 62,
        reach: 1.7,
        caption: { symbol: 'D', text: length(drill) },
      },
      ...(crossings.length > 0 && crossed !== undefined
        ? [
            {
              type: 'note',
              at: [crossings.at(-1) ?? 0, r + 0.6 * wall],
              toward: 118,
              reach: 1,
              caption: { symbol: 'dc', text: length(crossed) },
            } as const,
          ]
        : []),
      ...(pecks.length > 1 && peck !== undefined && pecks.length <= MOST_PECKS
        ? [
            {
              type: 'note',
              at: [pecks[Math.floor(pecks.length * 0.12)] ?? 0, r],
              toward: 75,
              reach: 3,
              caption: { text: `${pecks.length} pecks of ${length(peck)}` },
            } as const,
          ]
        : []),
    ];
    const steps = [
      ...(pilot === undefined ? [] : [`a pilot hole of ${length(wide)} to ${length(pilot)}`]),
      peck === undefined
        ? `the full depth in one go`
        : `the full depth in ${pecks.length} pecks of ${length(peck)}`,
    ];
    return {
      views: [{ title: 'Section along the hole', shapes }],
      words: `Hole of ${length(drill)} diameter and ${length(depth)} depth, ${ratio} diameters deep: ${steps.join(', then ')}.${crossings.length > 0 ? ` It meets ${crossings.length} crossing holes of ${length(crossed ?? 0)}.` : ''}`,
    } satisfies Drawing;
  },
};
