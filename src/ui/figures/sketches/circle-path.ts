/** A milling cutter on a circular path, inside a bore or round a boss. */

import { arc, rectangle, type Drawing, type Point, type Shape } from '../drawing.ts';
import { refuse, valueOf, type Say, type Sketch, type SketchRefusal, type SketchValues } from '../sketch.ts';

/** Lengths in metres, angles in radians. */
export interface CirclePath {
  readonly side: 'inside' | 'outside';
  readonly cutter: number;
  readonly start: number;
  readonly finished: number;
  /** From the middle of the circle to the cutter axis. */
  readonly axis: number;
  /** Angle at the cutter axis over which a tooth is in the stock, from the finished wall; law of cosines. */
  readonly engaged: number;
}

/** Diameters; undefined angle (NaN) where cutter and start circle do not meet. */
export function circlePath(
  side: CirclePath['side'],
  cutter: number,
  start: number,
  finished: number,
): CirclePath {
  const sign = side === 'inside' ? 1 : -1;
  const axis = (finished - sign * cutter) / 2;
  const [e, r, s] = [axis, cutter / 2, start / 2];
  const engaged = Math.acos((sign * (s * s - e * e - r * r)) / (2 * e * r));
  return { side, cutter, start, finished, axis, engaged };
}

/** The engagement on a straight wall that gives the same arc. */
export const equalEngagement = ({ cutter, engaged }: CirclePath): number =>
  (cutter / 2) * (1 - Math.cos(engaged));

function stock({ side, start, finished, axis }: CirclePath): Shape[] {
  const inside = side === 'inside';
  const [s, m] = [start / 2, finished / 2];
  const body: Shape[] = inside
    ? [
        {
          type: 'line',
          points: rectangle(-1.28 * m, -1.22 * m, 1.28 * m, 1.22 * m),
          stroke: 'thin',
          fill: 'work',
          closed: true,
        },
        { type: 'circle', centre: [0, 0], radius: m, stroke: 'outline', fill: 'blank' },
      ]
    : [{ type: 'circle', centre: [0, 0], radius: m, stroke: 'outline', fill: 'work' }];
  const [from, to] = inside ? [0, 1.22 * Math.PI] : [-1.22 * Math.PI, 0];
  const ring: Point[] = [...arc([0, 0], m, from, to), ...arc([0, 0], s, to, from)];
  return [
    ...body,
    { type: 'line', points: ring, stroke: 'outline', fill: 'removed', closed: true },
    { type: 'circle', centre: [0, 0], radius: axis, stroke: 'centre' },
  ];
}

