/** Drilling held against moves simulated one by one and against sampled solids. */

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { failure, isGrid } from '../../src/expression/index.ts';
import { calculated, numberIn } from './calculated.ts';

const SEED = { seed: 20_260_309, numRuns: 60 };
const DEGREE = Math.PI / 180;

/** Seconds of a pecking cycle, move by move; mm, mm/min, s. */
function pecked(
  vf: number,
  vr: number,
  peck: number,
  depth: number,
  clearance: number,
  dwell: number,
  full: boolean,
): number {
  let position = clearance;
  let reached = 0;
  let seconds = 0;
  const move = (to: number, rate: number): void => {
    seconds += (Math.abs(to - position) / rate) * 60;
    position = to;
  };
  while (reached < depth - 1e-9) {
    if (reached > 0) move(-reached + clearance, vr);
    reached = Math.min(reached + peck, depth);
    move(-reached, vf);
    seconds += dwell;
    if (full) move(clearance, vr);
    else if (reached < depth - 1e-9) move(-reached + clearance, vr);
  }
  move(clearance, vr);
  return seconds;
}

test('the pecking time is that of the moves one by one', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 20, max: 1000 }),
      fc.integer({ min: 1, max: 30 }),
      fc.integer({ min: 31, max: 200 }),
      fc.double({ min: 0.2, max: 0.9, noNaN: true }),
      fc.double({ min: 0, max: 2, noNaN: true }),
      fc.boolean(),
      (vf, peck, depth, clearance, dwell, full) => {
        const formula = `=DRILL.PECK_TIME(${vf} mm/min; 12 m/min; ${peck} mm; ${depth} mm; ${clearance} mm; ${dwell} s; ${String(full).toUpperCase()})`;
        expect(numberIn(formula, 's')).toBeCloseTo(
          pecked(vf, 12_000, peck, depth, clearance, dwell, full),
          6,
        );
      },
    ),
    SEED,
  );
});

test('E2 a depth of three pecks is three pecks, rounding or not', () => {
  expect(numberIn('=DRILL.PECK_TIME(600 mm/min; 6 m/min; 2.2 mm; 6.6 mm; 1 mm; 10 s)', 's')).toBeCloseTo(
    pecked(600, 6000, 2.2, 6.6, 1, 10, true),
    9,
  );
});

test('a rapid slower than the feed is refused; a peck beyond the depth has a caution', () => {
  expect(calculated('=DRILL.PECK_TIME(300 mm/min; 200 mm/min; 5 mm; 20 mm; 1 mm)').value).toEqual(
    failure('#NUM!', 'the rapid rate 200 mm/min is less than the feed rate 300 mm/min'),
  );
  expect(calculated('=DRILL.PECK_TIME(300 mm/min; 9 m/min; 25 mm; 20 mm; 1 mm)').cautions).toEqual([
    'the peck 25 mm is more than the depth 20 mm: one peck',
  ]);
});

/** Travel from first touch of a pointed drill on an inclined plane until every point of the rim is below it. */
function entrySampled(diameter: number, alpha: number, sigma: number): number {
  const slope = Math.tan(alpha);
  const point = diameter / 2 / Math.tan(sigma / 2);
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= 720; i += 1) {
    for (let j = 0; j <= 60; j += 1) {
      const radius = ((diameter / 2) * j) / 60;
      const x = radius * Math.cos((i / 720) * 2 * Math.PI);
      // Travel at which this point of the cone meets the plane z = -slope x.
      const travel = point * (radius / (diameter / 2)) - slope * x;
      first = Math.min(first, travel);
      if (j === 60) last = Math.max(last, travel);
    }
  }
  return last - first;
}

test('the entry run is that of a sampled cone on a plane', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 60 }),
      fc.integer({ min: 0, max: 75 }),
      fc.integer({ min: 60, max: 179 }),
      (diameter, alpha, sigma) => {
        expect(numberIn(`=DRILL.ENTRY_RUN(${diameter} mm; ${alpha} deg; ${sigma} deg)`, 'mm')).toBeCloseTo(
          entrySampled(diameter, alpha * DEGREE, sigma * DEGREE),
          8,
        );
      },
    ),
    SEED,
  );
});

test('a face steeper than the point has a caution that the drill walks', () => {
  expect(calculated('=DRILL.ENTRY_RUN(10 mm; 21 deg; 140 deg)').cautions).toEqual([
    'the corner touches before the tip: the drill walks; mill or spot-face a flat first',
  ]);
  expect(calculated('=DRILL.ENTRY_RUN(10 mm; 20 deg; 140 deg)').cautions).toEqual([]);
});

