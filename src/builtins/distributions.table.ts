/** Distribution functions, one row each: arguments, domains and how each is computed. */

import { failure } from '../expression/index.ts';
import type { Failure } from '../expression/index.ts';
import {
  beta,
  binomialAt,
  binomialBelow,
  chiSquare,
  chiSquareAbove,
  fisher,
  gammaDistribution,
  hypergeometricAt,
  logNormal,
  negativeBinomialAt,
  normal,
  normalFromCentre,
  poissonAt,
  poissonBelow,
  student,
  studentAbove,
  sum,
  weibull,
} from '../numeric/index.ts';
import type { Distribution } from '../numeric/index.ts';

export const outside = (words: string): Failure => failure('#NUM!', words);

/** What a distribution's arguments are: names, from which one on they may be left out, which ones share a dimension. */
export interface DistributionRow {
  readonly name: string;
  readonly section: string;
  readonly summary: string;
  readonly words: readonly string[];
  readonly takes: readonly string[];
  /** Number of arguments that must be given; default all. */
  readonly needs?: number;
  /** Places of arguments that share a dimension; the others are plain. */
  readonly quantities?: readonly number[];
  /** The result is a quantity of that dimension. */
  readonly inverse?: true;
  readonly f: (args: readonly (number | undefined)[]) => number | Failure;
  readonly given: string;
  readonly gives: string;
  readonly source?: string;
}

/** Cumulative unless told otherwise. */
export const at = (d: Distribution, x: number, cumulative: number | undefined): number =>
  cumulative === 0 ? d.density(x) : d.below(x);

export const probability = (
  p: number,
  then: () => number,
  ends: 'open' | 'from 0' | 'closed' = 'open',
): number | Failure => {
  const good = ends === 'open' ? p > 0 && p < 1 : ends === 'from 0' ? p >= 0 && p < 1 : p >= 0 && p <= 1;
  return good ? then() : outside(`the probability ${p} is outside its range`);
};

export const above0 = (values: Readonly<Record<string, number>>): Failure | undefined => {
  for (const [name, value] of Object.entries(values))
    if (!(value > 0)) return outside(`${name} must be above 0`);
  return undefined;
};

const freedom = (n: number): number => Math.trunc(n);
const badFreedom = (...ns: number[]): Failure | undefined =>
  ns.every((n) => n >= 1) ? undefined : outside('degrees of freedom start at 1');

/** Arguments that are surely there. */
const sure = (args: readonly (number | undefined)[]): readonly number[] => args.map((x) => x ?? 0);

/** Sum of the probabilities of k = from ... to. */
const summed = (from: number, to: number, f: (k: number) => number): number =>
  sum(Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => f(from + i)));

