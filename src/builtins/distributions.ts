/** Distribution functions. A value and its mean, spread or scale share a dimension; a density has the inverse one. */

import { isFailure } from '../expression/index.ts';
import type { ArgumentType, Value, ValueType } from '../expression/index.ts';
import { exponential, normal } from '../numeric/index.ts';
import { DIMENSIONLESS, multiplied } from '../quantity/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { DISTRIBUTION_ROWS, above0, at, outside, probability } from './distributions.table.ts';
import type { DistributionRow } from './distributions.table.ts';
import { number, optional, plain } from './parameter.ts';
import { PLAIN_NUMBER, isPlain, powerType, refused, said, sharedOrPlain, singles } from './type-rules.ts';

/** Whether the argument "cumulative" is on: TRUE unless it says otherwise; undefined where that can not be read off. */
function isCumulative(arg: ArgumentType | undefined): boolean | undefined {
  const written = arg?.text.trim().toUpperCase() ?? '';
  if (written === '' || /^(TRUE(\(\))?|1)$/.test(written)) return true;
  return /^(FALSE(\(\))?|0)$/.test(written) ? false : undefined;
}

/** The dimension of a probability or of a density. */
function probabilityType(
  call: string,
  quantities: readonly ArgumentType[],
  cumulative: ArgumentType | undefined,
): ValueType {
  const type = sharedOrPlain(call, quantities);
  if (type.type === 'failed' || isPlain(type)) return type.type === 'failed' ? type : PLAIN_NUMBER;
  const on = isCumulative(cumulative);
  if (on === undefined) return refused(`${call} of a quantity needs "cumulative" written as TRUE or FALSE`);
  return on ? PLAIN_NUMBER : powerType(type, -1);
}

function resultType(row: DistributionRow, args: readonly ArgumentType[]): ValueType {
  const quantities = (row.quantities ?? []).flatMap((i) => args[i] ?? []);
  return row.inverse
    ? sharedOrPlain(row.name, quantities)
    : probabilityType(row.name, quantities, args[row.takes.indexOf('cumulative')]);
}

const distribution = (row: DistributionRow): BuiltinDefinition =>
  builtin({
    name: row.name,
    group: 'distributions',
    section: row.section,
    summary: row.summary,
    searchWords: ['probability', 'distribution', ...row.words],
    takes: row.takes.map((name, i) => {
      const parameter = row.quantities?.includes(i) ? number(name) : plain(name);
      return i >= (row.needs ?? row.takes.length) ? optional(parameter) : parameter;
    }),
    gives: (args) => resultType(row, args),
    evaluate: (given) => row.f(given),
    examples: [example(row.given, row.gives, row.source)],
  });

export const DISTRIBUTIONS: readonly BuiltinDefinition[] = [
  ...DISTRIBUTION_ROWS.map(distribution),
  builtin({
    name: 'EXPONDIST',
    group: 'distributions',
    section: '6.18.21',
    summary: 'The exponential distribution with a rate',
    searchWords: ['exponential', 'life', 'failure rate'],
    takes: [number('x'), number('rate'), optional(plain('cumulative'))],
    gives(args) {
      const [x, rate] = args.map((arg) => singles(arg.type)[0]);
      const types = [x, rate].map((type) => (type?.type === 'number' ? type : PLAIN_NUMBER));
      if (multiplied(types[0]!.kind.dimension, types[1]!.kind.dimension) !== DIMENSIONLESS) {
        return refused(
          `EXPONDIST: the rate is one over x; ${said(args[0]!, types[0]!.kind)}, ${said(args[1]!, types[1]!.kind)}`,
        );
      }
      return probabilityType('EXPONDIST', args.slice(0, 1), args[2]);
    },
    evaluate: ([x, rate, cumulative]) =>
      above0({ 'the rate': rate }) ?? (x < 0 ? 0 : at(exponential(rate), x, cumulative)),
    examples: [example('EXPONDIST(1; 1; TRUE)', '0.632121')],
  }),
  builtin({
    name: 'CONFIDENCE',
    group: 'distributions',
    section: '6.18.16',
    summary: 'Half the confidence interval of a mean, the standard deviation being known',
    searchWords: ['confidence', 'interval', 'error margin'],
    takes: [plain('alpha'), number('standard deviation'), plain('sample size')],
    gives: (args) => sharedOrPlain('CONFIDENCE', [args[1]!]),
    evaluate([alpha, spread, n]): Value {
      if (n < 1) return outside('the sample size starts at 1');
      const half = probability(alpha, () => normal().quantile(1 - alpha / 2));
      return (
        above0({ 'the standard deviation': spread }) ??
        (isFailure(half) ? half : (half * spread) / Math.sqrt(Math.trunc(n)))
      );
    },
    examples: [example('CONFIDENCE(0.05; 1; 100)', '0.195996398')],
  }),
];
