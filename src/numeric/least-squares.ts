/** Linear least squares by Householder reflections: never through the normal equations, which square the condition number. */

import { dotWith } from './compensated.ts';
import { transposed } from './matrix.ts';

export interface Fit {
  readonly coefficients: readonly number[];
  /** y minus fitted, in order. */
  readonly residuals: readonly number[];
  /** Sum of squared residuals. */
  readonly residualSum: number;
  /** Observations minus coefficients. */
  readonly freedom: number;
  /** (X'X)^-1: times residualSum / freedom it is the covariance of the coefficients. */
  readonly unscaledCovariance: readonly (readonly number[])[];
}

type Columns = readonly (readonly number[])[];

/** Reflectors, one a column and each shorter by one, and the triangle that they leave: columns = Q (triangle over zeros). */
interface Factors {
  readonly reflectors: Columns;
  readonly triangle: Columns;
}

const dot = (a: readonly number[], b: readonly number[], from = 0): number =>
  a.reduce((total, value, i) => total + value * b[from + i]!, 0);

/** Turns the tail of `b` by the reflection that belongs to row `k`. */
function reflect(reflector: readonly number[], b: number[], k: number): void {
  const factor = (2 * dot(reflector, b, k)) / dot(reflector, reflector);
  for (const [i, value] of reflector.entries()) b[k + i] = b[k + i]! - factor * value;
}

/** undefined where the columns depend on each other within 1e-12 of their length. */
function factored(columns: Columns): Factors | undefined {
  const a = columns.map((column) => [...column]);
  const reflectors: number[][] = [];
  for (const [k, column] of a.entries()) {
    const reflector = column.slice(k);
    const length = Math.hypot(...reflector);
    if (!(length >= 1e-12)) return undefined;
    reflector[0] = reflector[0]! + (reflector[0]! > 0 ? length : -length);
    for (const each of a.slice(k)) reflect(reflector, each, k);
    reflectors.push(reflector);
  }
  return { reflectors, triangle: a.map((column, k) => column.slice(0, k + 1)) };
}

/** Q' b. */
function turned({ reflectors }: Factors, b: readonly number[]): number[] {
  const result = [...b];
  reflectors.forEach((reflector, k) => reflect(reflector, result, k));
  return result;
}

/** Q b. */
function turnedBack({ reflectors }: Factors, b: readonly number[]): number[] {
  const result = [...b];
  for (let k = reflectors.length - 1; k >= 0; k -= 1) reflect(reflectors[k]!, result, k);
  return result;
}

/** x with R x = right. */
function solved({ triangle }: Factors, right: readonly number[]): number[] {
  const x = right.slice(0, triangle.length);
  for (let k = triangle.length - 1; k >= 0; k -= 1) {
    x[k] = x[k]! / triangle[k]![k]!;
    for (let i = 0; i < k; i += 1) x[i] = x[i]! - triangle[k]![i]! * x[k]!;
  }
  return x;
}

/** w with R' w = right. */
function solvedTransposed({ triangle }: Factors, right: readonly number[]): number[] {
  const w: number[] = [];
  for (const [k, column] of triangle.entries()) w.push((right[k]! - dot(w, column)) / column[k]!);
  return w;
}

/** Rounds of refinement; each wins the digits that the condition of the columns leaves, so few are needed. */
const ROUNDS = 4;

/**
 * Coefficients that minimise |X c - y|; undefined if there are fewer rows than columns or the columns depend on each other
 * (within 1e-12 of their length). Coefficients and residuals are refined together with sums of twice the digits:
 * Å. Björck, BIT 7 (1967) 257-278; Numerical Methods for Least Squares Problems, 1996, sections 2.3 and 2.9 (from memory).
 */
export function leastSquares(rows: readonly (readonly number[])[], y: readonly number[]): Fit | undefined {
  const count = rows.length;
  const width = rows[0]?.length ?? 0;
  if (count < width || width === 0 || y.length !== count) return undefined;
  const raw = transposed(rows);
  const lengths = raw.map((column) => Math.hypot(...column));
  if (lengths.some((length) => !(length > 0) || !Number.isFinite(length))) return undefined;
  // Powers of two, so that scaling rounds nothing.
  const scale = lengths.map((length) => 2 ** Math.round(Math.log2(length)));
  const columns = raw.map((column, j) => column.map((value) => value / scale[j]!));
  const factors = factored(columns);
  if (!factors) return undefined;
  const scaledRows = transposed(columns);

  let c = solved(factors, turned(factors, y));
  let r = scaledRows.map((row, i) => y[i]! - dot(row, c));
  for (let round = 0; round < ROUNDS; round += 1) {
    const negative = c.map((value) => -value);
    const missing = scaledRows.map((row, i) => dotWith(y[i]!, [...row, r[i]!], [...negative, -1]));
    const slanted = columns.map((column) => -dotWith(0, column, r));
    const w = solvedTransposed(factors, slanted);
    const turnedMissing = turned(factors, missing);
    const step = solved(
      factors,
      w.map((value, k) => turnedMissing[k]! - value),
    );
    const change = turnedBack(factors, [...w, ...turnedMissing.slice(width)]);
    const better = c.map((value, j) => value + step[j]!);
    if (!better.every(Number.isFinite) || !change.every(Number.isFinite)) break;
    c = better;
    r = r.map((value, i) => value + change[i]!);
    if (step.every((value, j) => Math.abs(value) <= Number.EPSILON * Math.abs(c[j]!))) break;
  }

  const inverse = Array.from({ length: width }, (_, k) =>
    solved(
      factors,
      Array.from({ length: width }, (__, j) => (j === k ? 1 : 0)),
    ),
  );
  return {
    coefficients: c.map((value, j) => value / scale[j]!),
    residuals: r,
    residualSum: dotWith(0, r, r),
    freedom: count - width,
    unscaledCovariance: scale.map((si, i) =>
      scale.map((sj, j) => inverse.reduce((total, column) => total + column[i]! * column[j]!, 0) / (si * sj)),
    ),
  };
}
