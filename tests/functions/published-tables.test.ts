/** Published tables in full: thread diameters and limits, tolerance grades, hardness rows. */

import { expect, test } from 'vitest';
import { HARDNESS_ROWS } from '../../src/functions/hardness.table.ts';
import { SIZE_RANGES, STANDARD_TOLERANCES } from '../../src/functions/iso-286.table.ts';
import { COARSE_PITCHES, FINE_PITCHES, UNIFIED } from '../../src/functions/threads.table.ts';
import { calculated, numberIn } from './calculated.ts';
import { COARSE_THREADS, FINE_THREADS, ROCKWELL_ROWS, ROOTS } from './published.table.ts';

const HALF_MICROMETRE = 0.00051;

const near = (formula: string, unit: string, wanted: number, room: number): string[] => {
  const given = numberIn(`=${formula}`, unit);
  return Math.abs(given - wanted) <= room ? [] : [`${formula}: ${given}, printed ${wanted} ${unit}`];
};

test('ISO 724: pitch and minor diameters of every coarse thread and of 42 fine ones, three decimals', () => {
  const off = [...COARSE_THREADS, ...FINE_THREADS].flatMap(([d, P, pitch, minor]) => [
    ...near(`THREAD.PITCH_DIAMETER(${d} mm; ${P} mm)`, 'mm', pitch, HALF_MICROMETRE),
    ...near(`THREAD.MINOR_INTERNAL(${d} mm; ${P} mm)`, 'mm', minor, HALF_MICROMETRE),
  ]);
  expect(off).toEqual([]);
});

test('ISO 261: the coarse pitch of every size is the printed one, and every fine thread printed is known', () => {
  expect(COARSE_THREADS.map(([d, P]) => [d, P])).toEqual([...COARSE_PITCHES]);
  for (const [d, P] of COARSE_THREADS) expect(numberIn(`=THREAD.PITCH("M${d}")`, 'mm')).toBe(P);
  for (const [d, P] of FINE_THREADS) expect(FINE_PITCHES.get(d)).toContain(P);
});

test('ISO 965-2: the largest minor diameter of 6H of every coarse thread from M1.6 and of 42 fine ones', () => {
  const off = [...COARSE_THREADS, ...FINE_THREADS].flatMap(([d, P, , , most]) =>
    most === undefined ? [] : near(`THREAD.MINOR_MAX(${d} mm; ${P} mm)`, 'mm', most, HALF_MICROMETRE),
  );
  expect(off).toEqual([]);
  // The tolerance of 8 mm pitch is the difference of the limits of M125x8 there, 117.34 and 116.34.
  expect(numberIn('=THREAD.MINOR_MAX(125 mm; 8 mm) - THREAD.MINOR_INTERNAL(125 mm; 8 mm)', 'mm')).toBeCloseTo(
    1,
    9,
  );
});

test('DIN 13-1: the rounded root of twelve coarse threads (from memory)', () => {
  expect(
    ROOTS.flatMap(([d, root]) =>
      near(`THREAD.ROOT_EXTERNAL(${d} mm; THREAD.PITCH("M${d}"))`, 'um', root, 0.51),
    ),
  ).toEqual([]);
});

test('ASME B1.1: extra fine threads are finer than fine ones of the same size, and are read (from memory)', () => {
  for (const [size, count] of UNIFIED.get('UNEF') ?? [])
    expect(count).toBeGreaterThan(UNIFIED.get('UNF')?.get(size) ?? 0);
  expect(numberIn('=THREAD.PITCH("1/2-28 UNEF")', 'mm')).toBeCloseTo(25.4 / 28, 12);
  expect(calculated('=THREAD.PITCH("1/2-20 UNEF")').value).toMatchObject({
    failure: '#N/A',
    message: expect.stringContaining('1/2 UNEF has 28 threads on an inch, not 20'),
  });
});

