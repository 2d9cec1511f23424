/** Regression against certified figures: NIST Statistical Reference Datasets, linear regression, file Norris.dat (from memory). */

import { expect, test } from 'vitest';
import { SmallGrid } from './small-grid.ts';

/** y and x of the 36 observations. */
const NORRIS = [
  [0.1, 0.2],
  [338.8, 337.4],
  [118.1, 118.2],
  [888.0, 884.6],
  [9.2, 10.1],
  [228.1, 226.5],
  [668.5, 666.3],
  [998.5, 996.3],
  [449.1, 448.6],
  [778.9, 777.0],
  [559.2, 558.2],
  [0.3, 0.4],
  [0.1, 0.6],
  [778.1, 775.5],
  [668.8, 666.9],
  [339.3, 338.0],
  [448.9, 447.5],
  [10.8, 11.6],
  [557.7, 556.0],
  [228.3, 228.1],
  [998.0, 995.8],
  [888.8, 887.6],
  [119.6, 120.2],
  [0.3, 0.3],
  [0.6, 0.3],
  [557.6, 556.8],
  [339.3, 339.1],
  [888.0, 887.2],
  [998.5, 999.0],
  [778.9, 779.0],
  [10.2, 11.1],
  [117.6, 118.3],
  [228.9, 229.2],
  [668.4, 669.1],
  [449.2, 448.9],
  [0.2, 0.5],
];
const sheet = new SmallGrid(
  new Map(
    NORRIS.flatMap(
      ([y, x], i) =>
        [
          [`A${i + 1}`, String(y)],
          [`B${i + 1}`, String(x)],
        ] as [string, string][],
    ),
  ),
);

test.each([
  ['SLOPE(A1:A36; B1:B36)', 1.00211681802045],
  ['INTERCEPT(A1:A36; B1:B36)', -0.262323073774029],
  ['STEYX(A1:A36; B1:B36)', 0.884796396144373],
  ['RSQ(A1:A36; B1:B36)', 0.999993745883712],
  ['INDEX(LINEST(A1:A36; B1:B36; TRUE; TRUE); 1; 1)', 1.00211681802045],
  ['INDEX(LINEST(A1:A36; B1:B36; TRUE; TRUE); 1; 2)', -0.262323073774029],
  ['INDEX(LINEST(A1:A36; B1:B36; TRUE; TRUE); 2; 1)', 0.429796848199937e-3],
  ['INDEX(LINEST(A1:A36; B1:B36; TRUE; TRUE); 2; 2)', 0.232818234301152],
  ['INDEX(LINEST(A1:A36; B1:B36; TRUE; TRUE); 3; 1)', 0.999993745883712],
  ['INDEX(LINEST(A1:A36; B1:B36; TRUE; TRUE); 3; 2)', 0.884796396144373],
  ['INDEX(LINEST(A1:A36; B1:B36; TRUE; TRUE); 4; 1)', 5436385.54079785],
  ['INDEX(LINEST(A1:A36; B1:B36; TRUE; TRUE); 4; 2)', 34],
  ['INDEX(LINEST(A1:A36; B1:B36; TRUE; TRUE); 5; 1)', 4255954.13232369],
  ['INDEX(LINEST(A1:A36; B1:B36; TRUE; TRUE); 5; 2)', 26.6173985294224],
])('%s agrees with the certified %d', (formula, certified) => {
  const { value } = sheet.compute(`=${formula}`);
  expect(Math.abs((value as number) / certified - 1)).toBeLessThan(1e-9);
});

test('TREND and FORECAST lie on the line, GROWTH and LOGEST on the curve (by hand: 3, 6, 12, 24 doubles)', () => {
  const at = (formula: string) => sheet.compute(`=${formula}`).value as number;
  expect(at('TREND(A1:A36; B1:B36; 500)')).toBeCloseTo(-0.262323073774029 + 500 * 1.00211681802045, 9);
  expect(at('FORECAST(500; A1:A36; B1:B36)')).toBeCloseTo(-0.262323073774029 + 500 * 1.00211681802045, 9);
  expect(at('GROWTH({3;6;12;24}; {1;2;3;4}; 5)')).toBeCloseTo(48, 9);
  expect(at('INDEX(LOGEST({3;6;12;24}; {1;2;3;4}); 1; 2)')).toBeCloseTo(1.5, 12);
});
