import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  decimalText,
  exactIn,
  exactSI,
  formatNumber,
  fromSI,
  isUnknownUnit,
  parseUnit,
  readNumber,
  toSI,
  UNITS,
  type Unit,
} from '../../src/quantity/index.ts';

const SEED = { seed: 20260309, numRuns: 3000 };

const compounds = [
  'J/(kg·K)',
  'kN/um',
  'lbf·in/in3',
  'ft/tooth',
  'g/m2',
  'deg/s',
  'hp·h',
  'EUR/lb',
  'oz/gal',
  'in4',
];
const read = (text: string): Unit => {
  const unit = parseUnit(text, 'EUR');
  if (isUnknownUnit(unit)) throw new Error(text);
  return unit;
};
const anyUnit = fc.constantFrom(...UNITS, ...compounds.map(read));
const unshifted = fc.constantFrom(...UNITS.filter((unit) => !unit.offset), ...compounds.map(read));

/** Decimals of up to 15 significant digits, the point anywhere from far left to far right. */
const decimal = fc
  .tuple(fc.bigInt(1n, 999_999_999_999_999n), fc.integer({ min: -12, max: 20 }), fc.boolean())
  .map(([digits, places, negative]) => {
    const plain = places <= 0 ? `${digits}${'0'.repeat(-places)}` : `${digits}`.padStart(places + 1, '0');
    const cut = plain.length - places;
    return `${negative ? '-' : ''}${places <= 0 ? plain : `${plain.slice(0, cut)}.${plain.slice(cut)}`}`;
  });

test('F20 there and back is exact as fractions, angles included', () => {
  fc.assert(
    fc.property(decimal, anyUnit, (digits, unit) => {
      expect(Number(decimalText(exactIn(exactSI(digits, unit), unit), 30))).toBe(Number(digits));
    }),
    SEED,
  );
});

test('F20 from one unit to another and back by decimal texts keeps 30 digits', () => {
  fc.assert(
    fc.property(decimal, unshifted, (digits, unit) => {
      const there = decimalText(exactSI(digits, unit), 45);
      const back = decimalText(exactIn(exactSI(there, read('1')), unit), 30);
      expect(back).toBe(decimalText(exactSI(digits, read('1')), 30));
    }),
    SEED,
  );
});

test('F20 a decimal of up to 15 digits in any unit without offset shows the same digits', () => {
  fc.assert(
    fc.property(decimal, unshifted, (digits, unit) => {
      const shown = formatNumber(fromSI(toSI(digits, unit), unit), { type: 'full' });
      const again = readNumber(shown);
      if (!again || 'refused' in again) throw new Error(shown);
      expect(decimalText(exactSI(again.digits, read('1')), 40)).toBe(
        decimalText(exactSI(digits, read('1')), 40),
      );
    }),
    { ...SEED, numRuns: 20_000 },
  );
});

test('F21 a temperature with three decimals shows the same digits', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -200_000, max: 3_000_000 }),
      fc.constantFrom('degC', 'degF'),
      (thousandths, symbol) => {
        const digits = String(thousandths / 1000);
        expect(String(fromSI(toSI(digits, read(symbol)), read(symbol)))).toBe(digits);
      },
    ),
    SEED,
  );
});

test('Digits become the nearest double: the same as the platform reads them', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      expect(toSI(String(value), read('1'))).toBe(value || 0);
    }),
    SEED,
  );
});

test('Digits of any length and exponent become the nearest double', () => {
  for (const digits of [
    '4.9E-324',
    '2.4E-324',
    '2.5E-324',
    '1.7976931348623157E308',
    '1E400',
    '-1E400',
    '1E-400',
    '9007199254740993',
    '0.1000000000000000055511151231257827',
    '2.2250738585072011E-308',
    '5E-9999',
    '7E9999',
  ]) {
    expect([digits, toSI(digits, read('1'))]).toEqual([digits, Number(digits) || 0]);
  }
});
