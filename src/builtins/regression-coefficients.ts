/** Fits with one or several variables: LINEST, LOGEST, TREND and GROWTH, with the dimensions of their coefficients. */

import { failure } from '../expression/index.ts';
import type {
  ArgumentType,
  Failure,
  Grid,
  NumberType,
  Scalar,
  Value,
  ValueType,
} from '../expression/index.ts';
import { deviationSquares, leastSquares } from '../numeric/index.ts';
import type { Fit } from '../numeric/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { list, logical, optional } from './parameter.ts';
import {
  NEUTRAL,
  PLAIN_NUMBER,
  gridOf,
  isPlain,
  refused,
  said,
  shared,
  sharedOrPlain,
  singles,
  sizeOf,
  slopeType,
} from './type-rules.ts';

const line = ['regression', 'line', 'trend', 'fit'];

/** Observations of a fit: y and, row by row, the values of each variable. */
interface Data {
  readonly y: readonly number[];
  readonly x: readonly (readonly number[])[];
}

const allNumbers = (cells: readonly Scalar[]): cells is readonly number[] =>
  cells.every((cell) => typeof cell === 'number');

/** Rows of variables, however the table lies: as many observations as y has, along its direction. */
function observations(x: Grid, count: number, upright: boolean): readonly (readonly number[])[] | undefined {
  const { grid } = x;
  const width = grid[0]?.length ?? 0;
  const cells = grid.flat();
  if (!allNumbers(cells)) return undefined;
  if (upright && grid.length === count) return grid.map((row) => row.map(Number));
  if (!upright && width === count) {
    return Array.from({ length: count }, (_, j) => grid.map((row) => Number(row[j])));
  }
  return cells.length === count ? cells.map((cell) => [Number(cell)]) : undefined;
}

function dataOf(y: Grid, x: Grid | undefined): Data | Failure {
  const values = y.grid.flat();
  if (!allNumbers(values)) return failure('#VALUE!', 'a fit needs a number in every cell');
  // A row of y has its variables in rows, whatever their number; a column, or one value, has them in columns.
  const upright = y.grid.length > 1 || (y.grid[0]?.length ?? 0) <= 1;
  const rows = x ? observations(x, values.length, upright) : values.map((_, i) => [i + 1]);
  return rows
    ? { y: values, x: rows }
    : failure('#VALUE!', 'the ranges of x and y do not fit together, or have cells without a number');
}

function fitted({ y, x }: Data, withConstant: boolean): Fit | Failure {
  const rows = withConstant ? x.map((row) => [1, ...row]) : x;
  return (
    leastSquares(rows, y) ?? failure('#NUM!', 'too few observations, or variables that depend on each other')
  );
}

/** Slopes from the last variable to the first, then the constant. */
const inOrder = (coefficients: readonly number[], withConstant: boolean): number[] =>
  withConstant
    ? [...coefficients.slice(1).toReversed(), coefficients[0]!]
    : [...coefficients.toReversed(), 0];

/** A statistic that needs degrees of freedom. */
const safe = (value: number): number | Failure =>
  Number.isFinite(value) ? value : failure('#NUM!', 'no degrees of freedom left');

function statistics(fit: Fit, { y }: Data, withConstant: boolean): (number | Failure)[][] {
  const slots = fit.coefficients.length + (withConstant ? 0 : 1);
  const total = withConstant ? deviationSquares(y) : y.reduce((sum, value) => sum + value * value, 0);
  const explained = total - fit.residualSum;
  const variables = slots - 1;
  const variance = fit.residualSum / fit.freedom;
  const none = failure('#N/A', 'nothing stands here');
  const filled = (...cells: (number | Failure)[]) => [
    ...cells,
    ...Array.from({ length: slots - cells.length }, () => none),
  ];
  const errors = fit.unscaledCovariance.map((row, i) => Math.sqrt(row[i]! * variance));
  const ordered = inOrder(errors, withConstant).map(safe);
  return [
    withConstant ? ordered : [...ordered.slice(0, -1), none],
    filled(explained / total, safe(Math.sqrt(variance))),
    filled(safe(explained / variables / variance), fit.freedom),
    filled(explained, fit.residualSum),
  ];
}

const isOff = (arg: ArgumentType | undefined): boolean =>
  arg === undefined || /^(|FALSE(\(\))?|0)$/i.test(arg.text.trim());

/** Types of the variables in the order of the coefficients' columns. */
function variableTypes(y: ArgumentType, x: ArgumentType | undefined): readonly NumberType[] {
  if (!x) return [PLAIN_NUMBER];
  const [rows, columns] = sizeOf(x.type);
  const [height] = sizeOf(y.type);
  const types = singles(x.type).map((type) => (type.type === 'number' ? type : PLAIN_NUMBER));
  if (height > 1) return height === rows ? types.toReversed() : types.slice(0, 1);
  return Array.from({ length: columns === sizeOf(y.type)[1] ? rows : 1 }, () => types[0] ?? PLAIN_NUMBER);
}

function linestType(call: 'LINEST' | 'LOGEST', args: readonly ArgumentType[]): ValueType {
  const [y, x, , withStatistics] = args;
  if (!y) return NEUTRAL;
  const type = sharedOrPlain(call, [y]);
  if (type.type === 'failed') return type;
  const variables = variableTypes(y, x);
  if (call === 'LOGEST' && x && !variables.every(isPlain)) {
    return refused(`LOGEST takes plain x values; ${said(x, variables.find((one) => !isPlain(one))!.kind)}`);
  }
  const slopes = variables.map((variable) => (call === 'LOGEST' ? PLAIN_NUMBER : slopeType(type, variable)));
  const columns = [...slopes, type];
  const failed = columns.find((column) => column.type === 'failed');
  if (failed) return failed;
  if (isOff(withStatistics)) return { type: 'grid', columns, rows: 1 };
  if (!columns.every(isPlain) || !variables.every(isPlain)) {
    return refused(
      `${call} with statistics mixes dimensions in a column: use SLOPE, INTERCEPT, STEYX and RSQ, or plain numbers`,
    );
  }
  return { type: 'grid', columns, rows: 5 };
}

