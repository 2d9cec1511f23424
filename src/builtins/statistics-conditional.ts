/** Counting, and sums and averages of the cells that meet criteria. */

import { failure, isFailure, isGrid } from '../expression/index.ts';
import type { ArgumentType, Failure, Grid, Scalar, Value, ValueType } from '../expression/index.ts';
import { mean, sum } from '../numeric/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition, Group } from './builtin-definition.ts';
import { criterion, criterionRefusal } from './criterion.ts';
import { anyList, anything, optional } from './parameter.ts';
import { PLAIN_NUMBER, difference, sharedOrPlain } from './type-rules.ts';

const single = (value: Value): Scalar => {
  if (isFailure(value) || !isGrid(value)) return value;
  return value.grid.length === 1 && value.grid[0]?.length === 1
    ? (value.grid[0][0] ?? null)
    : failure('#VALUE!', 'a range stands where one criterion is needed');
};

const asGrid = (value: Value): Grid => (!isFailure(value) && isGrid(value) ? value : { grid: [[value]] });

/** Which cells, counted row by row, meet all pairs of a range and a criterion. */
function met(pairs: readonly (readonly [Grid, Value])[]): boolean[] | Failure {
  const [first] = pairs;
  if (!first) return failure('#VALUE!', 'a range and a criterion are needed');
  const rows = first[0].grid.length;
  const columns = first[0].grid[0]?.length ?? 0;
  let result: boolean[] = Array.from({ length: rows * columns }, () => true);
  for (const [range, wanted] of pairs) {
    const value = single(wanted);
    if (isFailure(value)) return value;
    if (range.grid.length !== rows || range.grid[0]?.length !== columns) {
      return failure('#VALUE!', 'the ranges differ in their size');
    }
    const holds = criterion(value);
    const cells = range.grid.flat();
    result = result.map((so, i) => so && holds(cells[i] ?? null));
  }
  return result;
}

/** The numbers of a range at the cells that meet the criteria; a failure among them passes on. */
function chosen(values: Grid, held: readonly boolean[]): number[] | Failure {
  const cells = values.grid.flat();
  if (cells.length !== held.length) return failure('#VALUE!', 'the ranges differ in their size');
  const kept = cells.filter((_, i) => held[i]);
  return kept.find((cell) => isFailure(cell)) ?? kept.filter((cell) => typeof cell === 'number');
}

const pairsOf = (values: readonly Value[]): (readonly [Grid, Value])[] =>
  Array.from({ length: Math.ceil(values.length / 2) }, (_, i) => [
    asGrid(values[2 * i] ?? null),
    values[2 * i + 1] ?? failure('#VALUE!', 'a criterion is missing'),
  ]);

function pairsRefusal(call: string, args: readonly ArgumentType[]): ValueType | undefined {
  for (let i = 0; i + 1 < args.length; i += 2) {
    const refusal = criterionRefusal(call, args[i]!, args[i + 1]!);
    if (refusal) return refusal;
  }
  return undefined;
}

type Reduction = (xs: readonly number[]) => number | Failure;

const averaged: Reduction = (xs) =>
  xs.length > 0 ? mean(xs) : failure('#DIV/0!', 'no number meets the criteria');

/** SUMIF and AVERAGEIF: one range, one criterion, and perhaps another range to take the values from. */
const oneCriterion = (
  name: string,
  section: string,
  group: Group,
  summary: string,
  words: readonly string[],
  reduce: Reduction,
  keeps: boolean,
  given: string,
  gives: string,
): BuiltinDefinition =>
  builtin({
    name,
    group,
    section,
    summary,
    searchWords: [...words, 'condition', 'criterion', 'if'],
    takes: [anyList('range'), anything('criterion'), optional(anyList('values'))],
    gives(args) {
      const refusal = criterionRefusal(name, args[0]!, args[1]!);
      if (refusal) return refusal;
      const type = sharedOrPlain(name, [args[2] ?? args[0]!]);
      return keeps ? type : difference(type);
    },
    evaluate([range, wanted, values]) {
      const held = met([[range, wanted]]);
      if (!Array.isArray(held)) return held;
      const numbers = chosen(values ?? range, held);
      return Array.isArray(numbers) ? reduce(numbers) : numbers;
    },
    examples: [example(given, gives, 'by hand')],
  });

/** SUMIFS and its kin: values first, then pairs of a range and a criterion. */
const manyCriteria = (
  name: string,
  section: string,
  group: Group,
  summary: string,
  words: readonly string[],
  reduce: Reduction,
  keeps: boolean,
  given: string,
  gives: string,
): BuiltinDefinition =>
  builtin({
    name,
    group,
    section,
    summary,
    searchWords: [...words, 'conditions', 'criteria', 'if'],
    takes: [anyList('values')],
    rest: anything('range; criterion'),
    leastRest: 2,
    gives(args) {
      const refusal = pairsRefusal(name, args.slice(1));
      if (refusal) return refusal;
      const type = sharedOrPlain(name, args.slice(0, 1));
      return keeps ? type : difference(type);
    },
    evaluate([values], rest) {
      const held = met(pairsOf(rest));
      if (!Array.isArray(held)) return held;
      const numbers = chosen(values, held);
      return Array.isArray(numbers) ? reduce(numbers) : numbers;
    },
    examples: [example(given, gives, 'by hand')],
  });

