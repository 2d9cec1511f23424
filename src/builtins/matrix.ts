/** Matrix functions: product, inverse, determinant, transpose, unit matrix. */

import { failure } from '../expression/index.ts';
import type {
  ArgumentType,
  Failure,
  Grid,
  NumberType,
  ScalarType,
  Value,
  ValueType,
} from '../expression/index.ts';
import { determinant, identityMatrix, inverseMatrix, matrixProduct, transposed } from '../numeric/index.ts';
import type { Matrix } from '../numeric/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { list, whole } from './parameter.ts';
import {
  NEUTRAL,
  PLAIN_NUMBER,
  gridOf,
  powerType,
  refused,
  sharedOrPlain,
  singles,
  sizeOf,
  timesType,
} from './type-rules.ts';

/** All cells as numbers. */
function matrixOf({ grid }: Grid): Matrix | Failure {
  const rows = grid.map((row) => row.filter((cell) => typeof cell === 'number'));
  return rows.every((row, i) => row.length === grid[i]!.length)
    ? rows
    : failure('#VALUE!', 'a matrix has a number in every cell');
}

const isMatrix = (value: Matrix | Failure): value is Matrix => Array.isArray(value);

const square = (call: string, arg: ArgumentType | undefined): ValueType | undefined => {
  const [rows, columns] = sizeOf(arg?.type ?? NEUTRAL);
  return rows === columns ? undefined : refused(`${call} takes a square matrix`, '#VALUE!');
};

const numberType = (type: ScalarType | undefined): NumberType =>
  type?.type === 'number' ? type : PLAIN_NUMBER;

/** Column j of the product: all a(k) * b(j) alike. */
function productType(args: readonly ArgumentType[]): ValueType {
  const [a, b] = args;
  if (!a || !b) return NEUTRAL;
  const [rows, inner] = sizeOf(a.type);
  const [height] = sizeOf(b.type);
  if (inner !== height) {
    return refused(
      `MMULT: ${a.text.trim()} has ${inner} columns, ${b.text.trim()} has ${height} rows`,
      '#VALUE!',
    );
  }
  const left = sharedOrPlain('MMULT', [a]);
  if (left.type === 'failed') return left;
  const columns = singles(b.type).map((type) => timesType(left, numberType(type)));
  return rows === 1 && columns.length === 1 ? columns[0]! : { type: 'grid', columns, rows };
}

const LARGEST_UNIT_MATRIX = 64;

export const MATRICES: readonly BuiltinDefinition[] = [
  builtin({
    name: 'MDETERM',
    group: 'matrices',
    section: '6.5.2',
    summary: 'The determinant of a square matrix',
    searchWords: ['determinant', 'matrix'],
    takes: [list('matrix')],
    gives(args) {
      const type = sharedOrPlain('MDETERM', args);
      return (
        square('MDETERM', args[0]) ??
        (type.type === 'failed' ? type : powerType(type, sizeOf(args[0]!.type)[0]))
      );
    },
    evaluate([grid]) {
      const a = matrixOf(grid);
      return isMatrix(a) ? (determinant(a) ?? failure('#VALUE!', 'MDETERM takes a square matrix')) : a;
    },
    examples: [example('MDETERM({4;7|2;6})', '10', 'by hand: 24 - 14')],
  }),
  builtin({
    name: 'MINVERSE',
    group: 'matrices',
    section: '6.5.3',
    summary: 'The inverse of a square matrix',
    searchWords: ['inverse', 'matrix', 'equations'],
    takes: [list('matrix')],
    spills: true,
    gives(args) {
      const type = sharedOrPlain('MINVERSE', args);
      const [rows, columns] = sizeOf(args[0]!.type);
      return (
        square('MINVERSE', args[0]) ??
        (type.type === 'failed' ? type : gridOf(powerType(type, -1), rows, columns))
      );
    },
    evaluate([grid]): Value {
      const a = matrixOf(grid);
      if (!isMatrix(a)) return a;
      const inverse = inverseMatrix(a);
      if (inverse === undefined) return failure('#VALUE!', 'MINVERSE takes a square matrix');
      return inverse === 'singular' ? failure('#NUM!', 'the matrix has no inverse') : { grid: inverse };
    },
    examples: [example('INDEX(MINVERSE({4;7|2;6}); 1; 1)', '0.6', 'by hand: 6 / 10')],
  }),
  builtin({
    name: 'MMULT',
    group: 'matrices',
    section: '6.5.4',
    summary: 'The product of two matrices',
    searchWords: ['product', 'matrix', 'multiply'],
    takes: [list('a'), list('b')],
    spills: true,
    gives: productType,
    evaluate([left, right]): Value {
      const a = matrixOf(left);
      if (!isMatrix(a)) return a;
      const b = matrixOf(right);
      if (!isMatrix(b)) return b;
      const product = matrixProduct(a, b);
      return product
        ? { grid: product }
        : failure('#VALUE!', 'columns of the first differ from rows of the second');
    },
    examples: [example('MMULT({1;2}; {3|4})', '11', 'by hand: 3 + 8')],
  }),
  builtin({
    name: 'MUNIT',
    group: 'matrices',
    section: '6.5.5',
    summary: 'The unit matrix of a size',
    searchWords: ['identity', 'unit', 'matrix'],
    takes: [whole('size')],
    spills: true,
    gives(args) {
      const type = singles(args[0]!.type)[0];
      const size = type?.type === 'number' ? type.literal : undefined;
      if (size === undefined) return refused('MUNIT needs its size as a written number', '#VALUE!');
      if (!(size >= 1 && size <= LARGEST_UNIT_MATRIX))
        return refused(`the size lies from 1 to ${LARGEST_UNIT_MATRIX}`, '#VALUE!');
      return gridOf(PLAIN_NUMBER, Math.trunc(size), Math.trunc(size));
    },
    evaluate: ([size]): Value =>
      size >= 1 && size <= LARGEST_UNIT_MATRIX
        ? { grid: identityMatrix(size) }
        : failure('#VALUE!', `the size lies from 1 to ${LARGEST_UNIT_MATRIX}`),
    examples: [example('SUM(MUNIT(3))', '3', 'by hand')],
  }),
  builtin({
    name: 'TRANSPOSE',
    group: 'matrices',
    section: '6.5.10',
    summary: 'Rows become columns',
    searchWords: ['rows', 'columns', 'flip', 'matrix'],
    takes: [list('range')],
    spills: true,
    gives(args) {
      const [rows, columns] = sizeOf(args[0]!.type);
      const types = singles(args[0]!.type);
      if (types.every(({ type }) => type !== 'number')) return gridOf(types[0] ?? NEUTRAL, columns, rows);
      return gridOf(sharedOrPlain('TRANSPOSE', args), columns, rows);
    },
    evaluate: ([{ grid }]): Value => ({ grid: transposed(grid) }),
    examples: [example('INDEX(TRANSPOSE({1;2;3}); 2; 1)', '2', 'by hand')],
  }),
];
