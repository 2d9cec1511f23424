/** Units in built-in functions: what is kept, multiplied, refused, and with which words (rules F11 to F17). */

import { describe, expect, test } from 'vitest';
import { isFailure } from '../../src/expression/index.ts';
import { describeDimension, fromSI, parseUnit } from '../../src/quantity/index.ts';
import type { Unit } from '../../src/quantity/index.ts';
import { SmallGrid } from './small-grid.ts';

/** A small log of an invented shop: lengths in column B, times in C, texts in A, a plain factor in E. */
const sheet = new SmallGrid(
  new Map(
    Object.entries({
      A1: 'pass',
      B1: 'depth',
      C1: 'time',
      A2: 'first',
      B2: '1.5 mm',
      C2: '10 min',
      D2: '20 N',
      E2: '3',
      A3: 'second',
      B3: '0.25 mm',
      C3: '20 min',
      D3: '40 N',
      E3: '5',
      A4: 'third',
      B4: '2 mm',
      C4: '40 min',
      D4: '80 N',
      E4: '7',
      B6: '20 degC',
      B7: '30 degC',
      G1: '2026-03-09',
      G2: '2026-03-12',
      H1: '30 HRC',
      H2: '32 HRC',
    }),
  ),
);

const shown = (formula: string): string => {
  const { value, inference } = sheet.compute(formula);
  if (isFailure(value)) return `${value.failure} ${value.message}`;
  const type = inference?.type;
  if (typeof value !== 'number' || type?.type !== 'number') return String(value);
  return `${Number(value.toPrecision(12))} ${describeDimension(type.kind.dimension)}`;
};

const inUnit = (formula: string, unit: string): number =>
  fromSI(sheet.compute(formula).value as number, parseUnit(unit) as Unit);

