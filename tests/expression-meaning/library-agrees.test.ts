/** Another program's arithmetic as an oracle: a calculating library reads our formulas as text and must come to our values. */

import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { CellError, DetailedCellError, HyperFormula } from 'hyperformula';
import { expect, test } from 'vitest';
import { builtinTable } from '../../src/builtins/index.ts';
import { compileScalar, isFailure, print, singleValue } from '../../src/expression/index.ts';
import type { BinaryOperator, Node, Scalar } from '../../src/expression/index.ts';
import { libraryText } from './library-text.ts';

const SPAN = { from: 0, to: 0 };
const functions = builtinTable();

/** Functions for which a test case that the OpenFormula committee published (draft of 19 January 2010) finds the library wrong. */
const published: { readonly cases: readonly { readonly function: string; readonly library: string }[] } =
  JSON.parse(readFileSync(new URL('../references/openformula.json', import.meta.url), 'utf8'));
const deviating = new Set(
  published.cases.filter(({ library }) => library === 'deviates').map((each) => each.function),
);

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
  'RADIANS',
  'DEGREES',
  'NOT',
].filter((name) => !deviating.has(name));
const TWO_ARGUMENTS = ['ATAN2', 'POWER', 'AND', 'OR', 'XOR'].filter((name) => !deviating.has(name));
const ANY_ARGUMENTS = ['SUM', 'MIN', 'MAX', 'AVERAGE', 'PRODUCT', 'SUMSQ', 'MEDIAN', 'COUNT'].filter(
  (name) => !deviating.has(name),
);

/** Steps, where the last bit of an argument decides: compared for whole numbers only. */
const STEPS: readonly (readonly [name: string, arity: number])[] = (
  [
    ['EVEN', 1],
    ['ODD', 1],
    ['INT', 1],
    ['MOD', 2],
    ['QUOTIENT', 2],
    ['ROUND', 2],
    ['GCD', 2],
    ['LCM', 2],
  ] as const
).filter(([name]) => !deviating.has(name) && functions.has(name));

/** Plain cells A1 to A4. */
const CELLS = [12.5, 0, -3, 0.1] as const;

const library = HyperFormula.buildFromArray(
  CELLS.map((value) => [value]),
  { licenseKey: 'gpl-v3', useArrayArithmetic: true },
);

const valueIn = (node: Node): Scalar =>
  singleValue(
    compileScalar(node, {
      functions,
      slot: (reference) => (reference.type === 'cell' ? reference.row : CELLS.length),
    })([...CELLS, { grid: CELLS.map((value) => [value]) }]),
  );

function valueInLibrary(node: Node): unknown {
  const text = libraryText(node, {
    worksheet: () => undefined,
    name: ({ name }) => name,
    call: (name) => name,
  });
  return library.calculateFormula(`=${text}`, 0);
}

const number = (digits: string): Node => ({ type: 'number', digits, value: Number(digits), ...SPAN });
const corner = (row: number) => ({ column: 0, row, columnFixed: false, rowFixed: false });

const leaves: fc.Arbitrary<Node> = fc.oneof(
  fc.nat(30).map((whole) => number(String(whole))),
  fc.tuple(fc.nat(999), fc.integer({ min: 1, max: 999 })).map(([whole, part]) => number(`${whole}.${part}`)),
  fc.nat(CELLS.length - 1).map((row): Node => ({ type: 'cell', ...corner(row), ...SPAN })),
);
const range: Node = { type: 'range', start: corner(0), end: corner(CELLS.length - 1), ...SPAN };

const call = (name: string, args: readonly Node[]): Node => ({
  type: 'call',
  name,
  nameSpan: SPAN,
  args,
  ...SPAN,
});

const OPERATORS: readonly BinaryOperator[] = ['+', '-', '*', '/', '^', '=', '<>', '<', '<=', '>', '>='];

const formulas: fc.Arbitrary<Node> = fc.letrec<{ node: Node }>((tie) => ({
  node: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    leaves,
    fc
      .tuple(fc.constantFrom(...OPERATORS), tie('node'), tie('node'))
      .map(([operator, left, right]): Node => ({ type: 'binary', operator, left, right, ...SPAN })),
    fc
      .tuple(fc.constantFrom('-' as const, '+' as const), tie('node'))
      .map(([operator, operand]): Node => ({ type: 'unary', operator, operand, ...SPAN })),
    tie('node').map((operand): Node => ({ type: 'percent', operand, ...SPAN })),
    fc.tuple(fc.constantFrom(...ONE_ARGUMENT), tie('node')).map(([name, argument]) => call(name, [argument])),
    fc
      .tuple(fc.constantFrom(...TWO_ARGUMENTS), tie('node'), tie('node'))
      .map(([name, ...both]) => call(name, both)),
    fc
      .tuple(
        fc.constantFrom(...ANY_ARGUMENTS),
        fc.array(fc.oneof(tie('node'), fc.constant(range)), { minLength: 1, maxLength: 3 }),
      )
      .map(([name, args]) => call(name, args)),
    // The library is wrong about IF only where a branch is left out.
    fc.tuple(tie('node'), tie('node'), tie('node')).map((three) => call('IF', three)),
  ),
})).node;

const isError = (value: unknown): boolean =>
  value instanceof DetailedCellError || value instanceof CellError || Number.isNaN(value);

/** Doubles that are equal but for the rounding of what the library hands out. */
const agree = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b), 1e-3);

const kindOf = (value: unknown): string => (isError(value) ? 'error' : typeof value);

/** Both fail, or both come to the same. */
function compared(tree: Node): 'error' | 'number' | 'other' {
  const ours = valueIn(tree);
  const theirs = valueInLibrary(tree);
  const words = `${print(tree)}: ${JSON.stringify(ours)}, the library ${JSON.stringify(theirs)}`;
  if (isFailure(ours)) {
    expect(kindOf(theirs), words).toBe('error');
    return 'error';
  }
  if (typeof ours !== 'number' || typeof theirs !== 'number') {
    expect(theirs, words).toBe(ours);
    return 'other';
  }
  expect(agree(ours, theirs), words).toBe(true);
  return 'number';
}

/* Much longer runs meet what the library can not tell: poles of TAN, angles of some 1E5 rad, numbers below 1E-298. */
test('F5 arithmetic, comparisons and functions come to the values of a library that reads the formula as text', () => {
  const count = { error: 0, number: 0, other: 0 };
  fc.assert(
    fc.property(formulas, (tree) => {
      count[compared(tree)]++;
    }),
    { seed: 20_260_309, numRuns: 4000 },
  );
  expect(count.number).toBeGreaterThan(1500);
  expect(count.other).toBeGreaterThan(100);
  expect(count.error).toBeGreaterThan(100);
});

const whole = fc.integer({ min: -60, max: 60 }).map((value): Node => {
  const operand = number(String(Math.abs(value)));
  return value < 0 ? { type: 'unary', operator: '-', operand, ...SPAN } : operand;
});

test.each(STEPS)('F5 %s of whole numbers comes to the value of the library', (name, arity) => {
  fc.assert(
    fc.property(fc.array(whole, { minLength: arity, maxLength: arity }), (args) => {
      compared(call(name, args));
    }),
    { seed: 20_260_309, numRuns: 300 },
  );
});