function draw(values: SketchValues, say: Say, side: CirclePath['side']): Drawing | SketchRefusal {
  const cutter = valueOf(values, 'Dc');
  const start = valueOf(values, 'Ds');
  const finished = valueOf(values, 'Dm');
  const length = (value: number): string => say(value, 'length');
  const inside = side === 'inside';
  if (inside && start >= finished)
    return refuse('Ds', `the start diameter ${length(start)} must be below the finished ${length(finished)}`);
  if (!inside && start <= finished)
    return refuse('Ds', `the start diameter ${length(start)} must be above the finished ${length(finished)}`);
  if (inside && cutter >= finished)
    return refuse('Dc', `the cutter ${length(cutter)} does not go into the bore ${length(finished)}`);
  const path = circlePath(side, cutter, start, finished);
  if (!Number.isFinite(path.engaged))
    return refuse(
      'Ds',
      inside
        ? 'the cutter cuts its full width: the start diameter is too small for this sketch'
        : 'the cutter is narrower than the stock',
    );
  const { axis, engaged } = path;
  const r = cutter / 2;
  const wall = inside ? 0 : Math.PI;
  // Down milling: the cutter turns clockwise and goes round counter-clockwise inside, clockwise outside.
  const ahead = inside ? 1 : -1;
  const meeting = inside ? engaged : Math.PI - engaged;
  const centre: Point = [axis, 0];
  const tip: Point = [axis + r * Math.cos(meeting), r * Math.sin(meeting)];
  const foot: Point = [axis + r * Math.cos(wall), 0];
  const travel = arc([0, 0], axis, -ahead * 1.1, 0);
  const turn = inside
    ? arc(centre, 0.62 * r, 1.55 * Math.PI, 0.95 * Math.PI)
    : arc(centre, 0.62 * r, 0.35 * Math.PI, -0.25 * Math.PI);
  const place = (point: Point): Point => (inside ? point : [point[0], -point[1]]);
  const angle = inside ? { from: 0, to: engaged } : { from: Math.PI, to: Math.PI + engaged };
  const ratio = inside ? (finished - cutter) / finished : (finished + cutter) / finished;
  const most = Math.max(start, finished, inside ? 0 : 2 * (axis + r));
  return {
    views: [
      {
        title: inside ? 'Inside path, seen from the spindle' : 'Outside path, seen from the spindle',
        shapes: [
          ...stock(path),
          { type: 'circle', centre, radius: r, stroke: 'outline', fill: 'tool' },
          { type: 'line', points: travel, stroke: 'path', arrow: true },
          { type: 'line', points: turn, stroke: 'path', arrow: true },
          {
            type: 'line',
            points: [
              [-0.1 * finished, 0],
              [axis + 1.15 * r, 0],
            ],
            stroke: 'centre',
          },
          {
            type: 'line',
            points: [
              [0, -0.1 * finished],
              [0, 0.1 * finished],
            ],
            stroke: 'centre',
          },
          { type: 'line', points: [centre, place(tip)], stroke: 'thin' },
          { type: 'line', points: [centre, foot], stroke: 'thin' },
          {
            type: 'angle',
            centre,
            radius: 0.8 * r,
            ...angle,
            caption: { symbol: 'phi', text: say(engaged, 'angle') },
          },
          {
            type: 'note',
            at: place(tip),
            toward: inside ? 100 : -110,
            reach: inside ? 2 : 1,
            caption: { text: 'entry' },
          },
          {
            type: 'dimension',
            from: [-finished / 2, 0],
            to: [finished / 2, 0],
            side: 'below',
            level: most > finished * 1.01 ? 0 : 1,
            caption: { symbol: 'Dm', text: length(finished) },
          },
          {
            type: 'dimension',
            from: [-start / 2, 0],
            to: [start / 2, 0],
            side: 'below',
            level: most > finished * 1.01 ? 1 : 0,
            caption: { symbol: 'Ds', text: length(start) },
          },
          {
            type: 'dimension',
            from: [axis, -r],
            to: [axis, r],
            side: 'right',
            level: inside ? 1 : 0,
            caption: { symbol: 'Dc', text: length(cutter) },
          },
          {
            type: 'dimension',
            from: [0, 0],
            to: [axis, 0],
            side: 'above',
            caption: { text: `path radius ${length(axis)}` },
          },
        ],
      },
    ],
    words: `Cutter of ${length(cutter)} diameter on a circular path of ${length(axis)} radius ${inside ? 'inside a bore' : 'round a boss'}, from ${length(start)} to ${length(finished)}: each tooth is in the cut over ${say(engaged, 'angle')}, as on a straight wall with ${length(equalEngagement(path))} of engagement. The cutter axis moves ${say(ratio, 'ratio')} times as fast as the wall is fed.`,
  };
}

const parameters: Sketch['parameters'] = [
  { key: 'Dc', symbol: 'Dc', words: 'cutter diameter', kind: 'length' },
  { key: 'Ds', symbol: 'Ds', words: 'start diameter', kind: 'length' },
  { key: 'Dm', symbol: 'Dm', words: 'finished diameter', kind: 'length' },
];

export const CIRCLE_INSIDE: Sketch = {
  key: 'circle-inside',
  title: 'Circular path inside a bore',
  purpose: 'How far the cutter wraps round the stock when a bore is milled larger.',
  parameters,
  draw: (values, say) => draw(values, say, 'inside'),
};

export const CIRCLE_OUTSIDE: Sketch = {
  key: 'circle-outside',
  title: 'Circular path round a boss',
  purpose: 'How little of the cutter is in the stock when a boss is milled round.',
  parameters,
  draw: (values, say) => draw(values, say, 'outside'),
};
