/** Formulas of geometry held against brute force: rays cast at circles, polygons clipped, edges and solids sampled. */

import { expect, test } from 'vitest';
import { numberIn } from './calculated.ts';
import { area, clipped, disk, rayToCircle } from './clipping.ts';

const DEGREE = Math.PI / 180;

/** Largest, mean and last chip along the arc: the ray from the axis leaves the path of the tooth before, one feed behind. mm. */
function chips(
  diameter: number,
  feed: number,
  engagement: number,
  offset: number,
): { largest: number; mean: number; last: number } {
  const radius = diameter / 2;
  // The cut lies between two lines along the feed (x); phi turns from the entry side, where h = 0 at phi = 0.
  const entry = Math.acos((2 * offset + engagement) / diameter);
  const exit = Math.acos((2 * offset - engagement) / diameter);
  const steps = 20_000;
  let [largest, total, last] = [0, 0, 0];
  for (let i = 0; i <= steps; i += 1) {
    const phi = entry + ((exit - entry) * i) / steps;
    // Direction of the tooth: sin phi ahead along the feed, cos phi towards the entry side.
    const angle = Math.PI / 2 - phi;
    const chip = radius - rayToCircle(angle, -feed, 0, radius);
    largest = Math.max(largest, chip);
    total += (i === 0 || i === steps ? 0.5 : 1) * chip;
    last = chip;
  }
  return { largest, mean: total / steps, last };
}

test.each([
  ['side, half a cutter', 20, 10, -5],
  ['side, thin', 20, 3, -8.5],
  ['middle', 100, 60, 0],
  ['off the middle', 100, 30, 20],
  ['towards the exit', 100, 70, -10],
] as const)(
  'chip along the arc by rays: largest, mean and last tend to the formulas as the feed gets small (%s)',
  (_, diameter, engagement, offset) => {
    const off = (feed: number): number[] => {
      const seen = chips(diameter, feed, engagement, offset);
      const cut = `${diameter} mm; ${feed} mm; ${engagement} mm; 90 deg; ${offset} mm`;
      return [
        numberIn(`=MILL.CHIP_MAX(${cut})`, 'mm') / seen.largest - 1,
        numberIn(`=MILL.CHIP_MEAN(${cut})`, 'mm') / seen.mean - 1,
        // Where the last chip is 0 by the formula, the ray leaves a chip of second order.
        (numberIn(`=MILL.CHIP_AT_EXIT(${cut})`, 'mm') - seen.last) / feed,
      ];
    };
    const [coarse, fine] = [off(0.01 * diameter), off(0.001 * diameter)];
    for (const [i, error] of fine.entries()) {
      expect(Math.abs(error)).toBeLessThan(0.003);
      // First order in the feed: a tenth of the feed, a tenth of the error or less.
      expect(Math.abs(error)).toBeLessThan(0.15 * Math.abs(coarse[i] ?? 0) + 1e-7);
    }
  },
);

test('b19 the exact path of the tooth: the ray meets the path of the tooth before, which runs with the feed (Martellotti 1941; memory)', () => {
  // D 20 mm, 2 teeth, 0.2 mm a tooth, 2 mm wide: 0.12066 mm for one sense of turning, 0.12 mm by the circle.
  const [radius, feed, teeth] = [10, 0.2, 2];
  const travel = (teeth * feed) / (2 * Math.PI);
  // Tooth k stands at angle phi - 2 pi k / z from its first line; the axis has moved by travel * phi.
  const arc = Math.acos(1 - 2 / radius);
  const chipAt = (phi: number): number => {
    const axis = travel * phi;
    const [dx, dy] = [Math.sin(phi), Math.cos(phi)];
    // The tooth before was at angle a where the ray is now; its axis stood at travel * (a - 2 pi / z).
    let angle = phi;
    for (let i = 0; i < 60; i += 1) {
      const before = travel * (angle - (2 * Math.PI) / teeth);
      const x = before + radius * Math.sin(angle) - axis;
      const y = radius * Math.cos(angle);
      angle -= Math.atan2(x * dy - y * dx, x * dx + y * dy);
    }
    const before = travel * (angle - (2 * Math.PI) / teeth);
    return radius - Math.hypot(before + radius * Math.sin(angle) - axis, radius * Math.cos(angle));
  };
  const circle = numberIn('=MILL.CHIP_MAX(20 mm; 0.2 mm; 2 mm)', 'mm');
  expect(circle).toBeCloseTo(0.12, 9);
  const senses = [chipAt(arc), chipAt(Math.PI - arc)];
  expect(Math.min(...senses.map((chip) => Math.abs(chip - 0.12066)))).toBeLessThan(2e-5);
  // Within the caution's limit the circle is good to 3 %.
  for (const chip of senses) expect(Math.abs(circle / chip - 1)).toBeLessThan(0.03);
});

