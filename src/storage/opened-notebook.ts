/** What the shelf gives for an open notebook, and what it reports about it. */

import type { History, Notebook, Transaction } from '../document/index.ts';
import type { StoredResults } from '../exchange/index.ts';
import type { Leg } from './leg.ts';
import type { TabChannel } from './notebook-channel.ts';

/** Results as they were computed last, by which program. */
export interface KeptResults {
  readonly results: StoredResults;
  /** Version of the program that computed them; "" where it is not known. */
  readonly program: string;
  /** They belong to the notebook exactly as it is, not to an earlier state. */
  readonly exact: boolean;
}

export interface OpenedNotebook {
  readonly notebook: Notebook;
  /** The steps that can be taken back. */
  readonly history: History;
  readonly kept: KeptResults;
  readonly notices: readonly string[];
  readonly readOnly: boolean;
  /** Read only because a newer program wrote it. */
  readonly newer: boolean;
}

export interface ShelfEvents {
  /** Another tab edits now; this one only reads. */
  lost(): void;
  /** Another tab asks for the notebook: settles when the open edit is finished and written. */
  wanted(): Promise<void>;
  /** An edit of another tab. */
  edited(notebook: Notebook, transaction: Transaction): void;
  /** Edits of another tab were missed: the whole notebook anew. */
  reloaded(opened: OpenedNotebook): void;
  /** The list has changed; `id` is the notebook concerned. */
  listed(id: string): void;
}

export interface ShelfSurroundings {
  readonly legs: readonly Leg[];
  readonly now: () => number;
  /** Version of the program, kept with results. */
  readonly program: string;
  readonly locks?: LockManager | undefined;
  /** Settles in a quiet moment after the page was opened; at once where it is absent. */
  readonly quiet?: () => Promise<void>;
  /** Settles when the page had its turn; at once where it is absent. */
  readonly pause?: () => Promise<void>;
  readonly channel?: TabChannel | undefined;
}
