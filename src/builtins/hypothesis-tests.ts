/** Tests of hypotheses: the probability that two samples, or a sample and a figure, differ by chance. */

import { failure } from '../expression/index.ts';
import type { ArgumentType, Failure, ValueType } from '../expression/index.ts';
import { chiSquare, fisher, mean, normal, sampleVariance, student, sum } from '../numeric/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { list, number, optional, plainList, whole } from './parameter.ts';
import { numbersOf, pairs } from './sequence.ts';
import { PLAIN_NUMBER, sharedOrPlain } from './type-rules.ts';

const pure =
  (name: string, count: number) =>
  (args: readonly ArgumentType[]): ValueType => {
    const type = sharedOrPlain(name, args.slice(0, count));
    return type.type === 'failed' ? type : PLAIN_NUMBER;
  };

const few = (): Failure => failure('#DIV/0!', 'each sample needs at least 2 numbers');

function paired(a: readonly number[], b: readonly number[]): number | Failure {
  const differences = a.map((x, i) => x - b[i]!);
  if (differences.length < 2) return few();
  const t = Math.abs(mean(differences)) / Math.sqrt(sampleVariance(differences) / differences.length);
  return Number.isFinite(t)
    ? student(differences.length - 1).above(t)
    : failure('#DIV/0!', 'all differences are equal');
}

function unpaired(a: readonly number[], b: readonly number[], equalSpread: boolean): number | Failure {
  if (a.length < 2 || b.length < 2) return few();
  const [va, vb] = [sampleVariance(a) / a.length, sampleVariance(b) / b.length];
  const pooled =
    (sampleVariance(a) * (a.length - 1) + sampleVariance(b) * (b.length - 1)) / (a.length + b.length - 2);
  const error = equalSpread ? pooled * (1 / a.length + 1 / b.length) : va + vb;
  const freedom = equalSpread
    ? a.length + b.length - 2
    : (va + vb) ** 2 / (va ** 2 / (a.length - 1) + vb ** 2 / (b.length - 1));
  const t = Math.abs(mean(a) - mean(b)) / Math.sqrt(error);
  return Number.isFinite(t) ? student(freedom).above(t) : failure('#DIV/0!', 'the samples do not scatter');
}

const chiTest = (name: string): BuiltinDefinition =>
  builtin({
    name,
    group: 'statistics',
    section: '6.18.15',
    summary: 'The probability that counts differ from expected counts by chance alone',
    searchWords: ['chi-square', 'test', 'expected', 'significance'],
    takes: [plainList('found'), plainList('expected')],
    gives: () => PLAIN_NUMBER,
    evaluate([found, expected]) {
      const both = pairs(found.grid, expected.grid);
      if ('failure' in both) return both;
      const { xs, ys } = both;
      const [rows, columns] = [found.grid.length, found.grid[0]?.length ?? 1];
      const freedom = rows > 1 && columns > 1 ? (rows - 1) * (columns - 1) : rows * columns - 1;
      if (freedom < 1 || ys.some((y) => y <= 0))
        return failure('#NUM!', 'expected counts must be above 0, and two at least');
      return chiSquare(freedom).above(sum(xs.map((x, i) => (x - ys[i]!) ** 2 / ys[i]!)));
    },
    examples: [example(`${name}({10;20}; {10;20})`, '1', 'by hand: no difference')],
  });

export const HYPOTHESIS_TESTS: readonly BuiltinDefinition[] = [
  chiTest('LEGACY.CHITEST'),
  builtin({
    name: 'FTEST',
    group: 'statistics',
    section: '6.18.30',
    summary: 'The probability that two samples differ in their variance by chance alone',
    searchWords: ['F', 'test', 'variance', 'significance'],
    takes: [list('a'), list('b')],
    gives: pure('FTEST', 2),
    evaluate([first, second]) {
      const [a, b] = [numbersOf(first.grid), numbersOf(second.grid)];
      if (a.length < 2 || b.length < 2) return few();
      const ratio = sampleVariance(a) / sampleVariance(b);
      if (!Number.isFinite(ratio)) return failure('#DIV/0!', 'a sample does not scatter');
      const d = fisher(a.length - 1, b.length - 1);
      return Math.min(1, 2 * Math.min(d.below(ratio), d.above(ratio)));
    },
    examples: [example('FTEST({1;2;3}; {3;2;1})', '1', 'by hand: equal variances')],
  }),
  builtin({
    name: 'TTEST',
    group: 'statistics',
    section: '6.18.81',
    summary: 'The probability that two samples differ in their mean by chance alone',
    searchWords: ['t', 'test', 'mean', 'significance', 'compare'],
    takes: [list('a'), list('b'), whole('tails'), whole('type')],
    gives: pure('TTEST', 2),
    evaluate([first, second, tails, type]) {
      if (tails !== 1 && tails !== 2) return failure('#NUM!', 'tails are 1 or 2');
      let result: number | Failure;
      if (type === 1) {
        const both = pairs(first.grid, second.grid);
        if ('failure' in both) return both;
        result = paired(both.xs, both.ys);
      } else if (type === 2 || type === 3) {
        result = unpaired(numbersOf(first.grid), numbersOf(second.grid), type === 2);
      } else {
        return failure('#NUM!', 'the type is 1 (pairs), 2 (equal spread) or 3 (unequal spread)');
      }
      return typeof result === 'number' ? result * tails : result;
    },
    examples: [example('TTEST({1;2;3}; {3;2;1}; 2; 2)', '1', 'by hand: equal means')],
  }),
  builtin({
    name: 'ZTEST',
    group: 'statistics',
    section: '6.18.87',
    summary: 'The probability of a sample mean at least as large, the true mean being given',
    searchWords: ['z', 'test', 'mean', 'significance'],
    takes: [list('values'), number('mean'), optional(number('standard deviation'))],
    gives: pure('ZTEST', 3),
    evaluate([values, centre, spread]) {
      const numbers = numbersOf(values.grid);
      const s = spread ?? Math.sqrt(sampleVariance(numbers));
      if (numbers.length === 0 || !(s > 0))
        return failure('#DIV/0!', 'the sample is empty or does not scatter');
      return normal().above((mean(numbers) - centre) / (s / Math.sqrt(numbers.length)));
    },
    examples: [example('ZTEST({1;2;3}; 2)', '0.5', 'by hand: the mean is 2')],
  }),
];