/** Extent along the drill of the places where its wall lies inside the crossed hole. */
function crossingSampled(drill: number, crossed: number, gamma: number): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= 7200; i += 1) {
    const angle = (i / 7200) * 2 * Math.PI;
    const x = (drill / 2) * Math.cos(angle);
    const y = (drill / 2) * Math.sin(angle);
    const reach = (crossed / 2) ** 2 - y * y;
    if (reach < 0) continue;
    // Distance from the crossed axis in its plane: |z sin(gamma) - x cos(gamma)| <= sqrt(reach).
    low = Math.min(low, (x * Math.cos(gamma) - Math.sqrt(reach)) / Math.sin(gamma));
    high = Math.max(high, (x * Math.cos(gamma) + Math.sqrt(reach)) / Math.sin(gamma));
  }
  return high - low;
}

test('the crossing run is that of two sampled cylinders', () => {
  for (const [drill, crossed, gamma] of [
    [6, 8, 60],
    [6, 8, 120],
    [5, 20, 35],
    [8, 8, 90],
  ] as const)
    expect(
      numberIn(`=DRILL.CROSSING_RUN(${drill} mm; ${crossed} mm; ${gamma} deg)`, 'mm') /
        crossingSampled(drill, crossed, gamma * DEGREE),
    ).toBeCloseTo(1, 5);
});

test('a chain reaches over the slot with a pitch no larger than asked', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 40 }),
      fc.double({ min: 0.55, max: 0.95, noNaN: true }),
      fc.integer({ min: 3, max: 30 }),
      (diameter, share, times) => {
        const pitch = share * diameter;
        const { value } = calculated(
          `=DRILL.CHAIN_COUNT(${diameter} mm; ${pitch} mm; ${diameter * times} mm)`,
        );
        if (typeof value !== 'number') return;
        const gap = (diameter * times - diameter) / (value - 1);
        expect(gap).toBeLessThanOrEqual(pitch * (1 + 1e-9));
        expect((diameter * times - diameter) / (value - 2)).toBeGreaterThan(pitch);
      },
    ),
    SEED,
  );
});

test('each hole of a chain stands once; the even ones follow when both neighbours are there', () => {
  const { value } = calculated('=DRILL.CHAIN_ORDER(9)');
  if (!isGrid(value)) throw new Error('no list');
  const order = value.grid.flat().map(Number);
  expect([...order].sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
  for (const hole of [2, 4, 6, 8])
    for (const neighbour of [hole - 1, hole + 1])
      expect(order.indexOf(neighbour)).toBeLessThan(order.indexOf(hole));
  expect(calculated('=DRILL.CHAIN_ORDER(8)').cautions).toHaveLength(1);
  expect(calculated('=DRILL.CHAIN_ORDER(1)').value).toMatchObject({ failure: '#NUM!' });
});

test('a step tool against one operation is refused', () => {
  expect(calculated('=DRILL.STEP_GAIN(20 s; 12 s; 5 s)').value).toEqual(
    failure('#NUM!', 'operation times: 1 given, a step tool takes the place of at least 2'),
  );
  const slower = calculated('=DRILL.STEP_GAIN(40 s; {12;8} s; 5 s)');
  expect(slower.value).toBeCloseTo(-15, 12);
  expect(slower.cautions).toEqual(['the step tool saves no time']);
});

test('the steps of a step drill add up to the torque of the whole', () => {
  const whole = numberIn('=DRILL.TORQUE(16 mm; 0.2 mm; 2000 MPa)', 'N·m');
  const steps = numberIn(
    '=DRILL.TORQUE(10 mm; 0.2 mm; 2000 MPa) + DRILL.TORQUE(16 mm; 0.2 mm; 2000 MPa; 10 mm)',
    'N·m',
  );
  expect(steps).toBeCloseTo(whole, 12);
});

test('e18 the thrust with a chisel share of 0.37 lies within 1 % of the power law of Oxford and Shaw (from memory)', () => {
  // T = 57 500 f^0.8 d^0.8 + 625 d^2 lbf, inches, at 0.5 in and 0.01 in.
  const law = 57_500 * 0.01 ** 0.8 * 0.5 ** 0.8 + 625 * 0.5 ** 2;
  const thrust = numberIn('=DRILL.THRUST(0.5 in; 0.01 in; 4011 MPa; 118 deg; 0.5; 0.37)', 'lbf');
  expect(Math.abs(thrust / law - 1)).toBeLessThan(0.01);
});

test('the plan of a hole follows its depth over diameter (common practice, no source)', () => {
  const plan = (depth: number, group = ''): unknown =>
    calculated(`=DRILL.PLAN(10 mm; ${depth} mm${group})`).value;
  expect(plan(120)).toBe('one pass without pilot hole');
  expect(plan(121)).toBe('one pass with polished flutes');
  expect(plan(200)).toContain('pilot hole 2 diameters deep');
  expect(plan(200)).not.toContain('straightness');
  expect(plan(310)).toContain('check of straightness');
  expect(plan(60, '; "M"')).toContain('never peck');
  expect(calculated('=DRILL.PLAN(10 mm; 60 mm; "M")').cautions).toHaveLength(1);
  expect(calculated('=DRILL.PLAN(10 mm; 60 mm; "X")').value).toMatchObject({ failure: '#VALUE!' });
});
