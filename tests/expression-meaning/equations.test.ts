import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  compileNumber,
  compileScalar,
  evaluateColumns,
  evaluateDecimal,
  numberFailure,
  singleValue,
} from '../../src/expression/index.ts';
import type { DecimalResult, Node, Scalar } from '../../src/expression/index.ts';
import { FUNCTIONS, treeOf } from './sample-notebook.ts';

const SEED = 20260309;

const nameIn = (values: ReadonlyMap<string, number>) => (node: Node) =>
  node.type === 'name' ? values.get(node.name) : undefined;

const decimal = (text: string, values: ReadonlyMap<string, number> = new Map()): DecimalResult =>
  evaluateDecimal(treeOf(text), { operand: nameIn(values) });

const digitsOf = (result: DecimalResult): string =>
  typeof result === 'object' && result !== null && 'digits' in result ? result.digits : String(result);

const numberIn = (result: DecimalResult): number =>
  typeof result === 'object' && result !== null && 'value' in result ? result.value : NaN;

const number = (text: string, values: Readonly<Record<string, number>> = {}): number =>
  compileNumber(treeOf(text), Object.keys(values))(Object.values(values));

/**
 * Constants as the On-Line Encyclopedia of Integer Sequences lists them (written from memory and compared with the
 * output of an arbitrary-precision library other than ours).
 */
const CONSTANTS: readonly (readonly [string, string, string])[] = [
  ['A000796', '=PI()', '3.141592653589793238462643383279502884197'],
  ['A001113', '=EXP(1)', '2.718281828459045235360287471352662497757'],
  ['A002193', '=SQRT(2)', '1.414213562373095048801688724209698078570'],
  ['A002162', '=LN(2)', '0.693147180559945309417232121458176568076'],
  ['A002392', '=LN(10)', '2.302585092994045684017991454684364207601'],
  ['A049469', '=SIN(1)', '0.841470984807896506652502321630298999623'],
  ['A049470', '=COS(1)', '0.540302305868139717400936607442976603732'],
  ['A049471', '=TAN(1)', '1.557407724654902230506974807458360173087'],
  ['A073000', '=ATAN(1/2)', '0.463647609000806116214256231461214402029'],
  ['A001622', '=(1+5^(1/2))/2', '1.618033988749894848204586834365638117720'],
];

test.each(CONSTANTS)('decimals agree with OEIS %s to 32 digits: %s', (_, formula, digits) => {
  const found = digitsOf(decimal(formula)).replace('.', '').replace(/^0+/, '');
  expect(found.slice(0, 32)).toBe(digits.replace('.', '').replace(/^0+/, '').slice(0, 32));
});

test.each(CONSTANTS)(
  'equations agree with OEIS %s to the last bits of a double: %s',
  (_, formula, digits) => {
    const expected = Number(digits);
    expect(Math.abs(number(formula) / expected - 1)).toBeLessThan(4e-16);
  },
);

test('sines of special angles are exact roots: 30 deg 1/2, 45 deg sqrt(2)/2, 60 deg sqrt(3)/2 (Euclid, Elements XIII)', () => {
  expect(numberIn(decimal('=SIN(30 deg)'))).toBe(0.5);
  expect(numberIn(decimal('=SIN(45 deg)-SQRT(2)/2'))).toBe(0);
  expect(numberIn(decimal('=ACOS(1/2)*3-PI()'))).toBe(0);
  expect(number('=SIN(30 deg)')).toBeCloseTo(0.5, 15);
  expect(number('=ASIN(1)')).toBeCloseTo(Math.PI / 2, 15);
});

/** Expressions over a, b and c whose values stay positive and well-conditioned. */
const { expression } = fc.letrec<{ expression: string }>((tie) => {
  const part = tie('expression');
  return {
    expression: fc.oneof(
      { maxDepth: 5, withCrossShrink: true },
      fc.constantFrom('a', 'b', 'c', '2', '0.75', 'PI()'),
      fc.tuple(part, fc.constantFrom('+', '*', '/'), part).map(([a, op, b]) => `(${a}${op}${b})`),
      fc.tuple(fc.constantFrom('SQRT', 'ATAN', 'ABS'), part).map(([f, a]) => `${f}(${a})`),
      part.map((a) => `EXP(ATAN(${a}))`),
      part.map((a) => `LN(1+ABS(${a}))`),
      part.map((a) => `SIN(ATAN(${a}))`),
      part.map((a) => `(${a})^0.5`),
      fc.tuple(fc.constantFrom('MIN', 'MAX', 'SUM'), part, part).map(([f, a, b]) => `${f}(${a};${b})`),
      fc.tuple(part, part, part).map(([a, b, c]) => `IF(${a}>${b};${c};1+${c})`),
    ),
  };
});

