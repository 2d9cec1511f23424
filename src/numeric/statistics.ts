/** Statistics of plain lists of numbers. Empty lists give NaN; callers decide what that means. */

/** Sum with a running correction (Neumaier 1974), so that long columns lose nothing. */
export function sum(values: readonly number[]): number {
  let total = 0;
  let lost = 0;
  for (const value of values) {
    const next = total + value;
    lost += Math.abs(total) >= Math.abs(value) ? total - next + value : value - next + total;
    total = next;
  }
  return Number.isFinite(total) ? total + lost : total;
}

export const mean = (values: readonly number[]): number => sum(values) / values.length;

/** Sum of squared deviations from the mean, by two passes with the rounding of the mean corrected. */
export function deviationSquares(values: readonly number[]): number {
  const centre = mean(values);
  const deviations = values.map((value) => value - centre);
  return sum(deviations.map((d) => d * d)) - sum(deviations) ** 2 / values.length;
}

/** Sum of products of deviations. */
export function deviationProducts(xs: readonly number[], ys: readonly number[]): number {
  const x0 = mean(xs);
  const y0 = mean(ys);
  return sum(xs.map((x, i) => (x - x0) * (ys[i]! - y0)));
}

/** Over n - 1. */
export const sampleVariance = (values: readonly number[]): number =>
  deviationSquares(values) / (values.length - 1);
/** Over n. */
export const populationVariance = (values: readonly number[]): number =>
  deviationSquares(values) / values.length;

/** Sum over ((x - mean) / spread)^power. */
export function standardizedMoment(values: readonly number[], spread: number, power: number): number {
  const centre = mean(values);
  return sum(values.map((value) => ((value - centre) / spread) ** power));
}

export const ascending = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);

/** The value at the fraction p (0 to 1) of the sorted list, straight lines between (type 7 of Hyndman and Fan, 1996). */
export function quantile(values: readonly number[], p: number): number {
  const sorted = ascending(values);
  const position = p * (sorted.length - 1);
  const low = Math.floor(position);
  const here = sorted[low] ?? NaN;
  const next = sorted[low + 1] ?? here;
  return here + (position - low) * (next - here);
}

export const median = (values: readonly number[]): number => quantile(values, 0.5);

/** Pearson's correlation. */
export const correlation = (xs: readonly number[], ys: readonly number[]): number =>
  deviationProducts(xs, ys) / Math.sqrt(deviationSquares(xs) * deviationSquares(ys));