describe('F13 sums, extremes and averages keep the dimension and refuse a clash', () => {
  test.each([
    ['=SUM(B2:B4)', '0.00375 a length'],
    ['=AVERAGE(B2:B4)', '0.00125 a length'],
    ['=MIN(B2:B4; 1 mm)', '0.00025 a length'],
    ['=MAX(B2:B4; 0)', '0.002 a length'],
    ['=MEDIAN(B2:B4)', '0.0015 a length'],
    ['=SUM(B1:B4)', '0.00375 a length'],
    ['=LARGE(B2:B4; 1)', '0.002 a length'],
    ['=PERCENTILE(B2:B4; 0.5)', '0.0015 a length'],
    ['=COUNT(B1:B4)', '3 a plain number'],
    ['=RANK(0.25 mm; B2:B4)', '3 a plain number'],
  ])('F13 %s is %s', (formula, wanted) => expect(shown(formula)).toBe(wanted));
  test.each(['=SUM(B2; C2)', '=MAX(B2:B4; 3)', '=AVERAGE(B2:C4)', '=IF(TRUE; B2; C2)', '=SUM(B2:B4; 1)'])(
    'F13 %s is refused, and IFERROR does not see it',
    (formula) => {
      expect(shown(formula)).toMatch(/^#UNIT! /);
      expect(shown(`=IFERROR(${formula.slice(1)}; 0)`)).toMatch(/^#UNIT! /);
      expect(shown(`=ISERROR(${formula.slice(1)})`)).toMatch(/^#UNIT! /);
    },
  );
  test('F13b a text branch of IF is neutral, the branch not taken is not computed', () => {
    expect(shown('=IF(1 > 2; B2; "none")')).toBe('none');
    expect(shown('=IF(TRUE; B2; 1 mm/0)')).toBe('0.0015 a length');
    expect(shown('=IF(TRUE; B2; 0)')).toBe('0.0015 a length');
    expect(shown('=IFERROR(B2/0; 1 mm)')).toBe('0.001 a length');
    expect(shown('=CHOOSE(2; C2; B2)')).toBe('0.0015 a length');
  });
});

describe('F13a rounding depends on no display unit', () => {
  test.each([
    ['=ROUND(B2; 1)', '#UNIT! ROUND takes a plain number; B2 is a length: ROUND(B2/1 mm; 1)*1 mm'],
    ['=INT(C2)', '#UNIT! INT takes a plain number; C2 is a time: INT(C2/1 min)*1 min'],
    ['=TRUNC(B2 + B3)', '#UNIT! TRUNC takes a plain number; B2 + B3 is a length: TRUNC((B2 + B3)/1 mm)*1 mm'],
    [
      '=CEILING(B2)',
      '#UNIT! CEILING of a quantity needs a step of its dimension; B2 is a length: CEILING(B2; 1 mm)',
    ],
    ['=EXP(B2)', '#UNIT! EXP takes a plain number; B2 is a length: EXP(B2/1 mm)'],
    ['=TEXT(B2; "0.0")', '#UNIT! TEXT takes a plain number; B2 is a length: TEXT(B2/1 mm; "0.0") & " mm"'],
    [
      '=LEFT(B2; 2)',
      '#UNIT! LEFT takes text; B2 is a length: write TEXT(B2/1 mm; "0.0") & " mm" in its place',
    ],
  ])('F13a %s is refused with the replacement', (formula, wanted) => expect(shown(formula)).toBe(wanted));
  test('F13a the ready replacements compute', () => {
    expect(shown('=ROUND(B3/1 mm; 1)*1 mm')).toBe('0.0003 a length');
    expect(shown('=TEXT(B2/1 mm; "0.0") & " mm"')).toBe('1.5 mm');
  });
  test('F13a CEILING, FLOOR and MROUND take a step of the same dimension', () => {
    expect(shown('=CEILING(1.6 mm; 0.5 mm)')).toBe('0.002 a length');
    expect(shown('=FLOOR(1 in; 1 mm)')).toBe('0.025 a length');
    expect(shown('=MROUND(1655 1/min; 50 1/min)*1 min')).toBe('1650 a plain number');
    expect(shown('=CEILING(1.6 mm; 1)')).toMatch(/^#UNIT! /);
  });
});

describe('F17 powers, roots, logarithms and angles', () => {
  test.each([
    ['=SQRT(B2*B2)', '0.0015 a length'],
    ['=POWER(B2; 2)', '0.00000225 an area'],
    ['=SIN(30 deg)', '0.5 a plain number'],
    ['=ASIN(0.5)*180/PI()', '30 a plain number'],
    ['=ATAN2(1 mm; 1 mm)', '0.785398163397 an angle'],
    ['=RADIANS(90)', '1.57079632679 an angle'],
    ['=DEGREES(90 deg)', '90 a plain number'],
    ['=MOD(50 deg; 45 deg)', '0.0872664625997 an angle'],
  ])('F17 %s is %s', (formula, wanted) => expect(shown(formula)).toBe(wanted));
  test('F17 a plain number given to a sine is read as radians, with a note', () => {
    const { value, inference } = sheet.compute('=SIN(0.5)');
    expect(value).toBeCloseTo(0.479425538604203, 15);
    expect(inference?.assumed.map(({ text }) => text)).toEqual(['0.5 read as 0.5 rad']);
  });
  test.each(['=SIN(B2)', '=LN(B2)', '=LOG(B2; 10)', '=POWER(B2; SUM(E2:E3))', '=ASIN(B2)'])(
    'F17 %s is refused',
    (formula) => expect(shown(formula)).toMatch(/^#UNIT! /),
  );
});

describe('F12 statistics and regression have the dimension of their data', () => {
  test.each([
    ['=STDEV(B2:B4)', 'a length'],
    ['=VAR(B2:B4)', 'an area'],
    ['=SKEW(B2:B4)', 'a plain number'],
    ['=SLOPE(B2:B4; C2:C4)', 'a speed'],
    ['=INTERCEPT(B2:B4; C2:C4)', 'a length'],
    ['=STEYX(B2:B4; C2:C4)', 'a length'],
    ['=FORECAST(30 min; B2:B4; C2:C4)', 'a length'],
    ['=RSQ(B2:B4; C2:C4)', 'a plain number'],
    ['=COVAR(B2:B4; D2:D4)', 'a force times length'],
    ['=INDEX(LINEST(B2:B4; C2:C4); 1; 1)', 'a speed'],
    ['=INDEX(LINEST(B2:B4; C2:C4); 1; 2)', 'a length'],
    ['=TREND(B2:B4; C2:C4; 30 min)', 'a length'],
    ['=SUMPRODUCT(B2:B4; D2:D4)', 'a force times length'],
    ['=PRODUCT(B2:B4)', 'a volume'],
    ['=PRODUCT(B2; C2; 2)', null],
    ['=NORMDIST(B2; B3; 1 mm; FALSE)', 'a 1/length'],
    ['=NORMDIST(B2; B3; 1 mm; TRUE)', 'a plain number'],
    ['=NORMINV(0.9; B2; 1 mm)', 'a length'],
    ['=WEIBULL(C2; 2; 30 min; TRUE)', 'a plain number'],
    ['=CONFIDENCE(0.05; 1 mm; 9)', 'a length'],
  ])('F12 %s is %s', (formula, dimension) => {
    const text = shown(formula);
    if (dimension === null) expect(text).not.toMatch(/^#/);
    else expect(text.slice(text.indexOf(' ') + 1)).toBe(dimension);
  });
  test('F12 an independent figure: slope of 1.5, 0.25, 2 mm over 10, 20, 40 min', () => {
    // By hand: means 1.25 mm and 23.333 min; sum of products 12.5 mm min, of squares 466.667 min2.
    expect(inUnit('=SLOPE(B2:B4; C2:C4)', 'mm/min')).toBeCloseTo(12.5 / 466.6666666666667, 12);
  });
  test('F21 spreads of temperatures are differences, averages are temperatures', () => {
    expect(sheet.compute('=AVERAGE(B6:B7)').inference?.type).toMatchObject({ kind: { name: 'temperature' } });
    expect(inUnit('=AVERAGE(B6:B7)', 'degC')).toBeCloseTo(25, 10);
    expect(sheet.compute('=STDEV(B6:B7)').inference?.type).toMatchObject({
      kind: { name: 'temperature difference' },
    });
    expect(sheet.compute('=STDEV(B6:B7)').value).toBeCloseTo(7.0710678118654755, 10);
  });
});

describe('F13b look-ups and criteria', () => {
  test.each([
    ['=VLOOKUP("second"; A2:C4; 2; FALSE)', '0.00025 a length'],
    ['=VLOOKUP("second"; A2:C4; 3; FALSE)', '1200 a time'],
    ['=INDEX(A1:C4; 4; 3)', '2400 a time'],
    ['=INDEX(B2:B4; 2)', '0.00025 a length'],
    ['=INDEX(B2:B4; MATCH("third"; A2:A4; 0))', '0.002 a length'],
    ['=MATCH(20 min; C2:C4; 0)', '2 a plain number'],
    ['=LOOKUP(25 min; C2:C4; B2:B4)', '0.00025 a length'],
    ['=COUNTIF(B2:B4; "<=1.5 mm")', '2 a plain number'],
    ['=COUNTIF(B2:B4; 0.25 mm)', '1 a plain number'],
    ['=COUNTIF(E2:E4; ">=5")', '2 a plain number'],
    ['=SUMIF(A2:A4; "second"; C2:C4)', '1200 a time'],
    ['=SUMIFS(C2:C4; B2:B4; "<=1.5 mm"; E2:E4; ">3")', '1200 a time'],
    ['=AVERAGEIFS(B2:B4; E2:E4; ">3")', '0.001125 a length'],
  ])('F13b %s is %s', (formula, wanted) => expect(shown(formula)).toBe(wanted));
  test.each([
    '=VLOOKUP("second"; A2:C4; MAX(E2:E3) - 2; FALSE)',
    '=MATCH(2; C2:C4; 0)',
    '=COUNTIF(B2:B4; "<=1.5")',
    '=COUNTIF(B2:B4; "<=1.5 min")',
    '=COUNTIF(B2:B4; 3)',
    '=COUNTIF(E2:E4; "<=1.5 mm")',
  ])('F13b %s is refused', (formula) => expect(shown(formula)).toMatch(/^#UNIT! /));
  test('F13b a column number that stands in a cell counts as known', () => {
    expect(shown('=INDEX(A1:C4; 4; E2)')).toBe('2400 a time');
  });
});

describe('dates, blanks and texts', () => {
  test('F11 a date minus a date is a time, DAYS a plain number', () => {
    expect(shown('=DAYS(G2; G1)')).toBe('3 a plain number');
    expect(shown('=WEEKDAY(G1; 2)')).toBe('1 a plain number');
    expect(shown('=YEAR(E2)')).toMatch(/^#UNIT! YEAR takes a date/);
  });
  test.each([
    '=SUM(G1:G2)',
    '=STDEV(G1:G2)',
    '=VAR(G1:G2)',
    '=PRODUCT(G1:G2)',
    '=SLOPE(B2:B3; G1:G2)',
    '=LINEST(B2:B3; G1:G2)',
    '=SUMSQ(H1:H2)',
    '=SUMPRODUCT(H1:H2; B2:B3)',
  ])('F11 %s is refused: dates and hardness have no arithmetic', (formula) =>
    expect(shown(formula)).toMatch(/^#UNIT! /),
  );
  test('F11 dates and hardness have extremes, means and ranks, and a line may be read off at a date', () => {
    expect(shown('=MAX(H1:H2)')).toBe('32 a hardness HRC');
    expect(shown('=DAYS(MAX(G1:G2); MIN(G1:G2))')).toBe('3 a plain number');
    expect(shown('=FORECAST(G1; B2:B3; G1:G2)')).toBe('0.0015 a length');
  });
  test('an empty cell beside quantities is a missing value', () => {
    expect(shown('=CEILING(F9; 0.5 mm)')).toBe('#VALUE! value missing: F9');
    expect(shown('=SUM(B2:B9)')).toMatch(/^#UNIT!/);
    expect(shown('=SUM(B2:B5)')).toBe('0.00375 a length');
  });
  test('a blank cell among plain numbers counts as 0 with a caution', () => {
    const { value, inference } = sheet.compute('=ABS(F9)');
    expect(value).toBe(0);
    expect(inference?.cautions.map(({ text }) => text)).toContain('F9 is empty, counted as 0');
  });
  test.each([
    ['=TEXT(0.5; "0%")', '50%'],
    ['=TEXT(1234.567; "#,##0.00")', '1,234.57'],
    ['=TEXT(0.00123; "0.00E+00")', '1.23E-03'],
    ['=TEXT(-3.5; "0.0")', '-3.5'],
    ['=TEXT(7; "000")', '007'],
    ['=TEXT(0.25; "0.###")', '0.25'],
    ['=TEXT(12; "0.0;(0.0);zero")', '12.0'],
    ['=TEXT(-12; "0.0;(0.0);zero")', '(12.0)'],
    ['=TEXT(0; "0.0;(0.0);""none""")', 'none'],
    ['=ROUND(21.9/0.2; 0)', '110 a plain number'],
    ['=INT(-2.5)', '-3 a plain number'],
    ['=SUBSTITUTE("xyz"; ""; "a")', 'xyz'],
    ['="12" + 1', '#VALUE! the text "12" stands where a number is needed'],
    ['=EXACT("M8"; "m8")', 'false'],
  ])('%s is %s', (formula, wanted) => expect(shown(formula)).toBe(wanted));
});
