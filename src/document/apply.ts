/** Carrying out changes on the frozen notebook, and turning a transaction around. */

import { withCells } from './cells.ts';
import type { CellWrite } from './cells.ts';
import type { Change, Transaction } from './change.ts';
import type { Notebook, Worksheet } from './notebook.ts';
import { withPartChange } from './part-lists.ts';

/** The notebook after the changes, in their order. Untouched worksheets and rows are the same objects. Throws on a worksheet that is not there. */
export function apply(notebook: Notebook, changes: readonly Change[]): Notebook {
  let worksheets: readonly Worksheet[] = notebook.worksheets;
  let settings: Pick<Notebook, 'title' | 'display' | 'currency'> = notebook;
  let { parts } = notebook;
  const waiting = new Map<string, CellWrite[]>();
  const replace = (id: string, by: (worksheet: Worksheet) => Worksheet): void => {
    const index = worksheets.findIndex((worksheet) => worksheet.id === id);
    const found = worksheets[index];
    if (!found) throw new RangeError(`a change names the worksheet ${id}, which is not in the notebook`);
    worksheets = worksheets.with(index, by(found));
  };
  const settle = (): void => {
    for (const [id, writes] of waiting) replace(id, (worksheet) => withCells(worksheet, writes));
    waiting.clear();
  };
  for (const change of changes) {
    if (change.type === 'cell') {
      const write = { row: change.row, column: change.column, cell: change.to };
      const writes = waiting.get(change.worksheet);
      if (writes) writes.push(write);
      else waiting.set(change.worksheet, [write]);
      continue;
    }
    if (change.type === 'part') {
      parts = withPartChange(parts, change);
      continue;
    }
    settle();
    if (change.type === 'settings') settings = change.to;
    else if (change.type === 'order') worksheets = inOrder(worksheets, change.to);
    else {
      const { index, from, to } = change;
      if (from && to) replace(from.id, () => to);
      else if (from) worksheets = worksheets.filter((worksheet) => worksheet.id !== from.id);
      else if (to) worksheets = worksheets.toSpliced(index, 0, to);
    }
  }
  settle();
  const { title, display, currency } = settings;
  const { parts: _before, ...rest } = notebook;
  const after = { ...rest, title, display, currency, worksheets: Object.freeze(worksheets) };
  return Object.freeze(parts ? { ...after, parts } : after);
}

function inOrder(worksheets: readonly Worksheet[], ids: readonly string[]): readonly Worksheet[] {
  const byId = new Map(worksheets.map((worksheet) => [worksheet.id, worksheet]));
  if (ids.length !== byId.size) {
    throw new RangeError(`an order of ${ids.length} worksheets, but there are ${byId.size}`);
  }
  return ids.map((id) => {
    const found = byId.get(id);
    if (!found) throw new RangeError(`an order names the worksheet ${id}, which is not in the notebook`);
    return found;
  });
}

function reversed(change: Change): Change {
  switch (change.type) {
    case 'cell': {
      const { from, to, type, worksheet, row, column } = change;
      return { type, worksheet, row, column, ...(to && { from: to }), ...(from && { to: from }) };
    }
    case 'worksheet': {
      const { from, to, type, index } = change;
      return { type, index, ...(to && { from: to }), ...(from && { to: from }) };
    }
    case 'part': {
      const { from, to, type, part, index } = change;
      return { type, part, index, ...(to && { from: to }), ...(from && { to: from }) };
    }
    case 'order':
      return { type: 'order', from: change.to, to: change.from };
    case 'settings':
      return { type: 'settings', from: change.to, to: change.from };
  }
}

/** The transaction that takes this one back. */
export function inverse(transaction: Transaction): Transaction {
  const { changes, description, origin, selectionBefore, selectionAfter } = transaction;
  return {
    changes: changes.map(reversed).toReversed(),
    description,
    origin: origin === 'undo' ? 'redo' : 'undo',
    ...(selectionAfter && { selectionBefore: selectionAfter }),
    ...(selectionBefore && { selectionAfter: selectionBefore }),
  };
}
