import { expect, test } from 'vitest';
import {
  applyBinary,
  applyPercent,
  applyUnary,
  compileScalar,
  failure,
  numberOrder,
  singleValue,
  valueOrder,
} from '../../src/expression/index.ts';
import type { BinaryOperator, Scalar } from '../../src/expression/index.ts';
import { FUNCTIONS, treeOf } from './sample-notebook.ts';

const value = (text: string): Scalar =>
  singleValue(compileScalar(treeOf(text), { functions: FUNCTIONS, slot: () => -1 })([]));

const code = (result: Scalar): string | undefined =>
  typeof result === 'object' && result !== null ? result.failure : undefined;

/** Test cases that the OpenFormula committee published: OpenDocument v1.2 part 2, draft of 19 January 2010, by section. */
const PUBLISHED: readonly (readonly [section: string, formula: string, expected: Scalar])[] = [
  ['4.3', '=56.5', 56.5],
  ['4.3', '=550E+1', 5500],
  ['5.3.5', '=(1=1)+2', 3],
  ['5.4.2', '=1+2', 3],
  ['5.4.3', '=5--2', 7],
  ['5.4.3', '=3-2+3', 4],
  ['5.4.4', '=2+3*4', 14],
  ['5.4.5', '=6/3', 2],
  ['5.4.5', '=144/3/2', 24],
  ['5.4.5', '=2+6/2', 5],
  ['5.4.6', '=2^3', 8],
  ['5.4.6', '=9^0.5', 3],
  ['5.4.6', '=4^-1', 0.25],
  ['5.4.6', '=2+3*4^2', 50],
  ['5.4.6', '=-2^2', 4],
  ['5.4.6', '=(2^3)^2', 64],
  ['5.4.6', '=2^(3^2)', 512],
  ['5.4.7', '=3=3.0001', false],
  ['5.4.7', '="Hi"="HI"', true],
  ['5.4.8', '=1<>2', true],
  ['5.4.8', '=1<>"1"', true],
  ['5.4.8', '="Hi"<>"HI"', false],
  ['5.4.9', '=5<6', true],
  ['5.4.9', '=5<=6', true],
  ['5.4.9', '=5>6', false],
  ['5.4.9', '=5>=6', false],
  ['5.4.9', '="AA">"A"', true],
  ['5.4.10', '="Hi " & "there"', 'Hi there'],
  ['5.4.10', '="H" & ""', 'H'],
  ['5.4.10', '=-5&"b"', '-5b'],
  ['5.4.14', '=20+50%', 20.5],
  ['5.4.14', '=3^200%', 9],
];

test.each(PUBLISHED)('F5 OpenFormula %s: %s is %s', (_, formula, expected) => {
  expect(value(formula)).toBe(expected);
});

/** OpenDocument v1.4 part 4, OASIS Standard of 6 October 2025, 5.5 and 6.4: examples in the text. */
test.each([
  ['=-3^2', 9],
  ['=2*-3^2', 18],
  ['=-5%', -0.05],
  ['=2*3%', 0.06],
  ['=1+2&3+4', '37'],
  ['=8/2/2', 2],
  ['=1/4&" in"', '0.25 in'],
])('F5 OpenFormula 1.4: %s is %s', (formula, expected) => {
  expect(value(formula)).toBe(expected);
});

test('division by zero is #DIV/0!, overflow and no real number are #NUM!', () => {
  expect(code(value('=1/0'))).toBe('#DIV/0!');
  expect(code(value('=0/0'))).toBe('#DIV/0!');
  expect(code(value('=0^-1'))).toBe('#DIV/0!');
  expect(code(value('=1E200*1E200'))).toBe('#NUM!');
  expect(code(value('=(-8)^0.5'))).toBe('#NUM!');
});

test('text in arithmetic is #VALUE!, a logical counts as 1 or 0, a blank as 0', () => {
  expect(code(value('="12"+1'))).toBe('#VALUE!');
  expect(applyBinary('+', true, 2)).toBe(3);
  expect(applyBinary('*', null, 2)).toBe(0);
  expect(applyBinary('&', null, 'a')).toBe('a');
  expect(applyUnary('-', true)).toBe(-1);
  expect(applyPercent(null)).toBe(0);
  expect(code(applyUnary('-', 'a'))).toBe('#VALUE!');
});

test('a sum or difference smaller than 1e-13 of the left operand is 0, a small true difference stays', () => {
  expect(value('=0.1+0.2-0.3')).toBe(0);
  expect(value('=1-1.00000000000001')).toBe(0);
  expect(value('=0.025021-0.025')).toBeCloseTo(0.000021, 12);
  expect(value('=0+1E-20')).toBe(1e-20);
});

test('comparisons are equal within 1e-13 of the larger value', () => {
  expect(value('=0.1+0.2=0.3')).toBe(true);
  expect(value('=6.6/2.2>=3')).toBe(true);
  expect(numberOrder(1, 1 + 2e-13)).toBe(-1);
  expect(numberOrder(1, 1 + 0.5e-13)).toBe(0);
  expect(numberOrder(NaN, 1)).toBeNaN();
});

test('OpenFormula order of types is number, text, logical; blanks take the type of their neighbour', () => {
  const sorted: readonly Scalar[] = [-1e300, 0, 1e300, '', 'a', 'B', false, true];
  sorted.forEach((a, i) =>
    sorted.forEach((b, j) => {
      expect(valueOrder(a, b)).toBe(Math.sign(i - j));
    }),
  );
  expect(valueOrder(null, 0)).toBe(0);
  expect(valueOrder(null, '')).toBe(0);
  expect(valueOrder(null, false)).toBe(0);
});

test('failures pass through every operator, the left one first', () => {
  const [a, b] = [failure('#N/A', 'one'), failure('#NUM!', 'two')];
  const operators: readonly BinaryOperator[] = [
    '+',
    '-',
    '*',
    '/',
    '^',
    '&',
    '=',
    '<>',
    '<',
    '<=',
    '>',
    '>=',
  ];
  for (const operator of operators) {
    expect(applyBinary(operator, a, b)).toBe(a);
    expect(applyBinary(operator, 1, b)).toBe(b);
  }
});

test('F7 F25 quantities and arrays have their SI values: 25.4 mm to the inch (ISO 80000-3), 60 s to the minute', () => {
  expect(value('=1 in/1 mm')).toBeCloseTo(25.4, 12);
  expect(value('=1 in')).toBe(0.0254);
  expect(value('=180 deg')).toBe(Math.PI);
  expect(value('=SUM({60;240|-100;0} mm/min)')).toBeCloseTo(200 / 60_000, 15);
});
