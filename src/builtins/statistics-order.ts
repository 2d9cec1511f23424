/** Order statistics: ranks, percentiles, largest and smallest, frequencies. */

import { asNumber, failure, isFailure, isGrid, mapValue, numberOrder } from '../expression/index.ts';
import type { ArgumentType, Failure, Scalar, Value, ValueType } from '../expression/index.ts';
import { ascending, quantile, sum } from '../numeric/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { anything, list, number, optional, plain, plainList, whole } from './parameter.ts';
import { numbersOf, pairs } from './sequence.ts';
import { PLAIN_NUMBER, gridOf, sharedOrPlain, sizeOf } from './type-rules.ts';

const values = (args: readonly ArgumentType[], name: string): ValueType =>
  sharedOrPlain(name, args.slice(0, 1));
const pure = (args: readonly ArgumentType[], name: string): ValueType => {
  const type = sharedOrPlain(name, args.slice(0, 2));
  return type.type === 'failed' ? type : PLAIN_NUMBER;
};

/** LARGE and SMALL: position k from one end; several positions give several values. */
const fromEnd = (
  name: 'LARGE' | 'SMALL',
  section: string,
  words: string,
  given: string,
  gives: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'statistics',
    section,
    summary: `The k-th ${words} number of a range`,
    searchWords: [words, 'rank', 'order'],
    takes: [list('values'), anything('k')],
    spills: true,
    gives(args) {
      const position = args[1]!;
      const type = sharedOrPlain(name, args.slice(0, 1));
      if (type.type === 'failed' || position.type.type !== 'grid') return type;
      const [rows, columns] = sizeOf(position.type);
      return gridOf(type, rows, columns);
    },
    evaluate([{ grid }, k]): Value {
      const sorted = ascending(numbersOf(grid));
      const at = (position: Scalar): number | Failure => {
        const n = asNumber(position);
        if (typeof n !== 'number') return n;
        const place = Math.ceil(n);
        const value = place >= 1 ? sorted[name === 'SMALL' ? place - 1 : sorted.length - place] : undefined;
        return value ?? failure('#NUM!', `k is ${n}, the range has ${sorted.length} numbers`);
      };
      if (!isFailure(k) && isGrid(k)) return mapValue(k, at);
      return at(k);
    },
    examples: [example(given, gives, 'by hand')],
  });

const fraction = (p: number): Failure | undefined =>
  p < 0 || p > 1 ? failure('#NUM!', `the fraction ${p} lies outside 0 to 1`) : undefined;

/** Fraction of the values below x, straight lines between neighbours; cut after `digits` digits. */
function percentRank(numbers: readonly number[], x: number, digits: number | undefined): number | Failure {
  const sorted = ascending(numbers);
  const last = sorted.length - 1;
  if (last < 0 || x < sorted[0]! || x > sorted[last]!)
    return failure('#N/A', 'the value lies outside the range');
  if (last === 0) return 1;
  const exact = sorted.findIndex((value) => numberOrder(value, x) === 0);
  const above = sorted.findIndex((value) => value > x);
  const position =
    exact >= 0 ? exact : above - 1 + (x - sorted[above - 1]!) / (sorted[above]! - sorted[above - 1]!);
  const rank = position / last;
  return digits === undefined ? rank : Math.floor(rank * 10 ** digits + 1e-9) / 10 ** digits;
}

