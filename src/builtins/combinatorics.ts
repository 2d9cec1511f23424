/** Whole-number mathematics and special functions, of plain numbers. */

import { failure } from '../expression/index.ts';
import type { Failure } from '../expression/index.ts';
import { bessel, choose, erf, erfc, gamma, logGamma } from '../numeric/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { optional, plain } from './parameter.ts';
import { plainSequence } from './sequence.ts';
import { PLAIN_NUMBER } from './type-rules.ts';

const outside = (words: string): Failure => failure('#NUM!', words);

/** n (n - step) (n - 2 step) ... */
const stepped = (n: number, step: number): number | Failure => {
  if (n < 0) return outside('the number must not be negative');
  let product = 1;
  for (let k = Math.trunc(n); k > 1 && product < Infinity; k -= step) product *= k;
  return product;
};

const common = (a: number, b: number): number => {
  let [x, y] = [a, b];
  while (y > 0) [x, y] = [y, x % y];
  return x;
};

/** Beyond 2^53 whole numbers are not told apart. */
const leastCommon = (numbers: readonly number[]): number | Failure => {
  let multiple = 1;
  for (const n of numbers) {
    multiple = n === 0 ? 0 : (multiple / common(multiple, n)) * n;
    if (multiple > Number.MAX_SAFE_INTEGER)
      return outside('the multiple is above 2^53, too large to be exact');
    if (multiple === 0) return 0;
  }
  return multiple;
};

const falling = (n: number, k: number): number => {
  let product = 1;
  for (let i = 0; i < k && product < Infinity; i += 1) product *= n - i;
  return product;
};

interface Row {
  readonly name: string;
  readonly section: string;
  readonly summary: string;
  readonly words: readonly string[];
  readonly takes: readonly string[];
  readonly needs?: number;
  readonly f: (...args: number[]) => number | Failure;
  readonly given: string;
  readonly gives: string;
  readonly source?: string;
}

const ROWS: readonly Row[] = [
  {
    name: 'FACT',
    section: '6.16.32',
    summary: 'The factorial: 1 times 2 times ... times n',
    words: ['factorial'],
    takes: ['n'],
    f: (n) => stepped(n, 1),
    given: 'FACT(3)',
    gives: '6',
  },
  {
    name: 'FACTDOUBLE',
    section: '6.16.33',
    summary: 'The double factorial: every second factor',
    words: ['factorial', 'double'],
    takes: ['n'],
    f: (n) => stepped(n, 2),
    given: 'FACTDOUBLE(7)',
    gives: '105',
  },
  {
    name: 'COMBIN',
    section: '6.16.16',
    summary: 'In how many ways k can be chosen from n',
    words: ['combinations', 'choose'],
    takes: ['n', 'k'],
    f(n, k) {
      const [all, some] = [Math.trunc(n), Math.trunc(k)];
      return some < 0 || all < some ? outside('k lies from 0 to n') : choose(all, some);
    },
    given: 'COMBIN(42; 3)',
    gives: '11480',
  },
  {
    name: 'COMBINA',
    section: '6.16.17',
    summary: 'In how many ways k can be chosen from n, repeats allowed',
    words: ['combinations', 'repetition'],
    takes: ['n', 'k'],
    f(n, k) {
      const [all, some] = [Math.trunc(n), Math.trunc(k)];
      if (all < 0 || some < 0) return outside('n and k must not be negative');
      return some === 0 ? 1 : choose(all + some - 1, some);
    },
    given: 'COMBINA(5; 3)',
    gives: '35',
    source: 'by hand: 7 choose 3',
  },
  {
    name: 'PERMUT',
    section: '6.18.59',
    summary: 'In how many orders k can be taken from n',
    words: ['permutations', 'orders'],
    takes: ['n', 'k'],
    f(n, k) {
      const [all, some] = [Math.trunc(n), Math.trunc(k)];
      return some < 0 || all < some ? outside('k lies from 0 to n') : falling(all, some);
    },
    given: 'PERMUT(5; 3)',
    gives: '60',
    source: 'by hand: 5 * 4 * 3',
  },
  {
    name: 'PERMUTATIONA',
    section: '6.18.60',
    summary: 'In how many orders k can be taken from n, repeats allowed',
    words: ['permutations', 'repetition'],
    takes: ['n', 'k'],
    f: (n, k) => (n < 0 || k < 0 ? outside('n and k must not be negative') : Math.trunc(n) ** Math.trunc(k)),
    given: 'PERMUTATIONA(6; 3)',
    gives: '216',
  },
  {
    name: 'GAMMA',
    section: '6.16.34',
    summary: 'The gamma function',
    words: ['gamma', 'factorial'],
    takes: ['x'],
    f: (x) => (x <= 0 && Number.isInteger(x) ? outside('the gamma function has a pole there') : gamma(x)),
    given: 'GAMMA(5)',
    gives: '24',
    source: 'by hand: 4 factorial',
  },
  {
    name: 'GAMMALN',
    section: '6.16.35',
    summary: 'The natural logarithm of the gamma function',
    words: ['gamma', 'logarithm'],
    takes: ['x'],
    f: (x) => (x <= 0 ? outside('the number must be above 0') : logGamma(x)),
    given: 'EXP(GAMMALN(5))',
    gives: '24',
    source: 'by hand: 4 factorial',
  },
  {
    name: 'ERF',
    section: '6.16.27',
    summary: 'The error function up to a number, or between two',
    words: ['error function', 'normal'],
    takes: ['from', 'to'],
    needs: 1,
    f: (from, to) => (to === undefined ? erf(from) : erf(to) - erf(from)),
    given: 'ERF(0.1; 0.5)',
    gives: '0.408037',
  },
  {
    name: 'ERFC',
    section: '6.16.28',
    summary: '1 minus the error function',
    words: ['error function', 'complement'],
    takes: ['x'],
    f: (x) => erfc(x),
    given: 'ERFC(3)',
    gives: '2.209e-5',
  },
  {
    name: 'FISHER',
    section: '6.18.26',
    summary: "Fisher's transformation of a correlation",
    words: ['correlation', 'Fisher'],
    takes: ['r'],
    f: (r) => (Math.abs(r) >= 1 ? outside('a correlation lies between -1 and 1') : Math.atanh(r)),
    given: 'FISHER(0.5)',
    gives: '0.54930614',
  },
  {
    name: 'FISHERINV',
    section: '6.18.27',
    summary: "The correlation of a value of Fisher's transformation",
    words: ['correlation', 'Fisher', 'inverse'],
    takes: ['z'],
    f: (z) => Math.tanh(z),
    given: 'FISHERINV(FISHER(0.5))',
    gives: '0.5',
    source: 'by hand',
  },
];

