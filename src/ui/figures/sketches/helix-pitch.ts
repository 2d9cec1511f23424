/** The edges of a helical cutter, unrolled: after one axial pitch the next edge stands where this one began. */

import { rectangle, type Drawing, type Point, type Shape } from '../drawing.ts';
import { refuse, valueIfAny, valueOf, type Sketch } from '../sketch.ts';

/** Axial distance from edge to edge. */
export const axialPitch = (diameter: number, teeth: number, helix: number): number =>
  (Math.PI * diameter) / (teeth * Math.tan(helix));

export const HELIX_PITCH: Sketch = {
  key: 'helix-pitch',
  title: 'Edges of a helical cutter, unrolled',
  purpose: 'At which depths the same number of edges is always in the cut.',
  parameters: [
    { key: 'Dc', symbol: 'Dc', words: 'cutter diameter', kind: 'length' },
    { key: 'z', symbol: 'z', words: 'teeth', kind: 'count' },
    { key: 'lambda', symbol: 'lambda', words: 'helix angle', kind: 'angle' },
    { key: 'ap', symbol: 'ap', words: 'axial depth', kind: 'length', optional: true },
  ],
  draw(values, say) {
    const diameter = valueOf(values, 'Dc');
    const teeth = Math.round(valueOf(values, 'z'));
    const helix = valueOf(values, 'lambda');
    const depth = valueIfAny(values, 'ap');
    const length = (value: number): string => say(value, 'length');
    if (helix >= (80 * Math.PI) / 180) return refuse('lambda', 'a helix angle below 80° can be drawn');
    if (teeth < 1 || teeth > 60) return refuse('z', 'between 1 and 60 teeth can be drawn');
    const round = Math.PI * diameter;
    const step = round / teeth;
    const pitch = axialPitch(diameter, teeth, helix);
    const high = Math.min(Math.max(1.15 * pitch, depth ?? 0), 2 * round);
    // Edges lean with the helix and leave the unrolled surface at its sides.
    const edges = Array.from({ length: teeth * 2 + Math.ceil(high / pitch) + 1 }, (_, k): Shape[] => {
      const start = (k - teeth - Math.ceil(high / pitch)) * step + step / 2;
      const at = (y: number): Point => [start + y * Math.tan(helix), y];
      const low = Math.max(0, -start / Math.tan(helix));
      const top = Math.min(high, (round - start) / Math.tan(helix));
      return low < top ? [{ type: 'line', points: [at(low), at(top)], stroke: 'edge' }] : [];
    }).flat();
    const first = step / 2;
    return {
      views: [
        {
          title: 'Surface of the cutter, unrolled',
          shapes: [
            {
              type: 'line',
              points: rectangle(0, 0, round, high),
              stroke: 'thin',
              fill: 'tool',
              closed: true,
            },
            ...edges,
            ...(depth === undefined || depth > high
              ? []
              : [
                  {
                    type: 'line',
                    points: [
                      [0, depth],
                      [round, depth],
                    ],
                    stroke: 'hidden',
                  } as const,
                  {
                    type: 'dimension',
                    from: [0, 0],
                    to: [0, depth],
                    side: 'left',
                    caption: { symbol: 'ap', text: length(depth) },
                  } as const,
                ]),
            {
              type: 'dimension',
              from: [0, 0],
              to: [round, 0],
              side: 'below',
              level: 1,
              caption: { text: `once round ${length(round)}` },
            },
            ...(teeth === 1
              ? []
              : [
                  {
                    type: 'dimension',
                    from: [first, 0],
                    to: [first + step, 0],
                    side: 'below',
                    caption: { text: length(step) },
                  } as const,
                ]),
            ...(pitch <= high
              ? [
                  {
                    type: 'dimension',
                    from: [round, 0],
                    to: [round, pitch],
                    side: 'right',
                    caption: { symbol: 'p_ax', text: length(pitch) },
                  } as const,
                ]
              : []),
            {
              type: 'angle',
              centre: [first, 0],
              radius: 0.55 * Math.min(high, step * 1.6),
              from: Math.PI / 2 - helix,
              to: Math.PI / 2,
              caption: { symbol: 'lambda', text: say(helix, 'angle') },
            },
          ],
        },
      ],
      words: `Cutter of ${length(diameter)} with ${teeth} teeth and a helix of ${say(helix, 'angle')}, unrolled: edges follow each other at ${length(pitch)} along the axis; at whole multiples of that depth the load is even.`,
    } satisfies Drawing;
  },
};
