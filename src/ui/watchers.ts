/** Who wants to know that something changed; an edit and what the calculator makes of it are told together, so that they are seen in one frame. */

/** Milliseconds an edit is held back for its results; who types on meanwhile sees it at once. */
const PATIENCE = 12;

export class Watchers {
  readonly #listeners = new Set<() => void>();
  readonly #last = new Set<() => void>();
  #patience: ReturnType<typeof setTimeout> | undefined;
  #missed = false;

  /** `last`: told after the others, because it makes the browser lay out what they have drawn. The answer ends it. */
  add(listener: () => void, last = false): () => void {
    const listeners = last ? this.#last : this.#listeners;
    listeners.add(listener);
    return () => listeners.delete(listener);
  }

  tell(): void {
    if (this.#patience !== undefined) this.#missed = true;
    else for (const listener of [...this.#listeners, ...this.#last]) listener();
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
}
