/** A crankshaft cutter round a pin, outside teeth or inside teeth, and the chip it takes on the way. */

import { arc, type Drawing, type Point, type Shape, type View } from '../drawing.ts';
import {
  refuse,
  valueIfAny,
  valueOf,
  type Say,
  type Sketch,
  type SketchRefusal,
  type SketchValues,
} from '../sketch.ts';

/** Lengths in metres, angles in radians; pin axis at the origin, finished wall touched on the positive x axis. */
export interface PinCut {
  readonly type: 'external' | 'internal';
  readonly cutter: number;
  readonly start: number;
  readonly finished: number;
  /** Where the cutter axis lies on the x axis. */
  readonly axis: number;
  /** Angle at the cutter axis in the stock. */
  readonly engaged: number;
  /** Where the cutter meets the surface of the stock. */
  readonly meeting: Point;
}

/** Diameters; NaN where cutter and stock do not meet. */
export function pinCut(type: PinCut['type'], cutter: number, start: number, finished: number): PinCut {
  const distance = type === 'external' ? (finished + cutter) / 2 : (cutter - finished) / 2;
  const axis = type === 'external' ? distance : -distance;
  const [r, s] = [cutter / 2, start / 2];
  const engaged = Math.acos((distance * distance + r * r - s * s) / (2 * distance * r));
  const toward = type === 'external' ? Math.PI - engaged : engaged;
  return {
    type,
    cutter,
    start,
    finished,
    axis,
    engaged,
    meeting: [axis + r * Math.cos(toward), r * Math.sin(toward)],
  };
}

const turned = ([x, y]: Point, angle: number): Point => [
  x * Math.cos(angle) - y * Math.sin(angle),
  x * Math.sin(angle) + y * Math.cos(angle),
];

const direction = (centre: Point, point: Point): number =>
  Math.atan2(point[1] - centre[1], point[0] - centre[0]);

/** The shorter way round from one angle to another. */
const near = (from: number, to: number): number => {
  const turns = Math.round((to - from) / (2 * Math.PI));
  return to - turns * 2 * Math.PI;
};

/**
 * The chip that the next tooth takes, when the pin has turned by the feed over its radius: from the ridge on the finished
 * pin along this tooth's cut to the surface of the stock, along that to the next tooth's cut, and back.
 */
export function pinChip(cut: PinCut, feed: number): Point[] {
  const { cutter, start, finished, axis, meeting } = cut;
  const step = feed / (finished / 2);
  const centre: Point = [axis, 0];
  const next = turned(centre, step);
  const metNext = turned(meeting, step);
  // The ridge lies half a step on, where both circles meet near the pin.
  const half = step / 2;
  const reach = Math.abs(axis) * Math.cos(half);
  const across = Math.sqrt(Math.max(0, (cutter / 2) ** 2 - (axis * Math.sin(half)) ** 2));
  const ridge = turned([cut.type === 'external' ? reach - across : across - reach, 0], half);
  const along = (middle: Point, radius: number, a: Point, b: Point): Point[] => {
    const from = direction(middle, a);
    return arc(middle, radius, from, near(from, direction(middle, b)));
  };
  return [
    ...along(centre, cutter / 2, ridge, meeting),
    ...along([0, 0], start / 2, meeting, metNext),
    ...along(next, cutter / 2, metNext, ridge),
  ];
}

/** Part of the cutter's edge circle that fits beside the pin, with its body behind. */
function cutterBody(cut: PinCut, extent: number): Shape[] {
  const { cutter, axis, type } = cut;
  const r = cutter / 2;
  const external = type === 'external';
  const half = Math.min(Math.PI, Math.asin(Math.min(1, extent / r)));
  const middle = external ? Math.PI : 0;
  if (r < 1.6 * extent)
    return external
      ? [{ type: 'circle', centre: [axis, 0], radius: r, stroke: 'outline', fill: 'tool' }]
      : [
          { type: 'circle', centre: [axis, 0], radius: r * 1.14, stroke: 'thin', fill: 'tool' },
          { type: 'circle', centre: [axis, 0], radius: r, stroke: 'outline', fill: 'blank' },
        ];
  const back = external ? r - 0.9 * extent : r + 0.55 * extent;
  const edge = arc([axis, 0], r, middle - half, middle + half);
  const rear = arc([axis, 0], back, middle + half * (r / back) * 0.98, middle - half * (r / back) * 0.98);
  return [
    { type: 'line', points: [...edge, ...rear], stroke: 'none', fill: 'tool', closed: true },
    { type: 'line', points: edge, stroke: 'outline' },
    { type: 'line', points: rear, stroke: 'hidden' },
  ];
}

