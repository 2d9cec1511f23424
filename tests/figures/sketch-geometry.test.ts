/** The sketches' geometry against formulas and samplings that share no code with them. */

import { expect, test } from 'vitest';
import type { Point } from '../../src/ui/figures/drawing.ts';
import { grooveHeight, grooves } from '../../src/ui/figures/sketches/turned-surface.ts';
import { widestContact } from '../../src/ui/figures/sketches/ball-depth.ts';
import { crossingTravel } from '../../src/ui/figures/sketches/crossing-hole.ts';
import { axialPitch } from '../../src/ui/figures/sketches/helix-pitch.ts';
import { roundAngle, roundReach } from '../../src/ui/figures/sketches/round-insert.ts';
import { chainOf, ridgeHeight } from '../../src/ui/figures/sketches/chain-slot.ts';
import { circlePath, equalEngagement } from '../../src/ui/figures/sketches/circle-path.ts';
import { pinChip, pinCut } from '../../src/ui/figures/sketches/crank-pin.ts';
import { chipAt, chipOutline, engagementOf } from '../../src/ui/figures/sketches/cutter-engagement.ts';
import { peckDepths, pointLength } from '../../src/ui/figures/sketches/deep-hole.ts';
import { entryTravel, touchHeight } from '../../src/ui/figures/sketches/drill-entry.ts';
import { deflectedShape } from '../../src/ui/figures/sketches/overhung-tool.ts';
import { threadPath } from '../../src/ui/figures/sketches/thread-milling.ts';
import { internalProfile, profileHeight } from '../../src/ui/figures/sketches/thread-section.ts';
import { chipSection } from '../../src/ui/figures/sketches/turning-chip.ts';

const MM = 1e-3;
const DEG = Math.PI / 180;

/** Area of a closed outline (shoelace). */
const area = (points: readonly Point[]): number =>
  Math.abs(
    points.reduce((sum, [x, y], k) => {
      const [nx, ny] = points[(k + 1) % points.length] ?? [0, 0];
      return sum + x * ny - nx * y;
    }, 0) / 2,
  );

const from = ([x, y]: Point, [cx, cy]: Point): number => Math.hypot(x - cx, y - cy);

/** Share of a circle's points that fulfil a condition, as an angle. */
function sampledAngle(inside: (x: number, y: number) => boolean, centre: number, radius: number): number {
  const count = 2_000_000;
  let hits = 0;
  for (let k = 0; k < count; k += 1) {
    const angle = ((k + 0.5) / count) * 2 * Math.PI;
    if (inside(centre + radius * Math.cos(angle), radius * Math.sin(angle))) hits += 1;
  }
  return (hits / count) * 2 * Math.PI;
}

test('a quarter of the diameter engages 60 degrees in side milling', () => {
  // cos(phi) = 1 - 2 ae/Dc, worked by hand.
  const { entry, exit } = engagementOf(20 * MM, 5 * MM, -7.5 * MM);
  expect((exit - entry) / DEG).toBeCloseTo(60, 9);
  expect(exit / DEG).toBeCloseTo(180, 9);
});

test.each([
  [20, 4, 0.15, -8],
  [20, 7, 0.1, 6.5],
  [100, 70, 0.2, -10],
])(
  'the chip of %d mm, ae %d, fz %d, e %d has at entry and exit the thickness that a ray finds',
  (d, ae, fz, e) => {
    const cut = engagementOf(d * MM, ae * MM, e * MM);
    const feed = fz * MM;
    for (const angle of [cut.entry, (cut.entry + cut.exit) / 2, cut.exit]) {
      // A ray from the axis to the new edge; the tooth before left the same circle one feed behind.
      const [ux, uy] = [Math.sin(angle), Math.cos(angle)];
      const ahead = -feed * ux;
      const reach = ahead + Math.sqrt(cut.radius ** 2 - feed ** 2 * uy ** 2);
      expect(Math.abs(chipAt(feed, Math.PI / 2, angle) - (cut.radius - reach))).toBeLessThan(
        feed ** 2 / cut.radius,
      );
    }
  },
);