test.each([
  ['inside', 20, 50, 60],
  ['inside', 12, 0, 16],
  ['inside', 16, 70, 75],
  ['outside', 20, 66, 60],
  ['outside', 40, 120, 110],
] as const)(
  'engagement on a circle by clipping polygons: area taken over path of the centre (%s, cutter %i, from %i to %i)',
  (side, cutter, start, finished) => {
    if (side === 'inside' && start < Math.abs(finished - 2 * cutter)) {
      // The full width is cut: refused, the straight slot is the answer.
      expect(() =>
        numberIn(`=MILL.CIRCLE_ENGAGEMENT(${cutter} mm; ${start} mm; ${finished} mm; "${side}")`, 'mm'),
      ).toThrow();
      return;
    }
    const orbit = side === 'inside' ? (finished - cutter) / 2 : (finished + cutter) / 2;
    const step = 0.4 * DEGREE;
    const corners = 1440;
    const before = disk(orbit, 0, cutter / 2, corners);
    const after = disk(orbit * Math.cos(step), orbit * Math.sin(step), cutter / 2, corners);
    const hole = disk(0, 0, start / 2, corners);
    // New is what lies in the cutter now and did not before; inside: nor in the hole; outside: and in the blank.
    const fresh = area(after) - area(clipped(after, before));
    const inHole = area(clipped(after, hole)) - area(clipped(clipped(after, before), hole));
    const taken = side === 'inside' ? fresh - inHole : inHole;
    const equivalent = taken / (orbit * step);
    const formula = numberIn(
      `=MILL.CIRCLE_ENGAGEMENT(${cutter} mm; ${start} mm; ${finished} mm; "${side}")`,
      'mm',
    );
    expect(Math.abs(formula / equivalent - 1)).toBeLessThan(0.004);
  },
);

test.each([
  ['external', 700, 90, 80],
  ['internal', 250, 90, 80],
] as const)(
  'the arc of a crank cutter by the part of its rim that lies inside the blank (%s)',
  (type, cutter, start, finished) => {
    const orbit = type === 'external' ? (finished + cutter) / 2 : (cutter - finished) / 2;
    const steps = 720_000;
    let inside = 0;
    for (let i = 0; i < steps; i += 1) {
      const angle = (2 * Math.PI * i) / steps;
      const x = orbit + (cutter / 2) * Math.cos(angle);
      if (Math.hypot(x, (cutter / 2) * Math.sin(angle)) < start / 2) inside += 1;
    }
    // Both sides of the line of centres touch the blank; behind it the journal is finished.
    const seen = ((inside / steps) * 360) / 2;
    const formula = numberIn(
      `=CRANK.ENGAGEMENT(${cutter} mm; ${start} mm; ${finished} mm; "${type}")`,
      'deg',
    );
    expect(Math.abs(formula - seen)).toBeLessThan(0.002);
  },
);

