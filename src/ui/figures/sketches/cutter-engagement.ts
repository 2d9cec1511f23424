/** A milling cutter in the work, seen from the spindle, and the chip of one tooth laid out flat. */

import { arc, roundBelow, type Drawing, type Point, type Shape, type View } from '../drawing.ts';
import {
  refuse,
  valueIfAny,
  valueOf,
  type Say,
  type Sketch,
  type SketchRefusal,
  type SketchValues,
} from '../sketch.ts';

/** Lengths in metres, angles in radians from the side where a chip of conventional milling begins, clockwise. */
export interface Engagement {
  readonly radius: number;
  /** Across the feed, upwards: ends of the cut. */
  readonly low: number;
  readonly high: number;
  readonly entry: number;
  readonly exit: number;
}

const clamped = (cosine: number): number => Math.acos(Math.min(1, Math.max(-1, cosine)));

/** `offset` from the cutter axis to the middle of the cut, positive on the entry side. */
export function engagementOf(diameter: number, engaged: number, offset: number): Engagement {
  const radius = diameter / 2;
  const [low, high] = [offset - engaged / 2, offset + engaged / 2];
  return { radius, low, high, entry: clamped(high / radius), exit: clamped(low / radius) };
}

/** Thickness across the edge at an angle, by the circle model: feed times sin(kappa) times the sine of the angle. */
export const chipAt = (feed: number, edgeAngle: number, angle: number): number =>
  feed * Math.sin(edgeAngle) * (angle >= Math.PI ? 0 : Math.sin(angle));

const onCircle = (radius: number, angle: number, shift = 0): Point => [
  radius * Math.sin(angle) - shift,
  radius * Math.cos(angle),
];

function alongArc({ radius, entry, exit }: Engagement, shift = 0): Point[] {
  const steps = 60;
  return Array.from({ length: steps + 1 }, (_, k) =>
    onCircle(radius, entry + ((exit - entry) * k) / steps, shift),
  );
}

/** The chip between the circle of this tooth and that of the tooth before. */
export const chipOutline = (cut: Engagement, feed: number): Point[] => [
  ...alongArc(cut),
  ...alongArc(cut, feed).toReversed(),
];

function work(cut: Engagement): Shape[] {
  const { radius: r, low, high } = cut;
  const [ahead, behind] = [1.55 * r, -1.25 * r];
  const near = 1e-6 * r;
  const floor = low <= -r + near;
  const roof = high >= r - near;
  const outline: Point[] = [
    ...(roof
      ? ([
          [ahead, high + 0.38 * r],
          [behind, high + 0.38 * r],
          [behind, high],
        ] as Point[])
      : [[ahead, high] as Point]),
    ...alongArc(cut),
    ...(floor
      ? ([
          [behind, low],
          [behind, low - 0.38 * r],
          [ahead, low - 0.38 * r],
        ] as Point[])
      : [[ahead, low] as Point]),
  ];
  const shapes: Shape[] = [{ type: 'line', points: outline, stroke: 'outline', fill: 'work', closed: true }];
  // Where a side of the cut is no wall, the milled face goes on behind the cutter.
  for (const [edge, wall] of [
    [low, floor],
    [high, roof],
  ] as const)
    if (!wall)
      shapes.push({
        type: 'line',
        points: [
          [behind, edge],
          [-Math.sqrt(Math.max(0, r * r - edge * edge)), edge],
        ],
        stroke: 'thin',
      });
  return shapes;
}

function teeth(cut: Engagement, count: number): Shape[] {
  const first = (cut.entry + cut.exit) / 2;
  return Array.from({ length: Math.min(count, 60) }, (_, k): Shape => {
    const angle = first + (2 * Math.PI * k) / count;
    return {
      type: 'line',
      points: [onCircle(0.84 * cut.radius, angle), onCircle(cut.radius, angle)],
      stroke: 'edge',
    };
  });
}

