/** The basic profile of ISO metric and unified internal threads, and the hole before the thread. */

import type { Drawing, Point, Shape } from '../drawing.ts';
import { refuse, valueIfAny, valueOf, type Sketch } from '../sketch.ts';

/** Height of the basic profile, 5/8 of the sharp one (ISO 68-1): metres. */
export const profileHeight = (pitch: number): number => (5 * Math.sqrt(3) * pitch) / 16;

/**
 * One wall of an internal thread along its axis: points of the profile from `from` on, at a distance from the axis;
 * flat of P/4 at the minor, P/8 at the major diameter, flanks of 60 degrees between.
 */
export function internalProfile(major: number, pitch: number, from: number, turns: number): Point[] {
  const [outer, inner] = [major / 2, major / 2 - profileHeight(pitch)];
  return Array.from({ length: turns }, (_, k): Point[] => {
    const start = from + k * pitch;
    return [
      [start, inner],
      [start + pitch / 4, inner],
      [start + (9 / 16) * pitch, outer],
      [start + (11 / 16) * pitch, outer],
      [start + pitch, inner],
    ];
  }).flat();
}

export const THREAD_SECTION: Sketch = {
  key: 'thread-section',
  title: 'Thread section',
  purpose: 'Profile of an internal thread and the hole drilled before it.',
  parameters: [
    { key: 'd', symbol: 'd', words: 'major diameter', kind: 'length' },
    { key: 'P', symbol: 'P', words: 'pitch', kind: 'length' },
    { key: 'Dh', symbol: 'Dh', words: 'hole before the thread', kind: 'length', optional: true },
  ],
  draw(values, say) {
    const major = valueOf(values, 'd');
    const pitch = valueOf(values, 'P');
    const hole = valueIfAny(values, 'Dh');
    const length = (value: number): string => say(value, 'length');
    if (pitch >= major / 2)
      return refuse('P', `the pitch ${length(pitch)} must be below half the major diameter`);
    if (hole !== undefined && hole >= major)
      return refuse('Dh', `the hole ${length(hole)} is not smaller than the thread ${length(major)}`);
    const height = profileHeight(pitch);
    const [outer, inner, middle] = [major / 2, major / 2 - height, major / 2 - 0.6 * height];
    const wall = outer + 0.8 * pitch;
    const turns = 3;
    const profile = internalProfile(major, pitch, 0, turns);
    const shapes: Shape[] = [
      {
        type: 'line',
        points: [...profile, [turns * pitch, wall], [0, wall]],
        stroke: 'none',
        fill: 'work',
        closed: true,
      },
      { type: 'line', points: profile, stroke: 'outline' },
      {
        type: 'line',
        points: [
          [0, middle],
          [turns * pitch, middle],
        ],
        stroke: 'centre',
      },
      ...(hole === undefined
        ? []
        : [
            {
              type: 'line',
              points: [
                [0, hole / 2],
                [turns * pitch, hole / 2],
              ],
              stroke: 'hidden',
            } as const,
          ]),
      {
        type: 'dimension',
        from: [0.625 * pitch, outer],
        to: [1.625 * pitch, outer],
        side: 'above',
        caption: { symbol: 'P', text: length(pitch) },
      },
      {
        type: 'dimension',
        from: [0, inner],
        to: [0, outer],
        side: 'left',
        caption: { text: `${length(height)}` },
      },
      {
        type: 'note',
        at: [2.625 * pitch, outer],
        toward: 60,
        reach: 1.2,
        caption: { symbol: 'd', text: length(major) },
      },
      {
        type: 'note',
        at: [2.125 * pitch, inner],
        toward: -60,
        reach: 1,
        caption: { symbol: 'D1', text: length(2 * inner) },
      },
      {
        type: 'note',
        at: [turns * pitch, middle],
        toward: 0,
        reach: 0.3,
        caption: { symbol: 'D2', text: length(major - (3 * Math.sqrt(3) * pitch) / 8) },
      },
      ...(hole === undefined
        ? []
        : [
            {
              type: 'note',
              at: [1.5 * pitch, hole / 2],
              toward: -115,
              reach: 2.4,
              caption: { text: `hole ${length(hole)}` },
            } as const,
          ]),
    ];
    const share =
      hole === undefined
        ? ''
        : ` A hole of ${length(hole)} (dashed) leaves ${say(Math.max(0, (major - hole) / 2), 'length')} of depth on a side.`;
    return {
      views: [{ title: 'Section of one wall, axis below', shapes }],
      words: `Basic profile of an internal thread of ${length(major)} major diameter and ${length(pitch)} pitch: ${length(height)} deep, minor diameter ${length(2 * inner)}, flanks of 60°.${share}`,
    } satisfies Drawing;
  },
};
