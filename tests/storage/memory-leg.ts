/** A leg in memory, which can be full or thrown away, and tabs that hear each other. */

import { apply, enter, isRefusal } from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import {
  DeviceShelf,
  Overtaken,
  isExpected,
  type Leg,
  type ShelfSurroundings,
  type TabChannel,
  type Write,
} from '../../src/storage/index.ts';

export class MemoryLeg implements Leg {
  readonly name = 'memory';
  readonly values = new Map<string, unknown>();
  /** Nothing can be written. */
  broken = false;
  /** Writes arrive, but their confirmation does not. */
  mute = false;

  get(key: string): Promise<unknown> {
    return Promise.resolve(this.values.get(key));
  }

  async read(
    prefix: string,
    choose: (keys: readonly string[]) => readonly string[] = (keys) => keys,
  ): Promise<ReadonlyMap<string, unknown>> {
    return new Map(choose(await this.keys(prefix)).map((key) => [key, this.values.get(key)]));
  }

  keys(prefix: string): Promise<readonly string[]> {
    return Promise.resolve([...this.values.keys()].filter((key) => key.startsWith(prefix)));
  }

  write({ put, remove = [], guard }: Write): Promise<void> {
    if (this.broken) return Promise.reject(new Error('the disk is full'));
    const found = guard && this.values.get(guard.key);
    if (guard && !isExpected(found, guard.anyOf)) return Promise.reject(new Overtaken(found));
    for (const [key, value] of put) this.values.set(key, JSON.parse(JSON.stringify(value)));
    for (const key of remove) this.values.delete(key);
    return this.mute ? Promise.reject(new Error('no confirmation')) : Promise.resolve();
  }
}

export const NOW = 1_700_000_000_000;

export const shelfOn = (...legs: Leg[]): DeviceShelf => shelfWith({ legs });

export const shelfWith = (around: Partial<ShelfSurroundings>): DeviceShelf =>
  new DeviceShelf({ legs: [], now: () => NOW, program: '1.0.0+test', ...around });

/** One end of a channel: what it posts the others hear, as copies. */
export class ChannelEnd implements TabChannel {
  readonly sent: unknown[] = [];
  readonly #receivers: ((event: { readonly data: unknown }) => void)[] = [];

  constructor(private readonly room: ChannelEnd[]) {
    room.push(this);
  }

  postMessage(message: unknown): void {
    this.sent.push(message);
    for (const other of this.room) if (other !== this) other.hear(message);
  }

  hear(message: unknown): void {
    for (const receive of this.#receivers) receive({ data: structuredClone(message) });
  }

  addEventListener(_: 'message', receive: (event: { readonly data: unknown }) => void): void {
    this.#receivers.push(receive);
  }
}

/** The browser's locks as far as they are used here, for tabs of one test. */
export class MemoryLocks {
  readonly #held = new Map<
    string,
    { readonly lose: (reason: Error) => void; readonly done: Promise<void> }
  >();

  request(
    name: string,
    options: LockOptions,
    act: (lock: { readonly name: string } | null) => Promise<void> | undefined,
  ): Promise<void> {
    const held = this.#held.get(name);
    if (held && options.ifAvailable) return Promise.resolve(act(null));
    if (held && !options.steal)
      return Promise.race([
        held.done.then(() => this.request(name, options, act)),
        new Promise<void>((_, reject) =>
          options.signal?.addEventListener('abort', () => reject(new Error('too late'))),
        ),
      ]);
    held?.lose(new Error('stolen'));
    return new Promise<void>((resolve, reject) => {
      const done = Promise.resolve(act({ name })).then(() => {
        if (this.#held.get(name) === mine) this.#held.delete(name);
        resolve();
      });
      const mine = { lose: reject, done };
      this.#held.set(name, mine);
    });
  }
}

/** Types into column A of the first worksheet and keeps it; gives the notebook after it. */
export async function typed(
  shelf: DeviceShelf,
  notebook: Notebook,
  row: number,
  text: string,
): Promise<Notebook> {
  const transaction = enter(notebook, { worksheet: 'w1', row, column: 0, typed: text });
  if (isRefusal(transaction)) throw new Error(transaction.message);
  const after = apply(notebook, transaction.changes);
  await shelf.append(after, transaction);
  return after;
}