const NORMAL: readonly DistributionRow[] = [
  {
    name: 'NORMDIST',
    section: '6.18.52',
    summary: 'The normal distribution with a mean and a standard deviation',
    words: ['normal', 'Gauss', 'bell'],
    takes: ['x', 'mean', 'standard deviation', 'cumulative'],
    needs: 3,
    quantities: [0, 1, 2],
    f(args) {
      const [x, mean, spread] = sure(args) as [number, number, number];
      return above0({ 'the standard deviation': spread }) ?? at(normal(mean, spread), x, args[3]);
    },
    given: 'NORMDIST(1; -1; 4; TRUE)',
    gives: '0.691462',
  },
  {
    name: 'NORMINV',
    section: '6.18.53',
    summary: 'The value of a normal distribution below which a probability lies',
    words: ['normal', 'quantile', 'inverse'],
    takes: ['probability', 'mean', 'standard deviation'],
    quantities: [1, 2],
    inverse: true,
    f(args) {
      const [p, mean, spread] = sure(args) as [number, number, number];
      return (
        above0({ 'the standard deviation': spread }) ?? probability(p, () => normal(mean, spread).quantile(p))
      );
    },
    given: 'NORMINV(0.5; 3; 1)',
    gives: '3',
    source: 'by hand: the median is the mean',
  },
  {
    name: 'LEGACY.NORMSDIST',
    section: '6.18.54',
    summary: 'The probability up to z of the standard normal distribution',
    words: ['normal', 'standard', 'z'],
    takes: ['z'],
    f: ([z]) => normal().below(z ?? 0),
    given: 'LEGACY.NORMSDIST(0)',
    gives: '0.5',
    source: 'by hand: symmetric',
  },
  {
    name: 'LEGACY.NORMSINV',
    section: '6.18.55',
    summary: 'The z below which a probability lies',
    words: ['normal', 'standard', 'quantile', 'inverse'],
    takes: ['probability'],
    f: ([p = 0]) => probability(p, () => normal().quantile(p)),
    given: 'LEGACY.NORMSINV(0.5)',
    gives: '0',
    source: 'by hand: symmetric',
  },
  {
    name: 'GAUSS',
    section: '6.18.33',
    summary: 'The probability between 0 and z of the standard normal distribution',
    words: ['normal', 'standard'],
    takes: ['z'],
    f: ([z]) => normalFromCentre(z ?? 0),
    given: 'GAUSS(0)',
    gives: '0',
  },
  {
    name: 'PHI',
    section: '6.18.61',
    summary: 'The density of the standard normal distribution',
    words: ['normal', 'standard', 'density'],
    takes: ['z'],
    f: ([z]) => normal().density(z ?? 0),
    given: 'PHI(-0.3)',
    gives: '0.381387815',
    source: 'OpenFormula, test case of PHI',
  },
  {
    name: 'LOGNORMDIST',
    section: '6.18.44',
    summary: 'The log-normal distribution: the logarithm is normal with a mean and a spread',
    words: ['log-normal', 'logarithm', 'life'],
    takes: ['x', 'mean of ln', 'standard deviation of ln', 'cumulative'],
    needs: 1,
    f([x = 0, mean = 0, spread = 1, cumulative]) {
      const bad = above0({ 'the standard deviation': spread });
      if (bad) return bad;
      if (cumulative === 0 && x <= 0) return outside('the density needs a number above 0');
      return at(logNormal(mean, spread), x, cumulative);
    },
    given: 'LOGNORMDIST(2; -1; 4; TRUE)',
    gives: '0.663957',
  },
  {
    name: 'LOGINV',
    section: '6.18.43',
    summary: 'The value of a log-normal distribution below which a probability lies',
    words: ['log-normal', 'quantile', 'inverse'],
    takes: ['probability', 'mean of ln', 'standard deviation of ln'],
    needs: 1,
    f: ([p = 0, mean = 0, spread = 1]) =>
      above0({ 'the standard deviation': spread }) ??
      probability(p, () => logNormal(mean, spread).quantile(p)),
    given: 'LOGINV(0.5)',
    gives: '1',
  },
];

const CONTINUOUS: readonly DistributionRow[] = [
  {
    name: 'WEIBULL',
    section: '6.18.86',
    summary: 'The Weibull distribution with a shape and a characteristic life',
    words: ['Weibull', 'life', 'failure', 'reliability'],
    takes: ['x', 'shape', 'scale', 'cumulative'],
    quantities: [0, 2],
    f(args) {
      const [x, shape, scale] = sure(args) as [number, number, number];
      const bad = above0({ 'the shape': shape, 'the scale': scale });
      return bad ?? (x < 0 ? outside('x must not be negative') : at(weibull(shape, scale), x, args[3]));
    },
    given: 'WEIBULL(105; 20; 100; TRUE)',
    gives: '0.92958139',
    source: 'OpenFormula, test case of WEIBULL',
  },
  {
    name: 'GAMMADIST',
    section: '6.18.31',
    summary: 'The gamma distribution with a shape and a scale',
    words: ['gamma'],
    takes: ['x', 'shape', 'scale', 'cumulative'],
    needs: 3,
    quantities: [0, 2],
    f(args) {
      const [x, shape, scale] = sure(args) as [number, number, number];
      return (
        above0({ 'the shape': shape, 'the scale': scale }) ?? at(gammaDistribution(shape, scale), x, args[3])
      );
    },
    given: 'GAMMADIST(GAMMAINV(0.3; 3; 4); 3; 4)',
    gives: '0.3',
  },
  {
    name: 'GAMMAINV',
    section: '6.18.32',
    summary: 'The value of a gamma distribution below which a probability lies',
    words: ['gamma', 'quantile', 'inverse'],
    takes: ['probability', 'shape', 'scale'],
    quantities: [2],
    inverse: true,
    f(args) {
      const [p, shape, scale] = sure(args) as [number, number, number];
      const bad = above0({ 'the shape': shape, 'the scale': scale });
      return bad ?? probability(p, () => gammaDistribution(shape, scale).quantile(p), 'from 0');
    },
    given: 'GAMMAINV(0; 3; 4)',
    gives: '0',
    source: 'by hand: nothing lies below 0',
  },
  {
    name: 'BETADIST',
    section: '6.18.8',
    summary: 'The beta distribution between two ends, 0 and 1 if none are given',
    words: ['beta', 'share'],
    takes: ['x', 'alpha', 'beta', 'from', 'to', 'cumulative'],
    needs: 3,
    quantities: [0, 3, 4],
    f([x = 0, a = 0, b = 0, from = 0, to = 1, cumulative]) {
      const bad = above0({ alpha: a, beta: b, 'the length of the interval': to - from });
      if (bad) return bad;
      const share = (x - from) / (to - from);
      return cumulative === 0 ? beta(a, b).density(share) / (to - from) : beta(a, b).below(share);
    },
    given: 'BETADIST(0.5; 3; 4)',
    gives: '0.65625',
  },
  {
    name: 'BETAINV',
    section: '6.18.9',
    summary: 'The value of a beta distribution below which a probability lies',
    words: ['beta', 'quantile', 'inverse'],
    takes: ['probability', 'alpha', 'beta', 'from', 'to'],
    needs: 3,
    quantities: [3, 4],
    inverse: true,
    f([p = 0, a = 0, b = 0, from = 0, to = 1]) {
      const bad = above0({ alpha: a, beta: b, 'the length of the interval': to - from });
      return bad ?? probability(p, () => from + (to - from) * beta(a, b).quantile(p), 'closed');
    },
    given: 'BETADIST(BETAINV(0.3; 3; 4); 3; 4)',
    gives: '0.3',
  },
];

