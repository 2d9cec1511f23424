/** The given values as they were when the machine-side page was opened: kept through a reload of the window, restored as one step. */

import { cellAt, tidyCell, worksheetOf } from '../document/index.ts';
import type { Cell, CellChange, Notebook, Transaction } from '../document/index.ts';
import type { MachineCell } from './machine-cells.ts';

interface ReceivedValue {
  readonly row: number;
  readonly column: number;
  readonly content: string;
  readonly unit?: string;
  /** The mark of an earlier change at the machine. */
  readonly changed?: Cell['changed'];
}

export interface Received {
  readonly notebook: string;
  readonly worksheet: string;
  readonly values: readonly ReceivedValue[];
}

export function receivedNow(notebook: Notebook, worksheet: string, cells: readonly MachineCell[]): Received {
  const values = cells.map(({ row, column, cell: { content, unit, changed } }) => ({
    row,
    column,
    content,
    ...(unit !== undefined && { unit }),
    ...(changed && { changed }),
  }));
  return { notebook: notebook.id, worksheet, values };
}

/** What a cell was when it was received; undefined where it is unchanged or was not among them. */
export function changedSince(
  received: Received,
  row: number,
  column: number,
  cell: Cell,
): { readonly content: string; readonly unit?: string } | undefined {
  const value = received.values.find((each) => each.row === row && each.column === column);
  return !value || (value.content === cell.content && value.unit === cell.unit) ? undefined : value;
}

/** One transaction back to the values as received; without changes where nothing differs. */
export function restored(notebook: Notebook, received: Received): Transaction {
  const sheet = worksheetOf(notebook, received.worksheet);
  const changes: CellChange[] = [];
  for (const { row, column, content, unit, changed } of received.values) {
    const from = cellAt(sheet, row, column);
    if (!from || !changedSince(received, row, column, from)) continue;
    const { unit: _unit, acknowledged: _acknowledged, changed: _changed, ...rest } = from;
    const to = tidyCell({
      ...rest,
      content,
      ...(unit !== undefined && { unit }),
      ...(changed && { changed }),
    });
    changes.push({ type: 'cell', worksheet: received.worksheet, row, column, from, ...(to && { to }) });
  }
  return { changes, description: 'values as received', origin: 'user' };
}

const KEY = 'at the machine';

/** Keeps them in this window; undefined forgets them. */
export function keepReceived(received: Received | undefined): void {
  try {
    if (received) sessionStorage.setItem(KEY, JSON.stringify(received));
    else sessionStorage.removeItem(KEY);
  } catch {
    // A window without storage keeps them only until it is reloaded.
  }
}

const isMark = (mark: unknown): boolean =>
  typeof mark === 'object' &&
  mark !== null &&
  Object.values(mark).every((each) => typeof each === 'string') &&
  ['by', 'at', 'from'].every((key) => key in mark);

const isValue = (value: unknown): value is ReceivedValue => {
  if (typeof value !== 'object' || value === null) return false;
  const { row, column, content, unit, changed } = value as Record<string, unknown>;
  return (
    Number.isInteger(row) &&
    Number.isInteger(column) &&
    typeof content === 'string' &&
    (unit === undefined || typeof unit === 'string') &&
    (changed === undefined || isMark(changed))
  );
};

/** What this window kept for a notebook: it was at the machine when it was reloaded. */
export function keptReceived(notebook: Notebook): Received | undefined {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return undefined;
    const { notebook: id, worksheet, values } = kept as Record<string, unknown>;
    if (id !== notebook.id || !notebook.worksheets.some((each) => each.id === worksheet)) return undefined;
    if (typeof worksheet !== 'string' || !Array.isArray(values) || !values.every(isValue)) return undefined;
    return { notebook: notebook.id, worksheet, values };
  } catch {
    return undefined;
  }
}
