/** A given changed at the machine: the entry as at the desk, with who, when, what stood there, and why where a limit is passed. */

import { cellAt, enter, isRefusal, tidyCell, worksheetOf } from '../document/index.ts';
import type { Cell, Notebook, Refusal, Transaction } from '../document/index.ts';
import { typing } from './number-locale.ts';

export interface MachineChange {
  readonly worksheet: string;
  readonly row: number;
  readonly column: number;
  /** As typed at this device. */
  readonly typed: string;
  readonly by: string;
  /** ISO 8601. */
  readonly at: string;
  /** Why a limit is passed. */
  readonly reason?: string;
}

/** The mark names what the desk had set, however often it is changed after; it falls when that value is back. */
function marked(was: Cell, now: Cell, { by, at, reason }: MachineChange): Cell | undefined {
  const { changed: _before, ...rest } = now;
  const from = was.changed?.from ?? was.content;
  if (now.content === from) return tidyCell(rest);
  return tidyCell({ ...rest, changed: { by, at, from, ...(reason !== undefined && { reason }) } });
}

/** One committed edit. */
export function changedAtMachine(notebook: Notebook, change: MachineChange): Transaction | Refusal {
  const { worksheet, row, column, typed } = change;
  const was = cellAt(worksheetOf(notebook, worksheet), row, column);
  const entered = enter(notebook, { worksheet, row, column, typed, ...typing() });
  if (!was || isRefusal(entered)) return entered;
  const changes = entered.changes.map((each) => {
    if (each.type !== 'cell' || !each.to || each.row !== row || each.column !== column) return each;
    const { to: now, ...rest } = each;
    const to = marked(was, now, change);
    return { ...rest, ...(to && { to }) };
  });
  return { ...entered, changes, description: `${entered.description} at the machine` };
}

/** "14:20" today, "24 Nov 14:20" before. */
export function momentText(at: string, now: number): string {
  const date = new Date(at);
  if (Number.isNaN(date.getTime())) return at;
  const time = date.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit', hour12: false });
  const today = new Date(now).toDateString() === date.toDateString();
  return today ? time : `${date.toLocaleDateString([], { day: 'numeric', month: 'short' })} ${time}`;
}
