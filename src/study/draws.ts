/** How a given spreads: expectation, standard uncertainty and draws of each distribution (JCGM 101:2008, 6.4). */

import type { Distribution, SpreadGiven } from '../calculation/index.ts';
import { normalDraws, randomStream, sampleVariance, studentDraws } from '../numeric/index.ts';
import type { Xoshiro } from '../numeric/index.ts';
import { Refused } from './refused.ts';
import type { GivenNumber, StudyBook } from './study-book.ts';

export interface SpreadInput extends GivenNumber {
  /** Expectation: the estimate about which everything is propagated. */
  readonly mean: number;
  /** Standard uncertainty; of a t distribution that of the estimate, as JCGM 100 counts it. */
  readonly uncertainty: number;
  /** Infinite where the uncertainty is known for sure. */
  readonly freedom: number;
  /** Fills a column of values. A normal given may be handed standard normal draws that hang together with others. */
  draw(random: Xoshiro, out: Float64Array, standard?: Float64Array): Float64Array;
  readonly isNormal: boolean;
}

type Shape = Pick<SpreadInput, 'mean' | 'uncertainty' | 'freedom' | 'draw' | 'isNormal'>;

/** One draw after another. */
const each =
  (one: (random: Xoshiro) => number): Shape['draw'] =>
  (random, out) => {
    for (let i = 0; i < out.length; i++) out[i] = one(random);
    return out;
  };

function normal(mean: number, uncertainty: number, freedom = Infinity): Shape {
  return {
    mean,
    uncertainty,
    freedom,
    isNormal: freedom === Infinity,
    draw(random, out, standard) {
      if (standard) out.set(standard);
      else if (freedom === Infinity) normalDraws(random, out);
      else studentDraws(random, freedom, out);
      for (let i = 0; i < out.length; i++) out[i] = mean + uncertainty * (out[i] as number);
      return out;
    },
  };
}

/** Rectangular; with limits that are themselves known to ± `inexact` the curvilinear trapezoid of 6.4.3. */
function uniform(low: number, high: number, freedom: number, inexact = 0): Shape {
  const half = (high - low) / 2;
  const mean = low + half;
  return {
    mean,
    uncertainty: Math.sqrt(half ** 2 / 3 + inexact ** 2 / 9),
    freedom,
    isNormal: false,
    draw: each((random) => {
      const limit = inexact === 0 ? half : half - inexact + 2 * inexact * random.next();
      return mean + limit * (2 * random.next() - 1);
    }),
  };
}

function triangular(low: number, high: number, peak: number, freedom: number): Shape {
  const width = high - low;
  const rising = peak - low;
  return {
    mean: (low + high + peak) / 3,
    uncertainty:
      Math.sqrt((low ** 2 + high ** 2 + peak ** 2 - low * high - low * peak - high * peak) / 18) || 0,
    freedom,
    isNormal: false,
    draw: each((random) => {
      const area = random.next() * width;
      return area < rising
        ? low + Math.sqrt(area * rising)
        : high - Math.sqrt((width - area) * (width - rising));
    }),
  };
}

/** U-shaped: what swings as a sine (6.4.6). */
function arcsine(mean: number, half: number, freedom: number): Shape {
  return {
    mean,
    uncertainty: half / Math.SQRT2,
    freedom,
    isNormal: false,
    draw: each((random) => mean + half * Math.sin(2 * Math.PI * random.next())),
  };
}

function measured(values: readonly number[], isMean: boolean): Shape {
  const count = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const one = (random: Xoshiro): number => values[random.below(count)] ?? mean;
  const deviation = Math.sqrt(sampleVariance(values));
  return {
    mean,
    uncertainty: isMean ? deviation / Math.sqrt(count) : deviation,
    freedom: count - 1,
    isNormal: false,
    draw: each((random) => {
      if (!isMean) return one(random);
      let sum = 0;
      for (let i = 0; i < count; i++) sum += one(random);
      return sum / count;
    }),
  };
}

function measuredValues(
  book: StudyBook,
  given: GivenNumber,
  { worksheet, block }: Extract<Distribution, { shape: 'measured' }>,
): number[] {
  const { cells } = book.workbook;
  const sheet = cells.sheetNumber(worksheet);
  if (sheet === undefined)
    throw new Refused('The worksheet of the measured values is no longer there.', given.cell);
  const values: number[] = [];
  for (const { value, type } of cells.within({ sheet, ...block })) {
    if (typeof value !== 'number' || type.type !== 'number') continue;
    if (type.kind.dimension !== given.kind.dimension)
      throw new Refused(
        `The measured values are of another kind than ${book.name(given.state)}.`,
        given.cell,
      );
    values.push(value);
  }
  if (values.length < 2)
    throw new Refused(
      `${book.name(given.state)} needs at least 2 measured values, there are ${values.length}.`,
      given.cell,
    );
  return values;
}

