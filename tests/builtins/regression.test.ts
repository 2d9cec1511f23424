/** The fits and summary statistics of the formula language on the certified sets of NIST StRD; shared digits stand in the names. */

import { expect, test } from 'vitest';
import { isGrid } from '../../src/expression/index.ts';
import { fewestDigits, sharedDigits } from '../numeric/digits.ts';
import { LINEAR_SETS, UNIVARIATE_SETS, VARIANCE_SETS } from '../numeric/nist-strd.table.ts';
import { SmallGrid } from './small-grid.ts';

/** A worksheet with y in its first column and the variables beside it; longer lists go on in the next column. */
class Data {
  private readonly cells = new Map<string, string>();
  private readonly sheet = new SmallGrid(this.cells);
  private used = 0;

  /** Puts the rows down; gives the range. */
  put(rows: readonly (number | readonly number[])[]): string {
    const first = this.used;
    const lines = rows.map((row) => (typeof row === 'number' ? [row] : row));
    for (const [i, line] of lines.entries())
      for (const [j, value] of line.entries())
        this.cells.set(address(first + j + Math.floor(i / ROWS), i % ROWS), String(value));
    const width = (lines[0]?.length ?? 0) + Math.floor((lines.length - 1) / ROWS);
    this.used += width;
    return `${address(first, 0)}:${address(first + width - 1, Math.min(lines.length, ROWS) - 1)}`;
  }

  number(formula: string): number {
    return Number(this.sheet.compute(`=${formula}`).value);
  }

  grid(formula: string): number[][] {
    const { value } = this.sheet.compute(`=${formula}`);
    if (!isGrid(value)) throw new Error(`${formula} gives ${JSON.stringify(value)}`);
    return value.grid.map((row) => row.map(Number));
  }
}

/** Rows of a worksheet. */
const ROWS = 2000;

const address = (column: number, row: number): string => `${String.fromCharCode(65 + column)}${row + 1}`;

const LINEST_DIGITS: Readonly<Record<string, number>> = {
  Pontius: 12,
  Filip: 7.5,
  Wampler2: 12,
};

for (const { name, x, y, degree, constant, estimates, deviations, ...set } of LINEAR_SETS) {
  const digits = LINEST_DIGITS[name] ?? 13;
  test(`LINEST on ${name}: coefficients, their errors, the residual and R squared to ${digits} digits`, () => {
    const variables = x.map((one) =>
      typeof one === 'number' ? Array.from({ length: degree }, (_, k) => one ** (k + 1)) : one,
    );
    const data = new Data();
    const lines = data.grid(
      `LINEST(${data.put(y)}; ${data.put(variables)}; ${String(constant).toUpperCase()}; TRUE)`,
    );
    const upwards = (line: number[] | undefined): number[] =>
      (line ?? []).toReversed().slice(constant ? 0 : 1);
    expect(fewestDigits(upwards(lines[0]), estimates)).toBeGreaterThan(digits);
    expect(fewestDigits(upwards(lines[1]), deviations)).toBeGreaterThan(Math.min(digits, 13));
    expect(sharedDigits(lines[2]?.[0] ?? Number.NaN, set.rSquared)).toBeGreaterThan(Math.min(digits, 13));
    expect(sharedDigits(lines[2]?.[1] ?? Number.NaN, set.residualDeviation)).toBeGreaterThan(digits);
  });
}

const norris = LINEAR_SETS[0] ?? LINEAR_SETS[1];
if (norris?.name !== 'Norris') throw new Error('Norris comes first');
const data = new Data();
const Y = data.put(norris.y);
const X = data.put(norris.x as readonly number[]);

