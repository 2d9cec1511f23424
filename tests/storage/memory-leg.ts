/** A leg in memory, which can be full or thrown away, and tabs that hear each other. */

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

  read(prefix: string, wanted = (_: string) => true): Promise<ReadonlyMap<string, unknown>> {
    return Promise.resolve(
      new Map([...this.values].filter(([key]) => key.startsWith(prefix) && wanted(key))),
    );
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

/** Ends of one channel: what one posts the others hear, as copies. */
export function channelEnds(count: number): readonly (TabChannel & { readonly sent: unknown[] })[] {
  const receivers: ((event: { readonly data: unknown }) => void)[][] = Array.from(
    { length: count },
    () => [],
  );
  return receivers.map((own, k) => ({
    sent: [],
    postMessage(message: unknown) {
      this.sent.push(message);
      for (const [other, list] of receivers.entries())
        if (other !== k) for (const receive of list) receive({ data: structuredClone(message) });
    },
    addEventListener: (_: 'message', receive: (event: { readonly data: unknown }) => void) =>
      void own.push(receive),
  }));
}