test.each([
  ['external', 700, 90, 80],
  ['internal', 250, 90, 80],
  ['internal', 120, 84, 80],
] as const)(
  'the chip of a crank cutter by rays to its place one tooth before, as the feed gets small (%s, %i mm)',
  (type, cutter, start, finished) => {
    const radius = cutter / 2;
    const orbit = type === 'external' ? (finished + cutter) / 2 : (cutter - finished) / 2;
    const off = (feed: number): number => {
      // A feed on the journal turns the line of centres by the feed over its radius.
      const turn = feed / (finished / 2);
      const [px, py] = [orbit * (Math.cos(turn) - 1), -orbit * Math.sin(turn)];
      let largest = 0;
      for (let i = 0; i < 200_000; i += 1) {
        const angle = (2 * Math.PI * i) / 200_000;
        const [x, y] = [orbit + radius * Math.cos(angle), radius * Math.sin(angle)];
        if (Math.hypot(x, y) > start / 2) continue;
        largest = Math.max(largest, radius - rayToCircle(angle, px, py, radius));
      }
      return (
        numberIn(`=CRANK.CHIP_MAX(${cutter} mm; ${feed} mm; ${start} mm; ${finished} mm; "${type}")`, 'mm') /
          largest -
        1
      );
    };
    const [coarse, fine] = [Math.abs(off(0.2)), Math.abs(off(0.02))];
    expect(fine).toBeLessThan(0.01);
    expect(fine).toBeLessThan(0.2 * coarse + 1e-3);
  },
);

test.each([
  ['external', 700, 1, 80],
  ['internal', 200, 1, 80],
  ['internal', 100, 2, 80],
] as const)(
  'the facet height by a ray half way between two cuts (%s ring of %i mm)',
  (type, cutter, feed, journal) => {
    const orbit = type === 'external' ? (journal + cutter) / 2 : (cutter - journal) / 2;
    const half = feed / journal;
    // Distance from the middle of the journal to the rim, along a ray half a feed from the line of centres.
    const reach =
      type === 'external'
        ? orbit * Math.cos(half) - Math.sqrt((cutter / 2) ** 2 - (orbit * Math.sin(half)) ** 2)
        : -orbit * Math.cos(half) + Math.sqrt((cutter / 2) ** 2 - (orbit * Math.sin(half)) ** 2);
    const seen = (reach - journal / 2) * 1000;
    const formula = numberIn(`=CRANK.FACET_HEIGHT(${cutter} mm; ${feed} mm; ${journal} mm; "${type}")`, 'um');
    expect(Math.abs(formula / seen - 1)).toBeLessThan(0.002);
  },
);

/** Height of the ridges that circles of a radius leave, a pitch apart, by sampling the lowest edge over the width. */
function ridge(radius: number, pitch: number): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i <= 20_000; i += 1) {
    const x = (pitch * i) / 20_000;
    const edge = Math.min(
      ...[-1, 0, 1, 2].map((k) => {
        const away = x - k * pitch;
        return Math.abs(away) < radius ? radius - Math.sqrt(radius * radius - away * away) : radius;
      }),
    );
    low = Math.min(low, edge);
    high = Math.max(high, edge);
  }
  return high - low;
}

test.each([
  ['TURN.PEAK_HEIGHT', 0.8, 0.25, 1],
  ['TURN.PEAK_HEIGHT', 0.4, 0.6, 1],
  ['MILL.SCALLOP', 5, 0.5, 2],
  ['MILL.SCALLOP', 3, 4, 2],
  ['DRILL.CHAIN_CUSP', 5, 6.25, 2],
  ['DRILL.CHAIN_CUSP', 4, 7.5, 2],
] as const)('%s is the ridge between circles of radius %f, %f apart', (name, radius, pitch, sizes) => {
  expect(numberIn(`=${name}(${radius * sizes} mm; ${pitch} mm)`, 'mm') / ridge(radius, pitch)).toBeCloseTo(
    1,
    6,
  );
});

