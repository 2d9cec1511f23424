import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatNumber, readNumber, readQuantity, toSI } from '../../src/quantity/index.ts';

test.each([
  ['12.5', '.', '12.5'],
  ['12,5', '.', '12.5'],
  ['12.5', ',', '12.5'],
  ['1 234.5', '.', '1234.5'],
  ['1\u202f234\u202f567', '.', '1234567'],
  ['1\u00a0234,567', ',', '1234.567'],
  ['\u22123', '.', '-3'],
  ['+3', '.', '3'],
  ['.5', '.', '0.5'],
  ['1E3', '.', '1E3'],
  ['1e-3', '.', '1E-3'],
  ['0.10', '.', '0.10'],
  ['0,234', '.', '0.234'],
  ['1234.567', ',', '1234.567'],
  ['1 234.567', ',', '1234.567'],
  ['1.234', '.', '1.234'],
  ['1.234E3', ',', '1.234E3'],
])('F2 "%s" with the mark %s is %s', (typed, mark, digits) => {
  expect(readNumber(typed, mark)).toEqual({ digits });
});

test('F2 one separator before three digits that is not the mark is refused with both readings', () => {
  expect(readNumber('1.234', ',')).toEqual({ refused: '1.234', readings: ['1.234', '1234'] });
  expect(readNumber('-12,345', '.')).toEqual({ refused: '-12,345', readings: ['-12.345', '-12345'] });
  expect(readQuantity('1.234 mm', { decimalMark: ',' })).toEqual({
    refused: '1.234 mm',
    readings: ['1.234 mm', '1234 mm'],
  });
});

test.each([
  '',
  ' ',
  '.',
  '-',
  '1,234.5',
  '1.2.3',
  '1 23',
  '12 34',
  '1 2345',
  'E3',
  '1e',
  '--1',
  '1-',
  '0x10',
  'Infinity',
  'NaN',
  '१२',
])('F3 "%s" is no number', (typed) => {
  expect(readNumber(typed)).toBeUndefined();
});

const read = (typed: string): readonly (string | undefined)[] => {
  const quantity = readQuantity(typed, { currency: 'EUR' });
  if (!quantity || 'refused' in quantity) return [];
  return 'unknown' in quantity ? ['unknown', quantity.unknown] : [quantity.digits, quantity.unit?.symbol];
};

test.each([
  ['12.5 mm', '12.5', 'mm'],
  ['12.50mm', '12.50', 'mm'],
  ['150 m/min', '150', 'm/min'],
  ['3/8 in', '0.375', 'in'],
  ['1 1/2 in', '1.5', 'in'],
  ['-1 1/2 in', '-1.5', 'in'],
  ['1 1/2in', '1.5', 'in'],
  ['3/128 in', '0.0234375', 'in'],
  ['45 deg', '45', 'deg'],
  ['45\u00b0', '45', 'deg'],
  ['30 HRC', '30', 'HRC'],
  ['5 %', '5', '%'],
  ['5%', '5', '%'],
  ['1655 1/min', '1655', '1/min'],
  ['1 1/min', '1', '1/min'],
  ['12 000 1/min', '12000', '1/min'],
  ['1.8 1', '1.8', '1'],
  ['12 m', '12', 'm'],
  ['4 holes', '4', 'holes'],
  ['2 t', '2', 't'],
  ['80 EUR/h', '80', 'EUR/h'],
  ['80 money/h', '80', 'EUR/h'],
  ['1E3 mm', '1E3', 'mm'],
  ['\u22120,5 mm', '-0.5', 'mm'],
  ['20 \u00b0C', '20', 'degC'],
])('F1 "%s" is the quantity %s in %s', (typed, digits, unit) => {
  expect(read(typed)).toEqual([digits, unit]);
});

test.each([
  '1/4-20',
  '1/4-20 UNC',
  'M8x1.25',
  '10-32',
  '10-32 UNF',
  '3/8',
  '1 1/2',
  '1 1/2 NPT',
  '2026-03-09',
  '9.3.2026',
  '12:30',
  '3 holes drilled',
  '10 x 20',
  '2x45',
  '2x45°',
  '1/0 in',
  'mm',
  'HRC 30',
  '12"',
  '1-2 mm',
  '1,234.5 mm',
  '12..5 mm',
])('F3 "%s" stays text', (typed) => {
  expect(readQuantity(typed)).toBeUndefined();
});