/** F, chi-square and t: left tail by the plain names, right tail by those with LEGACY. */
const TESTING: readonly DistributionRow[] = [
  {
    name: 'FDIST',
    section: '6.18.22',
    summary: 'The F distribution, from the left',
    words: ['F', 'variance ratio'],
    takes: ['x', 'degrees over', 'degrees under', 'cumulative'],
    needs: 3,
    f(args) {
      const [x, over, under] = sure(args).map((v, i) => (i === 0 ? v : freedom(v))) as [
        number,
        number,
        number,
      ];
      return badFreedom(over, under) ?? at(fisher(over, under), x, args[3]);
    },
    given: 'FDIST(FINV(0.3; 3; 4); 3; 4)',
    gives: '0.3',
  },
  {
    name: 'FINV',
    section: '6.18.24',
    summary: 'The value of the F distribution below which a probability lies',
    words: ['F', 'quantile', 'inverse'],
    takes: ['probability', 'degrees over', 'degrees under'],
    f(args) {
      const [p, over, under] = sure(args).map((v, i) => (i === 0 ? v : freedom(v))) as [
        number,
        number,
        number,
      ];
      return badFreedom(over, under) ?? probability(p, () => fisher(over, under).quantile(p), 'from 0');
    },
    given: 'FDIST(FINV(0.1; 3; 4); 3; 4)',
    gives: '0.1',
  },
  {
    name: 'LEGACY.FDIST',
    section: '6.18.23',
    summary: 'The F distribution, right tail',
    words: ['F', 'tail'],
    takes: ['x', 'degrees over', 'degrees under'],
    f(args) {
      const [x, over, under] = sure(args).map((v, i) => (i === 0 ? v : freedom(v))) as [
        number,
        number,
        number,
      ];
      return badFreedom(over, under) ?? fisher(over, under).above(x);
    },
    given: 'LEGACY.FDIST(1; 4; 5)',
    gives: '0.485657',
  },
  {
    name: 'LEGACY.FINV',
    section: '6.18.25',
    summary: 'The value of the F distribution above which a probability lies',
    words: ['F', 'tail', 'critical value'],
    takes: ['probability', 'degrees over', 'degrees under'],
    f(args) {
      const [p, over, under] = sure(args).map((v, i) => (i === 0 ? v : freedom(v))) as [
        number,
        number,
        number,
      ];
      const bad = badFreedom(over, under);
      if (bad) return bad;
      return p > 0 && p <= 1
        ? 1 / fisher(under, over).quantile(p) || 0
        : outside(`the probability ${p} is outside its range`);
    },
    given: 'LEGACY.FDIST(LEGACY.FINV(0.1; 3; 4); 3; 4)',
    gives: '0.1',
  },
  {
    name: 'CHISQDIST',
    section: '6.18.12',
    summary: 'The chi-square distribution, from the left',
    words: ['chi-square'],
    takes: ['x', 'degrees', 'cumulative'],
    needs: 2,
    f(args) {
      const [x, degrees] = sure(args) as [number, number];
      return badFreedom(freedom(degrees)) ?? at(chiSquare(freedom(degrees)), x, args[2]);
    },
    given: 'CHISQDIST(2; 2; TRUE)',
    gives: '0.632121',
  },
  {
    name: 'CHISQINV',
    section: '6.18.14',
    summary: 'The value of the chi-square distribution below which a probability lies',
    words: ['chi-square', 'quantile', 'inverse'],
    takes: ['probability', 'degrees'],
    f(args) {
      const [p, degrees] = sure(args) as [number, number];
      const bad = badFreedom(freedom(degrees));
      return bad ?? probability(p, () => chiSquare(freedom(degrees)).quantile(p), 'from 0');
    },
    given: 'CHISQDIST(CHISQINV(0.9; 20); 20; TRUE)',
    gives: '0.9',
  },
  {
    name: 'LEGACY.CHIDIST',
    section: '6.18.11',
    summary: 'The chi-square distribution, right tail',
    words: ['chi-square', 'tail'],
    takes: ['x', 'degrees'],
    f(args) {
      const [x, degrees] = sure(args) as [number, number];
      return badFreedom(freedom(degrees)) ?? chiSquare(freedom(degrees)).above(x);
    },
    given: 'LEGACY.CHIDIST(2; 2)',
    gives: '0.367879',
  },
  {
    name: 'LEGACY.CHIINV',
    section: '6.18.13',
    summary: 'The value of the chi-square distribution above which a probability lies',
    words: ['chi-square', 'tail', 'critical value'],
    takes: ['probability', 'degrees'],
    f(args) {
      const [p, degrees] = sure(args) as [number, number];
      const bad = badFreedom(freedom(degrees));
      if (bad) return bad;
      return p > 0 && p <= 1
        ? chiSquareAbove(p, freedom(degrees))
        : outside(`the probability ${p} is outside its range`);
    },
    given: 'LEGACY.CHIDIST(LEGACY.CHIINV(0.1; 3); 3)',
    gives: '0.1',
  },
  ...(['TDIST', 'LEGACY.TDIST'] as const).map((name) => ({
    name,
    section: '6.18.77',
    summary: "Student's t distribution, one or two tails",
    words: ['t', 'Student', 'tail'],
    takes: ['x', 'degrees', 'tails'],
    f(args: readonly (number | undefined)[]): number | Failure {
      const [x, degrees, tails] = sure(args) as [number, number, number];
      const bad = badFreedom(freedom(degrees));
      if (bad) return bad;
      if (x < 0 || (tails !== 1 && tails !== 2)) return outside('x must not be negative, tails are 1 or 2');
      return tails * student(freedom(degrees)).above(x);
    },
    given: `${name}(0; 5; 1)`,
    gives: '0.5',
    source: 'by hand: symmetric',
  })),
  {
    name: 'TINV',
    section: '6.18.78',
    summary: 'The t outside which, at both ends, a probability lies',
    words: ['t', 'Student', 'critical value', 'inverse'],
    takes: ['probability', 'degrees'],
    f(args) {
      const [p, degrees] = sure(args) as [number, number];
      const bad = badFreedom(freedom(degrees));
      if (bad) return bad;
      return p > 0 && p <= 1
        ? studentAbove(p / 2, freedom(degrees))
        : outside(`the probability ${p} is outside its range`);
    },
    given: 'TINV(0.25; 3)',
    gives: '1.422625',
  },
];

