/** Which rows (or columns) of a worksheet are those of an earlier state: found by what stands in them, in order. */

import { forEachCell } from '../document/index.ts';
import type { Axis, Worksheet } from '../document/index.ts';
import { longestRising } from './longest-rising.ts';

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

/** Lines as numbers, to be compared quickly: equal lines have the same number, and equal contents have. */
interface Numbered {
  readonly line: readonly number[];
  /** What stands in each line, in rising order of its numbers. */
  readonly contents: readonly (readonly number[])[];
}

/** Gives every word its own number. */
function numbering(): (word: string) => number {
  const numbers = new Map<string, number>();
  return (word) => {
    const known = numbers.get(word) ?? numbers.size;
    numbers.set(word, known);
    return known;
  };
}

function numbered(
  lines: readonly Line[],
  content: (word: string) => number,
  line: (word: string) => number,
): Numbered {
  const inOrder = lines.map((each) => each.map(content));
  return {
    line: inOrder.map((each) => line(each.join())),
    contents: inOrder.map((each) => each.toSorted((a, b) => a - b)),
  };
}

/** How many entries two rising lists share. */
function shared(a: readonly number[], b: readonly number[]): number {
  let count = 0;
  for (let i = 0, j = 0; i < a.length && j < b.length;) {
    const difference = (a[i] ?? 0) - (b[j] ?? 0);
    if (difference === 0) count += 1;
    if (difference <= 0) i += 1;
    if (difference >= 0) j += 1;
  }
  return count;
}

/** A run of lines on each side: from `i` to before `toI` are to be found between `j` and `toJ`. */
interface Stretch {
  readonly i: number;
  readonly toI: number;
  readonly j: number;
  readonly toJ: number;
}

const pairsOf = ({ i, toI, j, toJ }: Stretch): number => (toI - i) * (toJ - j);

/** Beyond so many pairs the lines that stand once on either side are looked for first. */
const MANY_PAIRS = 10_000;
/** Beyond so many pairs between two of those, lines are paired by their places alone. */
const MOST_PAIRS = 250_000;

/** The places of `before`'s lines among `after`'s, in order; undefined for lines that are gone. */
export function alignedLines(
  before: readonly Line[],
  after: readonly Line[],
): readonly (number | undefined)[] {
  const [content, line] = [numbering(), numbering()];
  const [a, b] = [numbered(before, content, line), numbered(after, content, line)];
  const found: (number | undefined)[] = before.map(() => undefined);
  const open: Stretch[] = [{ i: 0, toI: before.length, j: 0, toJ: after.length }];
  for (let stretch = open.pop(); stretch; stretch = open.pop()) {
    const middle = withoutEnds(a, b, stretch, found);
    if (pairsOf(middle) === 0) continue;
    const fixed = pairsOf(middle) > MANY_PAIRS ? landmarks(a, b, middle) : [];
    if (fixed.length > 0) {
      let { i, j } = middle;
      for (const [atI, atJ] of fixed) {
        found[atI] = atJ;
        open.push({ i, toI: atI, j, toJ: atJ });
        [i, j] = [atI + 1, atJ + 1];
      }
      open.push({ ...middle, i, j });
    } else if (pairsOf(middle) > MOST_PAIRS) {
      const { i, toI, j, toJ } = middle;
      for (let k = 0; k < Math.min(toI - i, toJ - j); k += 1) found[i + k] = j + k;
    } else pairByLikeness(a, b, middle, found);
  }
  return found;
}

/** Pairs the same lines at both ends; the rest is answered. */
function withoutEnds(a: Numbered, b: Numbered, stretch: Stretch, found: (number | undefined)[]): Stretch {
  let { i, toI, j, toJ } = stretch;
  while (i < toI && j < toJ && a.line[i] === b.line[j]) found[i++] = j++;
  while (toI > i && toJ > j && a.line[toI - 1] === b.line[toJ - 1]) found[--toI] = --toJ;
  return { i, toI, j, toJ };
}

/** Where each line stands that stands once between the two places. */
function single(lines: readonly number[], from: number, to: number): Map<number, number> {
  const places = new Map<number, number>();
  const often = new Set<number>();
  for (let at = from; at < to; at += 1) {
    const line = lines[at] ?? 0;
    if (places.has(line)) often.add(line);
    places.set(line, at);
  }
  for (const line of often) places.delete(line);
  return places;
}

/** Pairs of lines that stand once on either side and are the same: as many as keep their order. */
function landmarks(
  a: Numbered,
  b: Numbered,
  { i, toI, j, toJ }: Stretch,
): readonly (readonly [number, number])[] {
  const there = single(b.line, j, toJ);
  const pairs = [...single(a.line, i, toI)]
    .flatMap(([line, at]) => {
      const place = there.get(line);
      return place === undefined ? [] : [[at, place] as const];
    })
    .sort((one, other) => one[0] - other[0]);
  return longestRising(pairs);
}

/** How much two lines look like the same one: any pairing is better than none, and one that is the same outweighs several halves. */
function likeness(a: Numbered, b: Numbered, i: number, j: number): number {
  const [left, right] = [a.contents[i] ?? [], b.contents[j] ?? []];
  if (left.length === 0 || right.length === 0) return left.length === right.length ? 0.2 : 0.1;
  if (a.line[i] === b.line[j]) return 3;
  const count = shared(left, right);
  return 0.15 + 2 * (count / Math.max(left.length, right.length)) ** 2;
}

/** Needleman and Wunsch (1970): the best sum of likenesses, gaps cost nothing. */
function pairByLikeness(
  a: Numbered,
  b: Numbered,
  { i, toI, j, toJ }: Stretch,
  found: (number | undefined)[],
): void {
  const [rows, columns] = [toI - i, toJ - j];
  const width = columns + 1;
  const best = new Float64Array((rows + 1) * width);
  const like = new Float64Array(rows * columns);
  for (let row = rows - 1; row >= 0; row--) {
    for (let column = columns - 1; column >= 0; column--) {
      const pair = likeness(a, b, i + row, j + column);
      like[row * columns + column] = pair;
      best[row * width + column] = Math.max(
        pair + (best[(row + 1) * width + column + 1] ?? 0),
        best[(row + 1) * width + column] ?? 0,
        best[row * width + column + 1] ?? 0,
      );
    }
  }
  for (let row = 0, column = 0; row < rows && column < columns;) {
    const here = best[row * width + column] ?? 0;
    if (here === (like[row * columns + column] ?? 0) + (best[(row + 1) * width + column + 1] ?? 0)) {
      found[i + row] = j + column;
      row += 1;
      column += 1;
    } else if (here === (best[(row + 1) * width + column] ?? 0)) row += 1;
    else column += 1;
  }
}
