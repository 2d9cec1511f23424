/** The path of a thread mill: in on a half circle, once round while it rises one pitch, out on a half circle. */

import { arc, rectangle, type Drawing, type Point, type Shape } from '../drawing.ts';
import { refuse, valueOf, type Say, type Sketch } from '../sketch.ts';
import { internalProfile, profileHeight } from './thread-section.ts';

/** A point of the path: across, along and height in metres. */
export type PathPoint = readonly [x: number, y: number, z: number];

/**
 * Lead-in over a half circle with a quarter pitch, a full turn with one pitch, lead-out like the lead-in: climb milling of
 * a right-hand thread, against the clock and upwards. `length` is the thread's; height 0 is the face.
 */
export function threadPath(cutter: number, major: number, pitch: number, length: number): PathPoint[] {
  const radius = (major - cutter) / 2;
  const rise = (points: readonly Point[], from: number, to: number): PathPoint[] =>
    points.map(([x, y], k) => [x, y, from + ((to - from) * k) / (points.length - 1)]);
  const half: Point = [radius / 2, 0];
  return [
    ...rise(arc(half, radius / 2, Math.PI, 2 * Math.PI), -length - pitch / 4, -length),
    ...rise(arc([0, 0], radius, 0, 2 * Math.PI), -length, -length + pitch),
    ...rise(arc(half, radius / 2, 0, Math.PI), -length + pitch, -length + (5 * pitch) / 4),
  ];
}

/** The part of a line that runs on in x between two places, cut where it passes them. */
function clipped(points: readonly Point[], from: number, to: number): Point[] {
  const at = (place: number): Point[] => {
    const k = points.findIndex(([x]) => x >= place);
    const [a, b] = [points[k - 1], points[k]];
    if (!a || !b) return [];
    return [[place, a[1] + ((b[1] - a[1]) * (place - a[0])) / (b[0] - a[0])]];
  };
  return [...at(from), ...points.filter(([x]) => x > from && x < to), ...at(to)];
}

function side(cutter: number, major: number, pitch: number, depth: number, say: Say): readonly Shape[] {
  const turns = Math.max(1, Math.round(depth / pitch));
  const floor = -depth - 1.2 * pitch;
  const wall = major / 2 + Math.max(1.2 * pitch, 0.12 * major);
  const inner = major / 2 - profileHeight(pitch);
  const right = internalProfile(major, pitch, -depth, turns).map(([y, x]): Point => [x, y]);
  // A helix stands half a pitch further on the other side.
  const left = clipped(internalProfile(major, pitch, -depth - pitch / 2, turns + 1), -depth, 0).map(
    ([y, x]): Point => [-x, y],
  );
  const body = (profile: Point[], sign: 1 | -1): Point[] => [
    [sign * inner, floor],
    ...profile,
    [sign * inner, 0],
    [sign * wall, 0],
    [sign * wall, floor],
  ];
  const path = threadPath(cutter, major, pitch, depth).map(([x, , z]): Point => [x, z]);
  return [
    { type: 'line', points: body(right, 1), stroke: 'outline', fill: 'work', closed: true },
    { type: 'line', points: body(left, -1), stroke: 'outline', fill: 'work', closed: true },
    {
      type: 'line',
      points: [
        [0, floor],
        [0, 0.25 * pitch],
      ],
      stroke: 'centre',
    },
    {
      type: 'line',
      points: rectangle(-cutter / 2, -depth - pitch / 4, cutter / 2, 0.4 * pitch),
      stroke: 'thin',
      fill: 'tool',
      closed: true,
    },
    { type: 'line', points: path, stroke: 'path', arrow: true },
    {
      type: 'dimension',
      from: [wall, -depth],
      to: [wall, 0],
      side: 'right',
      caption: { symbol: 'L', text: say(depth, 'length') },
    },
    {
      type: 'dimension',
      from: [-wall, -depth],
      to: [-wall, -depth + pitch],
      side: 'left',
      caption: { symbol: 'P', text: say(pitch, 'length') },
    },
  ];
}

