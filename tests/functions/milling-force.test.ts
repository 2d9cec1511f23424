/** Forces of an end mill against plain summation over thin slices, and against what must hold of any of them. */

import { expect, test } from 'vitest';
import {
  endMillForces,
  extremeOf,
  meanTorque,
  sinePowerIntegral,
  type EndMillCut,
} from '../../src/functions/milling-force.ts';
import { numberIn } from './calculated.ts';

const DEGREE = Math.PI / 180;

const CUT: EndMillCut = {
  cutterDiameter: 0.02,
  teeth: 4,
  helix: 38 * DEGREE,
  feed: 0.0001,
  axialDepth: 0.02,
  arc: 2 * Math.asin(Math.sqrt(0.1)),
  kc11: 1.7e9,
  mc: 0.25,
  referenceChip: 0.001,
  radialRatio: 0.3,
  sense: 'down',
};

/** Slice by slice, the chip law at the middle of each slice. */
function sliced(cut: EndMillCut, angle: number, slices: number): { t: number; x: number; y: number } {
  const { cutterDiameter, teeth, helix, feed, axialDepth, arc, kc11, mc, referenceChip, radialRatio, sense } =
    cut;
  const [start, end] = sense === 'up' ? [0, arc] : [Math.PI - arc, Math.PI];
  let [t, x, y] = [0, 0, 0];
  const dz = axialDepth / slices;
  for (let tooth = 0; tooth < teeth; tooth += 1)
    for (let i = 0; i < slices; i += 1) {
      const lag = (2 * (i + 0.5) * dz * Math.tan(helix)) / cutterDiameter;
      const full = 2 * Math.PI;
      const phi = (((angle + (full * tooth) / teeth - lag) % full) + full) % full;
      if (phi < start || phi > end) continue;
      const chip = feed * Math.sin(phi);
      if (chip <= 0) continue;
      const force = kc11 * (chip / referenceChip) ** -mc * chip * dz;
      t += force;
      x += -force * Math.cos(phi) - radialRatio * force * Math.sin(phi);
      y += force * Math.sin(phi) - radialRatio * force * Math.cos(phi);
    }
  return { t, x, y };
}

test('the integral of a power of the sine agrees with known integrals', () => {
  expect(sinePowerIntegral(1)(1.2)).toBeCloseTo(1 - Math.cos(1.2), 14);
  expect(sinePowerIntegral(2)(2.5)).toBeCloseTo(1.25 - Math.sin(5) / 4, 14);
  expect(sinePowerIntegral(0.75)(Math.PI)).toBeCloseTo(2 * sinePowerIntegral(0.75)(Math.PI / 2), 13);
  // Wallis: integral of sqrt(sin) over 0 .. pi/2 is sqrt(2/pi) Gamma(3/4)^2 = 1.1981402347355923 (DLMF 5.12.2, from memory).
  expect(sinePowerIntegral(0.5)(Math.PI / 2)).toBeCloseTo(1.1981402347355923, 13);
});

for (const [name, cut] of [
  ['down milling', CUT],
  ['up milling', { ...CUT, sense: 'up' }],
  ['a slot', { ...CUT, arc: Math.PI }],
  ['a depth of more than a turn of the helix', { ...CUT, axialDepth: 0.09 }],
] as const)
  test(`forces at any angle agree with thin slices: ${name}`, () => {
    const forces = endMillForces(cut);
    for (const angle of [0, 0.3, 1.1, 2.7, 4.4, 6]) {
      const { t, x, y } = sliced(cut, angle, 60_000);
      const size = Math.hypot(x, y) + 1;
      const own = forces(angle);
      expect(Math.abs(own.tangential - t) / size).toBeLessThan(2e-3);
      expect(Math.abs(own.x - x) / size).toBeLessThan(2e-3);
      expect(Math.abs(own.y - y) / size).toBeLessThan(2e-3);
    }
  });

test('the peak agrees with 20 001 positions of the cutter to 1e-6', () => {
  const forces = endMillForces(CUT);
  let largest = 0;
  for (let i = 0; i <= 20_000; i += 1) {
    const { x, y } = forces((Math.PI / 2) * (i / 20_000));
    largest = Math.max(largest, Math.hypot(x, y));
  }
  const peak = extremeOf(CUT, ({ x, y }) => Math.hypot(x, y));
  expect(Math.abs(peak - largest) / largest).toBeLessThan(1e-6);
  expect(peak).toBeGreaterThanOrEqual(largest);
});

test('the mean torque is the mean over the positions', () => {
  const forces = endMillForces(CUT);
  let sum = 0;
  const steps = 4000;
  for (let i = 0; i < steps; i += 1) sum += forces(((Math.PI / 2) * i) / steps).tangential * 0.01;
  expect(sum / steps / meanTorque(CUT)).toBeCloseTo(1, 6);
});

test('up and down milling have the same peak; the wall is pushed off in down and pulled in in up milling', () => {
  const cut = '20 mm; 4; 38 deg; 0.1 mm; 20 mm; 2 mm; 1700 MPa; 0.25';
  const peak = (sense: EndMillCut['sense']): number =>
    extremeOf({ ...CUT, sense }, ({ x, y }) => Math.hypot(x, y));
  expect(peak('up') / peak('down')).toBeCloseTo(1, 9);
  expect(numberIn(`=MILL.WALL_FORCE(${cut}; "down")`, 'N')).toBeGreaterThan(0);
  expect(numberIn(`=MILL.WALL_FORCE(${cut}; "up")`, 'N')).toBeLessThan(0);
});

test('at whole multiples of the axial pitch the torque is even', () => {
  for (const times of [1, 2, 5]) {
    const depth = `${times} * MILL.AXIAL_PITCH(16 mm; 3; 40 deg)`;
    expect(
      numberIn(`=MILL.TORQUE_RIPPLE(16 mm; 3; 40 deg; 0.08 mm; ${depth}; 3 mm; 1990 MPa; 0.26)`),
    ).toBeCloseTo(1, 9);
  }
});
