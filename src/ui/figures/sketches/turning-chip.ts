/** The nominal section of a chip in turning, seen across the work axis. */

import { rectangle, type Drawing, type Point } from '../drawing.ts';
import { refuse, valueIfAny, valueOf, type Sketch } from '../sketch.ts';

/** Corners of the section between this turn's edge and the last one's: feed to the left, work above. */
export function chipSection(
  feed: number,
  edgeAngle: number,
  depth: number,
): readonly [Point, Point, Point, Point] {
  const lean = depth / Math.tan(edgeAngle);
  return [
    [0, 0],
    [feed, 0],
    [feed - lean, -depth],
    [-lean, -depth],
  ];
}

export const TURNING_CHIP: Sketch = {
  key: 'turning-chip',
  title: 'Chip section in turning',
  purpose: 'How the cutting edge angle makes the same feed a thinner, wider chip.',
  parameters: [
    { key: 'kappa_r', symbol: 'kappa_r', words: 'cutting edge angle', kind: 'angle' },
    { key: 'f', symbol: 'f', words: 'feed per revolution', kind: 'feed per revolution' },
    { key: 'ap', symbol: 'ap', words: 'depth of cut', kind: 'length', optional: true },
  ],
  draw(values, say) {
    const angle = valueOf(values, 'kappa_r');
    const feed = valueOf(values, 'f');
    const given = valueIfAny(values, 'ap');
    const length = (value: number): string => say(value, 'length');
    if (angle >= (150 * Math.PI) / 180 || angle < 0.05)
      return refuse('kappa_r', 'a cutting edge angle between 3° and 150° can be drawn');
    const depth = given ?? 4 * feed;
    const section = chipSection(feed, angle, depth);
    const lean = depth / Math.tan(angle);
    const thickness = feed * Math.sin(angle);
    const width = depth / Math.sin(angle);
    const reach = 0.45 * depth + feed;
    const left = Math.min(-lean, 0) - reach;
    const right = Math.max(feed, feed - lean) + reach;
    const sunk = 0.7 * depth;
    // The insert: its edge from the corner outwards, its minor edge 5 degrees off the finished face.
    const back = 0.9 * depth;
    const insert: Point[] = [
      [0, 0],
      [-lean * 1.25, -depth * 1.25],
      [-lean * 1.25 + back * 0.6, -depth * 1.25],
      [back, -back * Math.tan(0.09) - 0.15 * depth],
      [back, -back * Math.tan(0.09)],
    ];
    const middle: Point = [-lean / 2, -depth / 2];
    const across: Point = [
      middle[0] + thickness * Math.sin(angle),
      middle[1] - thickness * Math.cos(angle) * -1,
    ];
    return {
      views: [
        {
          title: 'Seen from above, work axis at the top',
          shapes: [
            {
              type: 'line',
              points: [
                [left, -depth],
                [-lean, -depth],
                [0, 0],
                [right, 0],
                [right, sunk],
                [left, sunk],
              ],
              stroke: 'outline',
              fill: 'work',
              closed: true,
            },
            { type: 'line', points: insert, stroke: 'thin', fill: 'tool', closed: true },
            { type: 'line', points: section, stroke: 'outline', fill: 'chip', closed: true },
            {
              type: 'line',
              points: [
                [-lean, -depth],
                [0, 0],
              ],
              stroke: 'edge',
            },
            { type: 'line', points: rectangle(left, sunk, right, sunk), stroke: 'none' },
            {
              type: 'angle',
              centre: [0, 0],
              radius: Math.min(0.62 * depth, -left * 0.7),
              from: Math.PI,
              to: Math.PI + angle,
              caption: { symbol: 'kappa_r', text: say(angle, 'angle') },
            },
            {
              type: 'line',
              points: [
                [left + 0.55 * reach, 0.35 * depth],
                [left + 0.1 * reach, 0.35 * depth],
              ],
              stroke: 'edge',
              arrow: true,
            },
            { type: 'label', at: [left + 0.35 * reach, 0.52 * depth], caption: { text: 'feed' } },
            {
              type: 'line',
              points: [
                [left, 0],
                [0, 0],
              ],
              stroke: 'hidden',
            },
            {
              type: 'dimension',
              from: [0, 0],
              to: [feed, 0],
              side: 'above',
              caption: { symbol: 'f', text: length(feed) },
            },
            {
              type: 'dimension',
              from: [left, -depth],
              to: [left, 0],
              side: 'left',
              caption: { symbol: 'ap', text: length(depth) },
            },
            {
              type: 'note',
              at: [(middle[0] + across[0]) / 2, (middle[1] + across[1]) / 2],
              toward: -20,
              reach: 2.2,
              caption: { symbol: 'h', text: length(thickness) },
            },
          ],
          ...(given === undefined && { note: 'depth chosen to show the section' }),
        },
      ],
      words: `Chip section in turning at a cutting edge angle of ${say(angle, 'angle')} and a feed of ${length(feed)}: ${length(thickness)} thick${given === undefined ? '' : ` and ${length(width)} wide at a depth of ${length(depth)}`}.`,
    } satisfies Drawing;
  },
};