const count = (
  name: string,
  section: string,
  summary: string,
  words: readonly string[],
  counts: (value: Scalar, inRange: boolean) => boolean,
  given: string,
  gives: string,
  source?: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'statistics',
    section,
    summary,
    searchWords: ['how many', 'number of', ...words],
    takes: [],
    rest: anything('values'),
    leastRest: 1,
    cellsAsRanges: true,
    gives: () => PLAIN_NUMBER,
    evaluate: (_, values) =>
      sum(
        values.map((value) => {
          const inRange = !isFailure(value) && isGrid(value);
          return (inRange ? value.grid.flat() : [value]).filter((cell) => counts(cell, inRange)).length;
        }),
      ),
    examples: [example(given, gives, source)],
  });

export const CONDITIONAL: readonly BuiltinDefinition[] = [
  count(
    'COUNT',
    '6.13.6',
    'How many numbers there are',
    ['numbers'],
    (value, inRange) => typeof value === 'number' || (!inRange && typeof value === 'boolean'),
    'COUNT(1; 2; 3)',
    '3',
  ),
  count(
    'COUNTA',
    '6.13.7',
    'How many values there are, blanks left out',
    ['values', 'filled cells'],
    (value) => value !== null,
    'COUNTA("1"; 2; 1/0)',
    '3',
  ),
  count(
    'COUNTBLANK',
    '6.13.8',
    'How many cells of a range are empty',
    ['blank', 'empty'],
    (value) => value === null || value === '',
    'COUNTBLANK("")',
    '1',
    'by hand',
  ),
  builtin({
    name: 'COUNTIF',
    group: 'statistics',
    section: '6.13.9',
    summary: 'How many cells meet a criterion',
    searchWords: ['how many', 'condition', 'criterion'],
    takes: [anyList('range'), anything('criterion')],
    gives: (args) => criterionRefusal('COUNTIF', args[0]!, args[1]!) ?? PLAIN_NUMBER,
    evaluate([range, wanted]) {
      const held = met([[range, wanted]]);
      return Array.isArray(held) ? held.filter(Boolean).length : held;
    },
    examples: [example('COUNTIF({1;2;3;4}; ">=3")', '2', 'by hand')],
  }),
  builtin({
    name: 'COUNTIFS',
    group: 'statistics',
    section: '6.13.10',
    summary: 'How many rows meet all criteria',
    searchWords: ['how many', 'conditions', 'criteria'],
    takes: [],
    rest: anything('range; criterion'),
    leastRest: 2,
    gives: (args) => pairsRefusal('COUNTIFS', args) ?? PLAIN_NUMBER,
    evaluate(_, rest) {
      const held = met(pairsOf(rest));
      return Array.isArray(held) ? held.filter(Boolean).length : held;
    },
    examples: [example('COUNTIFS({1;2;3;4}; ">=2"; {5;6;7;8}; "<8")', '2', 'by hand')],
  }),
  oneCriterion(
    'SUMIF',
    '6.16.62',
    'mathematics',
    'The sum of the numbers that meet a criterion',
    ['sum', 'total'],
    sum,
    false,
    'SUMIF({1;2;3;4}; ">=3")',
    '7',
  ),
  oneCriterion(
    'AVERAGEIF',
    '6.18.5',
    'statistics',
    'The mean of the numbers that meet a criterion',
    ['mean', 'average'],
    averaged,
    true,
    'AVERAGEIF({1;2;3;4}; ">=3")',
    '3.5',
  ),
  manyCriteria(
    'SUMIFS',
    '6.16.63',
    'mathematics',
    'The sum of the numbers whose rows meet all criteria',
    ['sum', 'total'],
    sum,
    false,
    'SUMIFS({1;2;3;4}; {5;6;7;8}; "<8"; {1;1;0;0}; 1)',
    '3',
  ),
  manyCriteria(
    'AVERAGEIFS',
    '6.18.6',
    'statistics',
    'The mean of the numbers whose rows meet all criteria',
    ['mean', 'average'],
    averaged,
    true,
    'AVERAGEIFS({1;2;3;4}; {5;6;7;8}; "<8")',
    '2',
  ),
  manyCriteria(
    'MAXIFS',
    'not in OpenFormula: as AVERAGEIFS',
    'statistics',
    'The largest number whose row meets all criteria',
    ['maximum', 'largest'],
    (xs) => xs.reduce((most, x) => Math.max(most, x), xs[0] ?? 0),
    true,
    'MAXIFS({1;2;3;4}; {5;6;7;8}; "<8")',
    '3',
  ),
  manyCriteria(
    'MINIFS',
    'not in OpenFormula: as AVERAGEIFS',
    'statistics',
    'The smallest number whose row meets all criteria',
    ['minimum', 'smallest'],
    (xs) => xs.reduce((least, x) => Math.min(least, x), xs[0] ?? 0),
    true,
    'MINIFS({1;2;3;4}; {5;6;7;8}; ">5")',
    '2',
  ),
];