const ofMany = (
  name: string,
  section: string,
  summary: string,
  words: readonly string[],
  f: (values: readonly number[]) => number | Failure,
  given: string,
  gives: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'mathematics',
    section,
    summary,
    searchWords: words,
    takes: [],
    rest: plainSequence('numbers'),
    leastRest: 1,
    cellsAsRanges: true,
    gives: () => PLAIN_NUMBER,
    evaluate(_, lists) {
      const numbers = lists.flat().map(Math.trunc);
      if (numbers.length === 0) return failure('#VALUE!', `${name} finds no numbers`);
      return numbers.some((n) => n < 0) ? outside('the numbers must not be negative') : f(numbers);
    },
    examples: [example(given, gives)],
  });

/** BESSELI, BESSELJ, BESSELK, BESSELY. */
const besselFunction = (
  letter: keyof typeof bessel,
  section: string,
  words: string,
  given: string,
  gives: string,
  source?: string,
): BuiltinDefinition =>
  builtin({
    name: `BESSEL${letter}`,
    group: 'mathematics',
    section,
    summary: `The ${words} Bessel function of whole order`,
    searchWords: ['Bessel', 'vibration'],
    takes: [plain('x'), plain('order')],
    gives: () => PLAIN_NUMBER,
    evaluate([x, n]) {
      const order = Math.trunc(n);
      if (order < 0 || order > 100 || Math.abs(x) > 500)
        return outside('the order lies from 0 to 100, x within 500');
      if ((letter === 'K' || letter === 'Y') && x <= 0) return outside('x must be above 0');
      return bessel[letter](x, order) ?? outside('no value is reached');
    },
    examples: [example(given, gives, source)],
  });

export const COMBINATORICS: readonly BuiltinDefinition[] = [
  ...ROWS.map((row) =>
    builtin({
      name: row.name,
      group: 'mathematics',
      section: row.section,
      summary: row.summary,
      searchWords: row.words,
      takes: row.takes.map((name, i) =>
        i >= (row.needs ?? row.takes.length) ? optional(plain(name)) : plain(name),
      ),
      gives: () => PLAIN_NUMBER,
      evaluate: (given) => row.f(...(given as number[])),
      examples: [example(row.given, row.gives, row.source)],
    }),
  ),
  besselFunction(
    'J',
    '6.16.13',
    'first',
    'BESSELJ(1; 0)',
    '0.7651976866',
    'Abramowitz and Stegun, table 9.1 (from memory)',
  ),
  besselFunction('Y', '6.16.15', 'second', 'BESSELY(1; 1)', '-0.781213'),
  besselFunction(
    'I',
    '6.16.12',
    'modified first',
    'BESSELI(1; 0)',
    '1.2660658778',
    'Abramowitz and Stegun, table 9.8 (from memory)',
  ),
  besselFunction('K', '6.16.14', 'modified second', 'BESSELK(3; 0)', '0.03474'),
  ofMany(
    'GCD',
    '6.16.36',
    'The greatest common divisor',
    ['divisor', 'common', 'gear'],
    (numbers) => numbers.reduce(common, 0),
    'GCD(18.1; 24.1)',
    '6',
  ),
  ofMany(
    'LCM',
    '6.16.38',
    'The least common multiple',
    ['multiple', 'common', 'gear'],
    leastCommon,
    'LCM(5; 15; 25)',
    '75',
  ),
  ofMany(
    'MULTINOMIAL',
    '6.16.43',
    'In how many ways groups of these sizes can be formed',
    ['multinomial', 'groups'],
    (numbers) => {
      let total = 0;
      return numbers.reduce((product, n) => {
        total += n;
        return product * choose(total, n);
      }, 1);
    },
    'MULTINOMIAL(4; 2; 3)',
    '1260',
  ),
];
