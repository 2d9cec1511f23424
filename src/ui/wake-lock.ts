/** Keeps the screen on while asked to, where the device can. */

interface Sentinel extends EventTarget {
  release(): Promise<void>;
}
interface Waking {
  request(type: 'screen'): Promise<Sentinel>;
}

/** 'none': this device or address offers no way; 'refused': it was asked and said no (low battery, hidden page). */
export type WakeState = 'none' | 'off' | 'on' | 'refused';

export class WakeLock {
  state: WakeState;
  readonly #waking: Waking | undefined;
  #sentinel: Sentinel | undefined;
  #wanted = false;

  constructor(private readonly changed: () => void) {
    this.#waking = (navigator as { readonly wakeLock?: Waking }).wakeLock;
    this.state = this.#waking ? 'off' : 'none';
  }

  readonly #seen = (): void => {
    if (this.#wanted && document.visibilityState === 'visible') void this.#ask();
  };

  /** Asks for it or gives it back. */
  async keep(wanted: boolean): Promise<void> {
    if (!this.#waking) return;
    this.#wanted = wanted;
    document.removeEventListener('visibilitychange', this.#seen);
    if (wanted) {
      document.addEventListener('visibilitychange', this.#seen);
      await this.#ask();
      return;
    }
    const sentinel = this.#sentinel;
    this.#sentinel = undefined;
    await sentinel?.release().catch(() => undefined);
    this.#set('off');
  }

  async #ask(): Promise<void> {
    if (!this.#waking || this.#sentinel) return;
    try {
      const sentinel = await this.#waking.request('screen');
      if (!this.#wanted) return void sentinel.release();
      this.#sentinel = sentinel;
      sentinel.addEventListener('release', () => {
        if (this.#sentinel !== sentinel) return;
        this.#sentinel = undefined;
        this.#set('off');
      });
      this.#set('on');
    } catch {
      this.#set('refused');
    }
  }

  #set(state: WakeState): void {
    this.state = state;
    this.changed();
  }
}