test.each([
  ['SLOPE', `SLOPE(${Y}; ${X})`, 1.00211681802045],
  ['INTERCEPT', `INTERCEPT(${Y}; ${X})`, -0.262323073774029],
  ['STEYX', `STEYX(${Y}; ${X})`, 0.884796396144373],
  ['RSQ', `RSQ(${Y}; ${X})`, 0.999993745883712],
  ['CORREL', `CORREL(${Y}; ${X})^2`, 0.999993745883712],
  ['LINEST: F', `INDEX(LINEST(${Y}; ${X}; TRUE; TRUE); 4; 1)`, 5436385.54079785],
  ['LINEST: freedom', `INDEX(LINEST(${Y}; ${X}; TRUE; TRUE); 4; 2)`, 34],
  ['LINEST: explained', `INDEX(LINEST(${Y}; ${X}; TRUE; TRUE); 5; 1)`, 4255954.13232369],
  ['LINEST: residual', `INDEX(LINEST(${Y}; ${X}; TRUE; TRUE); 5; 2)`, 26.6173985294224],
  ['TREND', `TREND(${Y}; ${X}; 500)`, -0.262323073774029 + 500 * 1.00211681802045],
  ['FORECAST', `FORECAST(500; ${Y}; ${X})`, -0.262323073774029 + 500 * 1.00211681802045],
])('%s on Norris has 11 digits of the certified value', (_, formula, certified) => {
  expect(sharedDigits(data.number(formula), certified)).toBeGreaterThan(11);
});

test('LOGEST and GROWTH on the exponential of Norris / 1000: slope and constant to 11 digits', () => {
  const powers = data.put(norris.y.map((y) => Math.exp(y / 1000)));
  const [line] = data.grid(`LOGEST(${powers}; ${X})`);
  expect(sharedDigits(1000 * Math.log(line?.[0] ?? Number.NaN), 1.00211681802045)).toBeGreaterThan(11);
  expect(sharedDigits(1000 * Math.log(line?.[1] ?? Number.NaN), -0.262323073774029)).toBeGreaterThan(10);
  expect(
    sharedDigits(
      1000 * Math.log(data.number(`GROWTH(${powers}; ${X}; 500)`)),
      -0.262323073774029 + 500 * 1.00211681802045,
    ),
  ).toBeGreaterThan(11);
});

for (const { name, values, mean, deviation } of UNIVARIATE_SETS) {
  const digits = name === 'NumAcc4' ? 8 : name === 'NumAcc3' ? 9 : 13;
  test(`AVERAGE to 14 and STDEV, VAR, DEVSQ to ${digits} digits on ${name}`, () => {
    const own = new Data();
    const all = own.put(values);
    expect(sharedDigits(own.number(`AVERAGE(${all})`), mean)).toBeGreaterThan(14);
    expect(sharedDigits(own.number(`STDEV(${all})`), deviation)).toBeGreaterThan(digits);
    expect(sharedDigits(Math.sqrt(own.number(`VAR(${all})`)), deviation)).toBeGreaterThan(digits);
    expect(
      sharedDigits(Math.sqrt(own.number(`DEVSQ(${all})`) / (values.length - 1)), deviation),
    ).toBeGreaterThan(digits);
  });
}

const F_DIGITS: Readonly<Record<string, number>> = {
  SiRstv: 12,
  AtmWtAg: 10,
  SmLs01: 13,
  SmLs02: 13,
  SmLs04: 10,
  SmLs05: 9,
  SmLs07: 3.5,
  SmLs08: 3.5,
};

for (const { name, groups, ratio, rSquared } of VARIANCE_SETS) {
  const digits = F_DIGITS[name];
  // A range of the formula language has 2000 rows; the sets with 18 009 are held against the core alone.
  if (digits === undefined) continue;
  test(`LINEST with marks of the groups gives F and R squared of ${name} to ${digits} digits`, () => {
    const own = new Data();
    const marks = groups.flatMap((group, i) =>
      group.map(() => groups.slice(1).map((_, j) => Number(j + 1 === i))),
    );
    const lines = own.grid(`LINEST(${own.put(groups.flat())}; ${own.put(marks)}; TRUE; TRUE)`);
    expect(sharedDigits(lines[3]?.[0] ?? Number.NaN, ratio)).toBeGreaterThan(digits);
    expect(sharedDigits(lines[2]?.[0] ?? Number.NaN, rSquared)).toBeGreaterThan(digits);
  });
}

test('GROWTH and LOGEST lie on the curve (by hand: 3, 6, 12, 24 doubles)', () => {
  expect(data.number('GROWTH({3;6;12;24}; {1;2;3;4}; 5)')).toBeCloseTo(48, 9);
  expect(data.number('INDEX(LOGEST({3;6;12;24}; {1;2;3;4}); 1; 2)')).toBeCloseTo(1.5, 12);
});