test('the chip of 100 mm, fz 0.2, ae 70, axis offset -10 leaves 0.087178 mm at exit', () => {
  // Arc sampled point by point.
  const { exit } = engagementOf(100 * MM, 70 * MM, -10 * MM);
  expect(chipAt(0.2 * MM, Math.PI / 2, exit) / MM).toBeCloseTo(0.087178, 6);
});

test('the outline of a chip holds the feed times the engagement', () => {
  // A strip pushed on by the feed: exact whatever the arc looks like.
  const cut = engagementOf(20 * MM, 4 * MM, -8 * MM);
  expect(area(chipOutline(cut, 0.15 * MM))).toBeCloseTo(0.15 * MM * 4 * MM, 15);
});

test.each([
  ['inside', 20, 50, 60, 6.875],
  ['outside', 50, 103, 100, 1.015],
] as const)(
  'a path %s with %d mm from %d to %d engages as two sampled circles do',
  (side, cutter, start, finished, equal) => {
    const path = circlePath(side, cutter * MM, start * MM, finished * MM);
    const [low, high] = [Math.min(start, finished) / 2, Math.max(start, finished) / 2];
    // The arc lies on both sides of the line of centres when nothing has been cut yet: half of it is this path's.
    const both = sampledAngle(
      (x, y) => Math.hypot(x, y) > low * MM && Math.hypot(x, y) < high * MM,
      path.axis,
      path.cutter / 2,
    );
    expect(path.engaged).toBeCloseTo(both / 2, 4);
    expect(equalEngagement(path) / MM).toBeCloseTo(equal, 3);
  },
);

test('inside a bore from 50 to 60 mm a cutter of 20 mm is engaged over 71.790 degrees', () => {
  // Two circles sampled.
  expect(circlePath('inside', 20 * MM, 50 * MM, 60 * MM).engaged / DEG).toBeCloseTo(71.79, 2);
});

test('a disc of 700 mm on a pin from 90 to 80 mm is engaged over 3.19747 degrees', () => {
  const cut = pinCut('external', 700 * MM, 90 * MM, 80 * MM);
  expect(cut.engaged / DEG).toBeCloseTo(3.19747, 5);
  // Its meeting point lies on both circles.
  expect(from(cut.meeting, [0, 0])).toBeCloseTo(45 * MM, 12);
  expect(from(cut.meeting, [cut.axis, 0])).toBeCloseTo(350 * MM, 12);
});

test.each([
  ['external', 700],
  ['internal', 200],
] as const)('an %s cutter of %d mm engages the pin as two sampled circles do', (type, cutter) => {
  const cut = pinCut(type, cutter * MM, 90 * MM, 80 * MM);
  const both = sampledAngle((x, y) => Math.hypot(x, y) < 45 * MM, cut.axis, cut.cutter / 2);
  expect(cut.engaged).toBeCloseTo(both / 2, 4);
});

test('the chip on a pin is at most 0.530 mm thick where the sampled path says so', () => {
  // Path of the teeth sampled: 0.530 mm; the closed formula, first order in the feed, gives 0.544 mm.
  const cut = pinCut('external', 700 * MM, 90 * MM, 80 * MM);
  const chip = pinChip(cut, 1 * MM);
  const step = 1 / 40;
  const next: Point = [cut.axis * Math.cos(step), cut.axis * Math.sin(step)];
  const thickest = Math.max(...chip.map((point) => cut.cutter / 2 - from(point, next)));
  expect(thickest / MM).toBeGreaterThan(0.524);
  expect(thickest / MM).toBeLessThan(0.545);
});

test('between two teeth an internal cutter of 200 mm leaves facets of 1.875 um on an 80 mm pin', () => {
  // Circles sampled.
  const cut = pinCut('internal', 200 * MM, 90 * MM, 80 * MM);
  const [ridge] = pinChip(cut, 1 * MM);
  expect((from(ridge ?? [0, 0], [0, 0]) - 40 * MM) * 1e6).toBeCloseTo(1.875, 3);
});

