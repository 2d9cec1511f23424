/** Keeps a view in step with the session: one redraw a frame, however many changes. */

import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Session } from './session.ts';
import type { Turn } from './watchers.ts';

export class Watching implements ReactiveController {
  #stop: (() => void) | undefined;
  #session: Session | undefined;

  constructor(
    private readonly host: ReactiveControllerHost & { session?: Session | undefined },
    private readonly turn: Turn = 'first',
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    this.#follow();
  }

  hostUpdate(): void {
    if (this.host.session !== this.#session) this.#follow();
  }

  hostDisconnected(): void {
    this.#stop?.();
    this.#stop = undefined;
    this.#session = undefined;
  }

  #follow(): void {
    this.#stop?.();
    this.#session = this.host.session;
    this.#stop = this.#session?.subscribe(() => this.host.requestUpdate(), this.turn);
  }
}