test('the mean roughness by sampling the arc: mean distance from the mean line', () => {
  const [radius, feed] = [0.8, 0.1];
  const heights = Array.from({ length: 20_001 }, (_, i) => {
    const x = feed * (i / 20_000 - 0.5);
    return radius - Math.sqrt(radius * radius - x * x);
  });
  const mean = heights.reduce((sum, height) => sum + height, 0) / heights.length;
  const roughness = heights.reduce((sum, height) => sum + Math.abs(height - mean), 0) / heights.length;
  // The formula is that of the parabola: 0.4 % at an eighth of the radius.
  expect(
    Math.abs(numberIn(`=TURN.MEAN_ROUGHNESS(${radius} mm; ${feed} mm)`, 'mm') / roughness - 1),
  ).toBeLessThan(0.004);
});

test.each([
  [10, 7, 60],
  [8, 5.5, 41],
  [12, 11, 100],
] as const)(
  'a chain-drilled slot: the union of its holes covers the middle line, no wall is thicker than the cusp (%i mm, pitch %i, %i long)',
  (diameter, pitch, length) => {
    const count = numberIn(`=DRILL.CHAIN_COUNT(${diameter} mm; ${pitch} mm; ${length} mm)`);
    const gap = (length - diameter) / (count - 1);
    const centres = Array.from({ length: count }, (_, i) => diameter / 2 + i * gap);
    let thickest = 0;
    for (let i = 0; i <= 20_000; i += 1) {
      const x = diameter / 2 + ((length - diameter) * i) / 20_000;
      const reach = Math.max(
        ...centres.map((centre) => Math.sqrt(Math.max(0, (diameter / 2) ** 2 - (x - centre) ** 2))),
      );
      thickest = Math.max(thickest, diameter / 2 - reach);
    }
    expect(numberIn(`=DRILL.CHAIN_CUSP(${diameter} mm; ${gap} mm)`, 'mm') / thickest).toBeCloseTo(1, 5);
    expect(gap).toBeLessThanOrEqual(pitch);
    // One hole fewer would be too far apart.
    expect((length - diameter) / (count - 2)).toBeGreaterThan(pitch);
  },
);

test.each([
  [10, 0.3, 15],
  [10, 0.3, 0],
  [16, 2, -25],
  [8, 1, 80],
] as const)(
  'the effective diameter of a ball by sampling the cap that is in the cut (%i mm, %f mm deep, tilted %i deg)',
  (diameter, depth, tilt) => {
    const radius = diameter / 2;
    const cap = Math.acos(1 - depth / radius);
    let largest = 0;
    for (let i = 0; i <= 400; i += 1)
      for (let j = 0; j < 720; j += 1) {
        // Points of the cap about the normal of the face; distance from the axis, which leans by the tilt.
        const polar = (cap * i) / 400;
        const turn = (2 * Math.PI * j) / 720;
        const [x, y, z] = [
          Math.sin(polar) * Math.cos(turn),
          Math.sin(polar) * Math.sin(turn),
          Math.cos(polar),
        ];
        const along = x * Math.sin(tilt * DEGREE) + z * Math.cos(tilt * DEGREE);
        largest = Math.max(largest, Math.sqrt(Math.max(0, x * x + y * y + z * z - along * along)));
      }
    expect(
      numberIn(`=MILL.BALL_DIAMETER(${diameter} mm; ${depth} mm; ${tilt} deg)`, 'mm') / (diameter * largest),
    ).toBeCloseTo(1, 4);
  },
);

test.each([
  [4, 60, 20, 38],
  [3, 100, 0, 0],
  [6, 25, 40, 30],
] as const)(
  'teeth in cut counted over a turn (%i teeth, arc %i deg, %i mm deep, helix %i deg)',
  (teeth, arc, depth, helix) => {
    const lag = (2 * depth * Math.tan(helix * DEGREE)) / 20;
    let count = 0;
    const steps = 20_000;
    for (let i = 0; i < steps; i += 1)
      for (let tooth = 0; tooth < teeth; tooth += 1) {
        const turn = 2 * Math.PI;
        const tip = (turn * i) / steps + (turn * tooth) / teeth;
        // The edge covers [tip - lag, tip]; it cuts if any of it lies in [0, arc].
        if (tip % turn < arc * DEGREE + lag) count += 1;
      }
    expect(
      numberIn(`=MILL.TEETH_IN_CUT(20 mm; ${teeth}; ${arc} deg; ${depth} mm; ${helix} deg)`),
    ).toBeCloseTo(count / steps, 2);
  },
);

