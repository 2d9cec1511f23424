/** Linear least squares by Householder reflections: never through the normal equations, which square the condition number. */

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

/**
 * Coefficients that minimise |X c - y|; undefined if there are fewer rows than columns or the columns depend on each other
 * (within 1e-12 of their length). Å. Björck, Numerical Methods for Least Squares Problems, 1996, section 2.3 (from memory).
 */
export function leastSquares(rows: readonly (readonly number[])[], y: readonly number[]): Fit | undefined {
  const count = rows.length;
  const width = rows[0]?.length ?? 0;
  if (count < width || width === 0 || y.length !== count) return undefined;
  const scale = Array.from({ length: width }, (_, j) => Math.hypot(...rows.map((row) => row[j]!)));
  if (scale.some((length) => !(length > 0) || !Number.isFinite(length))) return undefined;
  const a = rows.map((row) => row.map((value, j) => value / scale[j]!));
  const b = [...y];
  for (let k = 0; k < width; k += 1) {
    const length = Math.hypot(...a.slice(k).map((row) => row[k]!));
    if (length < 1e-12) return undefined;
    const alpha = a[k]![k]! > 0 ? -length : length;
    const reflector = a.slice(k).map((row) => row[k]!);
    reflector[0] = reflector[0]! - alpha;
    const square = reflector.reduce((sum, value) => sum + value * value, 0);
    for (let j = k; j < width; j += 1) {
      const factor = (2 * reflector.reduce((sum, value, i) => sum + value * a[k + i]![j]!, 0)) / square;
      for (let i = k; i < count; i += 1) a[i]![j] = a[i]![j]! - factor * reflector[i - k]!;
    }
    const factor = (2 * reflector.reduce((sum, value, i) => sum + value * b[k + i]!, 0)) / square;
    for (let i = k; i < count; i += 1) b[i] = b[i]! - factor * reflector[i - k]!;
  }
  const solved = (right: readonly number[]): number[] => {
    const x = Array.from({ length: width }, () => 0);
    for (let k = width - 1; k >= 0; k -= 1) {
      let rest = right[k]!;
      for (let j = k + 1; j < width; j += 1) rest -= a[k]![j]! * x[j]!;
      x[k] = rest / a[k]![k]!;
    }
    return x;
  };
  const coefficients = solved(b).map((value, j) => value / scale[j]!);
  const inverse = Array.from({ length: width }, (_, k) =>
    solved(Array.from({ length: width }, (__, j) => (j === k ? 1 : 0))),
  );
  const unscaledCovariance = Array.from({ length: width }, (_, i) =>
    Array.from(
      { length: width },
      (__, j) => inverse.reduce((sum, column) => sum + column[i]! * column[j]!, 0) / (scale[i]! * scale[j]!),
    ),
  );
  const residuals = rows.map((row, i) =>
    row.reduce((rest, value, j) => rest - value * coefficients[j]!, y[i]!),
  );
  return {
    coefficients,
    residuals,
    residualSum: residuals.reduce((sum, value) => sum + value * value, 0),
    freedom: count - width,
    unscaledCovariance,
  };
}
