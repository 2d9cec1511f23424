/** Sums and products: a sum keeps the dimension, a product multiplies as many as there are. */

import { failure } from '../expression/index.ts';
import type {
  ArgumentType,
  FailedType,
  Grid,
  NumberType,
  Scalar,
  Value,
  ValueType,
} from '../expression/index.ts';
import { sum } from '../numeric/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { list, plain } from './parameter.ts';
import { plainSequence, sequence } from './sequence.ts';
import {
  NEUTRAL,
  PLAIN_NUMBER,
  difference,
  isPlain,
  noArithmetic,
  numberWith,
  powerType,
  refused,
  sharedOrPlain,
  singles,
  sizeOf,
  timesType,
} from './type-rules.ts';
import { DIMENSIONLESS, multiplied } from '../quantity/index.ts';

/** The product of all numbers; ranges of quantities only without blanks and texts, so that the number of factors is known. */
function productType(args: readonly ArgumentType[]): ValueType {
  let dimension = DIMENSIONLESS;
  for (const arg of args) {
    const { type } = arg;
    for (const one of singles(type)) {
      const refusal = one.type === 'number' ? noArithmetic(one) : undefined;
      if (refusal) return refusal;
    }
    if (type.type !== 'grid') {
      if (type.type === 'number') dimension = multiplied(dimension, type.kind.dimension);
      continue;
    }
    if (singles(type).every(isPlain)) continue;
    if (type.blanks?.length) return refused(`PRODUCT: value missing: ${type.blanks[0]}`, '#VALUE!');
    for (const column of type.columns) {
      if (column.type !== 'number') continue;
      for (let row = 0; row < type.rows; row += 1) dimension = multiplied(dimension, column.kind.dimension);
    }
  }
  return numberWith(dimension);
}

/** Column by column the product of the dimensions; all products alike. */
export function sumOfProductsType(call: string, args: readonly ArgumentType[]): ValueType {
  const [first] = args;
  if (!first) return PLAIN_NUMBER;
  const [rows, columns] = sizeOf(first.type);
  for (const arg of args) {
    if (sizeOf(arg.type).some((size, i) => size !== [rows, columns][i])) {
      return refused(`${call}: ${first.text.trim()} and ${arg.text.trim()} differ in their size`, '#VALUE!');
    }
  }
  let result: NumberType | undefined;
  for (let j = 0; j < columns; j += 1) {
    const product = args
      .map((arg) => singles(arg.type)[j] ?? NEUTRAL)
      .reduce<NumberType | FailedType>(
        (so, type) => (type.type === 'number' && so.type === 'number' ? timesType(so, type) : so),
        PLAIN_NUMBER,
      );
    if (product.type === 'failed') return product;
    if (result && result.kind.dimension !== product.kind.dimension) {
      return refused(`${call}: the products of the columns differ in their dimension`);
    }
    result = product;
  }
  return args.length === 1 ? difference(sharedOrPlain(call, args)) : (result ?? PLAIN_NUMBER);
}

const asFactor = (cell: Scalar): number => (typeof cell === 'number' ? cell : 0);

/** Sum over the cells of two tables of the same size. */
const overPairs =
  (term: (x: number, y: number) => number) =>
  ([x, y]: readonly [Grid, Grid]): Value => {
    const [a, b] = [x.grid, y.grid];
    if (a.length !== b.length || a[0]?.length !== b[0]?.length) {
      return failure('#VALUE!', 'the ranges differ in their size');
    }
    const terms = a.flatMap((row, i) =>
      row.flatMap((cell, j) => {
        const other = b[i]?.[j];
        return typeof cell === 'number' && typeof other === 'number' ? [term(cell, other)] : [];
      }),
    );
    return terms.length > 0 ? sum(terms) : failure('#N/A', 'no pair of numbers in the ranges');
  };

const squareSum = (
  name: string,
  section: string,
  words: string,
  term: (x: number, y: number) => number,
  given: string,
  gives: string,
  how: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'matrices',
    section,
    summary: `The sum of ${words}, pair by pair`,
    searchWords: ['squares', 'sum', 'pairs'],
    takes: [list('x'), list('y')],
    gives(args) {
      const type = difference(sharedOrPlain(name, args));
      return type.type === 'failed' ? type : powerType(type, 2);
    },
    evaluate: overPairs(term),
    examples: [example(given, gives, how)],
  });