const linest = (
  name: 'LINEST' | 'LOGEST',
  section: string,
  summary: string,
  given: string,
  gives: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'regression',
    section,
    summary,
    searchWords: [...line, 'coefficients', 'multiple'],
    takes: [list('y'), optional(list('x')), optional(logical('constant')), optional(logical('statistics'))],
    spills: true,
    gives: (args) => linestType(name, args),
    evaluate([y, x, withConstant = true, withStatistics = false]): Value {
      const raw = dataOf(y, x);
      if ('failure' in raw) return raw;
      const logs = name === 'LOGEST';
      if (logs && raw.y.some((value) => value <= 0)) return failure('#NUM!', 'LOGEST needs y values above 0');
      const data = logs ? { ...raw, y: raw.y.map(Math.log) } : raw;
      const fit = fitted(data, withConstant);
      if ('failure' in fit) return fit;
      const first = inOrder(fit.coefficients, withConstant);
      const top: Scalar[] = logs ? first.map(Math.exp) : first;
      return { grid: withStatistics ? [top, ...statistics(fit, data, withConstant)] : [top] };
    },
    examples: [example(given, gives, 'by hand')],
  });

function trendType(call: 'TREND' | 'GROWTH', args: readonly ArgumentType[]): ValueType {
  const [y, x, wanted] = args;
  if (!y) return NEUTRAL;
  const type = sharedOrPlain(call, [y]);
  if (type.type === 'failed') return type;
  if (x && wanted) {
    const both = shared(call, [x, wanted]);
    const single = variableTypes(y, x).length === 1;
    if (single && both?.type === 'failed') return both;
  }
  if (call === 'GROWTH' && x) {
    const odd = variableTypes(y, x).find((variable) => !isPlain(variable));
    if (odd) return refused(`GROWTH takes plain x values; ${said(x, odd.kind)}`);
  }
  const shape = wanted ?? x ?? y;
  const [rows, columns] = sizeOf(shape.type);
  if (variableTypes(y, x).length === 1) return gridOf(type, rows, columns);
  return sizeOf(y.type)[0] > 1 ? gridOf(type, rows, 1) : gridOf(type, 1, columns);
}

const trend = (
  name: 'TREND' | 'GROWTH',
  section: string,
  summary: string,
  given: string,
  gives: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'regression',
    section,
    summary,
    searchWords: [...line, 'predict', 'forecast'],
    takes: [list('y'), optional(list('x')), optional(list('new x')), optional(logical('constant'))],
    spills: true,
    gives: (args) => trendType(name, args),
    evaluate([y, x, wanted, withConstant = true]): Value {
      const raw = dataOf(y, x);
      if ('failure' in raw) return raw;
      const logs = name === 'GROWTH';
      if (logs && raw.y.some((value) => value <= 0)) return failure('#NUM!', 'GROWTH needs y values above 0');
      const fit = fitted(logs ? { ...raw, y: raw.y.map(Math.log) } : raw, withConstant);
      if ('failure' in fit) return fit;
      const predicted = (row: readonly number[]): number => {
        const terms = withConstant ? [1, ...row] : row;
        const value = terms.reduce((sum, term, i) => sum + term * fit.coefficients[i]!, 0);
        return logs ? Math.exp(value) : value;
      };
      const variables = raw.x[0]?.length ?? 1;
      const target = wanted ?? x;
      if (!target)
        return { grid: y.grid.length > 1 ? raw.x.map((row) => [predicted(row)]) : [raw.x.map(predicted)] };
      const cells = target.grid.flat();
      if (!allNumbers(cells)) return failure('#VALUE!', 'the new x values need a number in every cell');
      if (variables === 1)
        return { grid: target.grid.map((row) => row.map((cell) => predicted([Number(cell)]))) };
      const upright = y.grid.length > 1;
      const count = upright ? target.grid.length : (target.grid[0]?.length ?? 0);
      const rows = observations(target, count, upright);
      if (!rows || rows[0]?.length !== variables)
        return failure('#VALUE!', 'the new x values have another number of variables');
      return { grid: upright ? rows.map((row) => [predicted(row)]) : [rows.map(predicted)] };
    },
    examples: [example(given, gives, 'by hand')],
  });

export const FITS: readonly BuiltinDefinition[] = [
  linest(
    'LINEST',
    '6.18.41',
    'The coefficients of a linear fit: slopes, last variable first, then the constant',
    'INDEX(LINEST({3;5;7}; {1;2;3}); 1; 1)',
    '2',
  ),
  linest('LOGEST', '6.18.42', 'The coefficients of y = b m^x', 'INDEX(LOGEST({2;4;8}; {1;2;3}); 1; 1)', '2'),
  trend('TREND', '6.18.79', 'Values of a linear fit at new x values', 'TREND({3;5;7}; {1;2;3}; 4)', '9'),
  trend(
    'GROWTH',
    '6.18.35',
    'Values of the fit y = b m^x at new x values',
    'GROWTH({2;4;8}; {1;2;3}; 4)',
    '16',
  ),
];
