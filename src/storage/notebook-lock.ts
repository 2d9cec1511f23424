/** One tab edits a notebook, the others only read it. */

export class NotebookLock {
  #id: string | undefined;
  #release: (() => void) | undefined;
  /** Settles when the browser has taken the lock back. */
  #released: Promise<unknown> = Promise.resolve();
  #lost: () => void = () => undefined;

  /** `locks` is absent at addresses that are neither https nor localhost. */
  constructor(private readonly locks: LockManager | undefined) {}

  onLost(lost: () => void): void {
    this.#lost = lost;
  }

  /**
   * True where this tab may edit. A lock that another tab holds is waited for so many milliseconds, then taken from it
   * if `steal` says so. Without the browser's locks every tab may edit, and the guarded write decides.
   */
  async take(id: string, patience = 0, steal = false): Promise<boolean> {
    if (this.#release && this.#id === id) return true;
    await this.release();
    if (!this.locks) return true;
    if (patience > 0 && (await this.#ask(id, { signal: AbortSignal.timeout(patience) }))) return true;
    return this.#ask(id, steal ? { steal } : { ifAvailable: true });
  }

  #ask(id: string, options: LockOptions): Promise<boolean> {
    return new Promise((answer) => {
      let mine = false;
      const asked = this.locks?.request(`swarfbook ${id}`, options, (lock) => {
        mine = lock !== null;
        answer(mine);
        if (!mine) return undefined;
        this.#id = id;
        return new Promise<void>((resolve) => (this.#release = resolve));
      });
      this.#released = Promise.resolve(asked).catch(() => {
        answer(false);
        if (!mine) return;
        this.#release = undefined;
        this.#lost();
      });
    });
  }

  /** Settles when another tab, or this one again, can take the lock. */
  async release(): Promise<void> {
    this.#release?.();
    this.#release = undefined;
    await this.#released;
  }
}
