/** Running studies to their end. */

/** What a piecewise computation gives in the end. */
export function finished<T>(work: Generator<unknown, T>): T {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
  }
}
