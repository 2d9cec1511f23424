import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { builtinTable } from '../../src/builtins/index.ts';
import {
  compileNumber,
  compileScalar,
  evaluateColumns,
  evaluateDecimal,
  inferType,
  singleValue,
} from '../../src/expression/index.ts';
import { CONTEXT, treeOf } from './sample-notebook.ts';

const functions = builtinTable();
const SEED = 20260310;

const ONE_ARGUMENT = [
  'ABS',
  'SQRT',
  'SIN',
  'COS',
  'TAN',
  'ASIN',
  'ACOS',
  'ATAN',
  'SINH',
  'COSH',
  'TANH',
  'EXP',
  'LN',
  'LOG10',
  'SIGN',
  'INT',
  'RADIANS',
  'DEGREES',
  'SUM',
  'MIN',
  'MAX',
  'AVERAGE',
  'PRODUCT',
  'SUMSQ',
  'NOT',
] as const;
const TWO_ARGUMENTS = [
  'ATAN2',
  'POWER',
  'LOG',
  'SUM',
  'MIN',
  'MAX',
  'AVERAGE',
  'PRODUCT',
  'SUMSQ',
  'AND',
  'OR',
  'XOR',
] as const;

/** Doubles that are equal but for the last bits, or both no numbers. */
function agree(a: number, b: number): boolean {
  if (Number.isNaN(a) || Number.isNaN(b)) return Number.isNaN(a) && Number.isNaN(b);
  return a === b || Math.abs(a - b) <= 1e-14 * Math.max(Math.abs(a), Math.abs(b));
}

/** The same call in a cell, in an equation, by columns and with 34 digits. */
function meanings(text: string, x: number, y: number): readonly number[] {
  const tree = treeOf(text);
  const cell = singleValue(
    compileScalar(tree, { functions, slot: (node) => (node.type === 'name' && node.name === 'x' ? 0 : 1) })([
      x,
      y,
    ]),
  );
  const equation = compileNumber(tree, ['x', 'y'])([x, y]);
  const [column] = evaluateColumns(tree, {
    samples: 1,
    functions,
    operand: (node) => Float64Array.of(node.type === 'name' && node.name === 'x' ? x : y),
  });
  const exact = evaluateDecimal(tree, {
    operand: (node) => (node.type === 'name' && node.name === 'x' ? x : y),
  });
  const decimal =
    typeof exact === 'object' && exact !== null && 'value' in exact
      ? exact.value
      : typeof exact === 'boolean'
        ? Number(exact)
        : NaN;
  const double = typeof cell === 'number' ? cell : typeof cell === 'boolean' ? Number(cell) : NaN;
  return [double, Number.isFinite(equation) ? equation : NaN, column ?? NaN, decimal];
}

test.each([...ONE_ARGUMENT.map((name) => `=${name}(x)`), ...TWO_ARGUMENTS.map((name) => `=${name}(x;y)`)])(
  '%s means the same in a cell, an equation, a column and with 34 digits',
  (text) => {
    const value = fc.oneof(fc.double({ min: -20, max: 20, noNaN: true }), fc.integer({ min: -3, max: 3 }));
    fc.assert(
      fc.property(value, value, (x, y) => {
        fc.pre(Math.abs(x) > 1e-9 || x === 0);
        fc.pre(Math.abs(y) > 1e-9 || y === 0);
        const [cell = NaN, ...others] = meanings(text, x || 0, y || 0);
        for (const [way, other] of others.entries()) {
          expect(
            agree(cell, other),
            `${text} x ${x} y ${y}: cell ${cell}, ${['equation', 'column', 'decimals'][way]} ${other}`,
          ).toBe(true);
        }
      }),
      { seed: SEED, numRuns: 150 },
    );
  },
);

const kindOf = (text: string): string => {
  const { type } = inferType(treeOf(text), { ...CONTEXT, functions });
  return type.type === 'number' ? type.kind.name : type.type === 'failed' ? type.failure.failure : type.type;
};

test('F13 F17 the rules hold through the built-in functions', () => {
  expect(kindOf('=SQRT(B3^2)')).toBe('length');
  expect(kindOf('=SQRT(B3*B3/B4^2)')).toBe('speed');
  expect(kindOf('=MAX(B3;0)')).toBe('length');
  expect(kindOf('=IF(B8;B3;"")')).toBe('length');
  expect(kindOf('=IF(B8;B3;B4)')).toBe('#UNIT!');
  expect(kindOf('=IFERROR(MAX(B3;B4);0)')).toBe('#UNIT!');
  expect(kindOf('=ATAN2(B3;B3)')).toBe('angle');
  expect(kindOf('=ROUND(B3/1 mm;1)*1 mm')).toBe('length');
  expect(kindOf('=ROUND(B3;1)')).toBe('#UNIT!');
  expect(kindOf('=EXP(B4)')).toBe('#UNIT!');
});
