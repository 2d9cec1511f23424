/** Averages, spreads and shapes of samples, one row each. */

import { failure } from '../expression/index.ts';
import type { ArgumentType, Failure, ValueType } from '../expression/index.ts';
import {
  ascending,
  deviationSquares,
  mean,
  median,
  populationVariance,
  sampleVariance,
  standardizedMoment,
  sum,
} from '../numeric/index.ts';
import { PLAIN_NUMBER, difference, powerType, sharedOrPlain } from './type-rules.ts';

const none = (name: string): Failure => failure('#DIV/0!', `${name} finds no numbers`);
const few = (name: string, least: number): Failure =>
  failure('#DIV/0!', `${name} needs at least ${least} numbers`);

type Rule = (name: string, args: readonly ArgumentType[]) => ValueType;
/** The kind of the values. */
const keeps: Rule = (name, args) => sharedOrPlain(name, args);
/** A difference of the values. */
const spread: Rule = (name, args) => difference(sharedOrPlain(name, args));
const squares: Rule = (name, args) => {
  const type = sharedOrPlain(name, args);
  return type.type === 'failed' ? type : powerType(type, 2);
};
/** A plain number, the values having one dimension. */
export const pure: Rule = (name, args) => {
  const type = sharedOrPlain(name, args);
  return type.type === 'failed' ? type : PLAIN_NUMBER;
};

export interface DescriptiveRow {
  readonly name: string;
  readonly section: string;
  readonly summary: string;
  readonly words: readonly string[];
  readonly rule: Rule;
  /** Texts and logicals in ranges count as 0 and 1. */
  readonly withTexts?: boolean;
  readonly f: (xs: number[], name: string) => number | Failure;
  readonly given: string;
  readonly gives: string;
  readonly source?: string;
}

const largest = (xs: number[]): number => xs.reduce((most, x) => (x > most ? x : most), xs[0] ?? 0);
const smallest = (xs: number[]): number => xs.reduce((least, x) => (x < least ? x : least), xs[0] ?? 0);
export const average = (xs: number[], name: string): number | Failure =>
  xs.length > 0 ? mean(xs) : none(name);

const atLeast =
  (least: number, f: (xs: number[]) => number) =>
  (xs: number[], name: string): number | Failure =>
    xs.length < least ? few(name, least) : f(xs);

const sampleDeviation = atLeast(2, (xs) => Math.sqrt(sampleVariance(xs)));
const populationDeviation = atLeast(1, (xs) => Math.sqrt(populationVariance(xs)));

const positive =
  (f: (xs: number[]) => number) =>
  (xs: number[], name: string): number | Failure => {
    if (xs.length === 0) return none(name);
    return xs.every((x) => x > 0) ? f(xs) : failure('#NUM!', `${name} needs numbers above 0`);
  };

/** The most frequent value, the smallest of several. */
function mode(xs: number[], name: string): number | Failure {
  const counts = new Map<number, number>();
  for (const x of ascending(xs)) counts.set(x, (counts.get(x) ?? 0) + 1);
  let best: number | undefined;
  for (const [x, count] of counts) if (count > (best === undefined ? 1 : counts.get(best)!)) best = x;
  return best ?? failure('#N/A', `${name} finds no value twice`);
}

function skewness(xs: number[], name: string): number | Failure {
  const n = xs.length;
  const s = Math.sqrt(sampleVariance(xs));
  if (n < 3) return few(name, 3);
  if (s === 0) return failure('#DIV/0!', 'all values are equal');
  return (n / ((n - 1) * (n - 2))) * standardizedMoment(xs, s, 3);
}

function populationSkewness(xs: number[], name: string): number | Failure {
  const s = Math.sqrt(populationVariance(xs));
  if (xs.length < 3) return few(name, 3);
  if (s === 0) return failure('#DIV/0!', 'all values are equal');
  return standardizedMoment(xs, s, 3) / xs.length;
}