const positive = fc.double({ min: 0.01, max: 100, noNaN: true });

test('doubles agree with 34 digits within 1e-12 on random equations', () => {
  fc.assert(
    fc.property(expression, positive, positive, positive, (text, a, b, c) => {
      const exact = numberIn(decimal(`=${text}`, new Map(Object.entries({ a, b, c }))));
      fc.pre(exact > 1e-200 && exact < 1e200);
      expect(Math.abs(number(`=${text}`, { a, b, c }) / exact - 1)).toBeLessThan(1e-12);
    }),
    { seed: SEED, numRuns: 1500 },
  );
});

/** Expressions that may also fail, compare and join branches. */
const { anything } = fc.letrec<{ anything: string }>((tie) => {
  const part = tie('anything');
  return {
    anything: fc.oneof(
      { maxDepth: 4, withCrossShrink: true },
      fc.constantFrom('a', 'b', 'c', '0', '2', '(1 mm)', '5%', '"word"', 'TRUE'),
      fc
        .tuple(part, fc.constantFrom('+', '-', '*', '/', '^', '<', '>=', '=', '<>'), part)
        .map(([a, op, b]) => `(${a}${op}${b})`),
      fc.tuple(fc.constantFrom('SIN', 'SQRT', 'ABS', 'TEST.CHIP'), part).map(([f, a]) => `${f}(${a})`),
      part.map((a) => `-(${a})`),
      fc.tuple(part, part).map(([a, b]) => `IFERROR(${a};${b})`),
      fc.tuple(part, part, part).map(([a, b, c]) => `IF(${a};${b};${c})`),
      fc.tuple(part, part).map(([a, b]) => `MAX(${a};${b})`),
    ),
  };
});

const SAMPLES = 5;
const column = fc.array(fc.double({ min: -10, max: 10, noNaN: true }), {
  minLength: SAMPLES,
  maxLength: SAMPLES,
});

const asDouble = (value: Scalar): number =>
  typeof value === 'number' ? value : typeof value === 'boolean' ? Number(value) : NaN;

test('columns equal the scalar evaluation sample by sample', () => {
  fc.assert(
    fc.property(anything, column, column, (text, a, b) => {
      const tree = treeOf(`=${text}`);
      const operands = new Map<string, Float64Array | number>([
        ['a', Float64Array.from(a)],
        ['b', Float64Array.from(b)],
        ['c', 3],
      ]);
      const columns = evaluateColumns(tree, {
        samples: SAMPLES,
        functions: FUNCTIONS,
        operand: (node) => (node.type === 'name' ? operands.get(node.name) : undefined),
      });
      const scalar = compileScalar(tree, {
        functions: FUNCTIONS,
        slot: (node) => (node.type === 'name' ? ['a', 'b', 'c'].indexOf(node.name) : -1),
      });
      const expected = a.map((x, i) => asDouble(singleValue(scalar([x, b[i] ?? null, 3]))));
      expect([...columns].map((x) => x || 0)).toEqual(expected.map((x) => x || 0));
    }),
    { seed: SEED, numRuns: 2000 },
  );
});

test('columns tell why a sample has no number', () => {
  const reasons: string[] = [];
  const values = evaluateColumns(treeOf('=TEST.CHIP(x)*2'), {
    samples: 3,
    functions: FUNCTIONS,
    operand: () => Float64Array.from([0.1, -1, 0.3]),
    failed: (sample, { failure, message }) => reasons.push(`${sample}: ${failure} ${message}`),
  });
  expect(values).toEqual(Float64Array.from([0.2, NaN, 0.6]));
  expect(reasons).toEqual(['1: #NUM! feed must be above 0 mm']);
});

test('an equation computes only the branch that it takes', () => {
  expect(number('=IF(x>0;1/x;0)', { x: 0 })).toBe(0);
  expect(number('=IF(x>0;1/x;0)', { x: 4 })).toBe(0.25);
});

