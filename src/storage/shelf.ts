/** The notebooks on this device: a journal of edits and snapshots, on two legs; an edit counts as saved when every leg has confirmed. */

import { apply } from '../document/index.ts';
import type { Change, Notebook, Transaction } from '../document/index.ts';
import { readNotebook, writeNotebook } from '../exchange/index.ts';
import { entryAfter, longestChain, snapshotOf } from './chain.ts';
import type { Chain, Entry, Snapshot } from './chain.ts';
import type { Leg } from './leg.ts';
import { NotebookLock } from './notebook-lock.ts';

const SNAPSHOT_EVERY = 200;

export interface KeptItem {
  readonly id: string;
  readonly title: string;
  readonly changedAt: number;
  readonly copiedAt?: number;
}

interface Head {
  readonly seq: number;
  readonly hash: string;
}

/** What one leg holds of a notebook: the numbers of all its records, and what can be made of them. */
interface Found {
  readonly chain: Chain | undefined;
  readonly head: Head | undefined;
  readonly snapshots: readonly number[];
  readonly entries: readonly number[];
}

export interface OpenedNotebook {
  readonly notebook: Notebook;
  readonly notices: readonly string[];
  readonly readOnly: boolean;
}

const key = {
  meta: (id: string) => `meta/${id}`,
  head: (id: string) => `doc/${id}/head`,
  entry: (id: string, seq: number) => `doc/${id}/j/${String(seq).padStart(9, '0')}`,
  snapshot: (id: string, seq: number) => `doc/${id}/snap/${String(seq).padStart(9, '0')}`,
};

/** JSON has no undefined: the empty places of sparse lists come back as null and are made undefined again. */
function revived(value: unknown): unknown {
  if (Array.isArray(value)) return value.map((each) => (each === null ? undefined : revived(each)));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, revived(each)]));
}

export class DeviceShelf {
  readonly #lock: NotebookLock;
  #id = '';
  #head: Head = { seq: 0, hash: '' };
  #snapshotSeq = 0;
  /** What lies behind the last snapshot: the snapshots before it, and the first of the entries. */
  #older: { snapshots: readonly number[]; first: number } = { snapshots: [], first: 1 };
  #notebook: Notebook | undefined;
  #meta: KeptItem | undefined;
  /** A write has failed: the next one carries the whole notebook, because the chain may have a gap. */
  #gap = false;
  /** This tab holds the notebook; others only read and write nothing. */
  #mine = false;

  constructor(
    private readonly legs: readonly Leg[],
    private readonly now: () => number,
    locks?: LockManager,
  ) {
    this.#lock = new NotebookLock(locks);
  }

  async list(): Promise<readonly KeptItem[]> {
    const found = new Map<string, KeptItem>();
    for (const leg of this.legs) {
      const metas = await leg.read('meta/').catch(() => new Map<string, unknown>());
      for (const value of metas.values()) {
        const item = value as KeptItem;
        const known = found.get(item.id);
        if (!known || known.changedAt < item.changedAt) found.set(item.id, item);
      }
    }
    return [...found.values()];
  }

  async open(id: string): Promise<OpenedNotebook | undefined> {
    const finds = await Promise.all(this.legs.map((leg) => this.#found(leg, id)));
    const chains = finds.map((find) => find.chain);
    const best = chains.reduce((a, b) => (b && (!a || b.seq > a.seq) ? b : a), undefined);
    if (!best) return undefined;
    const read = readNotebook(best.snapshot.body);
    if (!('notebook' in read)) throw new Error(read.message);
    let { notebook } = read;
    const notices: string[] = [];
    for (const entry of best.entries) {
      const { changes } = revived(JSON.parse(entry.body)) as { readonly changes: readonly Change[] };
      notebook = apply(notebook, changes);
    }
    const allDamaged = chains.every((chain) => !chain || chain.damaged);
    if (best.damaged && allDamaged)
      notices.push(
        'A record on this device was damaged: the notebook was restored to the last edit that could be read.',
      );
    const behind = this.legs.filter((_, k) => {
      const { chain, head } = finds[k] ?? {};
      return chain?.seq !== best.seq || chain.damaged || head?.seq !== best.seq || head.hash !== best.hash;
    });
    this.#id = id;
    this.#gap = false;
    this.#notebook = notebook;
    this.#head = { seq: best.seq, hash: best.hash };
    this.#snapshotSeq = best.snapshot.seq;
    this.#older = {
      snapshots: [...new Set(finds.flatMap((find) => find.snapshots))].filter(
        (seq) => seq < best.snapshot.seq,
      ),
      first: Math.min(best.snapshot.seq + 1, ...finds.flatMap((find) => find.entries)),
    };
    this.#meta = (await this.list()).find((item) => item.id === id);
    const mine = await this.#lock.take(id);
    this.#mine = mine;
    if (mine && behind.length > 0) {
      const restored = await this.#restore(behind, best);
      // One edit behind is how a place looks where the program ended between the two writes: nothing was lost.
      const damaged = chains.some((chain) => chain && (chain.damaged || chain.seq < best.seq - 1));
      if (!restored)
        notices.push(
          'One of the two places where this browser keeps the notebook can not be written: save a file copy.',
        );
      else if (chains.some((chain) => !chain))
        notices.push(
          'One of the two places where this browser keeps the notebook was empty: it was restored from the other.',
        );
      else if (damaged && !allDamaged)
        notices.push(
          'One of the two places where this browser keeps the notebook was damaged: it was restored from the other.',
        );
    }
    return { notebook, notices, readOnly: !mine };
  }

  /** What a leg holds of a notebook; nothing where it can not be read. */
  async #found(leg: Leg, id: string): Promise<Found> {
    try {
      const values = [...(await leg.read(`doc/${id}/`))];
      const under = (prefix: string): unknown[] =>
        values.filter(([name]) => name.startsWith(prefix)).map(([, value]) => value);
      const numbers = (prefix: string): number[] =>
        values.filter(([name]) => name.startsWith(prefix)).map(([name]) => Number(name.slice(prefix.length)));
      const [snapshots, entries] = [`doc/${id}/snap/`, `doc/${id}/j/`];
      return {
        chain: longestChain(under(snapshots) as Snapshot[], under(entries) as Entry[]),
        head: under(key.head(id))[0] as Head | undefined,
        snapshots: numbers(snapshots),
        entries: numbers(entries),
      };
    } catch {
      return { chain: undefined, head: undefined, snapshots: [], entries: [] };
    }
  }