function chipView(cut: Engagement, feed: number, edgeAngle: number, say: Say): View {
  const length = cut.radius * (cut.exit - cut.entry);
  const thickness = (at: number): number => chipAt(feed, edgeAngle, cut.entry + at / cut.radius);
  const steps = 80;
  const top = Array.from({ length: steps + 1 }, (_, k): Point => [
    (length * k) / steps,
    thickness((length * k) / steps),
  ]);
  const peak = Math.min(cut.exit, Math.max(cut.entry, Math.PI / 2));
  const largest = chipAt(feed, edgeAngle, peak);
  const mean = (feed * Math.sin(edgeAngle) * (cut.high - cut.low)) / length;
  const stretch = Math.max(1, roundBelow((0.34 * length) / largest));
  const ends = [
    { at: 0, anchor: 'start', symbol: 'h_in' },
    { at: length, anchor: 'end', symbol: 'h_out' },
  ] as const;
  return {
    title: 'Chip of one tooth, laid out flat',
    stretch,
    shapes: [
      { type: 'line', points: [[0, 0], ...top, [length, 0]], stroke: 'outline', fill: 'chip', closed: true },
      {
        type: 'line',
        points: [
          [0, mean],
          [length, mean],
        ],
        stroke: 'hidden',
      },
      {
        type: 'label',
        at: [length * (cut.entry + cut.exit > Math.PI ? 0.3 : 0.7), 0.5 * mean],
        caption: { symbol: 'h_m', text: say(mean, 'length') },
      },
      ...ends.map(({ at, anchor, symbol }): Shape => ({
        type: 'note',
        at: [at, thickness(at)],
        toward: 90,
        reach: thickness(at) < 0.4 * largest ? 2.2 : 0.4,
        anchor,
        caption: { symbol, text: say(thickness(at), 'length') },
      })),
      {
        type: 'dimension',
        from: [0, 0],
        to: [length, 0],
        side: 'below',
        caption: { text: `along the arc ${say(length, 'length')}` },
      },
      ...(peak > cut.entry && peak < cut.exit
        ? [
            {
              type: 'note',
              at: [cut.radius * (peak - cut.entry), largest],
              toward: cut.entry + cut.exit > Math.PI ? 50 : 130,
              reach: 2,
              caption: { symbol: 'h_max', text: say(largest, 'length') },
            } as const,
          ]
        : []),
    ],
    ...(stretch > 1 && { note: `thickness drawn ${stretch} times as large as length` }),
  };
}

