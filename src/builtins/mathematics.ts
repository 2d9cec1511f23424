/** Elementary mathematics with its dimensions: roots halve, powers multiply by a constant, logarithms take plain numbers (F17). */

import { failure } from '../expression/index.ts';
import type { ArgumentType, Failure, NumberType, ValueType } from '../expression/index.ts';
import { fifteenDigits, floored } from '../numeric/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { number, optional, plain } from './parameter.ts';
import {
  PLAIN_NUMBER,
  isPlain,
  numberOf,
  powerType,
  refused,
  said,
  sharedOrPlain,
  singles,
} from './type-rules.ts';

const tooLow = (words: string): Failure => failure('#NUM!', words);

const typeAt = (args: readonly ArgumentType[], index: number): NumberType => {
  const arg = args[index];
  const type = arg && singles(arg.type)[0];
  return type?.type === 'number' ? type : PLAIN_NUMBER;
};

/** The dimension of a power: of a quantity only with an exponent that is known beforehand. */
function powerOf(args: readonly ArgumentType[]): ValueType {
  const base = typeAt(args, 0);
  if (isPlain(base)) return PLAIN_NUMBER;
  const exponent = typeAt(args, 1);
  return exponent.literal === undefined
    ? refused(`POWER of a quantity needs a constant exponent; ${said(args[0]!, base.kind)}`)
    : powerType(base, exponent.literal);
}

const ofPlain = (
  name: string,
  section: string,
  summary: string,
  searchWords: readonly string[],
  f: (x: number) => number | Failure,
  given: string,
  gives: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'mathematics',
    section,
    summary,
    searchWords,
    takes: [plain('number')],
    gives: () => PLAIN_NUMBER,
    evaluate: ([x]) => f(x),
    examples: [example(given, gives)],
  });

/** Logarithms shall give whole numbers for whole powers of their base. */
const logarithm = (x: number, base: number): number | Failure => {
  if (x <= 0) return tooLow('a logarithm needs a number above 0');
  if (base <= 0) return tooLow('the base of a logarithm must be above 0');
  if (base === 1) return failure('#DIV/0!', 'the base of a logarithm must not be 1');
  return base === 10
    ? Math.log10(x)
    : base === 2
      ? Math.log2(x)
      : fifteenDigits(Math.log(x) / Math.log(base));
};

const sameKind = (args: readonly ArgumentType[]): ValueType => numberOf(typeAt(args, 0).kind);