test('the angle of a round insert along its edge: largest at the surface, mean over the width of cut', () => {
  const [size, depth] = [12, 3];
  const radius = size / 2;
  const largest = Math.acos(1 - depth / radius);
  let [chip, length] = [0, 0];
  const steps = 20_000;
  for (let i = 0; i < steps; i += 1) {
    const angle = (largest * (i + 0.5)) / steps;
    // A feed of 1 gives a chip of sin(angle) on a piece of edge.
    chip += (Math.sin(angle) * radius * largest) / steps;
    length += (radius * largest) / steps;
  }
  expect(numberIn(`=CUT.ROUND_ANGLE(${size} mm; ${depth} mm; "largest")`, 'deg')).toBeCloseTo(
    largest / DEGREE,
    9,
  );
  expect(numberIn(`=CUT.ROUND_ANGLE(${size} mm; ${depth} mm; "mean")`, 'deg')).toBeCloseTo(
    Math.asin(chip / length) / DEGREE,
    6,
  );
});

test.each([2, 3, 4, 7])('the chip of a cutter of %i teeth that runs out, tooth by tooth', (teeth) => {
  const [runout, chip] = [0.012, 0.06];
  // The axis of the teeth is half the dial reading off the axis of the spindle.
  const radii = (start: number): number[] =>
    Array.from({ length: teeth }, (_, i) => (runout / 2) * Math.cos(start + (2 * Math.PI * i) / teeth));
  let largest = 0;
  for (let step = 0; step < 3600; step += 1) {
    const each = radii((2 * Math.PI * step) / 3600);
    each.forEach((radius, i) => {
      largest = Math.max(largest, chip + radius - (each[(i + teeth - 1) % teeth] ?? 0));
    });
  }
  expect(numberIn(`=MILL.RUNOUT_CHIP(${teeth}; ${runout} mm; ${chip} mm)`, 'mm')).toBeCloseTo(largest, 7);
});

test('facing at constant surface speed, the spindle at its limit near the middle: integrated step by step', () => {
  const [speed, feed, outer, inner, limit] = [200_000, 0.25, 200, 0, 2500];
  let minutes = 0;
  const steps = 200_000;
  const width = (outer - inner) / 2 / steps;
  for (let i = 0; i < steps; i += 1) {
    const diameter = inner + 2 * width * (i + 0.5);
    minutes += width / (feed * Math.min(limit, speed / (Math.PI * diameter)));
  }
  expect(
    numberIn('=TURN.FACING_TIME(200 m/min; 0.25 mm; 200 mm; 0 mm; 2500 1/min)', 's') / (minutes * 60),
  ).toBeCloseTo(1, 7);
});

test('a stepped beam by integrating its moment twice', () => {
  const [lengths, diameters, moduli] = [
    [40, 60, 50],
    [16, 20, 32],
    [580, 210, 210],
  ];
  let [deflection, from] = [0, 0];
  lengths.forEach((length, i) => {
    const inertia = (Math.PI * (diameters[i] ?? 0) ** 4) / 64;
    const steps = 20_000;
    for (let k = 0; k < steps; k += 1) {
      const x = from + (length * (k + 0.5)) / steps;
      // Unit load: moment x of the load and x of the unit, over E I; N, mm, N/mm2.
      deflection += ((500 * x * x) / ((moduli[i] ?? 0) * 1000 * inertia)) * (length / steps);
    }
    from += length;
  });
  expect(
    numberIn('=RIGID.STEPPED_DEFLECTION({40;60;50} mm; {16;20;32} mm; {580;210;210} GPa; 500 N)', 'mm') /
      deflection,
  ).toBeCloseTo(1, 7);
});
