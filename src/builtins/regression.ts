/** Straight lines and curves through data, with the dimensions of their coefficients. */

import { failure, isFailure } from '../expression/index.ts';
import type { ArgumentType, Failure, NumberType, ValueType } from '../expression/index.ts';
import { correlation, deviationProducts, deviationSquares, mean } from '../numeric/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { list, number } from './parameter.ts';
import { pairs } from './sequence.ts';
import { PLAIN_NUMBER, difference, slopeType, shared, sharedOrPlain, timesType } from './type-rules.ts';

type Named = (xs: number[], ys: number[]) => number | Failure;
type TypeRule = (y: NumberType, x: NumberType) => ValueType;

/** Types of the two ranges, each of one dimension. */
function ofBoth(call: string, args: readonly ArgumentType[], rule: TypeRule): ValueType {
  const y = sharedOrPlain(call, args.slice(0, 1));
  const x = sharedOrPlain(call, args.slice(1, 2));
  if (y.type === 'failed') return y;
  return x.type === 'failed' ? x : rule(y, x);
}

const slopeOf: Named = (xs, ys) => {
  const width = deviationSquares(xs);
  if (xs.length < 2 || width === 0) return failure('#DIV/0!', 'the x values do not differ');
  return deviationProducts(xs, ys) / width;
};

const interceptOf: Named = (xs, ys) => {
  const slope = slopeOf(xs, ys);
  return typeof slope === 'number' ? mean(ys) - slope * mean(xs) : slope;
};

const correlated: Named = (xs, ys) => {
  const r = correlation(xs, ys);
  return Number.isFinite(r)
    ? Math.max(-1, Math.min(1, r))
    : failure('#DIV/0!', 'the values of a range do not differ');
};

const standardError: Named = (xs, ys) => {
  if (xs.length < 3) return failure('#DIV/0!', 'STEYX needs at least 3 pairs');
  const width = deviationSquares(xs);
  if (width === 0) return failure('#DIV/0!', 'the x values do not differ');
  const left = deviationSquares(ys) - deviationProducts(xs, ys) ** 2 / width;
  return Math.sqrt(Math.max(0, left) / (xs.length - 2));
};

const squared: Named = (xs, ys) => {
  const r = correlated(xs, ys);
  return typeof r === 'number' ? r * r : r;
};

const ofPairs = (
  name: string,
  section: string,
  summary: string,
  words: readonly string[],
  f: Named,
  rule: TypeRule,
  given: string,
  gives: string,
  names: readonly [string, string] = ['y', 'x'],
): BuiltinDefinition =>
  builtin({
    name,
    group: 'regression',
    section,
    summary,
    searchWords: words,
    takes: [list(names[0]), list(names[1])],
    gives: (args) => ofBoth(name, args, rule),
    evaluate([y, x]) {
      const both = pairs(x.grid, y.grid);
      if ('failure' in both) return both;
      return both.xs.length > 0
        ? f(both.xs, both.ys)
        : failure('#DIV/0!', `${name} finds no pairs of numbers`);
    },
    examples: [example(given, gives, 'by hand')],
  });

const line = ['regression', 'line', 'trend', 'fit'];

export const REGRESSION: readonly BuiltinDefinition[] = [
  ofPairs(
    'SLOPE',
    '6.18.69',
    'The slope of the straight line through the data',
    line,
    slopeOf,
    slopeType,
    'SLOPE({3;5;7}; {1;2;3})',
    '2',
  ),
  ofPairs(
    'INTERCEPT',
    '6.18.38',
    'The y at x = 0 of the straight line through the data',
    line,
    interceptOf,
    (y) => y,
    'INTERCEPT({3;5;7}; {1;2;3})',
    '1',
  ),
  ofPairs(
    'STEYX',
    '6.18.76',
    'The standard error of y about the straight line',
    line,
    standardError,
    (y) => difference(y),
    'STEYX({3;5;7}; {1;2;3})',
    '0',
  ),
  ofPairs(
    'RSQ',
    '6.18.66',
    'The squared correlation: the share of the scatter that the line explains',
    [...line, 'R squared'],
    squared,
    () => PLAIN_NUMBER,
    'RSQ({3;5;7}; {1;2;3})',
    '1',
  ),
  ofPairs(
    'CORREL',
    '6.18.17',
    'The correlation of two ranges, -1 to 1',
    ['correlation', 'relation'],
    correlated,
    () => PLAIN_NUMBER,
    'CORREL({3;5;7}; {1;2;3})',
    '1',
    ['a', 'b'],
  ),
  ofPairs(
    'PEARSON',
    '6.18.56',
    'The correlation of two ranges, -1 to 1',
    ['correlation', 'relation'],
    correlated,
    () => PLAIN_NUMBER,
    'PEARSON({3;5;7}; {3;2;1})',
    '-1',
    ['a', 'b'],
  ),
  ofPairs(
    'COVAR',
    '6.18.18',
    'The mean product of deviations of two ranges',
    ['covariance', 'relation'],
    (xs, ys) => deviationProducts(xs, ys) / xs.length,
    (y, x) => timesType(y, x),
    'COVAR({1;3}; {1;3})',
    '1',
    ['a', 'b'],
  ),
  builtin({
    name: 'FORECAST',
    group: 'regression',
    section: '6.18.28',
    summary: 'The y at an x on the straight line through the data',
    searchWords: [...line, 'predict'],
    takes: [number('x'), list('ys'), list('xs')],
    gives(args) {
      const [at, ys, xs] = args;
      const x = at && xs ? shared('FORECAST', [xs, at]) : undefined;
      return x?.type === 'failed' ? x : sharedOrPlain('FORECAST', ys ? [ys] : []);
    },
    evaluate([x, ys, xs]) {
      const both = pairs(xs.grid, ys.grid);
      if ('failure' in both) return both;
      const slope = slopeOf(both.xs, both.ys);
      return isFailure(slope) ? slope : mean(both.ys) + slope * (x - mean(both.xs));
    },
    examples: [example('FORECAST(4; {3;5;7}; {1;2;3})', '9', 'by hand')],
  }),
];
