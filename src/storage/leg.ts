/** A place of the browser that keeps values by key; there are two of them, each able to restore the other. */

export interface Write {
  readonly put: ReadonlyMap<string, unknown>;
  readonly remove?: readonly string[];
  /** The write is refused unless this key holds this value (compared as JSON): another tab has written meanwhile. */
  readonly guard?: { readonly key: string; readonly value: unknown };
}

export interface Leg {
  readonly name: string;
  /** All values whose key begins with the prefix. */
  read(prefix: string): Promise<ReadonlyMap<string, unknown>>;
  /** Settles when the values are on the disk. */
  write(write: Write): Promise<void>;
}

/** Another tab has written in between. */
export class Overtaken extends Error {
  override readonly name = 'Overtaken';
  constructor() {
    super('another tab has changed this notebook meanwhile');
  }
}
