/** First-order propagation of uncertainty (JCGM 100:2008, clause 5 and annex G): sensitivities by central differences through the columns. */

import type { FirstOrder } from '../calculation/index.ts';
import { student } from '../numeric/index.ts';
import type { SpreadInput } from './draws.ts';

/** Steps of the difference quotient in standard uncertainties: small enough for the slope, large enough for the digits. */
const STEP = 0.02;
/** Slope from four points: error of the fourth order in the step. */
const STENCIL = [
  { at: -2, weight: 1 / 12 },
  { at: -1, weight: -8 / 12 },
  { at: 1, weight: 8 / 12 },
  { at: 2, weight: -1 / 12 },
];

/** Samples for the slopes: the expectations, then four for each given. */
export function slopeSamples(inputs: readonly SpreadInput[]): { samples: Float64Array[]; count: number } {
  const count = 1 + STENCIL.length * inputs.length;
  const samples = inputs.map(({ mean, uncertainty }, index) => {
    const column = new Float64Array(count).fill(mean);
    STENCIL.forEach(({ at }, place) => {
      column[1 + STENCIL.length * index + place] = mean + at * STEP * uncertainty;
    });
    return column;
  });
  return { samples, count };
}

/** Slopes of one result from its values in these samples; one-sided beside a place without numbers. */
export function slopesOf(values: Float64Array, inputs: readonly SpreadInput[]): number[] {
  const [middle = NaN] = values;
  return inputs.map(({ uncertainty }, index) => {
    if (uncertainty === 0) return 0;
    const around = STENCIL.map((_, place) => values[1 + STENCIL.length * index + place] ?? NaN);
    const h = STEP * uncertainty;
    if (around.every(Number.isFinite))
      return STENCIL.reduce((sum, { weight }, place) => sum + weight * (around[place] ?? NaN), 0) / h;
    const [, before = NaN, after = NaN] = around;
    const sides = [(after - middle) / h, (middle - before) / h].filter(Number.isFinite);
    return sides[0] ?? NaN;
  });
}

/** Degrees of freedom beyond which they no longer matter. */
const ENDLESS = 1e6;

/** Variance by given (shares of the whole, correlations included) and what follows for the result. */
export function propagated(
  value: number,
  slopes: readonly number[],
  inputs: readonly SpreadInput[],
  correlation: readonly (readonly number[])[],
): { readonly firstOrder: FirstOrder | undefined; readonly variances: readonly number[] } {
  const parts = slopes.map((slope, i) => slope * (inputs[i]?.uncertainty ?? 0));
  const variances = parts.map((own, i) =>
    parts.reduce((sum, other, j) => sum + own * other * (correlation[i]?.[j] ?? (i === j ? 1 : 0)), 0),
  );
  const variance = variances.reduce((sum, each) => sum + each, 0);
  if (!Number.isFinite(variance) || !Number.isFinite(value)) return { firstOrder: undefined, variances };
  const uncertainty = Math.sqrt(Math.max(0, variance));
  // Welch and Satterthwaite: the formula holds for givens that do not hang together.
  const weighted = parts.reduce((sum, part, i) => sum + part ** 4 / (inputs[i]?.freedom ?? Infinity), 0);
  const freedom = uncertainty === 0 ? Infinity : uncertainty ** 4 / weighted;
  const isEndless = !(freedom < ENDLESS);
  // Truncated to the next lower whole number, as G.4.1 advises.
  const coverageFactor = isEndless
    ? 1.959963984540054
    : student(Math.max(1, Math.floor(freedom))).quantile(0.975);
  return {
    variances,
    firstOrder: {
      value,
      uncertainty,
      ...(!isEndless && { freedom }),
      coverageFactor,
      expanded: coverageFactor * uncertainty,
    },
  };
}
