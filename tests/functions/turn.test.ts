/** Turning held against arcs sampled point by point and against integrals. */

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { failure } from '../../src/expression/index.ts';
import { calculated, numberIn } from './calculated.ts';

const SEED = { seed: 20_260_309, numRuns: 40 };

/** Mean deviation and height of the profile that an arc or a parabola leaves, from many points of one feed. */
function profile(shape: (x: number) => number, feed: number): { mean: number; height: number } {
  const count = 40_000;
  const heights = Array.from({ length: count }, (_, i) => shape(feed * ((i + 0.5) / count - 0.5)));
  const line = heights.reduce((sum, h) => sum + h, 0) / count;
  return {
    mean: heights.reduce((sum, h) => sum + Math.abs(h - line), 0) / count,
    height: shape(feed / 2) - shape(0),
  };
}

test('the mean roughness is the mean deviation of the parabola', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.2, max: 3, noNaN: true }),
      fc.double({ min: 0.02, max: 0.5, noNaN: true }),
      (r, share) => {
        const f = share * r;
        const { mean } = profile((x) => (x * x) / (2 * r), f);
        expect(numberIn(`=TURN.MEAN_ROUGHNESS(${r} mm; ${f} mm)`, 'mm') / mean).toBeCloseTo(1, 6);
      },
    ),
    SEED,
  );
});

test('the arc is rougher than the parabola by what the caution says: 1.3 % at half the nose radius, 9.3 % at 1.25', () => {
  for (const [feed, more] of [
    [0.5, 1.013],
    [1.25, 1.0933],
  ] as const) {
    const arc = profile((x) => 1 - Math.sqrt(1 - x * x), feed);
    expect(arc.mean / numberIn(`=TURN.MEAN_ROUGHNESS(1 mm; ${feed} mm)`, 'mm')).toBeCloseTo(more, 3);
  }
  expect(calculated('=TURN.MEAN_ROUGHNESS(1 mm; 0.51 mm)').cautions).toHaveLength(1);
  expect(calculated('=TURN.MEAN_ROUGHNESS(1 mm; 0.5 mm)').cautions).toEqual([]);
});

test('the peak height is the sagitta of the arc', () => {
  expect(numberIn('=TURN.PEAK_HEIGHT(0.8 mm; 0.2 mm)', 'um')).toBeCloseTo(
    profile((x) => 0.8 - Math.sqrt(0.64 - x * x), 0.2).height * 1000,
    9,
  );
  expect(calculated('=TURN.PEAK_HEIGHT(0.8 mm; 1.6 mm)').value).toEqual(
    failure('#NUM!', 'the feed 1.6 mm must be less than twice the nose radius 0.8 mm'),
  );
});

test('the feed for a roughness leaves that roughness', () => {
  const feed = numberIn('=TURN.FEED_FOR_ROUGHNESS(0.8 mm; 1.6 um)', 'mm');
  expect(numberIn(`=TURN.MEAN_ROUGHNESS(0.8 mm; ${feed} mm)`, 'um')).toBeCloseTo(1.6, 9);
});

test('the facing time is the integral of the radius over feed and speed', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 50, max: 400 }),
      fc.integer({ min: 20, max: 300 }),
      fc.double({ min: 0, max: 0.95, noNaN: true }),
      fc.integer({ min: 100, max: 6000 }),
      (vc, outer, share, nMax) => {
        const inner = share * outer;
        const count = 20_000;
        const step = (outer - inner) / 2 / count;
        let seconds = 0;
        for (let i = 0; i < count; i += 1) {
          const diameter = inner + 2 * (i + 0.5) * step;
          const n = Math.min((vc * 1000) / (Math.PI * diameter), nMax);
          seconds += (step / (0.2 * n)) * 60;
        }
        const formula = `=TURN.FACING_TIME(${vc} m/min; 0.2 mm; ${outer} mm; ${inner} mm; ${nMax} 1/min)`;
        expect(numberIn(formula, 's') / seconds).toBeCloseTo(1, 6);
      },
    ),
    SEED,
  );
});

test('facing from a diameter to itself is refused with both', () => {
  expect(calculated('=TURN.FACING_TIME(200 m/min; 0.2 mm; 50 mm; 50 mm; 3000 1/min)').value).toEqual(
    failure('#NUM!', 'the inner diameter 50 mm must be less than the outer diameter 50 mm'),
  );
});

test('a hollow mill and a drill that cut the same ring need the same torque', () => {
  expect(numberIn('=TURN.HOLLOW_TORQUE(0.2 mm; 20 mm; 12 mm; 2000 MPa)', 'N·m')).toBeCloseTo(
    numberIn('=DRILL.TORQUE(20 mm; 0.2 mm; 2000 MPa; 12 mm)', 'N·m'),
    12,
  );
});

test('power from turning force and from removal rate agree', () => {
  const force = '=TURN.FORCE(0.3 mm; 2 mm; 2200 MPa) * 180 m/min';
  const rate = '=CUT.POWER(TURN.REMOVAL_RATE(180 m/min; 0.3 mm; 2 mm); 2200 MPa)';
  expect(numberIn(force, 'kW')).toBeCloseTo(numberIn(rate, 'kW'), 12);
});