function kurtosis(xs: number[], name: string): number | Failure {
  const n = xs.length;
  const s = Math.sqrt(sampleVariance(xs));
  if (n < 4) return few(name, 4);
  if (s === 0) return failure('#DIV/0!', 'all values are equal');
  const scale = (n * (n + 1)) / ((n - 1) * (n - 2) * (n - 3));
  return scale * standardizedMoment(xs, s, 4) - (3 * (n - 1) ** 2) / ((n - 2) * (n - 3));
}

export const DESCRIPTIVE_ROWS: readonly DescriptiveRow[] = [
  {
    name: 'AVERAGE',
    section: '6.18.3',
    summary: 'The arithmetic mean',
    words: ['mean', 'average'],
    rule: keeps,
    f: average,
    given: 'AVERAGE(2; 4)',
    gives: '3',
    source: 'by hand',
  },
  {
    name: 'AVERAGEA',
    section: '6.18.4',
    summary: 'The arithmetic mean; in ranges texts count as 0, TRUE as 1',
    words: ['mean', 'average', 'texts'],
    rule: keeps,
    withTexts: true,
    f: average,
    given: 'AVERAGEA(2; 4)',
    gives: '3',
  },
  {
    name: 'MAX',
    section: '6.18.45',
    summary: 'The largest number',
    words: ['maximum', 'largest', 'greatest'],
    rule: keeps,
    f: largest,
    given: 'MAX(2; 4; 1; -8)',
    gives: '4',
  },
  {
    name: 'MAXA',
    section: '6.18.46',
    summary: 'The largest number; in ranges texts count as 0, TRUE as 1',
    words: ['maximum', 'texts'],
    rule: keeps,
    withTexts: true,
    f: largest,
    given: 'MAXA(2; 4; 1; -8)',
    gives: '4',
    source: 'by hand',
  },
  {
    name: 'MIN',
    section: '6.18.48',
    summary: 'The smallest number',
    words: ['minimum', 'smallest', 'least'],
    rule: keeps,
    f: smallest,
    given: 'MIN(2; 4; 1; -8)',
    gives: '-8',
    source: 'by hand',
  },
  {
    name: 'MINA',
    section: '6.18.49',
    summary: 'The smallest number; in ranges texts count as 0, TRUE as 1',
    words: ['minimum', 'texts'],
    rule: keeps,
    withTexts: true,
    f: smallest,
    given: 'MINA(2; 4; 1; -8)',
    gives: '-8',
  },
  {
    name: 'MEDIAN',
    section: '6.18.47',
    summary: 'The value in the middle of the sorted numbers',
    words: ['middle', 'median'],
    rule: keeps,
    f: (xs) => (xs.length > 0 ? median(xs) : failure('#NUM!', 'MEDIAN finds no numbers')),
    given: 'MEDIAN(1; 3; 13; 14; 15; 35)',
    gives: '13.5',
  },
  {
    name: 'MODE',
    section: '6.18.50',
    summary: 'The most frequent number, the smallest of several',
    words: ['frequent', 'common'],
    rule: keeps,
    f: mode,
    given: 'MODE(3; 5; 3; 5; 4)',
    gives: '3',
    source: 'by hand',
  },
  {
    name: 'GEOMEAN',
    section: '6.18.34',
    summary: 'The geometric mean of numbers above 0',
    words: ['geometric', 'mean'],
    rule: keeps,
    f: positive((xs) => Math.exp(mean(xs.map(Math.log)))),
    given: 'GEOMEAN(2; 8; 2; 8)',
    gives: '4',
  },
  {
    name: 'HARMEAN',
    section: '6.18.36',
    summary: 'The harmonic mean of numbers above 0',
    words: ['harmonic', 'mean', 'average rate'],
    rule: keeps,
    f: positive((xs) => xs.length / sum(xs.map((x) => 1 / x))),
    given: 'HARMEAN(2; 6)',
    gives: '3',
    source: 'by hand: 2 / (1/2 + 1/6)',
  },
  {
    name: 'AVEDEV',
    section: '6.18.2',
    summary: 'The mean distance from the mean',
    words: ['deviation', 'spread'],
    rule: spread,
    f(xs, name) {
      const centre = mean(xs);
      return xs.length > 0 ? mean(xs.map((x) => Math.abs(x - centre))) : none(name);
    },
    given: 'AVEDEV(1; 2; 3; 4)',
    gives: '1',
  },
  {
    name: 'DEVSQ',
    section: '6.18.20',
    summary: 'The sum of squared distances from the mean',
    words: ['deviation', 'squares'],
    rule: squares,
    f: (xs, name) => (xs.length > 0 ? deviationSquares(xs) : none(name)),
    given: 'DEVSQ(2; 4)',
    gives: '2',
  },
  {
    name: 'STDEV',
    section: '6.18.72',
    summary: 'The standard deviation estimated from a sample (n - 1)',
    words: ['standard deviation', 'spread', 'sigma'],
    rule: spread,
    f: sampleDeviation,
    given: 'STDEV(2; 4)/SQRT(2)',
    gives: '1',
  },
  {
    name: 'STDEVA',
    section: '6.18.73',
    summary: 'As STDEV; in ranges texts count as 0, TRUE as 1',
    words: ['standard deviation', 'texts'],
    rule: spread,
    withTexts: true,
    f: sampleDeviation,
    given: 'STDEVA(2; 4)/SQRT(2)',
    gives: '1',
  },
  {
    name: 'STDEVP',
    section: '6.18.74',
    summary: 'The standard deviation of a whole population (n)',
    words: ['standard deviation', 'population'],
    rule: spread,
    f: populationDeviation,
    given: 'STDEVP(2; 4)',
    gives: '1',
  },
  {
    name: 'STDEVPA',
    section: '6.18.75',
    summary: 'As STDEVP; in ranges texts count as 0, TRUE as 1',
    words: ['standard deviation', 'population', 'texts'],
    rule: spread,
    withTexts: true,
    f: populationDeviation,
    given: 'STDEVPA(TRUE; FALSE)',
    gives: '0.5',
  },
  {
    name: 'VAR',
    section: '6.18.82',
    summary: 'The variance estimated from a sample (n - 1)',
    words: ['variance', 'spread'],
    rule: squares,
    f: atLeast(2, sampleVariance),
    given: 'VAR(2; 4)',
    gives: '2',
  },
  {
    name: 'VARA',
    section: '6.18.83',
    summary: 'As VAR; in ranges texts count as 0, TRUE as 1',
    words: ['variance', 'texts'],
    rule: squares,
    withTexts: true,
    f: atLeast(2, sampleVariance),
    given: 'VARA(2; 4)',
    gives: '2',
    source: 'by hand',
  },
  {
    name: 'VARP',
    section: '6.18.84',
    summary: 'The variance of a whole population (n)',
    words: ['variance', 'population'],
    rule: squares,
    f: atLeast(1, populationVariance),
    given: 'VARP(2; 4)',
    gives: '1',
  },
  {
    name: 'VARPA',
    section: '6.18.85',
    summary: 'As VARP; in ranges texts count as 0, TRUE as 1',
    words: ['variance', 'population', 'texts'],
    rule: squares,
    withTexts: true,
    f: atLeast(1, populationVariance),
    given: 'VARPA(2; 4)',
    gives: '1',
  },
  {
    name: 'SKEW',
    section: '6.18.67',
    summary: 'How lopsided a sample is: 0 for a symmetric one',
    words: ['skewness', 'asymmetry', 'shape'],
    rule: pure,
    f: skewness,
    given: 'SKEW(1; 2; 4)',
    gives: '0.935219',
  },
  {
    name: 'SKEWP',
    section: '6.18.68',
    summary: 'How lopsided a whole population is: 0 for a symmetric one',
    words: ['skewness', 'population', 'shape'],
    rule: pure,
    f: populationSkewness,
    given: 'SKEWP(1; 2; 3)',
    gives: '0',
    source: 'by hand: symmetric',
  },
  {
    name: 'KURT',
    section: '6.18.39',
    summary: 'How heavy the tails of a sample are: 0 for a normal distribution',
    words: ['kurtosis', 'tails', 'shape'],
    rule: pure,
    f: kurtosis,
    given: 'KURT(1; 2; 3; 4)',
    gives: '-1.2',
    source: 'by hand',
  },
];
