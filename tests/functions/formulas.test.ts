/** Calls of the library as they are typed: values, cautions, errors. */

import { expect, test } from 'vitest';
import { failure } from '../../src/expression/index.ts';
import { calculated, numberIn } from './calculated.ts';

test('a cut inside all ranges computes without caution', () => {
  const { value, cautions, kind } = calculated('=MILL.CHIP_MAX(20 mm; 0.1 mm; 2 mm)');
  expect(value).toBeCloseTo(0.00006, 18);
  expect(cautions).toEqual([]);
  expect(kind).toBe('length');
});

test('an engagement wider than the cutter is an error with the limit', () => {
  expect(calculated('=MILL.CHIP_MAX(20 mm; 0.1 mm; 30 mm)').value).toEqual(
    failure('#NUM!', 'radial engagement 30 mm is above the largest allowed, the cutter diameter 20 mm'),
  );
});

test('F16 a feed per revolution in place of a feed per tooth computes with a caution that names both', () => {
  const { value, cautions } = calculated('=CUT.FEED_RATE(4; 0.1 mm/rev; 1000 1/min)');
  expect(value).toBeCloseTo(0.4 / 60, 15);
  expect(cautions).toEqual(['feed per tooth wants a feed per tooth, was given a feed per revolution']);
});

test('F15 plain numbers are read in the units of the parameters', () => {
  expect(numberIn('=MILL.CHIP_MAX(20; 0.1; 2)', 'mm')).toBe(0.06);
});

test('skipped optional arguments take their default', () => {
  expect(numberIn('=MILL.CHIP_MAX(100 mm; 0.2 mm; 50 mm; ; 0 mm)', 'mm')).toBeCloseTo(0.2, 12);
  expect(numberIn('=FORCE.SPECIFIC(1700 MPa; 0.25; 0.1 mm; ; ; ; 1.3)', 'MPa')).toBeCloseTo(
    numberIn('=FORCE.SPECIFIC(1700 MPa; 0.25; 0.1 mm)', 'MPa') * 1.3,
    9,
  );
});

test('a rake that is left out is the reference rake, whichever that is', () => {
  expect(numberIn('=FORCE.SPECIFIC(1160 MPa; 0.26; 1 mm; ; 2 deg)', 'MPa')).toBe(1160);
});

test('an offset beyond the rim is refused with the values', () => {
  expect(calculated('=MILL.CHIP_MAX(100 mm; 0.2 mm; 70 mm; 90 deg; 20 mm)').value).toMatchObject({
    failure: '#NUM!',
    message: expect.stringContaining('the cutter does not reach across the stated width: axis offset 20 mm'),
  });
});

test('a feed longer than the arc is refused; a feed large for the arc has a caution', () => {
  expect(calculated('=MILL.CHIP_MAX(10 mm; 2.2 mm; 0.1 mm)').value).toMatchObject({ failure: '#NUM!' });
  expect(calculated('=MILL.CHIP_MAX(10 mm; 0.2 mm; 0.1 mm)').cautions.join()).toContain(
    '5 % or more too thick',
  );
});

test('the mean chip thickness of a full slot does not depend on how the slot is told', () => {
  expect(numberIn('=MILL.CHIP_MEAN(20 mm; 0.1 mm; 20 mm; 90 deg; 0 mm)', 'mm')).toBeCloseTo(
    0.2 / Math.PI,
    14,
  );
});

test('an unknown material is refused with near ones; a known one says how sure its row is', () => {
  expect(calculated('=MATERIAL.KC11("42CrMo")').value).toMatchObject({
    failure: '#N/A',
    message: expect.stringContaining('"42CrMo4"'),
  });
  expect(calculated('=MATERIAL.KC11("ti-6al-4v")').cautions.join()).toContain(
    'measure with FORCE.SPECIFIC_MEASURED',
  );
  expect(numberIn('=MATERIAL.DENSITY("tungsten heavy alloy class 3")', 'kg/m3')).toBe(18_000);
  expect(calculated('=MATERIAL.GROUP("EN-GJS-600-3")').value).toBe('K');
});

test('a rate that handling alone forbids is refused in words', () => {
  expect(calculated('=CRANK.INSERTS_FOR(3; 90; 0.25; 0.9; 50; 8; 4; 2; 6; 20; 200 1/h)').value).toEqual(
    failure('#NUM!', 'handling alone takes longer, no cutter reaches this rate'),
  );
});

test('the room on the rim is checked where the cutter diameter is given', () => {
  const call = (diameter: string): string =>
    `=CRANK.INSERTS_FOR(3; 90; 0.25; 0.9; 50; 8; 4; 2; 6; 20; 40 1/h; 0.85; 5 deg${diameter})`;
  expect(calculated(call('')).cautions).toEqual([]);
  expect(calculated(call('; 200 mm')).cautions).toEqual([]);
  expect(calculated(call('; 50 mm')).cautions.join()).toContain('less than 25 mm of rim');
});

test('a spindle speed outside the power curve is refused, never extrapolated', () => {
  expect(calculated('=MACHINE.POWER_AT(15000; {500;1500} 1/min; {5;15} kW)').value).toMatchObject({
    failure: '#NUM!',
    message: 'spindle speed 15000 1/min is outside the curve, 500 1/min to 1500 1/min',
  });
});
