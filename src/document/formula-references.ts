/** The references and names of a cell's formula, the blocks they mean, and what they read for other blocks and in copies. */

import { addressText, DELETED_REFERENCE, rewriteReferences, writtenReferences } from '../expression/index.ts';
import type { CellNode, Corner, NameNode, RangeNode, Reference } from '../expression/index.ts';
import type { Block, Cell } from './notebook.ts';
import { LIMITS } from './notebook.ts';

const collected = new WeakMap<Cell, readonly Reference[]>();

export const isFormula = (content: string): boolean => content.startsWith('=');

/** The references and names of a formula from left to right, of an unfinished one too; none for anything else. */
export const referencesInText = (content: string): readonly Reference[] =>
  isFormula(content) ? writtenReferences(content) : [];

/** The same for a cell, remembered as long as the cell lives. */
export function referencesIn(cell: Cell): readonly Reference[] {
  if (!isFormula(cell.content)) return [];
  let found = collected.get(cell);
  if (!found) {
    found = referencesInText(cell.content);
    collected.set(cell, found);
  }
  return found;
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

const onWorksheet = (title: string | undefined): { readonly worksheet?: string } =>
  title === undefined ? {} : { worksheet: title };

/** The reference that means this block instead, with its $ signs and the order of its corners; `title` qualifies it. */
export function referenceTo(
  node: CellNode | RangeNode,
  block: Block,
  title: string | undefined,
): CellNode | RangeNode {
  const { row, column } = block;
  if (node.type === 'cell') {
    const { worksheet: _, ...cell } = node;
    return { ...cell, ...onWorksheet(title), row, column };
  }
  const { worksheet: _, start, end, ...range } = node;
  const lastRow = row + block.rows - 1;
  const lastColumn = column + block.columns - 1;
  const down = start.row <= end.row;
  const right = start.column <= end.column;
  return {
    ...range,
    ...onWorksheet(title),
    start: { ...start, row: down ? row : lastRow, column: right ? column : lastColumn },
    end: { ...end, row: down ? lastRow : row, column: right ? lastColumn : column },
  };
}

/** The name to be read instead; `title` qualifies it. */
export function nameTo(node: NameNode, name: string, title: string | undefined): NameNode {
  const { worksheet: _, ...unqualified } = node;
  return { ...unqualified, ...onWorksheet(title), name };
}

const isOnWorksheet = ({ row, column }: Corner): boolean =>
  row >= 0 && row < LIMITS.rows && column >= 0 && column < LIMITS.columns;

/** What a reference reads in a copy that many rows and columns further; #REF! where it leaves the worksheet. */
function shiftedReference(node: CellNode | RangeNode, rows: number, columns: number) {
  const moved = <T extends Corner>(corner: T): T => ({
    ...corner,
    row: corner.rowFixed ? corner.row : corner.row + rows,
    column: corner.columnFixed ? corner.column : corner.column + columns,
  });
  if (node.type === 'cell') {
    const cell = moved(node);
    return isOnWorksheet(cell) ? cell : DELETED_REFERENCE;
  }
  const start = moved(node.start);
  const end = moved(node.end);
  return isOnWorksheet(start) && isOnWorksheet(end) ? { ...node, start, end } : DELETED_REFERENCE;
}

/** A formula as it reads in a copy that many rows and columns further; anything else unchanged. */
export function shiftedContent(cell: Cell, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return cell.content;
  return rewriteReferences(cell.content, referencesIn(cell), (node) =>
    node.type === 'name' ? undefined : shiftedReference(node, rows, columns),
  );
}
