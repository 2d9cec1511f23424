/** Progress of a piece of work within a larger one. */

/** The same work, its progress told as the part from `from` to `to` of the whole. */
export function* within<T>(work: Generator<number, T>, from: number, to: number): Generator<number, T> {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
    yield from + (to - from) * value;
  }
}
