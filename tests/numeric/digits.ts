/** How many digits two numbers share: the log relative error of the NIST Statistical Reference Datasets, 15 at most. */
export function sharedDigits(given: number, certified: number): number {
  const error = certified === 0 ? Math.abs(given) : Math.abs(given / certified - 1);
  return Math.min(15, -Math.log10(error));
}

/** The fewest shared digits over two lists. */
export const fewestDigits = (given: readonly number[], certified: readonly number[]): number =>
  Math.min(...certified.map((value, i) => sharedDigits(given[i] ?? Number.NaN, value)));
