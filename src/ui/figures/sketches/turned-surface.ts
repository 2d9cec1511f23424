/** The surface a round tool corner leaves in turning, peaks enlarged. */

import { roundBelow, type Drawing, type Point } from '../drawing.ts';
import { refuse, valueOf, type Sketch } from '../sketch.ts';

/** Height above the lowest point of a groove of this radius at a distance from its middle. */
export const grooveHeight = (radius: number, off: number): number =>
  (off * off) / (radius + Math.sqrt(radius * radius - off * off));

/** Grooves side by side at a pitch: points of `count` grooves, lowest points at 0. */
export function grooves(radius: number, pitch: number, count: number): Point[] {
  const parts = 24;
  return Array.from({ length: count * parts + 1 }, (_, k): Point => {
    const x = (pitch * k) / parts;
    const off = ((k % parts) / parts - 0.5) * pitch;
    return [x, grooveHeight(radius, off)];
  });
}

export const TURNED_SURFACE: Sketch = {
  key: 'turned-surface',
  title: 'Turned surface',
  purpose: 'Peaks and valleys that feed and corner radius leave.',
  parameters: [
    { key: 'r_eps', symbol: 'r_eps', words: 'corner radius', kind: 'length' },
    { key: 'f', symbol: 'f', words: 'feed per revolution', kind: 'feed per revolution' },
  ],
  draw(values, say) {
    const radius = valueOf(values, 'r_eps');
    const feed = valueOf(values, 'f');
    if (feed >= 2 * radius) return refuse('f', 'the feed is not below twice the corner radius');
    const peak = grooveHeight(radius, feed / 2);
    const count = 4;
    const stretch = Math.max(1, roundBelow((0.9 * feed) / peak));
    const line = grooves(radius, feed, count);
    const floor = (-0.55 * feed) / stretch;
    const corner = Array.from({ length: 41 }, (_, k): Point => {
      const off = ((k / 40) * 2 - 1) * Math.min(0.95 * radius, 1.05 * feed);
      return [2.5 * feed + off, grooveHeight(radius, off)];
    });
    const lid = corner[0]?.[1] ?? 0;
    return {
      views: [
        {
          title: 'Section across the feed marks',
          stretch,
          ...(stretch > 1 && { note: `heights drawn ${stretch} times as large as lengths` }),
          shapes: [
            {
              type: 'line',
              points: [...line, [count * feed, floor], [0, floor]],
              stroke: 'none',
              fill: 'work',
              closed: true,
            },
            { type: 'line', points: line, stroke: 'outline' },
            { type: 'line', points: corner, stroke: 'path' },
            {
              type: 'label',
              at: [2.5 * feed, lid * 0.72],
              caption: { symbol: 'r_eps', text: say(radius, 'length') },
            },
            {
              type: 'dimension',
              from: [0.5 * feed, 0],
              to: [1.5 * feed, 0],
              side: 'below',
              caption: { symbol: 'f', text: say(feed, 'length') },
            },
            {
              type: 'dimension',
              from: [0, 0],
              to: [0, peak],
              side: 'left',
              caption: { symbol: 'Rt', text: say(peak, 'roughness') },
            },
          ],
        },
      ],
      words: `Turned surface at a feed of ${say(feed, 'length')} with a corner radius of ${say(radius, 'length')}: peaks stand ${say(peak, 'roughness')} above the valleys.`,
    } satisfies Drawing;
  },
};
