/** Undo and redo as values: the last 200 transactions, one step each. */

import { inverse } from './apply.ts';
import type { Transaction } from './change.ts';

export interface History {
  /** Oldest first. */
  readonly past: readonly Transaction[];
  /** What can be done again, next first. */
  readonly future: readonly Transaction[];
}

export const HISTORY_LENGTH = 200;

export const EMPTY_HISTORY: History = Object.freeze({ past: [], future: [] });

/** The history after a new transaction: what was undone before can no longer be done again. A transaction without changes leaves no step. */
export function recorded(history: History, transaction: Transaction): History {
  if (transaction.changes.length === 0) return history;
  return { past: [...history.past, transaction].slice(-HISTORY_LENGTH), future: [] };
}

/** What takes the last step back, with the history after it; undefined where there is none. */
export function undo(
  history: History,
): { readonly history: History; readonly transaction: Transaction } | undefined {
  const last = history.past.at(-1);
  if (!last) return undefined;
  return {
    history: { past: history.past.slice(0, -1), future: [last, ...history.future] },
    transaction: inverse(last),
  };
}

/** What does the last undone step again, with the history after it; undefined where there is none. */
export function redo(
  history: History,
): { readonly history: History; readonly transaction: Transaction } | undefined {
  const [next, ...future] = history.future;
  if (!next) return undefined;
  return {
    history: { past: [...history.past, next], future },
    transaction: { ...next, origin: 'redo' },
  };
}
