/** Stepping a value at the machine. Expected values are worked by hand; 1 in = 25.4 mm exactly (NIST SP 811, appendix B). */

import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Cell, Limits } from '../../src/document/index.ts';
import { decimalText } from '../../src/quantity/index.ts';
import { shownNumber, stepOf, stepped } from '../../src/ui/stepping.ts';

function after(content: string, direction: 1 | -1, step?: string, more: Partial<Cell> = {}): string {
  const cell: Cell = { content, ...more };
  const shown = shownNumber(cell, 'EUR');
  if (!shown) return 'no number';
  const { text, stoppedAt } = stepped(shown, direction, stepOf(shown, step, 'EUR'), cell.limits, 'EUR');
  return `${text ?? 'stays'}${stoppedAt ? ` at ${stoppedAt}` : ''}`;
}
const within = (low: string, high: string): { readonly limits: Limits } => ({ limits: { low, high } });

test('F1a a step is taken in the unit that is shown and loses no decimal', () => {
  expect(after('1.5 mm', 1, '0.1 mm')).toBe('1.6');
  expect(after('0.1 mm', 1, '0.2 mm')).toBe('0.3');
  expect(after('0.09 mm', 1, '0.01 mm')).toBe('0.10');
  expect(after('1.25 mm', -1, '0.1 mm')).toBe('1.15');
  expect(after('260 m/min', -1, '10 m/min')).toBe('250');
  expect(after('1 in', 1, '2.54 mm')).toBe('1.1');
  expect(after('25.4 mm', 1, '0.1', { unit: 'in' })).toBe('1.1');
});

test('F3 a value typed as a fraction of an inch stays one', () => {
  expect(after('3/8 in', 1, '1/16 in')).toBe('7/16');
  expect(after('1 15/16 in', 1, '1/16 in')).toBe('2');
  expect(after('3/8 in', 1, '0.01 in')).toBe('0.385');
});

test('a step of a temperature is a difference, whatever the zero of its scale', () => {
  expect(after('20 degC', 1, '5 K')).toBe('25');
});

test('a step ends on the limit, stays there, and leads back from beyond it', () => {
  const limits = within('0.2 mm', '5 mm');
  expect(after('4.95 mm', 1, '0.1 mm', limits)).toBe('5.00 at high');
  expect(after('5 mm', 1, '0.1 mm', limits)).toBe('stays at high');
  expect(after('0.2 mm', -1, '0.1 mm', limits)).toBe('stays at low');
  expect(after('6.5 mm', 1, '0.1 mm', limits)).toBe('stays at high');
  expect(after('6.5 mm', -1, '0.1 mm', limits)).toBe('6.4');
  expect(after('0.19 in', 1, '0.01 in', limits)).toMatch(/^0\.19685.* at high$/);
});

test('without a step of its own the value takes one between a hundredth and a tenth of itself', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (value) => {
      const shown = shownNumber({ content: `${value.toPrecision(6)} mm` }, 'EUR');
      const step = shown ? Number(decimalText(stepOf(shown, undefined, 'EUR'), 6)) : 0;
      expect(step).toBeGreaterThan(value * 0.0099);
      expect(step).toBeLessThan(value * 0.1001);
    }),
    { seed: 7, numRuns: 200 },
  );
  expect(after('6 teeth', 1)).toBe('7');
  expect(after('3', 1)).toBe('4');
  expect(after('0 mm', 1)).toBe('1');
});

test('up and down again is the value as it was, digit by digit', () => {
  fc.assert(
    fc.property(fc.integer({ min: -99_999, max: 99_999 }), fc.integer({ min: 0, max: 4 }), (n, places) => {
      const typed = (n / 10 ** places).toFixed(places);
      const up = after(`${typed} mm`, 1, '0.01 mm');
      expect(Number(after(`${up} mm`, -1, '0.01 mm'))).toBe(Number(typed));
    }),
    { seed: 11, numRuns: 200 },
  );
});