test('ISO 286-1: from IT6 on every fifth grade is ten times as wide, as its rule of preferred numbers says', () => {
  for (let grade = 6; grade <= 13; grade += 1)
    for (const place of SIZE_RANGES.keys()) {
      const fine = STANDARD_TOLERANCES.get(`IT${grade}`)?.[place] ?? Number.NaN;
      // The one that the standard rounds otherwise: 8 um, then 75 um.
      if (grade === 6 && SIZE_RANGES[place] === 6) continue;
      const coarse = STANDARD_TOLERANCES.get(`IT${grade + 5}`)?.[place] ?? Number.NaN;
      expect(coarse, `IT${grade + 5} up to ${SIZE_RANGES[place]} mm`).toBe(10 * fine);
    }
});

test('ISO 286-1: IT2 to IT4 lie between IT1 and IT5 in a geometric row, up to the rounding of the standard', () => {
  SIZE_RANGES.forEach((_, place) => {
    const at = (grade: number): number => STANDARD_TOLERANCES.get(`IT${grade}`)?.[place] ?? Number.NaN;
    const step = (at(5) / at(1)) ** (1 / 4);
    for (const grade of [2, 3, 4])
      expect(Math.abs(at(grade) / (at(1) * step ** (grade - 1)) - 1)).toBeLessThan(0.25);
  });
});

test('a grade is given as IT7, as "7" or as 7; coarse grades are not for 1 mm and below', () => {
  for (const grade of ['"IT7"', '"it7"', '"7"', '7'])
    expect(numberIn(`=HOLE.TOLERANCE(25 mm; ${grade})`, 'um')).toBeCloseTo(21, 9);
  expect(calculated('=HOLE.TOLERANCE(25 mm; 19)').value).toMatchObject({ failure: '#VALUE!' });
  expect(calculated('=HOLE.TOLERANCE(25 mm; 7 mm)').value).toMatchObject({ failure: '#VALUE!' });
  expect(calculated('=HOLE.TOLERANCE(1 mm; "IT14")').value).toMatchObject({ failure: '#NUM!' });
  expect(calculated('=HOLE.LIMIT(1 mm; "H14"; "upper")').value).toMatchObject({ failure: '#NUM!' });
  expect(numberIn('=HOLE.LIMIT(12 mm; "H13"; "upper")', 'mm')).toBeCloseTo(12.27, 9);
});

test('ISO 18265: every row is met in every scale, and the strengths rise evenly: no row leaves the run of its neighbours', () => {
  const off = HARDNESS_ROWS.flatMap(([vickers, brinell, strength, rockwell]) => [
    ...(brinell === undefined ? [] : near(`HARDNESS.HB(${vickers} HV)`, 'HB', brinell, 1e-9)),
    ...(strength === undefined ? [] : near(`HARDNESS.STRENGTH(${vickers} HV)`, 'MPa', strength, 1e-6)),
    ...(rockwell === undefined ? [] : near(`HARDNESS.HRC(${vickers} HV)`, 'HRC', rockwell, 1e-9)),
  ]);
  expect(off).toEqual([]);
  const strengths = HARDNESS_ROWS.flatMap(([vickers, , strength]) =>
    strength === undefined ? [] : [[vickers, strength] as const],
  );
  strengths.forEach(([vickers, strength], i) => {
    const [before, after] = [strengths[i - 1], strengths[i + 1]];
    if (!before || !after) return;
    const share = (vickers - before[0]) / (after[0] - before[0]);
    const between = before[1] + share * (after[1] - before[1]);
    // The standard rounds to 5 MPa.
    expect(Math.abs(strength - between), `${vickers} HV`).toBeLessThanOrEqual(5);
  });
});

test('ASTM E140 (carbon and alloy steel): HV within 1.2 %, HB within 2.5 % of the table by ISO 18265 from 22 to 68 HRC', () => {
  for (const [rockwell, vickers, brinell] of ROCKWELL_ROWS) {
    const hv = numberIn(`=HARDNESS.HV(${rockwell} HRC)`, 'HV');
    expect(Math.abs(hv / vickers - 1), `${rockwell} HRC`).toBeLessThan(0.012);
    if (brinell === undefined) continue;
    const hb = numberIn(`=HARDNESS.HB(${rockwell} HRC)`, 'HB');
    expect(Math.abs(hb / brinell - 1), `${rockwell} HRC`).toBeLessThan(0.025);
  }
});