test('a division by zero stays a failure whatever follows, and its code is told from #NUM!', () => {
  const tree = treeOf('=1/(1/x)');
  expect(compileNumber(tree, ['x'])([0])).toBeNaN();
  expect(numberFailure(tree, ['x'], {}, [0]).failure).toBe('#DIV/0!');
  const root = treeOf('=SQRT(x)');
  expect(compileNumber(root, ['x'])([-1])).toBeNaN();
  expect(numberFailure(root, ['x'], {}, [-1]).failure).toBe('#NUM!');
  expect(number('=IF(SQRT(x)>1;1;2)', { x: -1 })).toBeNaN();
  expect(number('=1/EXP(x)', { x: 1000 })).toBeNaN();
});

test('E2 whole numbers missed by rounding are reached: 6.6 min / 2.2 min is 3', () => {
  expect(6.6 / 2.2).toBe(2.9999999999999996);
  expect(number('=FLOOR(a/b)', { a: 6.6, b: 2.2 })).toBe(3);
  expect(number('=INT(a/b)', { a: 6.6, b: 2.2 })).toBe(3);
  expect(number('=CEILING(a/b)', { a: 0.3, b: 0.1 })).toBe(3);
  expect(number('=FLOOR(a;b)', { a: 7, b: 2 })).toBe(6);
  expect(number('=INT(a)', { a: -2.5 })).toBe(-3);
  expect(
    numberIn(
      decimal(
        '=INT(a/b)',
        new Map([
          ['a', 6.6],
          ['b', 2.2],
        ]),
      ),
    ),
  ).toBe(3);
});

test('lists are folded, element by element where an expression stands in the fold', () => {
  const options = { lists: ['x', 'y'] };
  const run = (text: string, x: readonly number[], y: readonly number[] = [], k = 2): number =>
    compileNumber(treeOf(text), ['k'], options)([k], [x, y]);
  expect(run('=SUM(x)', [1, 2, 3.5])).toBe(6.5);
  expect(run('=SUM(x*y)', [1, 2, 3], [4, 5, 6])).toBe(32);
  expect(run('=SUMPRODUCT(x;y)', [1, 2, 3], [4, 5, 6])).toBe(32);
  expect(run('=SUM(k*x^2)+1', [1, 2, 3])).toBe(29);
  expect(run('=MAX(x)-MIN(x;k)', [5, 3, 9])).toBe(7);
  expect(run('=AVERAGE(x)*COUNT(x)', [5, 3, 9])).toBe(17);
  expect(run('=INDEX(x;k)', [5, 3, 9])).toBe(3);
  expect(run('=INDEX(x;k)', [5])).toBeNaN();
  expect(run('=SUM(x*y)', [1, 2, 3], [4, 5])).toBeNaN();
  expect(run('=SUM(x)', [])).toBe(0);
});

test('text parameters are compared by their words, a parameter left out is blank', () => {
  const words = new Map([['sense', ['down', 'up']]]);
  const sense = compileNumber(treeOf('=IF(sense="Up";1;-1)'), ['sense'], { words });
  expect(sense([1])).toBe(1);
  expect(sense([0])).toBe(-1);
  expect(() => compileNumber(treeOf('=sense="left"'), ['sense'], { words })).toThrow('no word "left"');
  const optional = compileNumber(treeOf('=IF(ISBLANK(e);0;e)'), ['e']);
  expect(optional([NaN])).toBe(0);
  expect(optional([2])).toBe(2);
});

test('logic of equations', () => {
  expect(number('=AND(a>1;a<3)', { a: 2 })).toBe(1);
  expect(number('=OR(a>2;a<1)', { a: 1.5 })).toBe(0);
  expect(number('=NOT(a=2)', { a: 2 })).toBe(0);
  expect(number('=XOR(a=2;TRUE)', { a: 2 })).toBe(0);
});

test('an equation with an unknown symbol or function is an error of its definition', () => {
  expect(() => number('=x+y', { x: 1 })).toThrow('no symbol y');
  expect(() => number('=UNKNOWN(x)', { x: 1 })).toThrow('no function UNKNOWN');
  const chip = compileNumber(treeOf('=2*TEST.CHIP(x)'), ['x'], { functions: FUNCTIONS });
  expect(chip([3])).toBe(6);
  expect(chip([-3])).toBeNaN();
});
