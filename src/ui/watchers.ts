/** Who wants to know that something changed; an edit and what the calculator makes of it are told together, so that they are seen in one frame. */

import { afterFrame } from './after-frame.ts';

/** Milliseconds an edit is held back for its results; who types on meanwhile sees it at once. */
const PATIENCE = 12;

/**
 * 'first' is told at once; 'last' right after all of those, because it makes the browser lay out what they have drawn;
 * 'later' after the next frame: what stands beside the page and may follow it.
 */
export type Turn = 'first' | 'last' | 'later';

export class Watchers {
  readonly #listeners = {
    first: new Set<() => void>(),
    last: new Set<() => void>(),
    later: new Set<() => void>(),
  };
  #patience: ReturnType<typeof setTimeout> | undefined;
  #missed = false;
  #takeBack: (() => void) | undefined;

  /** The answer ends it. */
  add(listener: () => void, turn: Turn = 'first'): () => void {
    this.#listeners[turn].add(listener);
    return () => this.#listeners[turn].delete(listener);
  }

  tell(): void {
    if (this.#patience !== undefined) {
      this.#missed = true;
      return;
    }
    const { first, last } = this.#listeners;
    for (const listener of [...first, ...last]) listener();
    this.#takeBack ??= afterFrame(() => this.#tellLater());
  }

  #tellLater(): void {
    this.#takeBack = undefined;
    for (const listener of this.#listeners.later) listener();
  }

  /** Until `release`, at most for a moment, nothing is told. */
  hold(): void {
    this.#patience ??= setTimeout(() => this.release(), PATIENCE);
  }

  /** Tells what was held back. */
  release(): void {
    if (this.#patience === undefined) return;
    clearTimeout(this.#patience);
    this.#patience = undefined;
    if (!this.#missed) return;
    this.#missed = false;
    this.tell();
  }

  /** Tells everything at once, to those who come later as well. */
  flush(): void {
    this.release();
    if (!this.#takeBack) return;
    this.#takeBack();
    this.#tellLater();
  }
}