test('F4 a number before an unknown unit says so', () => {
  expect(read('12 xyz')).toEqual(['unknown', 'xyz']);
  expect(read('12 USD')).toEqual(['unknown', 'USD']);
  expect(read('12 J/kg·K')).toEqual(['unknown', 'J/kg·K']);
});

test('A plain number has no unit and is not a percentage', () => {
  expect(readQuantity('12.50')).toEqual({ digits: '12.50', percent: false });
});

test('F1 five percent is 0.05', () => {
  const share = readQuantity('5 %');
  if (!share || !('unit' in share) || !share.unit) throw new Error('no share');
  expect(share.percent).toBe(true);
  expect(toSI(share.digits, share.unit)).toBe(0.05);
});

test('No text makes the reader throw', () => {
  const piece = fc.constantFrom(
    '1',
    '12',
    '.',
    ',',
    ' ',
    '/',
    '-',
    'mm',
    '°',
    '(',
    ')',
    '%',
    'E',
    '·',
    '²',
    '^',
    'in',
    "'",
    '\u2212',
  );
  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 30 }),
    fc.array(piece, { maxLength: 10 }).map((all) => all.join('')),
  );
  fc.assert(
    fc.property(text, fc.constantFrom('.', ','), (typed, decimalMark) => {
      const quantity = readQuantity(typed, { decimalMark, currency: 'EUR' });
      if (quantity && 'digits' in quantity) expect(quantity.digits).toMatch(/^-?\d+(\.\d+)?(E[+-]?\d+)?$/);
    }),
    { seed: 20260309, numRuns: 5000 },
  );
});

test.each([
  [0, '0'],
  [-0, '0'],
  [1 / 3, '0.333333'],
  [1234.5678, '1234.5678'],
  [12345.6, '12\u202f345.6'],
  [1234567.89123, '1\u202f234\u202f568'],
  [-12.5, '\u221212.5'],
  [0.1 + 0.2, '0.3'],
  [6.93333333333333, '6.93333'],
  [1.5e-7, '1.5E-7'],
  [2e20, '2E20'],
])('A number without a format: %d is shown as %s', (value, shown) => {
  expect(formatNumber(value)).toBe(shown);
});

test('Formats: significant digits, decimals, fractions of an inch', () => {
  expect(formatNumber(80, { type: 'significant', digits: 4 })).toBe('80.00');
  expect(formatNumber(0.00012345, { type: 'significant', digits: 3 })).toBe('0.000123');
  expect(formatNumber(123456, { type: 'significant', digits: 3 })).toBe('123\u202f456');
  expect(formatNumber(1.005, { type: 'decimals', digits: 2 })).toBe('1.01');
  expect(formatNumber(-0.004, { type: 'decimals', digits: 2 })).toBe('0.00');
  expect(formatNumber(1234.5, { type: 'decimals', digits: 1 }, ',')).toBe('1234,5');
  expect(formatNumber(12345, { type: 'decimals', digits: 0 }, '.', false)).toBe('12345');
  expect(formatNumber(1.375, { type: 'fraction', denominator: 64 })).toBe('1 3/8');
  expect(formatNumber(-0.5, { type: 'fraction', denominator: 64 })).toBe('\u22121/2');
  expect(formatNumber(0.3, { type: 'fraction', denominator: 8 })).toBe('≈ 1/4');
  expect(formatNumber(2, { type: 'fraction', denominator: 64 })).toBe('2');
});

test('F2 what is shown can be typed again', () => {
  fc.assert(
    fc.property(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.constantFrom('.', ','),
      (value, mark) => {
        const again = readNumber(formatNumber(value, { type: 'full' }, mark), mark);
        if (!again || 'refused' in again) throw new Error(`not read: ${value}`);
        expect(Number(again.digits)).toBe(Number(value.toPrecision(15)) || 0);
      },
    ),
    { seed: 20260309, numRuns: 5000 },
  );
});
