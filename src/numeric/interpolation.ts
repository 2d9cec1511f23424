/** Interpolation in tables. Nothing is extrapolated: outside the table the answer is undefined. */

/** Index i of the interval with xs[i] <= x <= xs[i + 1]; undefined outside. `xs` must rise. */
function intervalOf(xs: readonly number[], x: number): number | undefined {
  const last = xs.length - 1;
  if (last < 0 || !(x >= xs[0]! && x <= xs[last]!)) return undefined;
  let low = 0;
  let high = Math.max(last - 1, 0);
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (xs[middle]! <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Straight lines between the points; `xs` strictly rising. */
export function interpolateLinear(
  xs: readonly number[],
  ys: readonly number[],
  x: number,
): number | undefined {
  const i = intervalOf(xs, x);
  if (i === undefined) return undefined;
  if (xs.length === 1) return ys[0];
  const t = (x - xs[i]!) / (xs[i + 1]! - xs[i]!);
  return t === 1 ? ys[i + 1] : ys[i]! + t * (ys[i + 1]! - ys[i]!);
}

/**
 * A smooth curve that keeps the table's ups and downs: monotone piecewise cubic.
 * F. N. Fritsch and R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246; slopes as weighted harmonic means,
 * F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304 (from memory).
 */
export function interpolateMonotone(
  xs: readonly number[],
  ys: readonly number[],
  x: number,
): number | undefined {
  const i = intervalOf(xs, x);
  if (i === undefined || xs.length < 3) return interpolateLinear(xs, ys, x);
  const width = (k: number) => xs[k + 1]! - xs[k]!;
  const secant = (k: number) => (ys[k + 1]! - ys[k]!) / width(k);
  const last = xs.length - 1;
  const endSlope = (near: number, far: number): number => {
    const slope =
      ((2 * width(near) + width(far)) * secant(near) - width(near) * secant(far)) /
      (width(near) + width(far));
    if (slope * secant(near) <= 0) return 0;
    if (secant(near) * secant(far) <= 0 && Math.abs(slope) > Math.abs(3 * secant(near)))
      return 3 * secant(near);
    return slope;
  };
  const slopeAt = (k: number): number => {
    if (k === 0) return endSlope(0, 1);
    if (k === last) return endSlope(last - 1, last - 2);
    const before = secant(k - 1);
    const after = secant(k);
    if (before * after <= 0) return 0;
    const w1 = 2 * width(k) + width(k - 1);
    const w2 = width(k) + 2 * width(k - 1);
    return (w1 + w2) / (w1 / before + w2 / after);
  };
  const h = width(i);
  const t = (x - xs[i]!) / h;
  const u = 1 - t;
  return (
    ys[i]! * (1 + 2 * t) * u * u +
    slopeAt(i) * h * t * u * u +
    ys[i + 1]! * t * t * (3 - 2 * t) -
    slopeAt(i + 1) * h * t * t * u
  );
}

/** Bilinear interpolation in a table of rows (one a `xs`) by columns (one a `ys`); undefined outside. */
export function interpolateTable(
  xs: readonly number[],
  ys: readonly number[],
  rows: readonly (readonly number[])[],
  x: number,
  y: number,
): number | undefined {
  const column = rows.map((row) => interpolateLinear(ys, row, y));
  return column.every((value) => value !== undefined) ? interpolateLinear(xs, column, x) : undefined;
}