export const THREAD_MILLING: Sketch = {
  key: 'thread-milling',
  title: 'Thread milling path',
  purpose: 'Lead-in, turn and lead-out of a thread mill, from above and in section.',
  parameters: [
    { key: 'Dc', symbol: 'Dc', words: 'thread mill diameter', kind: 'length' },
    { key: 'd', symbol: 'd', words: 'major diameter', kind: 'length' },
    { key: 'P', symbol: 'P', words: 'pitch', kind: 'length' },
    { key: 'L', symbol: 'L', words: 'length of the thread', kind: 'length' },
  ],
  draw(values, say) {
    const [cutter, major, pitch, depth] = ['Dc', 'd', 'P', 'L'].map((key) => valueOf(values, key)) as [
      number,
      number,
      number,
      number,
    ];
    const length = (value: number): string => say(value, 'length');
    const minor = major - 2 * profileHeight(pitch);
    if (pitch >= major / 2)
      return refuse('P', `the pitch ${length(pitch)} must be below half the major diameter`);
    if (cutter >= minor)
      return refuse('Dc', `the cutter ${length(cutter)} does not go into the hole of ${length(minor)}`);
    if (depth > 200 * pitch) return refuse('L', 'more than 200 turns are not drawn');
    const radius = (major - cutter) / 2;
    const top = threadPath(cutter, major, pitch, depth).map(([x, y]): Point => [x, y]);
    const frame = 0.62 * major;
    return {
      views: [
        {
          title: 'From above: in, round and out',
          shapes: [
            {
              type: 'line',
              points: [
                [-frame, -frame],
                [frame, -frame],
                [frame, frame],
                [-frame, frame],
              ],
              stroke: 'thin',
              fill: 'work',
              closed: true,
            },
            { type: 'circle', centre: [0, 0], radius: minor / 2, stroke: 'outline', fill: 'blank' },
            { type: 'line', points: arc([0, 0], major / 2, 0.1, 0.1 + 1.5 * Math.PI), stroke: 'thin' },
            { type: 'circle', centre: [radius, 0], radius: cutter / 2, stroke: 'hidden' },
            { type: 'circle', centre: [0, 0], radius: cutter / 2, stroke: 'thin', fill: 'tool' },
            { type: 'line', points: top, stroke: 'path', arrow: true },
            {
              type: 'line',
              points: [
                [-0.1 * major, 0],
                [0.1 * major, 0],
              ],
              stroke: 'centre',
            },
            {
              type: 'line',
              points: [
                [0, -0.1 * major],
                [0, 0.1 * major],
              ],
              stroke: 'centre',
            },
            {
              type: 'dimension',
              from: [-major / 2, 0],
              to: [major / 2, 0],
              side: 'below',
              level: 1,
              caption: { symbol: 'd', text: length(major) },
            },
            {
              type: 'dimension',
              from: [-minor / 2, 0],
              to: [minor / 2, 0],
              side: 'below',
              caption: { symbol: 'D1', text: length(minor) },
            },
            {
              type: 'dimension',
              from: [0, -cutter / 2],
              to: [0, cutter / 2],
              side: 'left',
              caption: { symbol: 'Dc', text: length(cutter) },
            },
            {
              type: 'dimension',
              from: [0, 0],
              to: [radius, 0],
              side: 'above',
              caption: { text: `path radius ${length(radius)}` },
            },
          ],
        },
        { title: 'Section with the path of the axis', shapes: side(cutter, major, pitch, depth, say) },
      ],
      words: `Internal thread ${length(major)} with pitch ${length(pitch)}, ${length(depth)} long, milled by a cutter of ${length(cutter)}: in on a half circle, once round on a radius of ${length(radius)} while the cutter rises ${length(pitch)}, out on a half circle. Drawn for climb milling of a right-hand thread.`,
    } satisfies Drawing;
  },
};