function shapeOf(book: StudyBook, given: GivenNumber, distribution: Distribution): Shape {
  const { state, value, cell } = given;
  if (distribution.shape === 'measured')
    return measured(measuredValues(book, given, distribution), distribution.mean ?? false);
  const freedom = 'freedom' in distribution ? (distribution.freedom ?? Infinity) : Infinity;
  if (!(freedom > 0)) throw new Refused(`Degrees of freedom of ${book.name(state)} must be above 0.`, cell);
  if (distribution.shape === 'normal')
    return normal(
      value,
      book.deviation(distribution.uncertainty, given, 'The standard uncertainty'),
      freedom,
    );
  if ('low' in distribution) {
    const low = book.quantity(distribution.low, state, 'The lower limit');
    const high = book.quantity(distribution.high, state, 'The upper limit');
    if (!(low < high)) throw new Refused(`The limits of ${book.name(state)} are no interval.`, cell);
    if (distribution.shape === 'uniform') return uniform(low, high, Infinity);
    const peak =
      distribution.peak === undefined
        ? (low + high) / 2
        : book.quantity(distribution.peak, state, 'The peak');
    if (peak < low || peak > high)
      throw new Refused(`The peak of ${book.name(state)} lies outside its limits.`, cell);
    return triangular(low, high, peak, Infinity);
  }
  const half = book.deviation(distribution.half, given, 'The tolerance');
  switch (distribution.shape) {
    case 'uniform': {
      const { inexact } = distribution;
      const room = inexact === undefined ? 0 : book.deviation(inexact, given, 'The room of the limits');
      if (room > half)
        throw new Refused(`The limits of ${book.name(state)} are less well known than they lie apart.`, cell);
      return uniform(value - half, value + half, freedom, room);
    }
    case 'triangular':
      return triangular(value - half, value + half, value, freedom);
    case 'arcsine':
      return arcsine(value, half, freedom);
  }
}

export function spreadInput(book: StudyBook, { cell, distribution }: SpreadGiven): SpreadInput {
  const given = book.given(cell);
  return { ...given, ...shapeOf(book, given, distribution) };
}

/** Factor L of the correlation matrix, L L^T = R, by Cholesky; undefined where R is no correlation matrix. */
function factorOf(matrix: readonly (readonly number[])[]): number[][] | undefined {
  const lower: number[][] = matrix.map((row) => row.map(() => 0));
  for (let i = 0; i < matrix.length; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = matrix[i]?.[j] ?? 0;
      for (let k = 0; k < j; k++) rest -= (lower[i]?.[k] ?? 0) * (lower[j]?.[k] ?? 0);
      const row = lower[i] as number[];
      if (i === j) {
        if (rest < -1e-9) return undefined;
        row[j] = Math.sqrt(Math.max(0, rest));
      } else row[j] = rest / (lower[j]?.[j] || Infinity);
    }
  }
  return lower;
}

/** Columns of draws, one a given; each given has its own stream, so that another one's distribution changes nothing in it. */
export function drawAll(
  inputs: readonly SpreadInput[],
  correlation: readonly (readonly number[])[],
  samples: number,
  seed: number,
): Float64Array[] {
  const hangs = inputs.map((_, i) => correlation[i]?.some((r, j) => i !== j && r !== 0) ?? false);
  const factor = hangs.includes(true) ? factorOf(correlation) : undefined;
  if (hangs.includes(true) && !factor)
    throw new Refused('The correlations contradict each other: no set of givens can have them all.');
  const standard = hangs.map((isHanging, i) =>
    isHanging ? normalDraws(randomStream(seed, i), new Float64Array(samples)) : undefined,
  );
  return inputs.map((input, i) => {
    const out = new Float64Array(samples);
    if (!hangs[i] || !factor) return input.draw(randomStream(seed, i), out);
    const joint = new Float64Array(samples);
    standard.forEach((column, j) => {
      const share = factor[i]?.[j] ?? 0;
      if (column && share !== 0)
        for (let s = 0; s < samples; s++) joint[s] = (joint[s] as number) + share * (column[s] as number);
    });
    return input.draw(randomStream(seed, i), out, joint);
  });
}