function chipView(cut: PinCut, feed: number, say: Say): View {
  const chip = pinChip(cut, feed);
  const { start, finished, axis, cutter } = cut;
  const xs = chip.map(([x]) => x);
  const ys = chip.map(([, y]) => y);
  const size = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  const low = Math.min(...ys) - 0.25 * size;
  const high = Math.max(...ys) + 0.25 * size;
  const round = (radius: number): Point[] =>
    arc([0, 0], radius, Math.asin(low / radius), Math.asin(Math.min(1, high / radius)));
  const inner = Math.min(...xs) - 0.22 * size;
  const edge = (centre: Point): Point[] => {
    const r = cutter / 2;
    const toward = cut.type === 'external' ? Math.PI : 0;
    const lowAngle = Math.asin((low - centre[1]) / r);
    const highAngle = Math.asin((high - centre[1]) / r);
    return cut.type === 'external'
      ? arc(centre, r, toward - lowAngle, toward - highAngle)
      : arc(centre, r, lowAngle, highAngle);
  };
  const pin = round(finished / 2);
  return {
    title: 'Chip of one tooth, enlarged',
    shapes: [
      {
        type: 'line',
        points: [[inner, low], ...pin, [inner, high]],
        stroke: 'none',
        fill: 'work',
        closed: true,
      },
      { type: 'line', points: pin, stroke: 'outline' },
      { type: 'line', points: round(start / 2), stroke: 'thin' },
      { type: 'line', points: chip, stroke: 'outline', fill: 'chip', closed: true },
      { type: 'line', points: edge([axis, 0]), stroke: 'path' },
      {
        type: 'dimension',
        from: [finished / 2, low],
        to: [start / 2, low],
        side: 'below',
        caption: { text: `stock ${say((start - finished) / 2, 'length')}` },
      },
      {
        type: 'note',
        at: chip[Math.floor(chip.length * 0.2)] ?? [0, 0],
        toward: 20,
        reach: 2,
        caption: { symbol: 'fj', text: say(feed, 'length') },
      },
    ],
  };
}

