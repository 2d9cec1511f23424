/** A place of the browser that keeps values by key; there are two of them, each able to restore the other. */

export interface Write {
  readonly put: ReadonlyMap<string, unknown>;
  readonly remove?: readonly string[];
  /** The write is refused unless this key holds one of these values (compared as JSON): another tab has written meanwhile. */
  readonly guard?: { readonly key: string; readonly anyOf: readonly unknown[] };
}

export interface Leg {
  readonly name: string;
  get(key: string): Promise<unknown>;
  /** All values whose key begins with the prefix; of these only the chosen keys. */
  read(
    prefix: string,
    choose?: (keys: readonly string[]) => readonly string[],
  ): Promise<ReadonlyMap<string, unknown>>;
  keys(prefix: string): Promise<readonly string[]>;
  /** Settles when the values are on the disk. */
  write(write: Write): Promise<void>;
}

/** Another tab has written in between, or everything was thrown away: then nothing was found. */
export class Overtaken extends Error {
  override readonly name = 'Overtaken';
  constructor(readonly found: unknown) {
    super('another tab has changed this notebook meanwhile');
  }
}

/** Whether a guarded value is one of those under which a write may go on. */
export const isExpected = (found: unknown, anyOf: readonly unknown[]): boolean =>
  anyOf.some((each) => JSON.stringify(each) === JSON.stringify(found));
