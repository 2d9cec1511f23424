/** The longest rising run in a list, by patience sorting (Schensted 1961). */

/** Of pairs whose first numbers rise, the longest run whose second ones rise too. */
export function longestRising(
  pairs: readonly (readonly [number, number])[],
): readonly (readonly [number, number])[] {
  /** Index of the pair that ends a run of each length with the smallest number; what stands before each pair in its run. */
  const ends: number[] = [];
  const previous: number[] = [];
  const second = (index: number): number => pairs[index]?.[1] ?? 0;
  pairs.forEach(([, place], index) => {
    let [low, high] = [0, ends.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (second(ends[middle] ?? 0) < place) low = middle + 1;
      else high = middle;
    }
    previous.push(ends[low - 1] ?? -1);
    ends[low] = index;
  });
  const run: (readonly [number, number])[] = [];
  for (let index = ends.at(-1) ?? -1; index >= 0; index = previous[index] ?? -1) {
    const pair = pairs[index];
    if (pair) run.push(pair);
  }
  return run.toReversed();
}
