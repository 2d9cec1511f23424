/** Points that fill a box evenly: the sequence of Halton (1960), a prime base a dimension. */

const PRIMES = [2, 3, 5, 7, 11, 13];

function radicalInverse(index: number, base: number): number {
  let [fraction, value] = [1, 0];
  for (let rest = index; rest > 0; rest = Math.floor(rest / base)) {
    fraction /= base;
    value += fraction * (rest % base);
  }
  return value;
}

/** The point with this number (from 1) in the unit box of up to six dimensions. */
export function haltonPoint(index: number, dimensions: number): number[] {
  return PRIMES.slice(0, dimensions).map((base) => radicalInverse(index, base));
}