export const MATHEMATICS: readonly BuiltinDefinition[] = [
  builtin({
    name: 'ABS',
    group: 'mathematics',
    section: '6.16.2',
    summary: 'The size of a number without its sign',
    searchWords: ['absolute', 'magnitude'],
    takes: [number('number')],
    gives: sameKind,
    evaluate: ([x]) => Math.abs(x),
    examples: [example('ABS(-4)', '4')],
  }),
  builtin({
    name: 'SIGN',
    group: 'mathematics',
    section: '6.16.54',
    summary: '-1, 0 or 1 by the sign of the number',
    searchWords: ['positive', 'negative'],
    takes: [number('number')],
    gives: () => PLAIN_NUMBER,
    evaluate: ([x]) => Math.sign(x),
    examples: [example('SIGN(-4)', '-1')],
  }),
  builtin({
    name: 'SQRT',
    group: 'mathematics',
    section: '6.16.58',
    summary: 'The square root; halves the dimension',
    searchWords: ['root', 'square'],
    takes: [number('number')],
    gives: (args) => powerType(typeAt(args, 0), 0.5),
    evaluate: ([x]) => (x < 0 ? tooLow('the square root of a negative number') : Math.sqrt(x)),
    examples: [example('SQRT(9)', '3', 'exact value'), example('SQRT(16 mm2)', '4 mm', 'exact value')],
  }),
  builtin({
    name: 'POWER',
    group: 'mathematics',
    section: '6.16.46',
    summary: 'A number raised to a power',
    searchWords: ['exponent', 'square', 'cube'],
    takes: [number('base'), plain('exponent')],
    gives: powerOf,
    evaluate([x, exponent]) {
      if (x === 0 && exponent < 0) return failure('#DIV/0!', '0 to a negative power');
      if (x < 0 && !Number.isInteger(exponent))
        return tooLow('a negative number to a power that is no whole number');
      return x ** exponent;
    },
    examples: [example('POWER(2; 3)', '8', 'exact value')],
  }),
  builtin({
    name: 'MOD',
    group: 'mathematics',
    section: '6.16.42',
    summary: 'The remainder of a division, with the sign of the divisor',
    searchWords: ['remainder', 'modulo', 'index'],
    takes: [number('number'), number('divisor')],
    gives: (args) => sharedOrPlain('MOD', args),
    evaluate([x, divisor]) {
      if (divisor === 0) return failure('#DIV/0!', 'division by zero');
      const ratio = x / divisor;
      const parts = floored(ratio);
      return parts === fifteenDigits(ratio) ? 0 : x - divisor * parts;
    },
    examples: [example('MOD(-5.5; 2)', '0.5'), example('MOD(50 deg; 45 deg)', '5 deg', 'by hand')],
  }),
  builtin({
    name: 'QUOTIENT',
    group: 'mathematics',
    section: '6.16.48',
    summary: 'The whole part of a division',
    searchWords: ['division', 'whole', 'how many times'],
    takes: [number('number'), number('divisor')],
    gives(args) {
      const type = sharedOrPlain('QUOTIENT', args);
      return type.type === 'failed' ? type : PLAIN_NUMBER;
    },
    evaluate: ([x, divisor]) =>
      divisor === 0 ? failure('#DIV/0!', 'division by zero') : Math.trunc(fifteenDigits(x / divisor)),
    examples: [example('QUOTIENT(-7; 2)', '-3')],
  }),
  ofPlain('EXP', '6.16.31', 'e raised to a power', ['exponential', 'e'], Math.exp, 'LN(EXP(1))', '1'),
  ofPlain(
    'LN',
    '6.16.39',
    'The natural logarithm',
    ['logarithm', 'natural'],
    (x) => (x <= 0 ? tooLow('a logarithm needs a number above 0') : Math.log(x)),
    'LN(20)',
    '2.995732274',
  ),
  ofPlain(
    'LOG10',
    '6.16.41',
    'The logarithm to base 10',
    ['logarithm', 'decade'],
    (x) => logarithm(x, 10),
    'LOG10(100)',
    '2',
  ),
  builtin({
    name: 'LOG',
    group: 'mathematics',
    section: '6.16.40',
    summary: 'The logarithm to a base, 10 if none is given',
    searchWords: ['logarithm', 'base'],
    takes: [plain('number'), optional(plain('base'))],
    gives: () => PLAIN_NUMBER,
    evaluate: ([x, base = 10]) => logarithm(x, base),
    examples: [example('LOG(8*8*8; 8)', '3')],
  }),
  builtin({
    name: 'PI',
    group: 'mathematics',
    section: '6.16.45',
    summary: 'The ratio of a circle to its diameter',
    searchWords: ['circle', '3.14159'],
    takes: [],
    gives: () => PLAIN_NUMBER,
    evaluate: () => Math.PI,
    examples: [example('PI()', '3.141592653589793')],
  }),
  ofPlain(
    'SQRTPI',
    '6.16.59',
    'The square root of a number times pi',
    ['root', 'pi'],
    (x) => (x < 0 ? tooLow('the square root of a negative number') : Math.sqrt(x * Math.PI)),
    'SQRTPI(1)',
    '1.77245385',
  ),
  builtin({
    name: 'DELTA',
    group: 'mathematics',
    section: '6.16.26',
    summary: '1 if two numbers are equal, else 0',
    searchWords: ['equal', 'compare'],
    takes: [number('a'), optional(number('b'))],
    gives(args) {
      const type = sharedOrPlain('DELTA', args);
      return type.type === 'failed' ? type : PLAIN_NUMBER;
    },
    evaluate: ([a, b = 0]) => Number(Math.abs(a - b) <= 1e-13 * Math.max(Math.abs(a), Math.abs(b))),
    examples: [example('DELTA(2; 3)', '0')],
  }),
  builtin({
    name: 'GESTEP',
    group: 'mathematics',
    section: '6.16.37',
    summary: '1 if a number reaches a step, else 0',
    searchWords: ['threshold', 'at least', 'step'],
    takes: [number('number'), optional(number('step'))],
    gives(args) {
      const type = sharedOrPlain('GESTEP', args);
      return type.type === 'failed' ? type : PLAIN_NUMBER;
    },
    evaluate: ([x, step = 0]) => Number(x >= step || Math.abs(x - step) <= 1e-13 * Math.abs(step)),
    examples: [example('GESTEP(1.3; 1.2)', '1')],
  }),
];