export const SUMS: readonly BuiltinDefinition[] = [
  builtin({
    name: 'SUM',
    group: 'mathematics',
    section: '6.16.61',
    summary: 'The sum of all numbers',
    searchWords: ['add', 'total', 'plus'],
    takes: [],
    rest: sequence('values'),
    leastRest: 1,
    cellsAsRanges: true,
    gives: (args) => difference(sharedOrPlain('SUM', args)),
    evaluate: (_, lists) => sum(lists.flat()),
    examples: [example('SUM({1;2;3}; 4)', '10', 'by hand')],
  }),
  builtin({
    name: 'PRODUCT',
    group: 'mathematics',
    section: '6.16.47',
    summary: 'The product of all numbers',
    searchWords: ['multiply', 'times'],
    takes: [],
    rest: sequence('values'),
    leastRest: 1,
    cellsAsRanges: true,
    gives: productType,
    evaluate(_, lists) {
      const numbers = lists.flat();
      return numbers.length > 0 ? numbers.reduce((product, x) => product * x, 1) : 0;
    },
    examples: [example('PRODUCT(TRUE; 2; 3)', '6')],
  }),
  builtin({
    name: 'SUMSQ',
    group: 'mathematics',
    section: '6.16.64',
    summary: 'The sum of the squares',
    searchWords: ['squares', 'sum'],
    takes: [],
    rest: sequence('values'),
    leastRest: 1,
    cellsAsRanges: true,
    gives(args) {
      const type = sharedOrPlain('SUMSQ', args);
      return type.type === 'failed' ? type : powerType(type, 2);
    },
    evaluate: (_, lists) => sum(lists.flat().map((x) => x * x)),
    examples: [example('SUMSQ(TRUE; 2; 3)', '14')],
  }),
  builtin({
    name: 'SUMPRODUCT',
    group: 'matrices',
    section: '6.5.6',
    summary: 'The sum of the products of ranges, cell by cell',
    searchWords: ['weighted sum', 'scalar product', 'multiply', 'sum'],
    takes: [],
    rest: list('values'),
    leastRest: 1,
    gives: (args) => sumOfProductsType('SUMPRODUCT', args),
    evaluate(_, lists) {
      const [first] = lists;
      if (!first) return 0;
      const rows = first.grid.length;
      const columns = first.grid[0]?.length ?? 0;
      if (lists.some(({ grid }) => grid.length !== rows || grid[0]?.length !== columns)) {
        return failure('#VALUE!', 'the ranges differ in their size');
      }
      return sum(
        first.grid.flatMap((row, i) =>
          row.map((_cell, j) =>
            lists.reduce((product, { grid }) => product * asFactor(grid[i]?.[j] ?? null), 1),
          ),
        ),
      );
    },
    examples: [example('SUMPRODUCT({1;2;3}; {4;5;6})', '32', 'by hand: 4 + 10 + 18')],
  }),
  squareSum(
    'SUMX2MY2',
    '6.5.7',
    'differences of squares',
    (x, y) => x * x - y * y,
    'SUMX2MY2({3;4}; {1;2})',
    '20',
    'by hand: 9 - 1 + 16 - 4',
  ),
  squareSum(
    'SUMX2PY2',
    '6.5.8',
    'sums of squares',
    (x, y) => x * x + y * y,
    'SUMX2PY2({3;4}; {1;2})',
    '30',
    'by hand: 9 + 1 + 16 + 4',
  ),
  squareSum(
    'SUMXMY2',
    '6.5.9',
    'squares of differences',
    (x, y) => (x - y) ** 2,
    'SUMXMY2({3;4}; {1;2})',
    '8',
    'by hand: 4 + 4',
  ),
  builtin({
    name: 'SERIESSUM',
    group: 'mathematics',
    section: '6.16.53',
    summary: 'A power series: the sum of coefficients times rising powers',
    searchWords: ['polynomial', 'power series', 'coefficients'],
    takes: [plain('x'), plain('first power'), plain('step'), plainSequence('coefficients')],
    gives: () => PLAIN_NUMBER,
    evaluate: ([x, first, step, coefficients]) =>
      sum(coefficients.map((factor, i) => factor * x ** (first + i * step))),
    examples: [example('SERIESSUM(2; 0; 1; {1;2;3})', '17', 'by hand: 1 + 4 + 12')],
  }),
];