test('nine holes of 10 mm open a slot of 60 mm at a largest pitch of 7 mm, with eight ridges on a wall', () => {
  // Counted along the slot; real pitch (60 - 10)/8.
  const { holes, pitch } = chainOf(10 * MM, 7 * MM, 60 * MM);
  expect(holes).toHaveLength(9);
  expect(pitch / MM).toBeCloseTo(6.25, 12);
  const ridges = holes.slice(1).filter(({ at }, k) => at - (holes[k]?.at ?? 0) < 10 * MM);
  expect(ridges).toHaveLength(8);
  expect(((holes.at(-1)?.at ?? 0) + 5 * MM) / MM).toBeCloseTo(60, 12);
});

test('seven holes are drilled in the order 1 3 5 7 2 4 6', () => {
  // Odd ones in solid metal first; the bridges have metal on both sides.
  const { holes } = chainOf(10 * MM, 6 * MM, 46 * MM);
  const order = holes.map((hole, k) => ({ number: k + 1, turn: hole.turn })).sort((a, b) => a.turn - b.turn);
  expect(order.map(({ number }) => number)).toEqual([1, 3, 5, 7, 2, 4, 6]);
});

test('holes of 10 mm at a pitch of 6 mm leave ridges of 1 mm', () => {
  // 5 - sqrt(25 - 9).
  expect(ridgeHeight(10 * MM, 6 * MM) / MM).toBeCloseTo(1, 12);
});

test('a hole of 55 mm in pecks of 10 mm is drilled in six', () => {
  expect(peckDepths(55 * MM, 10 * MM).map((depth) => Math.round(depth / MM))).toEqual([
    10, 20, 30, 40, 50, 55,
  ]);
});

test('the point of a drill of 12.7 mm with 118 degrees is half the diameter over tan 59 degrees long', () => {
  expect(pointLength(12.7 * MM, 118 * DEG) / MM).toBeCloseTo(6.35 / Math.tan(59 * DEG), 9);
});

test.each([
  [10, 10, 140, 2.70149],
  [10, 45, 180, 10],
  [10, 35, 140, 7.00208],
])(
  'a drill of %d mm on a face %d degrees off square with a point of %d travels %d mm',
  (d, alpha, sigma, travel) => {
    // Cone against plane, its edge sampled: first touch is where the lowest gap closes, the end where the last point is in.
    const slope = Math.tan(alpha * DEG);
    let [nearest, last] = [Infinity, -Infinity];
    for (let k = -5000; k <= 5000; k += 1) {
      const x = (k / 5000) * (d / 2);
      const gap = Math.abs(x) / Math.tan((sigma / 2) * DEG) - x * slope;
      nearest = Math.min(nearest, gap);
      last = Math.max(last, gap);
    }
    expect(entryTravel(d * MM, sigma * DEG, alpha * DEG) / MM).toBeCloseTo(last - nearest, 6);
    expect(touchHeight(d * MM, sigma * DEG, alpha * DEG) / MM).toBeCloseTo(nearest, 6);
    expect(last - nearest).toBeCloseTo(travel, 4);
  },
);

const round = (length: number, diameter: number, modulus: number) => ({
  length,
  height: diameter,
  stiffness: (modulus * Math.PI * diameter ** 4) / 64,
});

test('a plain rod bends to F l^3/(3 E I), and half way to 5/16 of that', () => {
  // Timoshenko, Strength of Materials I: y(x) = F x^2 (3 l - x)/(6 E I) from the clamp.
  const step = round(0.1, 0.02, 210e9);
  const shape = deflectedShape([step], 500);
  const end = (500 * 0.1 ** 3) / (3 * step.stiffness);
  expect((shape.at(-1)?.[1] ?? 0) / end).toBeCloseTo(1, 12);
  expect((shape[12]?.[1] ?? 0) / end).toBeCloseTo(5 / 16, 12);
});

