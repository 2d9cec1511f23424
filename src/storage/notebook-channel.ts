/** What the tabs of this browser tell each other about notebooks. What comes in is checked: anything of this origin may speak. */

import { isEntry, type Entry } from './chain.ts';

export type TabMessage =
  /** Committed edits, in the order of the journal. */
  | { readonly type: 'edits'; readonly id: string; readonly entries: readonly Entry[] }
  /** Another tab wants to edit: whoever holds the notebook finishes its edit and lets go. */
  | { readonly type: 'wanted'; readonly id: string }
  /** The list of notebooks has changed; the id says about which. */
  | { readonly type: 'listed'; readonly id: string };

/** The browser's own channel fits. */
export interface TabChannel {
  postMessage(message: unknown): void;
  addEventListener(type: 'message', receive: (event: { readonly data: unknown }) => void): void;
}

/** Undefined where it is no message of ours. */
export function readTabMessage(data: unknown): TabMessage | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const { type, id, entries } = data as Record<string, unknown>;
  if (typeof id !== 'string') return undefined;
  if (type === 'wanted' || type === 'listed') return { type, id };
  if (type !== 'edits' || !Array.isArray(entries) || !entries.every(isEntry)) return undefined;
  return { type, id, entries };
}