export const ORDER: readonly BuiltinDefinition[] = [
  fromEnd('LARGE', '6.18.40', 'largest', 'LARGE({3;1;2}; 1)', '3'),
  fromEnd('SMALL', '6.18.70', 'smallest', 'SMALL({3;1;2}; 1)', '1'),
  builtin({
    name: 'PERCENTILE',
    group: 'statistics',
    section: '6.18.57',
    summary: 'The value below which a fraction of the numbers lies',
    searchWords: ['quantile', 'percent', 'fraction'],
    takes: [list('values'), plain('fraction')],
    gives: (args) => values(args, 'PERCENTILE'),
    evaluate([{ grid }, p]) {
      const numbers = numbersOf(grid);
      if (numbers.length === 0) return failure('#NUM!', 'PERCENTILE finds no numbers');
      return fraction(p) ?? quantile(numbers, p);
    },
    examples: [example('PERCENTILE({1;2;3;4;5}; 0.25)', '2', 'by hand')],
  }),
  builtin({
    name: 'QUARTILE',
    group: 'statistics',
    section: '6.18.64',
    summary: 'The quartile 0 to 4 of the numbers: 2 is the median',
    searchWords: ['quantile', 'quarter'],
    takes: [list('values'), whole('quartile')],
    gives: (args) => values(args, 'QUARTILE'),
    evaluate([{ grid }, quartile]) {
      const numbers = numbersOf(grid);
      if (numbers.length === 0) return failure('#NUM!', 'QUARTILE finds no numbers');
      if (quartile < 0 || quartile > 4) return failure('#NUM!', 'the quartile lies from 0 to 4');
      return quantile(numbers, quartile / 4);
    },
    examples: [example('QUARTILE({1;2;3;4;5}; 3)', '4', 'by hand')],
  }),
  builtin({
    name: 'RANK',
    group: 'statistics',
    section: '6.18.65',
    summary: 'The place of a value among the numbers, from the largest or (order 1) the smallest',
    searchWords: ['place', 'position', 'order'],
    takes: [number('value'), list('values'), optional(whole('order'))],
    gives: (args) => pure(args, 'RANK'),
    evaluate([x, { grid }, order = 0]) {
      const numbers = numbersOf(grid);
      if (!numbers.some((value) => numberOrder(value, x) === 0)) {
        return failure('#N/A', 'the value is not among the numbers');
      }
      const wanted = order === 0 ? 1 : -1;
      return 1 + numbers.filter((value) => numberOrder(value, x) === wanted).length;
    },
    examples: [example('RANK(2; {1;2;3;4})', '3', 'by hand')],
  }),
  builtin({
    name: 'PERCENTRANK',
    group: 'statistics',
    section: '6.18.58',
    summary: 'The place of a value among the numbers as a fraction from 0 to 1',
    searchWords: ['place', 'percent', 'fraction'],
    takes: [list('values'), number('value'), optional(whole('digits'))],
    gives: (args) => pure(args, 'PERCENTRANK'),
    evaluate: ([{ grid }, x, digits]) => percentRank(numbersOf(grid), x, digits),
    examples: [example('PERCENTRANK({1;2;3;4;5}; 2)', '0.25', 'by hand')],
  }),
  builtin({
    name: 'FREQUENCY',
    group: 'statistics',
    section: '6.18.29',
    summary: 'How many numbers fall into each class up to its upper bound, and how many above',
    searchWords: ['histogram', 'classes', 'distribution'],
    takes: [list('values'), list('upper bounds')],
    gives(args) {
      const type = pure(args, 'FREQUENCY');
      if (type.type === 'failed') return type;
      const [rows, columns] = sizeOf(args[1]!.type);
      return gridOf(PLAIN_NUMBER, rows * columns + 1, 1);
    },
    spills: true,
    evaluate([{ grid }, bounds]) {
      const limits = numbersOf(bounds.grid);
      const sorted = ascending(limits);
      const inClass = sorted.map(() => 0);
      let above = 0;
      for (const x of numbersOf(grid)) {
        const at = sorted.findIndex((limit) => numberOrder(x, limit) <= 0);
        if (at < 0) above += 1;
        else inClass[at] = inClass[at]! + 1;
      }
      const rows = limits.map((limit) => {
        const at = sorted.indexOf(limit);
        const found = inClass[at] ?? 0;
        inClass[at] = 0;
        return [found];
      });
      return { grid: [...rows, [above]] };
    },
    examples: [example('SUM(FREQUENCY({1;2;3;4;5}; {2;4}))', '5', 'by hand: 2 + 2 + 1')],
  }),
  builtin({
    name: 'PROB',
    group: 'statistics',
    section: '6.18.63',
    summary: 'The probability of the values from a lower to an upper limit',
    searchWords: ['probability', 'chance'],
    takes: [list('values'), plainList('probabilities'), number('from'), optional(number('to'))],
    gives(args) {
      const type = sharedOrPlain('PROB', [args[0]!, ...args.slice(2)]);
      return type.type === 'failed' ? type : PLAIN_NUMBER;
    },
    evaluate([x, p, from, to = from]) {
      const both = pairs(x.grid, p.grid);
      if ('failure' in both) return both;
      const { xs, ys } = both;
      if (ys.some((y) => y < 0 || y > 1) || Math.abs(sum(ys) - 1) > 1e-7) {
        return failure('#NUM!', 'probabilities lie from 0 to 1 and have the sum 1');
      }
      const [low, high] = from <= to ? [from, to] : [to, from];
      return sum(ys.filter((_, i) => xs[i]! >= low && xs[i]! <= high));
    },
    examples: [example('PROB({0;1;2;3}; {0.2;0.3;0.1;0.4}; 2; 3)', '0.5', 'by hand: 0.1 + 0.4')],
  }),
];