test('a tool of three steps bends by 136.921 um, as its moment integrated twice says', () => {
  const steps = [round(0.04, 0.016, 580e9), round(0.06, 0.02, 210e9), round(0.05, 0.032, 210e9)];
  const shape = deflectedShape(steps, 500);
  // Unit-load integral of M(x) x/(E I) by slices from the cutting end.
  let [sum, x] = [0, 0];
  for (const { length, stiffness } of steps)
    for (let k = 0; k < 20_000; k += 1) {
      const at = x + ((k + 0.5) / 20_000) * length;
      sum += (500 * at * at * (length / 20_000)) / stiffness;
      if (k === 19_999) x += length;
    }
  expect((shape.at(-1)?.[1] ?? 0) * 1e6).toBeCloseTo(136.921, 3);
  expect((shape.at(-1)?.[1] ?? 0) / sum).toBeCloseTo(1, 8);
});

test('the profile of M10 has the minor diameter 8.376 and the pitch diameter 9.026 of ISO 724', () => {
  const profile = internalProfile(10 * MM, 1.5 * MM, 0, 1);
  const radii = profile.map(([, r]) => r);
  expect((2 * Math.min(...radii)) / MM).toBeCloseTo(8.376, 3);
  expect((2 * Math.max(...radii)) / MM).toBeCloseTo(10, 12);
  // At the pitch diameter groove and ridge are equally wide: half a pitch each.
  const middle = 9.026 / 2;
  const [, a, b, c, d] = profile.map(([x, r]): Point => [x / MM, r / MM]);
  const at = (p: Point | undefined, q: Point | undefined): number => {
    if (!p || !q) return Number.NaN;
    return p[0] + ((middle - p[1]) / (q[1] - p[1])) * (q[0] - p[0]);
  };
  expect(at(c, d) - at(a, b)).toBeCloseTo(0.75, 3);
  expect(profileHeight(1.5 * MM) / MM).toBeCloseTo(0.8119, 4);
});

test('the path of a thread mill is one helix turn between two half circles, and touches the major diameter', () => {
  const [cutter, major, pitch, length] = [8 * MM, 10 * MM, 1.5 * MM, 15 * MM];
  const path = threadPath(cutter, major, pitch, length);
  const [first, last] = [path[0], path.at(-1)];
  expect(Math.hypot(first?.[0] ?? 1, first?.[1] ?? 1)).toBeLessThan(1e-15);
  expect(Math.hypot(last?.[0] ?? 1, last?.[1] ?? 1)).toBeLessThan(1e-15);
  expect(((last?.[2] ?? 0) - (first?.[2] ?? 0)) / pitch).toBeCloseTo(1.5, 12);
  const reach = path.map(([x, y]) => Math.hypot(x, y) + cutter / 2);
  expect(Math.max(...reach) / MM).toBeCloseTo(5, 9);
  // On the full turn the height follows the angle.
  const turn = path.filter(([x, y]) => Math.abs(Math.hypot(x, y) - 1 * MM) < 1e-12);
  for (const [x, y, z] of turn) {
    const share = (z + length) / pitch;
    expect(Math.abs(Math.cos(2 * Math.PI * share) * MM - x)).toBeLessThan(1e-9);
    expect(Math.abs(Math.sin(2 * Math.PI * share) * MM - y)).toBeLessThan(1e-9);
  }
  expect(turn.length).toBeGreaterThan(100);
});

test('a chip section in turning is as large as feed times depth and as thick as f sin(kappa)', () => {
  const [feed, angle, depth] = [0.4 * MM, 30 * DEG, 2 * MM];
  const [a, b, c, d] = chipSection(feed, angle, depth);
  expect(area([a, b, c, d]) / MM ** 2).toBeCloseTo(0.8, 12);
  // Distance of a corner from the edge through the two others.
  const edge: Point = [d[0] - a[0], d[1] - a[1]];
  const thick = Math.abs(edge[0] * b[1] - edge[1] * b[0]) / Math.hypot(...edge);
  expect(thick / MM).toBeCloseTo(0.2, 12);
});

