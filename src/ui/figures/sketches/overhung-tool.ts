/** A tool that sticks out of its clamp, and how it bends under a force at its cutting end. */

import { rectangle, roundBelow, type Drawing, type Point, type Shape } from '../drawing.ts';
import { listOf, refuse, valueOf, type Sketch } from '../sketch.ts';

/** Lengths in metres, stiffness E I in N m2; the first step carries the cutting end. */
export interface BeamStep {
  readonly length: number;
  readonly height: number;
  readonly stiffness: number;
}

/** Deflection across a clamped beam of steps under a force at its free end: x from the clamp, exact in every step. */
export function deflectedShape(steps: readonly BeamStep[], force: number): Point[] {
  const total = steps.reduce((sum, { length }) => sum + length, 0);
  const points: Point[] = [[0, 0]];
  let [x, y, slope] = [0, 0, 0];
  for (const { length, stiffness } of steps.toReversed()) {
    const [from, start, tilt] = [x, y, slope];
    const arm = total - from;
    const parts = 24;
    for (let k = 1; k <= parts; k += 1) {
      const s = (length * k) / parts;
      x = from + s;
      slope = tilt + (force / stiffness) * (arm * s - (s * s) / 2);
      y = start + tilt * s + (force / stiffness) * ((arm * s * s) / 2 - s ** 3 / 6);
      points.push([x, y]);
    }
  }
  return points;
}

const roundInertia = (diameter: number): number => (Math.PI * diameter ** 4) / 64;

/** Upper and lower edge of the tool along a line of deflections drawn downwards. */
function outline(steps: readonly BeamStep[], at: (x: number) => number): Point[] {
  const above: Point[] = [];
  const below: Point[] = [];
  let x = 0;
  for (const { length, height } of steps.toReversed()) {
    for (let k = 0; k <= 16; k += 1) {
      const here = x + (length * k) / 16;
      above.push([here, height / 2 - at(here)]);
      below.push([here, -height / 2 - at(here)]);
    }
    x += length;
  }
  return [...above, ...below.toReversed()];
}

export const OVERHUNG_TOOL: Sketch = {
  key: 'overhung-tool',
  title: 'Overhung tool, deflected',
  purpose: 'The tool to scale and the shape it bends to, enlarged.',
  parameters: [
    { key: 'lengths', symbol: 'l', words: 'lengths from the cutting end', kind: 'length', list: true },
    { key: 'diameters', symbol: 'D', words: 'diameters of the steps', kind: 'length', list: true },
    { key: 'moduli', symbol: 'E', words: 'moduli of elasticity of the steps', kind: 'stress', list: true },
    { key: 'F', symbol: 'F', words: 'force across the cutting end', kind: 'force' },
    {
      key: 'w',
      symbol: 'w',
      words: 'width of a bar with flat sides; its height goes as diameter',
      kind: 'length',
      optional: true,
    },
  ],
  draw(values, say) {
    const lengths = listOf(values, 'lengths');
    const diameters = listOf(values, 'diameters');
    const moduli = listOf(values, 'moduli');
    const force = valueOf(values, 'F');
    const width = values.get('w');
    for (const [key, list] of [
      ['diameters', diameters],
      ['moduli', moduli],
    ] as const)
      if (list.length !== lengths.length && list.length !== 1)
        return refuse(key, `${lengths.length} lengths, but ${list.length} ${key}`);
    const steps = lengths.map((length, k): BeamStep => {
      const height = diameters[k] ?? diameters[0] ?? 0;
      const inertia = typeof width === 'number' ? (width * height ** 3) / 12 : roundInertia(height);
      return { length, height, stiffness: (moduli[k] ?? moduli[0] ?? 0) * inertia };
    });
    const total = lengths.reduce((sum, length) => sum + length, 0);
    const thickest = Math.max(...steps.map(({ height }) => height));
    const shape = deflectedShape(steps, force);
    const bend = shape.at(-1)?.[1] ?? 0;
    const times = Math.max(1, roundBelow((0.16 * total) / bend));
    const at = (x: number): number => {
      const k = shape.findIndex(([px]) => px >= x - 1e-12 * total);
      const [x1, y1] = shape[k] ?? [total, bend];
      const [x0, y0] = shape[Math.max(0, k - 1)] ?? [0, 0];
      return times * (x1 === x0 ? y1 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0));
    };
    const tip = at(total);
    const clamp = 0.62 * thickest;
    const end = steps[0]?.height ?? 0;
    const base = steps.at(-1)?.height ?? 0;
    const ticks: Shape[] = [];
    let x = 0;
    for (const [k, step] of steps.toReversed().entries()) {
      const symbol = steps.length === 1 ? 'D' : `D_${steps.length - k}`;
      ticks.push({
        type: 'dimension',
        from: [x, step.height / 2],
        to: [x + step.length, step.height / 2],
        side: 'above',
        caption:
          steps.length === 1
            ? { symbol: 'l', text: say(step.length, 'length') }
            : { text: say(step.length, 'length') },
      });
      ticks.push({
        type: 'note',
        at: [x + step.length * 0.42, -step.height / 2 - at(x + step.length * 0.42)],
        toward: -70,
        reach: 0.7 + 1.3 * (steps.length - 1 - k),
        caption: { symbol, text: say(step.height, 'length') },
      });
      x += step.length;
    }
    const drawn: Drawing = {
      views: [
        {
          title: 'Tool at rest (dashed) and under load',
          note: `deflection drawn ${say(times, 'number')} times as large as it is`,
          shapes: [
            {
              type: 'line',
              points: rectangle(-0.28 * total, -base / 2 - clamp, 0, base / 2 + clamp),
              stroke: 'outline',
              fill: 'work',
              closed: true,
            },
            { type: 'line', points: outline(steps, at), stroke: 'outline', fill: 'tool', closed: true },
            { type: 'line', points: outline(steps, () => 0), stroke: 'hidden', closed: true },
            {
              type: 'line',
              points: [
                [-0.2 * total, 0],
                [total * 1.05, 0],
              ],
              stroke: 'centre',
            },
            {
              type: 'line',
              points: [
                [total, end / 2 - tip + 0.24 * total],
                [total, end / 2 - tip],
              ],
              stroke: 'edge',
              arrow: true,
            },
            {
              type: 'label',
              at: [total * 0.98, end / 2 - tip + 0.2 * total],
              anchor: 'end',
              caption: { symbol: 'F', text: say(force, 'force') },
            },
            {
              type: 'dimension',
              from: [total, 0],
              to: [total, -tip],
              side: 'right',
              caption: { symbol: 'delta', text: say(bend, 'length') },
            },
            ...ticks,
          ],
        },
      ],
      words: `Tool of ${say(total, 'length')} overhang${steps.length > 1 ? ` in ${steps.length} steps` : ` and ${say(end, 'length')} diameter`}, clamped at its back: ${say(force, 'force')} across its cutting end bends it by ${say(bend, 'length')}. Clamp and joints are drawn as rigid; the deflection is drawn ${say(times, 'number')} times too large.`,
    };
    return drawn;
  },
};
