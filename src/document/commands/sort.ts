/** Sorting the rows of a block: allowed where its formulas refer to their own row or outside of the block. */

import { cellAt, checkBlock, doBlocksMeet, isBlockWithin, worksheetOf, worksheetTitled } from '../cells.ts';
import type { CellWrite } from '../cells.ts';
import type { Transaction } from '../change.ts';
import { transactionTo } from '../changes-between.ts';
import { contentOf } from '../content.ts';
import { rewriteReferences } from '../../expression/index.ts';
import { addressOf, blockOf, blockText, referencesIn, referenceTo } from '../formula-references.ts';
import type { Block, Cell, Notebook, Worksheet } from '../notebook.ts';
import type { Refusal } from '../refusal.ts';
import { withWorksheet, withWrites } from '../with-worksheet.ts';
import { namesOn, resolveName } from '../resolve-name.ts';
import { rewrittenCell } from '../tidy-cell.ts';
import type { CellsArgs } from './properties.ts';

export interface SortKey {
  /** Column of the worksheet, from 0. */
  readonly column: number;
  readonly descending?: boolean;
}

/** What a cell is sorted by: SI numbers, texts, logicals; null for blanks and errors, which come last. */
export type SortValue = number | string | boolean | null;

export interface SortArgs extends CellsArgs {
  readonly keys: readonly SortKey[];
  /** Results of formulas; where left out, only cells without a formula can be sorted by. */
  readonly resultOf?: (row: number, column: number) => SortValue;
}

function contentValue(cell: Cell | undefined, currency: string): SortValue | undefined {
  if (!cell) return null;
  const content = contentOf(cell, currency);
  switch (content.type) {
    case 'formula':
      return undefined;
    case 'empty':
      return null;
    case 'logical':
      return content.value;
    case 'text':
    case 'unknownUnit':
      return content.text;
    default:
      return content.si;
  }
}

const RANKS = new Map([
  ['number', 0],
  ['string', 1],
  ['boolean', 2],
]);

function compared(a: SortValue, b: SortValue, descending: boolean): number {
  if (a === null || b === null) return (a === null ? 1 : 0) - (b === null ? 1 : 0);
  const sign = descending ? -1 : 1;
  if (typeof a !== typeof b) return sign * ((RANKS.get(typeof a) ?? 0) - (RANKS.get(typeof b) ?? 0));
  const [first, second] = typeof a === 'string' ? [a.toLowerCase(), String(b).toLowerCase()] : [a, b ?? 0];
  return first < second ? -sign : first > second ? sign : 0;
}

/** The first cell whose formula refers to another row of the block, by address or by name. */
function crossReference(notebook: Notebook, worksheet: Worksheet, block: Block): string | undefined {
  for (let row = block.row; row < block.row + block.rows; row++) {
    const own: Block = { ...block, row, rows: 1 };
    for (let column = block.column; column < block.column + block.columns; column++) {
      const cell = cellAt(worksheet, row, column);
      const crosses =
        cell &&
        referencesIn(cell).some((node) => {
          const target = node.worksheet === undefined ? worksheet : worksheetTitled(notebook, node.worksheet);
          if (node.type !== 'name') {
            const at = blockOf(node);
            return target === worksheet && doBlocksMeet(at, block) && !isBlockWithin(at, own);
          }
          const found =
            node.worksheet === undefined ? resolveName(notebook, worksheet.id, node.name) : undefined;
          const on = found?.worksheet ?? target;
          const named = on && namesOn(on).get(node.name);
          return (
            on === worksheet &&
            named !== undefined &&
            doBlocksMeet(named.target, block) &&
            !isBlockWithin(named.target, own)
          );
        });
      if (crosses) return addressOf(row, column);
    }
  }
  return undefined;
}

function movedContent(notebook: Notebook, worksheet: Worksheet, block: Block, cell: Cell, by: number): Cell {
  const content = rewriteReferences(cell.content, referencesIn(cell), (node) => {
    if (node.type === 'name') return undefined;
    const target = node.worksheet === undefined ? worksheet : worksheetTitled(notebook, node.worksheet);
    const at = blockOf(node);
    if (target !== worksheet || !isBlockWithin(at, block)) return undefined;
    return referenceTo(node, { ...at, row: at.row + by }, node.worksheet);
  });
  return rewrittenCell(cell, content);
}

/** Rows keep their order where the keys are equal; a name of a single row of the block goes with its row. */
export function sort(notebook: Notebook, args: SortArgs): Transaction | Refusal {
  const { worksheet: id, block, keys, resultOf } = args;
  checkBlock(block);
  const worksheet = worksheetOf(notebook, id);
  for (const { column } of keys) {
    if (column < block.column || column >= block.column + block.columns) {
      throw new RangeError(`key column ${column} lies outside ${blockText(block)}`);
    }
  }
  const crossing = crossReference(notebook, worksheet, block);
  if (crossing !== undefined) {
    return {
      message: `Not sorted: ${crossing} refers to another row of ${blockText(block)}. Formulas of a sorted block refer to their own row or outside of it.`,
    };
  }
  const values: { readonly row: number; readonly by: readonly SortValue[] }[] = [];
  for (let row = block.row; row < block.row + block.rows; row++) {
    const by: SortValue[] = [];
    for (const { column } of keys) {
      const value =
        resultOf?.(row, column) ?? contentValue(cellAt(worksheet, row, column), notebook.currency);
      if (value === undefined) {
        if (!resultOf)
          return { message: `Not sorted: the value of ${addressOf(row, column)} is not known yet.` };
        by.push(null);
      } else by.push(value);
    }
    values.push({ row, by });
  }
  const order = values.toSorted((a, b) => {
    for (const [index, key] of keys.entries()) {
      const difference = compared(a.by[index] ?? null, b.by[index] ?? null, key.descending ?? false);
      if (difference !== 0) return difference;
    }
    return a.row - b.row;
  });
  const goal = new Map(order.map(({ row }, index) => [row, block.row + index]));
  const writes: CellWrite[] = [];
  for (const [from, to] of goal) {
    if (from === to) continue;
    for (let column = block.column; column < block.column + block.columns; column++) {
      const cell = cellAt(worksheet, from, column);
      const moved = cell && movedContent(notebook, worksheet, block, cell, to - from);
      writes.push({ row: to, column, cell: moved });
    }
  }
  const names = worksheet.names.map((defined) => {
    const { target } = defined;
    const to = goal.get(target.row);
    if (target.rows !== 1 || to === undefined || !isBlockWithin(target, block)) return defined;
    return { ...defined, target: { ...target, row: to } };
  });
  const sorted = withWrites(notebook, id, writes);
  const after = names.some((each, index) => each !== worksheet.names[index])
    ? withWorksheet(sorted, { ...worksheetOf(sorted, id), names })
    : sorted;
  return transactionTo(notebook, after, `sort ${blockText(block)}`);
}