test('grooves of a ball of 10 mm 6 mm apart are 1 mm deep, and every point lies on its circle', () => {
  // 5 - sqrt(25 - 9).
  expect(grooveHeight(5 * MM, 3 * MM) / MM).toBeCloseTo(1, 12);
  for (const [k, [x, y]] of grooves(5 * MM, 6 * MM, 1).entries())
    if (k < 24) expect(Math.hypot(x - 3 * MM, y - 5 * MM) / MM).toBeCloseTo(5, 12);
});

test.each([
  [10, 0.3, 15, 5.72839],
  [10, 2, 0, 8],
  [10, 3, 80, 10],
])(
  'a ball of %d mm, %d deep, tilted by %d degrees cuts a diameter of %d mm',
  (ball, depth, tilt, diameter) => {
    // Spherical cap sampled for the first; 2 sqrt(2 * 8) by hand for the second; the third reaches beyond the widest circle.
    const [far, mirror] = widestContact(ball * MM, depth * MM, tilt * DEG);
    expect(from(far, mirror) / MM).toBeCloseTo(diameter, 4);
    // The widest distance from the axis of all points of the contact, sampled.
    const [r, half] = [ball / 2, Math.acos(1 - (2 * depth) / ball)];
    let widest = 0;
    for (let k = -2000; k <= 2000; k += 1) {
      const angle = (k / 2000) * half;
      const [x, y] = [r * Math.sin(angle), -r * Math.cos(angle)];
      widest = Math.max(widest, Math.abs(x * Math.cos(tilt * DEG) - y * Math.sin(tilt * DEG)));
    }
    expect(from(far, mirror) / 2 / MM).toBeCloseTo(widest, 4);
  },
);

test('a round insert of 10 mm on a cutter of 50 mm cuts 46 mm at a depth of 1 mm', () => {
  // 50 - 10 + 2 sqrt(1 * 9), by hand; the edge meets the surface where the circle stands 1 mm high.
  expect((50 * MM - 10 * MM + 2 * roundReach(10 * MM, 1 * MM)) / MM).toBeCloseTo(46, 12);
  const angle = roundAngle(10 * MM, 1 * MM);
  expect(5 - 5 * Math.cos(angle)).toBeCloseTo(1, 12);
  expect(5 * Math.sin(angle)).toBeCloseTo(roundReach(10 * MM, 1 * MM) / MM, 12);
});

test('edges of a helix follow each other after the circumference over teeth and tangent', () => {
  // pi * 20/(4 tan 45 degrees), by hand.
  expect(axialPitch(20 * MM, 4, 45 * DEG) / MM).toBeCloseTo(5 * Math.PI, 12);
});

test.each([
  [6, 8, 60, 12.7017],
  [6, 8, 90, 8],
])('a drill of %d mm crosses a hole of %d mm at %d degrees over %d mm', (drill, crossed, gamma, travel) => {
  // Edges of the drill moved on in small steps: part of them over the hole, counted.
  const [sine, cosine] = [Math.sin(gamma * DEG), Math.cos(gamma * DEG)];
  let steps = 0;
  for (let k = -40_000; k <= 40_000; k += 1) {
    const s = k / 2000;
    const sides = [-1, -0.5, 0, 0.5, 1].map((share) => Math.abs(s * sine + share * (drill / 2) * cosine));
    if (sides.some((x) => x <= crossed / 2)) steps += 1;
  }
  expect(crossingTravel(drill * MM, crossed * MM, gamma * DEG) / MM).toBeCloseTo(steps / 2000, 2);
  expect(crossingTravel(drill * MM, crossed * MM, gamma * DEG) / MM).toBeCloseTo(travel, 4);
});
