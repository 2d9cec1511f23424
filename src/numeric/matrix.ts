/** Small dense matrices as rows of numbers: product, transpose, determinant, inverse. */

export type Matrix = readonly (readonly number[])[];

/** The product; undefined where the inner sizes differ. */
export function matrixProduct(a: Matrix, b: Matrix): number[][] | undefined {
  if (a[0]?.length !== b.length) return undefined;
  return a.map((row) => b[0]!.map((_, j) => row.reduce((sum, value, k) => sum + value * b[k]![j]!, 0)));
}

export function transposed<T>(rows: readonly (readonly T[])[]): T[][] {
  return (rows[0] ?? []).map((_, j) => rows.map((row) => row[j]!));
}

export function identityMatrix(size: number): number[][] {
  return Array.from({ length: size }, (_, i) => Array.from({ length: size }, (__, j) => (i === j ? 1 : 0)));
}

/** Gaussian elimination with row pivoting over [a | right]; gives the determinant, right becomes a^-1 right. */
function eliminated(a: number[][], right: number[][]): number {
  const size = a.length;
  let product = 1;
  for (let k = 0; k < size; k += 1) {
    let pivot = k;
    for (let i = k + 1; i < size; i += 1) if (Math.abs(a[i]![k]!) > Math.abs(a[pivot]![k]!)) pivot = i;
    if (pivot !== k) {
      [a[k], a[pivot]] = [a[pivot]!, a[k]!];
      [right[k], right[pivot]] = [right[pivot]!, right[k]!];
      product = -product;
    }
    const divisor = a[k]![k]!;
    product *= divisor;
    if (divisor === 0) return 0;
    for (let i = k + 1; i < size; i += 1) {
      const factor = a[i]![k]! / divisor;
      if (factor === 0) continue;
      for (let j = k; j < size; j += 1) {
        const difference = a[i]![j]! - factor * a[k]![j]!;
        // Cancellation down to the last digits is zero: a singular matrix shall be seen as one.
        a[i]![j] = Math.abs(difference) < 1e-15 * Math.abs(a[i]![j]!) ? 0 : difference;
      }
      right[i] = right[i]!.map((value, j) => value - factor * right[k]![j]!);
    }
  }
  for (let k = size - 1; k >= 0; k -= 1) {
    right[k] = right[k]!.map(
      (value, j) =>
        a[k]!.slice(k + 1).reduce((rest, factor, n) => rest - factor * right[k + 1 + n]![j]!, value) /
        a[k]![k]!,
    );
  }
  return product;
}

const copied = (a: Matrix): number[][] => a.map((row) => [...row]);

/** undefined for a matrix that is not square. */
export function determinant(a: Matrix): number | undefined {
  return a.every((row) => row.length === a.length)
    ? eliminated(
        copied(a),
        a.map(() => []),
      )
    : undefined;
}

/** The inverse; "singular" where there is none, undefined for a matrix that is not square. */
export function inverseMatrix(a: Matrix): number[][] | 'singular' | undefined {
  if (!a.every((row) => row.length === a.length)) return undefined;
  const right = identityMatrix(a.length);
  return eliminated(copied(a), right) === 0 ? 'singular' : right;
}
