/** Decides from signs of life when the worker is slow, when it has to be restarted, and which cell to set aside; the caller brings clock and timer. */

import type { CellAddress } from './messages.ts';

/** Milliseconds without an answer after which "still computing" and a stop button are shown. */
export const SLOW_AFTER = 2_000;
/** Milliseconds without any sign of life after which the worker is restarted. */
export const SILENT_AFTER = 10_000;

export type WatchdogState = 'idle' | 'computing' | 'slow' | 'silent';

export class Watchdog {
  #waitingSince: number | undefined;
  #lastSign = 0;
  #suspect: CellAddress | undefined;

  /** A message that is answered went to the worker; `edited` is the cell that was changed last, if one was. Times in ms. */
  sent(now: number, edited?: CellAddress): void {
    this.#waitingSince ??= now;
    this.#lastSign = now;
    if (edited) this.#suspect = edited;
  }

  /** The worker is about to compute a heavy cell. */
  started(now: number, cell: CellAddress): void {
    this.#lastSign = now;
    this.#suspect = cell;
  }

  /** Everything that was sent is answered. */
  answered(): void {
    this.#waitingSince = undefined;
    this.#suspect = undefined;
  }

  state(now: number): WatchdogState {
    if (this.#waitingSince === undefined) return 'idle';
    if (now - this.#lastSign >= SILENT_AFTER) return 'silent';
    return now - this.#waitingSince >= SLOW_AFTER ? 'slow' : 'computing';
  }

  /** The cell to set aside when the worker is restarted: the heavy one it was in, else the last edit. */
  get suspect(): CellAddress | undefined {
    return this.#suspect;
  }
}
