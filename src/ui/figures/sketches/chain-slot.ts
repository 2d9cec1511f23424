/** A slot opened by overlapping holes: order, pitch and the ridges between them. */

import { arc, rectangle, type Drawing, type Point, type Shape } from '../drawing.ts';
import { refuse, valueIfAny, valueOf, type Sketch } from '../sketch.ts';

/** Places of the holes along the slot from its left end, in metres, and which turn each has. */
export interface Chain {
  readonly pitch: number;
  readonly holes: readonly { readonly at: number; readonly turn: number; readonly bridge: boolean }[];
}

/** As few holes as keep the largest pitch; first every other one in solid metal, then the bridges. */
export function chainOf(drill: number, largestPitch: number, length: number, count?: number): Chain {
  const gaps =
    count === undefined ? Math.ceil(((length - drill) / largestPitch) * (1 - 1e-12) - 1e-9) : count - 1;
  const pitch = (length - drill) / gaps;
  const solid = Math.ceil((gaps + 1) / 2);
  return {
    pitch,
    holes: Array.from({ length: gaps + 1 }, (_, k) => ({
      at: drill / 2 + k * pitch,
      turn: k % 2 === 0 ? k / 2 + 1 : solid + (k + 1) / 2,
      bridge: k % 2 === 1,
    })),
  };
}

/** How far the wall stands out between two holes: half the chord lies on both circles. */
export const ridgeHeight = (drill: number, pitch: number): number =>
  drill / 2 - Math.sqrt((drill / 2) ** 2 - (pitch / 2) ** 2);

export const CHAIN_SLOT: Sketch = {
  key: 'chain-slot',
  title: 'Chain-drilled slot',
  purpose: 'Order of the holes, real pitch and height of the ridges.',
  parameters: [
    { key: 'D', symbol: 'D', words: 'drill diameter', kind: 'length' },
    { key: 'P', symbol: 'P', words: 'largest pitch', kind: 'length' },
    {
      key: 'L',
      symbol: 'L',
      words: 'slot length over its round ends',
      kind: 'length',
      optional: true,
    },
    { key: 'holes', symbol: 'holes', words: 'count of holes', kind: 'count', optional: true },
  ],
  draw(values, say) {
    const drill = valueOf(values, 'D');
    const largest = valueOf(values, 'P');
    const slot = valueIfAny(values, 'L') ?? drill + 4 * largest;
    const wanted = values.get('holes');
    const length = (value: number): string => say(value, 'length');
    if (largest >= drill)
      return refuse('P', `the pitch ${length(largest)} must be below the drill diameter ${length(drill)}`);
    if (slot <= drill)
      return refuse('L', `the slot ${length(slot)} must be longer than the drill diameter ${length(drill)}`);
    const { pitch, holes } = chainOf(
      drill,
      largest,
      slot,
      typeof wanted === 'number' && wanted >= 2 ? Math.round(wanted) : undefined,
    );
    if (pitch >= drill) return refuse('holes', `${holes.length} holes do not touch each other`);
    if (holes.length > 400) return refuse('P', `${holes.length} holes: too many to draw`);
    const r = drill / 2;
    const ridge = ridgeHeight(drill, pitch);
    const [first, second] = holes;
    if (!first || !second) return refuse('L', 'two holes at least');
    const shapes: Shape[] = [
      {
        type: 'line',
        points: rectangle(-0.55 * drill, -1.05 * drill, slot + 0.55 * drill, 1.05 * drill),
        stroke: 'thin',
        fill: 'work',
        closed: true,
      },
      ...holes.map(({ at }): Shape => ({
        type: 'circle',
        centre: [at, 0],
        radius: r,
        stroke: 'none',
        fill: 'blank',
      })),
      ...holes.map(({ at, bridge }): Shape => ({
        type: 'circle',
        centre: [at, 0],
        radius: r,
        stroke: bridge ? 'hidden' : 'outline',
      })),
      {
        type: 'line',
        points: [
          [-0.3 * drill, 0],
          [slot + 0.3 * drill, 0],
        ],
        stroke: 'centre',
      },
      ...(holes.length > 40
        ? []
        : holes.map(({ at, turn }): Shape => ({
            type: 'label',
            at: [at, 0],
            caption: { text: String(turn) },
          }))),
      {
        type: 'dimension',
        from: [first.at, 0],
        to: [second.at, 0],
        side: 'above',
        caption: { symbol: 'P', text: length(pitch) },
      },
      {
        type: 'dimension',
        from: [0, 0],
        to: [slot, 0],
        side: 'below',
        caption: { symbol: 'L', text: length(slot) },
      },
      {
        type: 'dimension',
        from: [first.at, -r],
        to: [first.at, r],
        side: 'left',
        caption: { symbol: 'D', text: length(drill) },
      },
    ];
    // One ridge with the two holes beside it, from the middle of the one to the middle of the other.
    const base = r - ridge;
    const half = Math.asin(pitch / drill);
    const corner: Point[] = [
      ...arc([-pitch / 2, 0], r, Math.PI / 2, Math.PI / 2 - half),
      ...arc([pitch / 2, 0], r, Math.PI / 2 + half, Math.PI / 2).slice(1),
    ];
    const roof = r + Math.max(0.35 * ridge, 0.1 * pitch);
    return {
      views: [
        {
          title: 'Holes in the order of drilling',
          shapes,
          note: 'full circles first, dashed circles bridge two of them',
        },
        {
          title: 'One ridge, enlarged',
          shapes: [
            {
              type: 'line',
              points: [...corner, [pitch / 2, roof], [-pitch / 2, roof]],
              stroke: 'none',
              fill: 'work',
              closed: true,
            },
            { type: 'line', points: corner, stroke: 'outline' },
            {
              type: 'line',
              points: [
                [-pitch / 2, r],
                [pitch / 2, r],
              ],
              stroke: 'hidden',
            },
            {
              type: 'dimension',
              from: [0, base],
              to: [0, r],
              side: 'right',
              caption: { text: `ridge ${length(ridge)}` },
            },
            {
              type: 'dimension',
              from: [-pitch / 2, r],
              to: [pitch / 2, r],
              side: 'below',
              caption: { symbol: 'P', text: length(pitch) },
            },
          ],
        },
      ],
      words: `Slot of ${length(slot)} opened by ${holes.length} holes of ${length(drill)} at a pitch of ${length(pitch)}: first ${Math.ceil(holes.length / 2)} in solid metal, then ${Math.floor(holes.length / 2)} between them. Ridges of ${length(ridge)} are left on each wall.`,
    } satisfies Drawing;
  },
};