const COUNTS: readonly DistributionRow[] = [
  {
    name: 'BINOMDIST',
    section: '6.18.10',
    summary: 'The probability of a number of successes in some trials',
    words: ['binomial', 'scrap', 'sampling'],
    takes: ['successes', 'trials', 'probability', 'cumulative'],
    f(args) {
      const [k, n, p] = sure(args).map((v, i) => (i < 2 ? Math.trunc(v) : v)) as [number, number, number];
      if (k < 0 || k > n || p < 0 || p > 1)
        return outside('successes lie from 0 to trials, probabilities from 0 to 1');
      return (args[3] ?? 0) === 0 ? binomialAt(k, n, p) : binomialBelow(k, n, p);
    },
    given: 'BINOMDIST(4; 10; 0.4; TRUE)',
    gives: '0.63310326',
    source: 'OpenFormula, test cases (decimal mark)',
  },
  {
    name: 'B',
    section: '6.18.7',
    summary: 'The probability of a number of successes, or of a range of them',
    words: ['binomial', 'between'],
    takes: ['trials', 'probability', 'from', 'to'],
    needs: 3,
    f([n = 0, p = 0, from = 0, to = from]) {
      if (from < 0 || to < from || to > n || p < 0 || p > 1)
        return outside('0 <= from <= to <= trials, 0 <= p <= 1');
      return summed(Math.trunc(from), Math.trunc(to), (k) => binomialAt(k, Math.trunc(n), p));
    },
    given: 'B(7; 0.5; 3)',
    gives: '0.2734375',
  },
  {
    name: 'CRITBINOM',
    section: '6.18.19',
    summary: 'The fewest successes whose cumulative probability reaches a limit',
    words: ['binomial', 'acceptance', 'sampling'],
    takes: ['trials', 'probability', 'limit'],
    f(args) {
      const [n, p, limit] = sure(args) as [number, number, number];
      if (n < 0 || n > 1e5 || p < 0 || p > 1 || limit < 0 || limit > 1)
        return outside('an argument is outside its range');
      let k = 0;
      while (k < n && binomialBelow(k, Math.trunc(n), p) < limit) k += 1;
      return k;
    },
    given: 'CRITBINOM(2; 0.5; 0.7)',
    gives: '1',
    source: 'by hand: 0.25, 0.75, 1',
  },
  {
    name: 'NEGBINOMDIST',
    section: '6.18.51',
    summary: 'The probability of a number of failures before a number of successes',
    words: ['negative binomial', 'failures'],
    takes: ['failures', 'successes', 'probability'],
    f(args) {
      const [k, r, p] = sure(args).map((v, i) => (i < 2 ? Math.trunc(v) : v)) as [number, number, number];
      return k < 0 || r < 1 || p <= 0 || p > 1
        ? outside('an argument is outside its range')
        : negativeBinomialAt(k, r, p);
    },
    given: 'NEGBINOMDIST(1; 1; 0.5)',
    gives: '0.25',
    source: 'by hand',
  },
  {
    name: 'POISSON',
    section: '6.18.62',
    summary: 'The Poisson distribution of a number of events with a mean',
    words: ['Poisson', 'events', 'defects'],
    takes: ['events', 'mean', 'cumulative'],
    needs: 2,
    f([x = 0, mean = 0, cumulative]) {
      const k = Math.trunc(x);
      if (k < 0 || mean < 0) return outside('events and mean must not be negative');
      return cumulative === 0 ? poissonAt(k, mean) : poissonBelow(k, mean);
    },
    given: 'POISSON(0; 1.5; FALSE)',
    gives: '0.22313',
    source: 'by hand: e^-1.5',
  },
  {
    name: 'HYPGEOMDIST',
    section: '6.18.37',
    summary: 'The probability of marked ones in a sample from a lot',
    words: ['hypergeometric', 'sampling', 'lot'],
    takes: ['found', 'sample', 'marked', 'lot', 'cumulative'],
    needs: 4,
    f(args) {
      const [k, n, marked, lot] = sure(args).map(Math.trunc) as [number, number, number, number];
      if (k < 0 || n < 0 || marked < 0 || n > lot || marked > lot || k > n || k > marked) {
        return outside('found <= sample and marked <= lot');
      }
      const p = (i: number) => hypergeometricAt(i, n, marked, lot);
      return (args[4] ?? 0) === 0 ? p(k) : summed(0, k, p);
    },
    given: 'HYPGEOMDIST(2; 3; 3; 6)',
    gives: '0.45',
    source: 'by hand: 9 / 20',
  },
];

export const DISTRIBUTION_ROWS: readonly DistributionRow[] = [
  ...NORMAL,
  ...CONTINUOUS,
  ...TESTING,
  ...COUNTS,
];
