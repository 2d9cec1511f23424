/** Numbers as a person at this device writes them: shown and typed there, stored without a locale (F1, F2, F9). */

import fc from 'fast-check';
import { afterEach, expect, test } from 'vitest';
import { canonicalContent, readContent } from '../../src/document/index.ts';
import {
  canonicalText,
  editedText,
  inWords,
  markedDigits,
  setDecimalMark,
  storedText,
  typing,
} from '../../src/ui/number-locale.ts';
import { numberText, spokenText } from '../../src/ui/value-text.ts';

const NOTEBOOK = { currency: 'EUR' };
const SEED = 20_261_125;
afterEach(() => setDecimalMark('.'));

test('F2 a stored number is edited with the comma of the place, and typed again it is the stored number', () => {
  setDecimalMark(',');
  const decimal = fc
    .tuple(fc.integer({ min: -99_999, max: 99_999 }), fc.stringMatching(/^\d{1,6}$/))
    .map(([whole, part]) => `${whole}.${part}`);
  const unit = fc.constantFrom('', ' mm', ' m/min', ' mm/tooth', ' N·m', ' EUR/h', ' %', ' degC');
  fc.assert(
    fc.property(decimal, unit, (digits, symbol) => {
      const stored = digits + symbol;
      const edited = editedText(stored, 'EUR');
      expect(edited).toBe(digits.replace('.', ',') + symbol);
      expect(canonicalText(edited, 'EUR')).toBe(stored);
    }),
    { seed: SEED, numRuns: 500 },
  );
});

test('F9 formulas keep names, texts and addresses, change only their decimals, and come back as stored', () => {
  setDecimalMark(',');
  for (const [stored, edited] of [
    ['=B3*1.25', '=B3*1,25'],
    ['=MILL.THINNING(D_1; 0.2 mm)', '=MILL.THINNING(D_1; 0,2 mm)'],
    ['=kc1.1*0.1 mm^2', '=kc1.1*0,1 mm^2'],
    ['=TEXT(B3/1 mm; "0.00") & " mm"', '=TEXT(B3/1 mm; "0.00") & " mm"'],
    ['=Feeds.fz+1.5E-3 mm', '=Feeds.fz+1,5E-3 mm'],
    ['=SUM({0.5;1.5|2.5;3}) + 5.5%', '=SUM({0,5;1,5|2,5;3}) + 5,5%'],
    ["='Trial 1.2'.B3+1.234", "='Trial 1.2'.B3+1,234"],
  ] as const) {
    expect(editedText(stored, 'EUR')).toBe(edited);
    expect(canonicalText(edited, 'EUR')).toBe(stored);
  }
});

test('F3 designations and texts with a point stay as they are', () => {
  setDecimalMark(',');
  for (const text of ['M8x1.25', 'ISO 8688-2.1', '1.2.3', "'1.5", 'rev 2.1 of the drawing'])
    expect(editedText(text, 'EUR')).toBe(text);
});

test('F2 a point before three digits is refused under the comma, with both readings as they would be written here', () => {
  setDecimalMark(',');
  const read = canonicalContent('1.234 mm', { ...typing(), currency: 'EUR' });
  expect('message' in read && read.message).toBe(
    '1.234 mm can be read in two ways: 1,234 mm or 1234 mm. Write the one that is meant.',
  );
  expect(canonicalText('1.234 mm', 'EUR')).toBeUndefined();
  expect(canonicalText('1.5 mm', 'EUR')).toBe('1.5 mm');
  // In a field of its own it stays a text, which is refused there.
  expect(readContent(storedText('1.234 mm', 'EUR'), 'EUR').type).toBe('text');
  expect(storedText('1,234 mm', 'EUR')).toBe('1.234 mm');
});

test('F2 the narrow no-break space of French groups is read, whatever the mark', () => {
  for (const mark of ['.', ','] as const) {
    setDecimalMark(mark);
    expect(canonicalText(`12\u202f500${mark}5 1/min`, 'EUR')).toBe('12 500.5 1/min');
  }
});

test('values are shown with the mark of the place and thin spaces between thousands', () => {
  setDecimalMark(',');
  expect(numberText(12_500.5, '', NOTEBOOK).number).toBe('12\u202f500,5');
  expect(numberText(0.000_12, 'mm', NOTEBOOK)).toEqual({ number: '0,12', unit: 'mm' });
  expect(markedDigits('-0.5')).toBe('-0,5');
});

test('a screen reader hears the unit by its name, without thin spaces in the number', () => {
  expect(spokenText({ value: 0.000_12, unit: 'mm' }, NOTEBOOK)).toBe('0.12 millimetres');
  expect(spokenText({ value: 12_500, unit: '' }, NOTEBOOK)).toBe('12\u202f500');
});

test('words of the calculator carry the same mark as the values beside them', () => {
  setDecimalMark(',');
  expect(inWords('0.1 read as 0.1 mm')).toBe('0,1 read as 0,1 mm');
  expect(inWords('the factor 25.4 may convert twice: B3 is a length.')).toBe(
    'the factor 25,4 may convert twice: B3 is a length.',
  );
  expect(inWords('kc1.1 of M8x1.25 in 6.13.4: TEXT(B3/1 mm; "0.0")')).toBe(
    'kc1.1 of M8x1.25 in 6.13.4: TEXT(B3/1 mm; "0.0")',
  );
});
