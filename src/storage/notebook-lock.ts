/** One tab edits a notebook, the others only read it. */

export class NotebookLock {
  #release: (() => void) | undefined;
  /** Settles when the browser has taken the lock back. */
  #released: Promise<unknown> = Promise.resolve();
  #lost: () => void = () => undefined;

  /** `locks` is absent at addresses that are neither https nor localhost. */
  constructor(private readonly locks: LockManager | undefined) {}

  onLost(lost: () => void): void {
    this.#lost = lost;
  }

  /** True where this tab may edit. Without the browser's locks every tab may, and the guarded write decides. */
  async take(id: string, steal = false): Promise<boolean> {
    await this.release();
    const { locks } = this;
    if (!locks) return true;
    return new Promise((answer) => {
      let mine = false;
      this.#released = locks
        .request(`swarfbook ${id}`, steal ? { steal } : { ifAvailable: true }, (lock) => {
          mine = lock !== null;
          answer(mine);
          return mine ? new Promise<void>((resolve) => (this.#release = resolve)) : undefined;
        })
        .catch(() => {
          answer(false);
          if (mine) this.#lost();
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
