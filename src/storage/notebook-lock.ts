/** One tab edits a notebook, the others only read it. */

export class NotebookLock {
  #release: (() => void) | undefined;
  #lost: () => void = () => undefined;

  /** `locks` is absent at addresses that are neither https nor localhost. */
  constructor(private readonly locks: LockManager | undefined) {}

  onLost(lost: () => void): void {
    this.#lost = lost;
  }

  /** True where this tab may edit. Without the browser's locks every tab may, and the guarded write decides. */
  take(id: string, steal = false): Promise<boolean> {
    this.release();
    const { locks } = this;
    if (!locks) return Promise.resolve(true);
    return new Promise((answer) => {
      let mine = false;
      locks
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

  release(): void {
    this.#release?.();
    this.#release = undefined;
  }
}
