/** Milling chatter: direction factors, modal systems of published cases, and laws between the functions of the family. */

import { expect, test } from 'vitest';
import { directionFactors, type Mode, sweepOf } from '../../src/functions/milling-stability.ts';
import { growthOf } from '../../src/functions/milling-transition.ts';
import { calculated, numberIn } from './calculated.ts';
import { REFERENCE_CASES } from './reference-case.ts';

function numbers(id: string, part: 'inputs' | 'expected', key: string): number[] {
  const value = REFERENCE_CASES.find((each) => each.id === id)?.[part][key]?.value;
  if (value === undefined) throw new Error(`case ${id} has no ${key}`);
  return (Array.isArray(value) ? value : [value]).map(Number);
}

const degrees = Math.PI / 180;

for (const id of ['h06', 'h07', 'h08']) {
  test(`${id} the mean direction factors are those of Altintas and Budak`, () => {
    const one = (key: string): number => numbers(id, 'inputs', key)[0] ?? Number.NaN;
    const given = directionFactors(one('phi_st') * degrees, one('phi_ex') * degrees, one('Kr'));
    for (const [index, key] of ['alpha_xx', 'alpha_xy', 'alpha_yx', 'alpha_yy'].entries())
      expect(given[index]).toBeCloseTo(numbers(id, 'expected', key)[0] ?? Number.NaN, 8);
  });
}

test('h18 modes given by mass-normalised shapes: stiffness is (2 pi f)^2 over the square of the shape', () => {
  const modes = (axis: 'x' | 'y'): Mode[] =>
    numbers('h18', 'inputs', `f${axis}`).map((frequency, i) => ({
      frequency,
      damping: numbers('h18', 'inputs', `z${axis}`)[i] ?? Number.NaN,
      stiffness:
        (2 * Math.PI * frequency) ** 2 / (numbers('h18', 'inputs', `shape_${axis}`)[i] ?? Number.NaN) ** 2,
    }));
  const sweep = sweepOf({
    teeth: 2,
    from: Math.PI / 2,
    to: Math.PI,
    tangential: 7.5e8,
    radialRatio: 0.2,
    x: modes('x'),
    y: modes('y'),
  });
  expect((sweep.floor() ?? 0) * 1000).toBeCloseTo(0.7770806573, 6);
  // At the speed of the first lobe of the case the limit is the floor itself.
  expect((sweep.limit(19507.24247 / 60) ?? 0) * 1000).toBeCloseTo(0.7770806573, 5);
});

for (const [id, sense] of [
  ['h15', 'down'],
  ['h16', 'up'],
] as const)
  test(`${id} at the speed of the first lobe of the case the limit is the floor of the case`, () => {
    const list = (key: string, unit = ''): string => `{${numbers(id, 'inputs', key).join(';')}}${unit}`;
    const modes = ['x', 'y']
      .map((axis) => `${list(`f${axis}`, ' Hz')}; ${list(`z${axis}`)}; ${list(`k${axis}`, ' N/m')}`)
      .join('; ');
    const [tangential, ratio] = [numbers(id, 'inputs', 'Kt')[0], numbers(id, 'inputs', 'Kr_ratio')[0]];
    const speed = numbers(id, 'expected', 'n_lobe_1')[0];
    const limit = numberIn(
      `=CHATTER.MILL_LIMIT(20 mm; 2; 10 mm; "${sense}"; ${speed} 1/min; ${tangential} N/m2; ${ratio}; ${modes})`,
      'mm',
    );
    expect(limit / (numbers(id, 'expected', 'a_min')[0] ?? Number.NaN)).toBeCloseTo(1, 5);
  });

const CUTTER = '20 mm; 4; 20 mm; "down"';
const MODES = '600 MPa; 0.3; 600 Hz; 0.035; 10 N/um; 660 Hz; 0.035; 12 N/um';

test('no speed has a limit below the floor', () => {
  const floor = numberIn(`=CHATTER.MILL_FLOOR(${CUTTER}; ${MODES})`, 'mm');
  for (let speed = 1500; speed <= 12_000; speed += 700)
    expect(numberIn(`=CHATTER.MILL_LIMIT(${CUTTER}; ${speed} 1/min; ${MODES})`, 'mm')).toBeGreaterThanOrEqual(
      floor * (1 - 1e-9),
    );
});

test('at the best speed the limit is the greatest (5.827 mm, speed stepped by another program)', () => {
  const best = numberIn(`=CHATTER.BEST_SPEED(${CUTTER}; ${MODES}; 8000 1/min; 11000 1/min)`, '1/min');
  expect(numberIn(`=CHATTER.MILL_LIMIT(${CUTTER}; ${best} 1/min; ${MODES})`, 'mm')).toBeCloseTo(5.827, 2);
});

test('a range that cuts the pocket off says that the best speed lies at its end', () => {
  const { cautions } = calculated(`=CHATTER.BEST_SPEED(${CUTTER}; ${MODES}; 8000 1/min; 9000 1/min)`);
  expect(cautions.some((text) => text.includes('end of the range'))).toBe(true);
});

test('a chatter limit doubles with the stiffness of all modes', () => {
  const stiff = MODES.replace('10 N/um', '20 N/um').replace('12 N/um', '24 N/um');
  const once = numberIn(`=CHATTER.MILL_LIMIT(${CUTTER}; 9500 1/min; ${MODES})`, 'mm');
  expect(numberIn(`=CHATTER.MILL_LIMIT(${CUTTER}; 9500 1/min; ${stiff})`, 'mm')).toBeCloseTo(2 * once, 9);
});

test('h10 the growth over a tooth period is the largest multiplier of the benchmark, within 0.3 %', () => {
  const growth = growthOf(
    {
      teeth: 2,
      from: 0,
      to: Math.PI,
      tangential: 6e8,
      radialRatio: 1 / 3,
      x: [{ frequency: 922, damping: 0.011, stiffness: 0.03993 * (2 * Math.PI * 922) ** 2 }],
      y: [{ frequency: 922, damping: 0.011, stiffness: 1e18 }],
    },
    5000 / 60,
    200,
  );
  const wanted = numbers('h10', 'expected', 'mu');
  for (const [index, depth] of numbers('h10', 'inputs', 'w').entries())
    expect(Math.abs(growth(depth / 1000) / (wanted[index] ?? Number.NaN) - 1)).toBeLessThan(0.003);
});

test('for a full slot the full problem and the mean of the forces agree within 1 %', () => {
  const mean = numberIn(`=CHATTER.MILL_LIMIT(${CUTTER}; 9500 1/min; ${MODES})`, 'mm');
  const full = numberIn(`=CHATTER.MILL_LIMIT_FULL(${CUTTER}; 9500 1/min; ${MODES})`, 'mm');
  expect(Math.abs(full / mean - 1)).toBeLessThan(0.01);
});

test('with 200 steps the limit is within 0.2 % of the independent value 4.757 mm', () => {
  const full = numberIn(`=CHATTER.MILL_LIMIT_FULL(${CUTTER}; 9500 1/min; ${MODES}; 200)`, 'mm');
  expect(Math.abs(full - 4.757)).toBeLessThan(0.0095);
});