function draw(values: SketchValues, say: Say, side: 1 | -1): Drawing | SketchRefusal {
  const diameter = valueOf(values, 'Dc');
  const engaged = valueOf(values, 'ae');
  const feed = valueIfAny(values, 'fz');
  const edgeAngle = valueIfAny(values, 'kappa_r') ?? Math.PI / 2;
  const count = valueIfAny(values, 'z');
  const given = valueIfAny(values, 'e');
  if (engaged > diameter * (1 + 1e-9))
    return refuse(
      'ae',
      `the engagement ${say(engaged, 'length')} is wider than the cutter ${say(diameter, 'length')}`,
    );
  const offset = given ?? (side * (diameter - engaged)) / 2;
  if (Math.abs(offset) + engaged / 2 > (diameter / 2) * (1 + 1e-9))
    return refuse(
      'e',
      `the cutter does not reach across a cut that lies ${say(offset, 'length')} off its axis`,
    );
  const cut = engagementOf(diameter, engaged, offset);
  const { radius: r, low, high, entry, exit } = cut;
  if (feed !== undefined && feed >= 2 * Math.sqrt(engaged * Math.max(0, diameter - engaged)) && engaged < r)
    return refuse('fz', `the feed ${say(feed, 'length')} is longer than the arc in the cut`);
  const start = onCircle(r, entry);
  const end = onCircle(r, exit);
  const right = 1.55 * r;
  const arcAngle = say(exit - entry, 'angle');
  const view: View = {
    title: 'Cutter and work, seen from the spindle',
    shapes: [
      ...work(cut),
      { type: 'circle', centre: [0, 0], radius: r, stroke: 'outline', fill: 'tool' },
      ...(feed === undefined
        ? []
        : [
            {
              type: 'line',
              points: chipOutline(cut, feed),
              stroke: 'thin',
              fill: 'chip',
              closed: true,
            } as const,
          ]),
      ...(count === undefined ? [] : teeth(cut, count)),
      {
        type: 'line',
        points: [
          [-1.12 * r, 0],
          [1.12 * r, 0],
        ],
        stroke: 'centre',
      },
      {
        type: 'line',
        points: [
          [0, -1.12 * r],
          [0, 1.12 * r],
        ],
        stroke: 'centre',
      },
      { type: 'line', points: [[0, 0], start], stroke: 'thin' },
      { type: 'line', points: [[0, 0], end], stroke: 'thin' },
      {
        type: 'angle',
        centre: [0, 0],
        radius: 0.5 * r,
        from: Math.PI / 2 - exit,
        to: Math.PI / 2 - entry,
        caption: { symbol: 'phi', text: arcAngle },
      },
      {
        type: 'line',
        points: arc([0, 0], 0.66 * r, 1.2 * Math.PI, 0.72 * Math.PI),
        stroke: 'path',
        arrow: true,
      },
      {
        type: 'line',
        points: [
          [-0.5 * r, 0],
          [-0.08 * r, 0],
        ],
        stroke: 'edge',
        arrow: true,
      },
      { type: 'label', at: [-0.3 * r, -0.15 * r], caption: { text: 'feed' } },
      { type: 'note', at: start, toward: 60, caption: { text: 'entry' } },
      { type: 'note', at: end, toward: -55, caption: { text: 'exit' } },
      {
        type: 'dimension',
        from: [right, low],
        to: [right, high],
        side: 'right',
        caption: { symbol: 'ae', text: say(engaged, 'length') },
      },
      ...(given === undefined || Math.abs(offset) < 1e-9 * r
        ? []
        : [
            {
              type: 'line',
              points: [
                [0, offset],
                [right, offset],
              ],
              stroke: 'centre',
            } as const,
            {
              type: 'dimension',
              from: [right, 0],
              to: [right, offset],
              side: 'right',
              level: 1,
              caption: { symbol: 'e', text: say(Math.abs(offset), 'length') },
            } as const,
          ]),
      {
        type: 'dimension',
        from: [0, -r],
        to: [0, r],
        side: 'left',
        caption: { symbol: 'Dc', text: say(diameter, 'length') },
      },
    ],
  };
  const sense =
    Math.abs(offset) < 1e-9 * r
      ? 'in the middle of the cut'
      : offset < 0
        ? 'in down (climb) milling'
        : 'in up (conventional) milling';
  const shown =
    feed === undefined
      ? ''
      : ` A feed of ${say(feed, 'length')} a tooth gives a chip of ${say(chipAt(feed, edgeAngle, entry), 'length')} at entry and ${say(chipAt(feed, edgeAngle, exit), 'length')} at exit, in the mean ${say((feed * Math.sin(edgeAngle) * engaged) / (r * (exit - entry)), 'length')}.`;
  return {
    views: feed === undefined ? [view] : [view, chipView(cut, feed, edgeAngle, say)],
    words: `Milling cutter of ${say(diameter, 'length')} diameter, seen along its axis, engaged over ${say(engaged, 'length')} ${sense}: each tooth is in the cut over ${arcAngle}.${shown}`,
  };
}

const parameters: Sketch['parameters'] = [
  { key: 'Dc', symbol: 'Dc', words: 'cutter diameter', kind: 'length' },
  { key: 'ae', symbol: 'ae', words: 'radial engagement', kind: 'length' },
  { key: 'fz', symbol: 'fz', words: 'feed per tooth', kind: 'feed per tooth', optional: true },
  { key: 'z', symbol: 'z', words: 'teeth', kind: 'count', optional: true },
  { key: 'kappa_r', symbol: 'kappa_r', words: 'cutting edge angle', kind: 'angle', optional: true },
  { key: 'e', symbol: 'e', words: 'axis offset', kind: 'length', optional: true, range: 'any' },
];
const purpose = 'Where each tooth enters and leaves the work, and how thick its chip is on the way.';

export const ENGAGEMENT_DOWN: Sketch = {
  key: 'engagement-down',
  title: 'Cutter engagement, down (climb)',
  purpose,
  parameters,
  draw: (values, say) => draw(values, say, -1),
};

export const ENGAGEMENT_UP: Sketch = {
  key: 'engagement-up',
  title: 'Cutter engagement, up (conventional)',
  purpose,
  parameters,
  draw: (values, say) => draw(values, say, 1),
};
