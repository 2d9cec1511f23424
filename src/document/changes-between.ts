/** The changes that lead from one notebook to another: commands make the notebook they want, this finds the way there and back. */

import { filledCells } from './cells.ts';
import { partChanges, partsLength } from './part-lists.ts';
import { isSame } from './is-same.ts';
import type { CellChange, Change, Transaction } from './change.ts';
import { LIMITS } from './notebook.ts';
import { PART_LIMITS } from './parts.ts';
import type { Cell, Notebook, Worksheet } from './notebook.ts';
import { isRefusal } from './refusal.ts';
import type { Refusal } from './refusal.ts';

/** More changed cells than this, and more than half of the worksheet: the worksheet is replaced whole. */
const SINGLE_CELLS = 500;

function changedCells(from: Worksheet, to: Worksheet): CellChange[] {
  const changes: CellChange[] = [];
  for (let row = 0; row < Math.max(from.rows.length, to.rows.length); row++) {
    const before = from.rows[row];
    const after = to.rows[row];
    if (before === after) continue;
    for (let column = 0; column < Math.max(before?.length ?? 0, after?.length ?? 0); column++) {
      const was: Cell | undefined = before?.[column];
      const is: Cell | undefined = after?.[column];
      if (was === is || (was?.content === is?.content && isSame(was, is))) continue;
      changes.push({
        type: 'cell',
        worksheet: from.id,
        row,
        column,
        ...(was && { from: was }),
        ...(is && { to: is }),
      });
    }
  }
  return changes;
}

function worksheetChanges(from: Worksheet, to: Worksheet, index: number): readonly Change[] {
  const { rows: _before, ...was } = from;
  const { rows: _after, ...is } = to;
  const whole: Change = { type: 'worksheet', index, from, to };
  if (!isSame(was, is)) return [whole];
  const cells = changedCells(from, to);
  return cells.length > SINGLE_CELLS && cells.length * 2 > filledCells(to) ? [whole] : cells;
}

/** The changes from one state of a notebook to another; none where they are equal. */
export function changesBetween(before: Notebook, after: Notebook): readonly Change[] {
  const changes: Change[] = [];
  const from = { title: before.title, display: before.display, currency: before.currency };
  const to = { title: after.title, display: after.display, currency: after.currency };
  if (!isSame(from, to)) changes.push({ type: 'settings', from, to });

  const wanted = new Map(after.worksheets.map((worksheet) => [worksheet.id, worksheet]));
  const order: string[] = [];
  for (const worksheet of before.worksheets) {
    if (wanted.has(worksheet.id)) order.push(worksheet.id);
    else changes.push({ type: 'worksheet', index: order.length, from: worksheet });
  }
  const existing = new Map(before.worksheets.map((worksheet) => [worksheet.id, worksheet]));
  for (const [index, worksheet] of after.worksheets.entries()) {
    if (existing.has(worksheet.id)) continue;
    changes.push({ type: 'worksheet', index, to: worksheet });
    order.splice(index, 0, worksheet.id);
  }
  const target = after.worksheets.map((worksheet) => worksheet.id);
  if (!isSame(order, target)) changes.push({ type: 'order', from: order, to: target });
  for (const [index, worksheet] of after.worksheets.entries()) {
    const was = existing.get(worksheet.id);
    if (was && was !== worksheet) changes.push(...worksheetChanges(was, worksheet, index));
  }
  changes.push(...partChanges(before.parts, after.parts));
  return changes;
}

/** What of the notebook's limits the new state would pass, in words. */
function passedLimit(notebook: Notebook, before: Notebook): Refusal | undefined {
  if (notebook.parts !== before.parts && partsLength(notebook.parts) > PART_LIMITS.text) {
    return {
      message:
        'Recordings, photographs and trials would make the file too large: keep this in another notebook.',
    };
  }
  const filled = notebook.worksheets.reduce((sum, worksheet) => sum + filledCells(worksheet), 0);
  if (filled > LIMITS.filledCells) {
    return {
      message: `The notebook would have ${filled} filled cells; ${LIMITS.filledCells} is the most.`,
    };
  }
  if (notebook.worksheets.length > LIMITS.worksheets) {
    return { message: `A notebook has at most ${LIMITS.worksheets} worksheets.` };
  }
  for (const { title, rowCount, columnCount } of notebook.worksheets) {
    if (rowCount > LIMITS.rows) {
      return { message: `${title} would have ${rowCount} rows; ${LIMITS.rows} is the most.` };
    }
    if (columnCount > LIMITS.columns) {
      return { message: `${title} would have ${columnCount} columns; ${LIMITS.columns} is the most.` };
    }
  }
  return undefined;
}

/** The transaction that leads to the wanted state, or the limit that forbids it. */
export function transactionTo(
  before: Notebook,
  after: Notebook | Refusal,
  description: string,
  also: Partial<Pick<Transaction, 'notice' | 'selectionBefore' | 'selectionAfter'>> = {},
): Transaction | Refusal {
  if (isRefusal(after)) return after;
  return (
    passedLimit(after, before) ?? {
      changes: changesBetween(before, after),
      description,
      origin: 'user',
      ...also,
    }
  );
}
