/** What happens to the references of a formula when rows, columns, worksheets and names are inserted, deleted, moved, renamed or copied. */

import { cornerText, LAST_COLUMN, LAST_ROW, RANGE_CELLS, titleText } from './address.ts';
import { DELETED_REFERENCE, rewriteReferences } from './rewrite-references.ts';
import type { Reference, RefusedRewriting, RewrittenText } from './rewrite-references.ts';
import type { CellNode, Corner, RangeNode } from './tree.ts';

/** `at` and `to` count rows or columns from 0; worksheets go by title. */
export type Rewriting =
  | InsertRewriting
  | DeleteRewriting
  | MoveRewriting
  | { readonly type: 'rename worksheet'; readonly from: string; readonly to: string }
  | { readonly type: 'delete worksheet'; readonly worksheet: string }
  | { readonly type: 'rename name'; readonly worksheet: string; readonly from: string; readonly to: string }
  | { readonly type: 'copy'; readonly rows: number; readonly columns: number };

interface LinesOf {
  readonly axis: 'row' | 'column';
  readonly worksheet: string;
  readonly at: number;
  readonly count: number;
}
interface InsertRewriting extends LinesOf {
  readonly type: 'insert';
}
interface DeleteRewriting extends LinesOf {
  readonly type: 'delete';
}
/** The lines from `at` on come to stand before what was line `to`, which lies outside of them or is their own first. */
interface MoveRewriting extends LinesOf {
  readonly type: 'move';
  readonly to: number;
}
export type LineRewriting = InsertRewriting | DeleteRewriting | MoveRewriting;

/** Where the formula stands, and where a name without a worksheet leads from there (own worksheet where left out). */
export interface FormulaPlace {
  readonly worksheet: string;
  readonly homeOfName?: (name: string) => string | undefined;
}

/** First and last line, both included. */
type Lines = readonly [first: number, last: number];

function afterInsert([first, last]: Lines, at: number, count: number): Lines {
  return [first >= at ? first + count : first, last >= at ? last + count : last];
}

function afterDelete([first, last]: Lines, at: number, count: number): Lines | undefined {
  const end = at + count;
  const start = first < at ? first : Math.max(first - count, at);
  const stop = last < at ? last : last < end ? at - 1 : last - count;
  return start <= stop ? [start, stop] : undefined;
}

/** A block that stays together after the move is followed; otherwise the lines are taken out and put in again. */
function afterMove([first, last]: Lines, { at, count, to }: MoveRewriting): Lines {
  const end = at + count;
  const low = Math.min(at, to);
  const high = Math.max(end, to);
  const place = (line: number): number => {
    if (line >= at && line < end) return to > at ? line + to - end : line - (at - to);
    if (line < low || line >= high) return line;
    return to > at ? line - count : line + count;
  };
  const ends = [first, last, low - 1, low, at - 1, at, end - 1, end, high - 1, high];
  const places = ends.filter((line) => line >= first && line <= last).map(place);
  const [start, stop] = [Math.min(...places), Math.max(...places)];
  if (stop - start === last - first) return [start, stop];
  const rest = afterDelete([first, last], at, count) ?? [first, last];
  return afterInsert(rest, to > at ? to - count : to, count);
}

/** Where lines are after a rewriting; undefined where they are gone. Lines may come to lie past the worksheet's end. */
export function linesAfter(lines: Lines, rewriting: LineRewriting): Lines | undefined {
  if (rewriting.type === 'insert') return afterInsert(lines, rewriting.at, rewriting.count);
  if (rewriting.type === 'delete') return afterDelete(lines, rewriting.at, rewriting.count);
  return afterMove(lines, rewriting);
}

const isOutside = ({ row, column }: Corner): boolean =>
  row < 0 || row > LAST_ROW || column < 0 || column > LAST_COLUMN;

const cellsOf = ({ start, end }: RangeNode): number =>
  (Math.abs(start.row - end.row) + 1) * (Math.abs(start.column - end.column) + 1);

function overLines(
  node: CellNode | RangeNode,
  rewriting: LineRewriting,
): Reference | string | RefusedRewriting | undefined {
  const { axis } = rewriting;
  const [a, b] = node.type === 'cell' ? [node, node] : [node.start, node.end];
  const forward = a[axis] <= b[axis];
  const before: Lines = forward ? [a[axis], b[axis]] : [b[axis], a[axis]];
  const after = linesAfter(before, rewriting);
  if (!after) return DELETED_REFERENCE;
  if (after[0] === before[0] && after[1] === before[1]) return undefined;
  const start = { ...a, [axis]: after[forward ? 0 : 1] };
  const end = { ...b, [axis]: after[forward ? 1 : 0] };
  const written =
    node.type === 'cell' ? cornerText(node) : `${cornerText(node.start)}:${cornerText(node.end)}`;
  if (isOutside(start) || isOutside(end)) return { refused: `${written} would leave the worksheet` };
  if (node.type === 'cell') return { ...node, row: start.row, column: start.column };
  const grown = { ...node, start, end };
  if (cellsOf(grown) > RANGE_CELLS && cellsOf(grown) > cellsOf(node)) {
    return { refused: `${written} would grow to ${cellsOf(grown)} cells; ${RANGE_CELLS} is the most` };
  }
  return grown;
}

function copied(node: CellNode | RangeNode, rows: number, columns: number): Reference | string {
  const shifted = (corner: Corner): Corner => ({
    ...corner,
    row: corner.rowFixed ? corner.row : corner.row + rows,
    column: corner.columnFixed ? corner.column : corner.column + columns,
  });
  if (node.type === 'cell') {
    const { row, column } = shifted(node);
    const cell = { ...node, row, column };
    return isOutside(cell) ? DELETED_REFERENCE : cell;
  }
  const start = shifted(node.start);
  const end = shifted(node.end);
  return isOutside(start) || isOutside(end) ? DELETED_REFERENCE : { ...node, start, end };
}

/**
 * The formula as it reads after the rewriting. Ranges shrink and grow with what they hold (an insert at their first line shifts them,
 * one behind their last leaves them), a deleted reference becomes #REF!, and what would pass a limit is refused.
 */
export function rewrite(text: string, rewriting: Rewriting, place: FormulaPlace): RewrittenText {
  return rewriteReferences(text, (node) => {
    switch (rewriting.type) {
      case 'rename worksheet':
        return node.worksheet === rewriting.from ? { ...node, worksheet: rewriting.to } : undefined;
      case 'delete worksheet':
        return node.worksheet === rewriting.worksheet ? DELETED_REFERENCE : undefined;
      case 'rename name': {
        if (node.type !== 'name' || node.name !== rewriting.from) return undefined;
        const home = node.worksheet ?? (place.homeOfName ? place.homeOfName(node.name) : place.worksheet);
        return home === rewriting.worksheet ? { ...node, name: rewriting.to } : undefined;
      }
      case 'copy':
        return node.type === 'name' ? undefined : copied(node, rewriting.rows, rewriting.columns);
      default: {
        if (node.type === 'name' || (node.worksheet ?? place.worksheet) !== rewriting.worksheet)
          return undefined;
        const result = overLines(node, rewriting);
        if (typeof result !== 'object' || !('refused' in result)) return result;
        return { refused: `${titleText(rewriting.worksheet)}.${result.refused}` };
      }
    }
  });
}
