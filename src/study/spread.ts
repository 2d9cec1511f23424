/** Spread: the distribution of results from those of the givens, by simulation (JCGM 101:2008) and to the first order (JCGM 100:2008). */

import type {
  BreachChance,
  CellAddress,
  Contribution,
  Correlation,
  SpreadGiven,
  SpreadResult,
  StudyAnswer,
} from '../calculation/index.ts';
import { numberOrder } from '../expression/index.ts';
import { addressOf, limitValue } from '../workbook/index.ts';
import type { CellState } from '../workbook/index.ts';
import { simulatedBy, varianceOf } from './coverage.ts';
import { drawAll, spreadInput } from './draws.ts';
import type { SpreadInput } from './draws.ts';
import { propagated, slopeSamples, slopesOf } from './first-order.ts';
import { Plan } from './plan.ts';
import { within } from './progress.ts';
import { Refused } from './refused.ts';
import type { StudyBook } from './study-book.ts';

const [FEWEST, USUAL, MOST] = [1000, 10_000, 1_000_000];

function correlationOf(
  book: StudyBook,
  inputs: readonly SpreadInput[],
  correlations: readonly Correlation[],
): number[][] {
  const matrix = inputs.map((_, i) => inputs.map((__, j) => Number(i === j)));
  for (const { first, second, coefficient } of correlations) {
    const [i, j] = [first, second].map((cell) => inputs.findIndex(({ state }) => state === book.state(cell)));
    const [a, b] = [inputs[i ?? -1], inputs[j ?? -1]];
    if (!a || !b || a === b)
      throw new Refused('A correlation needs two givens that spread.', a ? second : first);
    if (!(Math.abs(coefficient) <= 1))
      throw new Refused(`A correlation lies between -1 and 1, not at ${coefficient}.`, first);
    for (const each of [a, b])
      if (!each.isNormal)
        throw new Refused(`${book.name(each.state)} is correlated: it has to be normal.`, each.cell);
    matrix[i as number]![j as number] = coefficient;
    matrix[j as number]![i as number] = coefficient;
  }
  return matrix;
}

/** The chance of passing each limit of the cell, among the numbers. */
function breachesOf(book: StudyBook, state: CellState, numbers: Float64Array): BreachChance[] {
  const limits = state.cell?.limits;
  if (!limits || state.type.type !== 'number') return [];
  const { kind } = state.type;
  const shown = book.workbook.unitOf(state);
  const one = (
    side: BreachChance['side'],
    text: string | undefined,
    named: string | undefined,
  ): BreachChance[] => {
    const limit = text === undefined ? undefined : limitValue(text, kind, shown, book.notebook.currency);
    if (text === undefined || limit === undefined) return [];
    const past = side === 'low' ? -1 : 1;
    let count = 0;
    for (const value of numbers) if (numberOrder(value, limit) === past) count++;
    const words = `${side === 'low' ? 'below' : 'above'} ${text}${named ? ` (${named})` : ''}`;
    return [{ side, limit, words, probability: numbers.length === 0 ? NaN : count / numbers.length }];
  };
  return [...one('low', limits.low, limits.lowText), ...one('high', limits.high, limits.highText)];
}

const numbersOnly = (values: Float64Array): Float64Array => values.filter(Number.isFinite);

export function* spread(
  book: StudyBook,
  question: {
    readonly givens: readonly SpreadGiven[];
    readonly correlations?: readonly Correlation[];
    readonly results: readonly CellAddress[];
    readonly samples?: number;
    readonly seed?: number;
  },
): Generator<number, Extract<StudyAnswer, { type: 'spread' }>> {
  const { samples = USUAL, seed = 1 } = question;
  if (!Number.isInteger(samples) || samples < FEWEST || samples > MOST)
    throw new Refused(`A spread takes ${FEWEST} to ${MOST} samples, not ${samples}.`);
  if (!Number.isSafeInteger(seed)) throw new Refused(`The seed is a whole number, not ${seed}.`);
  if (question.givens.length === 0) throw new Refused('No given spreads: give at least one a tolerance.');
  const inputs = question.givens.map((given) => spreadInput(book, given));
  if (new Set(inputs.map(({ state }) => state)).size < inputs.length)
    throw new Refused('The same given spreads twice.', question.givens[0]?.cell);
  const correlation = correlationOf(book, inputs, question.correlations ?? []);
  const results = question.results.map((cell) => book.result(cell));
  const plan = new Plan(
    book,
    inputs.map(({ state }) => state),
    results,
  );
  const slopeAt = slopeSamples(inputs);
  const sloped = yield* within(plan.numbers(slopeAt.samples, slopeAt.count), 0, 0);
  const draws = drawAll(inputs, correlation, samples, seed);
  const parts = inputs.length + 1;
  const clouds = yield* within(plan.numbers(draws, samples), 0, 1 / parts);
  const found = results.map((state, r) => summary(book, state, clouds[r] as Float64Array));
  const frozen: number[][] = results.map(() => []);
  for (const [index, { mean }] of inputs.entries()) {
    const still = draws.map((column, other) =>
      other === index ? new Float64Array(samples).fill(mean) : column,
    );
    const without = yield* within(plan.numbers(still, samples), (index + 1) / parts, (index + 2) / parts);
    results.forEach((_, r) => frozen[r]?.push(varianceOf(numbersOnly(without[r] as Float64Array))));
  }
  return {
    type: 'spread',
    samples,
    seed,
    results: results.map((state, r): SpreadResult => {
      const { numbers, ...told } = found[r] as Summary;
      const values = sloped[r] as Float64Array;
      const slopes = slopesOf(values, inputs);
      const { firstOrder, variances } = propagated(values[0] ?? NaN, slopes, inputs, correlation);
      const whole = variances.reduce((sum, each) => sum + each, 0);
      const variance = varianceOf(numbers);
      const failing = (clouds[r] as Float64Array).findIndex(Number.isNaN);
      const words =
        failing < 0
          ? undefined
          : book.failureWords(
              inputs.map(({ state: given }, i) => [given, draws[i]?.[failing] ?? NaN] as const),
              state,
            );
      const contributions = inputs.map((input, i): Contribution => ({
        cell: addressOf(book.workbook.cells, input.state),
        sensitivity: slopes[i] ?? NaN,
        uncertainty: input.uncertainty,
        share: whole > 0 ? (variances[i] ?? NaN) / whole : 0,
        simulated: variance > 0 ? Math.max(0, 1 - (frozen[r]?.[i] ?? NaN) / variance) : 0,
      }));
      return {
        ...told,
        samples,
        ...(words !== undefined && { failureWords: words }),
        ...(firstOrder && { firstOrder }),
        contributions: contributions.toSorted((a, b) => (b.share || 0) - (a.share || 0)),
      };
    }),
  };
}

type Summary = ReturnType<typeof summary>;

function summary(book: StudyBook, state: CellState, values: Float64Array) {
  const numbers = numbersOnly(values);
  return {
    ...book.described(state),
    base: typeof state.value === 'number' ? state.value : null,
    failures: values.length - numbers.length,
    ...(numbers.length > 1 && { simulated: simulatedBy(numbers) }),
    breaches: breachesOf(book, state, numbers),
    numbers,
  };
}