function draw(values: SketchValues, say: Say, type: PinCut['type']): Drawing | SketchRefusal {
  const cutter = valueOf(values, 'Dc');
  const start = valueOf(values, 'Ds');
  const finished = valueOf(values, 'Dm');
  const feed = valueIfAny(values, 'fj');
  const length = (value: number): string => say(value, 'length');
  if (start <= finished)
    return refuse('Ds', `the start diameter ${length(start)} must be above the finished ${length(finished)}`);
  if (type === 'internal' && cutter <= start)
    return refuse(
      'Dc',
      `a cutter with inside teeth of ${length(cutter)} must be larger than the start diameter ${length(start)}`,
    );
  const cut = pinCut(type, cutter, start, finished);
  if (!Number.isFinite(cut.engaged))
    return refuse('Dc', `the cutter ${length(cutter)} is too small for this stock`);
  const { axis, engaged, meeting } = cut;
  const [s, m, r] = [start / 2, finished / 2, cutter / 2];
  const external = type === 'external';
  const extent = 1.7 * s;
  const span = Math.max(extent, Math.min(r, 1.6 * extent));
  const far = external ? Math.min(axis + r, m + Math.max(0.9 * extent, 0)) : m + 0.55 * extent;
  const seen = r < 1.6 * extent;
  const ring: Point[] = [...arc([0, 0], m, 0, 1.3 * Math.PI), ...arc([0, 0], s, 1.3 * Math.PI, 0)];
  const main: View = {
    title: external ? 'Pin and cutter with outside teeth' : 'Pin and cutter with inside teeth',
    shapes: [
      ...(external ? [] : cutterBody(cut, extent)),
      { type: 'circle', centre: [0, 0], radius: m, stroke: 'outline', fill: 'work' },
      { type: 'line', points: ring, stroke: 'outline', fill: 'removed', closed: true },
      ...(external ? cutterBody(cut, extent) : []),
      {
        type: 'line',
        points: [
          [-1.15 * s, 0],
          [seen && external ? axis + 1.05 * r : 1.2 * s, 0],
        ],
        stroke: 'centre',
      },
      {
        type: 'line',
        points: [
          [0, -1.15 * s],
          [0, 1.15 * s],
        ],
        stroke: 'centre',
      },
      { type: 'line', points: arc([0, 0], 0.55 * m, 0.9, 2.4).toReversed(), stroke: 'path', arrow: true },
      { type: 'note', at: meeting, toward: external ? 70 : 120, caption: { text: 'entry' } },
      { type: 'note', at: [m, 0], toward: external ? -150 : -130, reach: 2, caption: { text: 'exit' } },
      {
        type: 'dimension',
        from: [0, -m],
        to: [0, m],
        side: 'left',
        caption: { symbol: 'Dm', text: length(finished) },
      },
      {
        type: 'dimension',
        from: [0, -s],
        to: [0, s],
        side: 'left',
        level: 1,
        caption: { symbol: 'Ds', text: length(start) },
      },
      ...(seen
        ? [
            {
              type: 'dimension',
              from: [axis - r, 0],
              to: [axis + r, 0],
              side: 'below',
              caption: { symbol: 'Dc', text: length(cutter) },
            } as const,
          ]
        : [
            {
              type: 'note',
              at: [
                external
                  ? axis - r * Math.cos(0.7 * Math.asin(span / r))
                  : axis + r * Math.cos(0.7 * Math.asin(extent / r)),
                -r * Math.sin(0.7 * Math.asin(extent / r)),
              ] as Point,
              toward: external ? -30 : -35,
              caption: { symbol: 'Dc', text: length(cutter) },
            } as const,
          ]),
      ...(seen
        ? []
        : [
            {
              type: 'line',
              points: [
                [far, -0.01 * s],
                [far, 0.01 * s],
              ],
              stroke: 'none',
            } as const,
          ]),
    ],
  };
  return {
    views: feed === undefined ? [main] : [main, chipView(cut, feed, say)],
    words: `Crank pin turned from ${length(start)} to ${length(finished)} by a cutter of ${length(cutter)} with ${external ? 'outside' : 'inside'} teeth: each tooth is in the cut over ${say(engaged, 'angle')} of its own turn${feed === undefined ? '' : `, at a feed of ${length(feed)} a tooth on the finished pin`}.`,
  };
}

const parameters: Sketch['parameters'] = [
  { key: 'Dc', symbol: 'Dc', words: 'cutter diameter', kind: 'length' },
  { key: 'Ds', symbol: 'Ds', words: 'start diameter', kind: 'length' },
  { key: 'Dm', symbol: 'Dm', words: 'finished diameter', kind: 'length' },
  { key: 'fj', symbol: 'fj', words: 'feed per tooth on the pin', kind: 'feed per tooth', optional: true },
];

export const PIN_EXTERNAL: Sketch = {
  key: 'pin-external',
  title: 'Cutter round a crank pin, outside teeth',
  purpose: 'Engagement and chip of a disc cutter round a pin.',
  parameters,
  draw: (values, say) => draw(values, say, 'external'),
};

export const PIN_INTERNAL: Sketch = {
  key: 'pin-internal',
  title: 'Cutter round a crank pin, inside teeth',
  purpose: 'Engagement and chip of a ring cutter that encloses the pin.',
  parameters,
  draw: (values, say) => draw(values, say, 'internal'),
};
