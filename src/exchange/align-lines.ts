/** Which rows (or columns) of a worksheet are those of an earlier state: found by what stands in them, in order. */

import { forEachCell } from '../document/index.ts';
import type { Axis, Worksheet } from '../document/index.ts';

/** What stands in a line, empty cells left out; addresses in formulas do not count, because they follow what moves. */
type Line = readonly string[];

const ADDRESS = /\$?[A-Z]{1,2}\$?\d+/g;

const loose = (content: string): string =>
  content.startsWith('=') ? content.replaceAll(ADDRESS, '#') : content;

/** The lines of a worksheet up to the last filled one. */
export function linesOf(worksheet: Worksheet, axis: Axis): readonly Line[] {
  const lines: string[][] = [];
  forEachCell(worksheet, ({ content }, row, column) => {
    const at = axis === 'row' ? row : column;
    while (lines.length <= at) lines.push([]);
    if (content !== '') lines[at]?.push(loose(content));
  });
  return lines;
}

const isSameLine = (a: Line | undefined, b: Line | undefined): boolean =>
  a !== undefined && b !== undefined && a.length === b.length && a.every((each, index) => each === b[index]);

/** How much two lines look like the same one; any pairing is better than none. */
function likeness(a: Line, b: Line): number {
  if (a.length === 0 || b.length === 0) return a.length === b.length ? 0.2 : 0.1;
  if (isSameLine(a, b)) return 3;
  const rest = [...b];
  let shared = 0;
  for (const each of a) {
    const at = rest.indexOf(each);
    if (at < 0) continue;
    shared += 1;
    rest.splice(at, 1);
  }
  return shared === 0 ? 0.15 : 1 + shared / Math.max(a.length, b.length);
}

/** Beyond so many pairs the middle is paired by its places alone. */
const MOST_PAIRS = 250_000;

/** The places of `before`'s lines among `after`'s, in order; undefined for lines that are gone. */
export function alignedLines(
  before: readonly Line[],
  after: readonly Line[],
): readonly (number | undefined)[] {
  const found: (number | undefined)[] = before.map(() => undefined);
  let start = 0;
  while (start < before.length && isSameLine(before[start], after[start])) {
    found[start] = start;
    start += 1;
  }
  let [end, endAfter] = [before.length, after.length];
  while (end > start && endAfter > start && isSameLine(before[end - 1], after[endAfter - 1])) {
    end -= 1;
    endAfter -= 1;
    found[end] = endAfter;
  }
  const [rows, columns] = [end - start, endAfter - start];
  if (rows === 0 || columns === 0) return found;
  if (rows * columns > MOST_PAIRS) {
    for (let i = 0; i < Math.min(rows, columns); i++) found[start + i] = start + i;
    return found;
  }
  // Needleman and Wunsch (1970): the best sum of likenesses, gaps cost nothing.
  const width = columns + 1;
  const best = new Float64Array((rows + 1) * width);
  const like = new Float64Array(rows * columns);
  for (let i = rows - 1; i >= 0; i--) {
    for (let j = columns - 1; j >= 0; j--) {
      const pair = likeness(before[start + i] ?? [], after[start + j] ?? []);
      like[i * columns + j] = pair;
      best[i * width + j] = Math.max(
        pair + (best[(i + 1) * width + j + 1] ?? 0),
        best[(i + 1) * width + j] ?? 0,
        best[i * width + j + 1] ?? 0,
      );
    }
  }
  for (let i = 0, j = 0; i < rows && j < columns;) {
    const here = best[i * width + j] ?? 0;
    if (here === (like[i * columns + j] ?? 0) + (best[(i + 1) * width + j + 1] ?? 0)) {
      found[start + i] = start + j;
      i += 1;
      j += 1;
    } else if (here === (best[(i + 1) * width + j] ?? 0)) i += 1;
    else j += 1;
  }
  return found;
}
