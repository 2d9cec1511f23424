/** Names that a misspelt name may have meant. */

import { worksheetTitled, worksheetOf } from '../document/index.ts';
import type { Notebook } from '../document/index.ts';

/** Number of single-letter insertions, deletions and replacements between two short texts. */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? a.length;
}

/** At most three names within reach of the worksheet that differ in case alone or in one or two letters, nearest first. */
export function namesNear(
  notebook: Notebook,
  own: string,
  worksheet: string | undefined,
  name: string,
): readonly string[] {
  const titled = worksheet === undefined ? undefined : worksheetTitled(notebook, worksheet);
  const places = titled
    ? [titled]
    : [worksheetOf(notebook, own), ...notebook.worksheets.filter((each) => each.common)];
  const known = new Set(places.flatMap((each) => each.names.map((defined) => defined.name)));
  const lower = name.toLowerCase();
  return [...known]
    .map((each) => ({ each, far: distance(each.toLowerCase(), lower) }))
    .filter(({ each, far }) => far <= Math.min(2, Math.floor(each.length / 2)))
    .sort((a, b) => a.far - b.far)
    .slice(0, 3)
    .map(({ each }) => each);
}
