/** Writes every committed edit to the shelf, one after the other, and knows what is safe by now. */

import type { Notebook, Transaction } from '../document/index.ts';
import type { PassingResults } from '../exchange/index.ts';
import type { World } from './ports.ts';

export type SaveState =
  | { readonly type: 'saved'; readonly at: number }
  | { readonly type: 'saving' }
  | { readonly type: 'failed'; readonly words: string };

const SETTLE_AFTER = 30_000;
const KEEP_AFTER = 2_000;
const TRY_AGAIN_AFTER = 15_000;

/** Why it could not be kept, to stand within a sentence. */
const failureWords = (reason: unknown): string =>
  reason instanceof DOMException && reason.name === 'QuotaExceededError'
    ? 'there is no room left'
    : (reason instanceof Error ? reason.message : String(reason)).replace(/\.$/, '');

export class Saving {
  state: SaveState;
  #writing: Promise<void> = Promise.resolve();
  #settleTimer: ReturnType<typeof setTimeout> | undefined;
  #last: Transaction | undefined;
  #keepTimer: ReturnType<typeof setTimeout> | undefined;
  #retryTimer: ReturnType<typeof setTimeout> | undefined;
  /** Notebook whose results are kept already, and those that wait for a quiet moment. */
  #resultsOf: Notebook | undefined;
  #waiting: { readonly notebook: Notebook; results(): PassingResults | undefined } | undefined;
  #keeping: Promise<void> = Promise.resolve();

  constructor(
    private readonly world: World,
    private readonly changed: () => void,
  ) {
    this.state = { type: 'saved', at: world.clock.now() };
  }

  /** When the notebook was last changed, as the shelf knows it: holds until the first edit here. */
  lastChanged(at: number): void {
    if (!this.#last) this.state = { type: 'saved', at };
  }

  /** `notebook` is the one after the transaction. */
  keep(notebook: Notebook, transaction: Transaction): void {
    this.#last = transaction;
    this.#waiting = undefined;
    this.state = { type: 'saving' };
    this.#writing = this.#writing
      .then(() => this.world.shelf.append(notebook, transaction))
      .then(() => {
        if (this.#last === transaction) this.state = { type: 'saved', at: this.world.clock.now() };
      })
      .catch((reason: unknown) => this.#failed(reason))
      .then(() => this.changed());
    clearTimeout(this.#settleTimer);
    this.#settleTimer = setTimeout(() => void this.world.shelf.settle(), SETTLE_AFTER);
  }

  /** Writes what failed once more: in a while by itself, at once when the user comes back or says so. */
  retry(): void {
    if (this.state.type !== 'failed') return;
    this.#writing = this.#writing
      .then(() => this.world.shelf.flush())
      .then((written) => {
        if (written && this.state.type === 'failed')
          this.state = { type: 'saved', at: this.world.clock.now() };
      })
      .catch((reason: unknown) => this.#failed(reason))
      .then(() => this.changed());
  }

  #failed(reason: unknown): void {
    this.state = { type: 'failed', words: failureWords(reason) };
    clearTimeout(this.#retryTimer);
    this.#retryTimer = setTimeout(() => this.retry(), TRY_AGAIN_AFTER);
  }

  /** Keeps results in a quiet moment, unless others or an edit come before; `results` gives undefined where they are no longer those of the notebook. */
  keepResults(notebook: Notebook, results: () => PassingResults | undefined): void {
    if (notebook === this.#resultsOf) return;
    this.#waiting = { notebook, results };
    clearTimeout(this.#keepTimer);
    this.#keepTimer = setTimeout(() => void this.flushResults(), KEEP_AFTER);
  }

  /** Settles when those that waited are kept. */
  flushResults(): Promise<void> {
    const keep = (): Promise<void> => this.#keepWaiting();
    return (this.#keeping = this.#keeping.then(keep, keep));
  }

  async #keepWaiting(): Promise<void> {
    await this.#writing;
    const waiting = this.#waiting;
    this.#waiting = undefined;
    const results = waiting?.results();
    if (!waiting || !results) return;
    this.#resultsOf = waiting.notebook;
    await this.world.shelf.keepResults(waiting.notebook, results);
  }

  /** Settles when everything committed so far is on the disk, or is known not to be: true where nothing failed. */
  async written(): Promise<boolean> {
    await this.#writing;
    return this.state.type !== 'failed';
  }

  async close(): Promise<void> {
    await this.#writing;
    clearTimeout(this.#settleTimer);
    clearTimeout(this.#keepTimer);
    clearTimeout(this.#retryTimer);
    await this.flushResults();
    await this.world.shelf.close();
  }
}
