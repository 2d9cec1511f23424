/** The references and names inside a cell's formula, and the formula with some of them written anew; all else stays as typed. */

import { addressText, cornerText, nodesOf, parse, titleText } from '../expression/index.ts';
import type { CellNode, Corner, NameNode, Node, RangeNode } from '../expression/index.ts';
import type { Block, Cell } from './notebook.ts';
import { LIMITS } from './notebook.ts';

export type ReferenceNode = CellNode | RangeNode | NameNode;

export const BROKEN_REFERENCE = '#REF!';

const collected = new WeakMap<Cell, readonly ReferenceNode[]>();

export const isFormula = (content: string): boolean => content.startsWith('=');

const isReference = (node: Node): node is ReferenceNode =>
  node.type === 'cell' || node.type === 'range' || node.type === 'name';

/** The references and names of a formula from left to right; none for anything else. */
export function referencesInText(content: string): readonly ReferenceNode[] {
  if (!isFormula(content)) return [];
  const { tree } = parse(content);
  return tree ? [...nodesOf(tree)].filter(isReference).sort((a, b) => a.from - b.from) : [];
}

/** The same for a cell, remembered as long as the cell lives. */
export function referencesIn(cell: Cell): readonly ReferenceNode[] {
  if (!isFormula(cell.content)) return [];
  let found = collected.get(cell);
  if (!found) {
    found = referencesInText(cell.content);
    collected.set(cell, found);
  }
  return found;
}

/** The formula with each reference replaced by what `replace` gives; undefined leaves it as typed. */
export function replaceReferences(
  content: string,
  references: readonly ReferenceNode[],
  replace: (node: ReferenceNode) => string | undefined,
): string {
  let text = '';
  let done = 0;
  for (const node of references) {
    const by = replace(node);
    if (by === undefined) continue;
    text += content.slice(done, node.from) + by;
    done = node.to;
  }
  return text + content.slice(done);
}

/** "B3" for row 2, column 1. */
export const addressOf = (row: number, column: number): string => addressText(column, row);

/** "B3" or "B3:C9". */
export function blockText(block: Block): string {
  const first = addressOf(block.row, block.column);
  if (block.rows === 1 && block.columns === 1) return first;
  return `${first}:${addressOf(block.row + block.rows - 1, block.column + block.columns - 1)}`;
}

/** The cells a reference means, in the order of the worksheet. */
export function blockOf(node: CellNode | RangeNode): Block {
  if (node.type === 'cell') return { row: node.row, column: node.column, rows: 1, columns: 1 };
  const { start, end } = node;
  return {
    row: Math.min(start.row, end.row),
    column: Math.min(start.column, end.column),
    rows: Math.abs(start.row - end.row) + 1,
    columns: Math.abs(start.column - end.column) + 1,
  };
}

const prefixText = (title: string | undefined): string => (title === undefined ? '' : `${titleText(title)}.`);

/** The text of a reference that means this block instead, with its $ signs and the order of its corners; `title` qualifies it. */
export function referenceText(node: CellNode | RangeNode, block: Block, title: string | undefined): string {
  if (node.type === 'cell') {
    return prefixText(title) + cornerText({ ...node, row: block.row, column: block.column });
  }
  const { start, end } = node;
  const lastRow = block.row + block.rows - 1;
  const lastColumn = block.column + block.columns - 1;
  const down = start.row <= end.row;
  const right = start.column <= end.column;
  const from = {
    ...start,
    row: down ? block.row : lastRow,
    column: right ? block.column : lastColumn,
  };
  const to = { ...end, row: down ? lastRow : block.row, column: right ? lastColumn : block.column };
  return `${prefixText(title)}${cornerText(from)}:${cornerText(to)}`;
}

export function nameText(name: string, title: string | undefined): string {
  return prefixText(title) + name;
}

const moved = (corner: Corner, rows: number, columns: number): Corner => ({
  ...corner,
  row: corner.rowFixed ? corner.row : corner.row + rows,
  column: corner.columnFixed ? corner.column : corner.column + columns,
});

const isOnWorksheet = ({ row, column }: Corner): boolean =>
  row >= 0 && row < LIMITS.rows && column >= 0 && column < LIMITS.columns;

/** What a reference reads in a copy that many rows and columns further; #REF! where it leaves the worksheet. */
export function shiftedReference(node: CellNode | RangeNode, rows: number, columns: number): string {
  const corners = (node.type === 'cell' ? [node] : [node.start, node.end]).map((corner) =>
    moved(corner, rows, columns),
  );
  if (!corners.every(isOnWorksheet)) return BROKEN_REFERENCE;
  return prefixText(node.worksheet) + corners.map(cornerText).join(':');
}

/** A formula as it reads in a copy that many rows and columns further; anything else unchanged. */
export function shiftedContent(cell: Cell, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return cell.content;
  return replaceReferences(cell.content, referencesIn(cell), (node) =>
    node.type === 'name' ? undefined : shiftedReference(node, rows, columns),
  );
}