  /** Makes legs that lag behind equal to the best chain; false where one can not be written. */
  async #restore(legs: readonly Leg[], chain: Chain): Promise<boolean> {
    const id = this.#id;
    const put = new Map<string, unknown>([[key.snapshot(id, chain.snapshot.seq), chain.snapshot]]);
    for (const entry of chain.entries) put.set(key.entry(id, entry.seq), entry);
    put.set(key.head(id), this.#head);
    if (this.#meta) put.set(key.meta(id), this.#meta);
    const written = legs.map(async (leg) => {
      const old = await leg.read(`doc/${id}/`).catch(() => new Map<string, unknown>());
      await leg.write({ put, remove: [...old.keys()].filter((each) => !put.has(each)) });
    });
    return (await Promise.allSettled(written)).every((each) => each.status === 'fulfilled');
  }

  async add(notebook: Notebook): Promise<void> {
    const { id } = notebook;
    const first = entryAfter('', 1, JSON.stringify({ made: this.now() }));
    const snapshot = snapshotOf(1, first.hash, writeNotebook(notebook));
    const meta: KeptItem = { id, title: notebook.title, changedAt: this.now() };
    const put = new Map<string, unknown>([
      [key.snapshot(id, 1), snapshot],
      [key.head(id), { seq: 1, hash: first.hash }],
      [key.meta(id), meta],
    ]);
    await this.#everywhere((leg) => leg.write({ put }));
  }

  async append(notebook: Notebook, transaction: Transaction): Promise<void> {
    const id = this.#id;
    if (notebook.id !== id) throw new RangeError(`notebook ${notebook.id} is not the open one, ${id}`);
    const { changes, description, origin } = transaction;
    const before = this.#head;
    const entry = entryAfter(
      before.hash,
      before.seq + 1,
      JSON.stringify({ at: this.now(), description, origin, changes }),
    );
    const head: Head = { seq: entry.seq, hash: entry.hash };
    const meta: KeptItem = { ...this.#meta, id, title: notebook.title, changedAt: this.now() };
    const put = new Map<string, unknown>([
      [key.entry(id, entry.seq), entry],
      [key.head(id), head],
      [key.meta(id), meta],
    ]);
    if (this.#gap)
      put.set(key.snapshot(id, head.seq), snapshotOf(head.seq, head.hash, writeNotebook(notebook)));
    this.#notebook = notebook;
    this.#meta = meta;
    try {
      await this.#everywhere(
        (leg) => leg.write({ put, guard: { key: key.head(id), value: before } }),
        () => (this.#head = head),
      );
    } catch (reason) {
      this.#gap = true;
      throw reason;
    }
    this.#gap = false;
    if (head.seq - this.#snapshotSeq >= SNAPSHOT_EVERY) await this.settle();
  }

  /**
   * Writes a snapshot if something is new since the last one; keeps the one before and the entries since then. Where
   * that fails nothing is lost, because the journal has every edit: the next call tries again.
   */
  async settle(): Promise<void> {
    const id = this.#id;
    const { seq, hash } = this.#head;
    if (!this.#mine || !this.#notebook || seq === this.#snapshotSeq) return;
    const last = this.#snapshotSeq;
    const snapshot = snapshotOf(seq, hash, writeNotebook(this.#notebook));
    const remove: string[] = [];
    for (let old = this.#older.first; old <= last; old += 1) remove.push(key.entry(id, old));
    for (const old of this.#older.snapshots) remove.push(key.snapshot(id, old));
    const guard = { key: key.head(id), value: this.#head };
    const put = new Map<string, unknown>([[key.snapshot(id, seq), snapshot]]);
    try {
      await this.#everywhere((leg) => leg.write({ put, remove, guard }));
    } catch {
      return;
    }
    this.#older = { snapshots: [last], first: last + 1 };
    this.#snapshotSeq = seq;
  }

  async remove(id: string): Promise<void> {
    await this.#everywhere(async (leg) => {
      const old = await leg.read(`doc/${id}/`);
      await leg.write({ put: new Map(), remove: [...old.keys(), key.meta(id)] });
    });
  }

  async markCopied(id: string): Promise<void> {
    const known = (await this.list()).find((item) => item.id === id);
    if (!known) return;
    const meta = { ...known, copiedAt: this.now() };
    if (id === this.#id) this.#meta = meta;
    await this.#everywhere((leg) => leg.write({ put: new Map([[key.meta(id), meta]]) }));
  }

  async takeOver(id: string): Promise<void> {
    await this.#lock.take(id, true);
    await this.#lock.release();
  }

  onLost(lost: () => void): void {
    this.#lock.onLost(() => {
      this.#mine = false;
      lost();
    });
  }

  /** The first leg goes first, because it alone can refuse a write that another tab has overtaken. */
  async #everywhere(act: (leg: Leg) => Promise<void>, first: () => unknown = () => undefined): Promise<void> {
    for (const [k, leg] of this.legs.entries()) {
      await act(leg);
      if (k === 0) first();
    }
  }
}
