/** Hole tolerances held against the formula behind the standard; capability against chance. */

import { expect, test } from 'vitest';
import { failure } from '../../src/expression/index.ts';
import { STANDARD_TOLERANCES, SIZE_RANGES } from '../../src/functions/iso-286.table.ts';
import { normal } from '../../src/numeric/index.ts';
import { calculated, numberIn } from './calculated.ts';
import { chance } from './sampled.ts';

/** ISO 286-1: multiples of i by grade; i = 0.45 D^(1/3) + 0.001 D in um, D the geometric mean of the range in mm. */
const MULTIPLES: ReadonlyMap<string, number> = new Map([
  ['IT6', 10],
  ['IT7', 16],
  ['IT8', 25],
  ['IT9', 40],
  ['IT10', 64],
  ['IT11', 100],
  ['IT12', 160],
]);

test('every tolerance above 3 mm lies near the formula of ISO 286-1', () => {
  for (const [grade, multiple] of MULTIPLES)
    SIZE_RANGES.forEach((end, place) => {
      const start = SIZE_RANGES[place - 1];
      // Up to 3 mm the standard departs from its formula.
      if (start === undefined) return;
      const mean = Math.sqrt(end * start);
      const formula = multiple * (0.45 * Math.cbrt(mean) + 0.001 * mean);
      const table = STANDARD_TOLERANCES.get(grade)?.[place] ?? Number.NaN;
      expect(Math.abs(table - formula), `${grade} to ${end} mm: ${table} against ${formula}`).toBeLessThan(
        Math.max(1.2, 0.05 * formula),
      );
    });
});

test('grades rise with the size and with the number', () => {
  const rows = [...STANDARD_TOLERANCES.values()];
  rows.forEach((row, grade) =>
    row.forEach((value, place) => {
      if (place > 0) expect(value).toBeGreaterThanOrEqual(row[place - 1] ?? 0);
      const finer = rows[grade - 1]?.[place];
      if (finer !== undefined) expect(value).toBeGreaterThan(finer);
    }),
  );
});

test('a size at the end of a range belongs to it, the next micrometre to the next', () => {
  expect(numberIn('=HOLE.TOLERANCE(30 mm; "IT7")', 'um')).toBeCloseTo(21, 9);
  expect(numberIn('=HOLE.TOLERANCE(30.001 mm; "IT7")', 'um')).toBeCloseTo(25, 9);
  expect(calculated('=HOLE.TOLERANCE(500.1 mm; "IT7")').value).toEqual(
    failure('#NUM!', 'diameter 500.1 mm is outside the table: up to 500 mm'),
  );
});

test('both limits of a class are a grade apart; other letters are not in the table', () => {
  for (const [holeClass, grade] of [
    ['E8', 'IT8'],
    ['F7', 'IT7'],
    ['G6', 'IT6'],
    ['H11', 'IT11'],
    ['JS9', 'IT9'],
  ])
    expect(
      numberIn(
        `=HOLE.LIMIT(40 mm; "${holeClass}"; "upper") - HOLE.LIMIT(40 mm; "${holeClass}"; "lower")`,
        'um',
      ),
    ).toBeCloseTo(numberIn(`=HOLE.TOLERANCE(40 mm; "${grade}")`, 'um'), 9);
  expect(calculated('=HOLE.LIMIT(40 mm; "P7"; "upper")').value).toEqual(
    failure(
      '#N/A',
      'class "P7" is not in the table: E, F or G with 5 to 12, H or JS with 1 to 18, as in "H7"',
    ),
  );
  expect(numberIn('=HOLE.LIMIT(40 mm; "h7"; "lower")', 'mm')).toBe(40);
});

test('the index is the same for a mirrored tolerance', () => {
  expect(numberIn('=HOLE.CAPABILITY(25.013 mm; 0.002 mm; 25 mm; 25.021 mm)')).toBeCloseTo(
    numberIn('=HOLE.CAPABILITY(25.008 mm; 0.002 mm; 25 mm; 25.021 mm)'),
    9,
  );
  expect(calculated('=HOLE.CAPABILITY(25 mm; 0.002 mm; 25 mm; 25 mm)').value).toEqual(
    failure('#NUM!', 'the upper limit 25 mm must be above the lower limit 25 mm'),
  );
});

test('a process of Cpk 1.33 is put above its true index in about one sample of twenty', () => {
  const next = chance(42);
  const draw = (): number => normal().quantile(0.5e-9 + (1 - 1e-9) * next());
  const count = 50;
  const samples = 1500;
  const [lower, upper, mean, spread] = [-4, 40, 0, 1];
  let above = 0;
  for (let sample = 0; sample < samples; sample += 1) {
    const values = Array.from({ length: count }, () => mean + spread * draw());
    const middle = values.reduce((sum, value) => sum + value, 0) / count;
    const deviation = Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (count - 1));
    const low = Math.min(upper - middle, middle - lower) / (3 * deviation);
    const z = 1.6448536269514722;
    above += low - z * Math.sqrt(1 / (9 * count) + low ** 2 / (2 * (count - 1))) > 4 / 3 ? 1 : 0;
    if (sample === 0)
      expect(
        numberIn(`=HOLE.CAPABILITY_LOW(${middle} mm; ${deviation} mm; ${lower} mm; ${upper} mm; ${count})`),
      ).toBeCloseTo(low - z * Math.sqrt(1 / (9 * count) + low ** 2 / (2 * (count - 1))), 9);
  }
  expect(above / samples).toBeGreaterThan(0.02);
  expect(above / samples).toBeLessThan(0.08);
});
