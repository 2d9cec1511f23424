/** The nearest of many names to one that does not exist. */

/** Edits (insert, delete, replace, swap of neighbours) between two texts; gives up above `limit`. */
export function editDistance(a: string, b: string, limit = Infinity): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let before: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min((previous[j] ?? 0) + 1, (current[j - 1] ?? 0) + 1, (previous[j - 1] ?? 0) + cost);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        best = Math.min(best, (before[j - 2] ?? 0) + 1);
      }
      current.push(best);
    }
    before = previous;
    previous = current;
  }
  return previous[b.length] ?? 0;
}

const bare = (name: string): string => name.toUpperCase().replaceAll(/[._]/g, '');

/** How far a name is from what was written: small for a slip, and for a name without its family. */
function farness(written: string, name: string): number {
  const [a, b] = [bare(written), bare(name)];
  const last = bare(name.slice(name.lastIndexOf('.') + 1));
  const whole = editDistance(a, b);
  const part = name.includes('.') ? editDistance(a, last) + 0.5 : Infinity;
  const within = a.length >= 3 && b.includes(a) ? 1.5 + (b.length - a.length) / 20 : Infinity;
  return Math.min(whole, part, within);
}

/** Names at most about a third of their letters away, nearest first. */
export function nearestNames(written: string, names: Iterable<string>, count = 1): readonly string[] {
  const limit = Math.max(1, bare(written).length / 3) + 0.5;
  return [...names]
    .map((name) => ({ name, far: farness(written, name) }))
    .filter(({ far }) => far <= limit)
    .sort((a, b) => a.far - b.far || (a.name < b.name ? -1 : 1))
    .slice(0, count)
    .map(({ name }) => name);
}
