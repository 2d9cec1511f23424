/** The notebooks on this device: a journal of edits and snapshots, on two legs; an edit counts as saved when every leg has confirmed. */

import { apply, changeSettings, isRefusal } from '../document/index.ts';
import type { Notebook, Transaction } from '../document/index.ts';
import { readNotebook, writeNotebook } from '../exchange/index.ts';
import type { PassingResults } from '../exchange/index.ts';
import { entryAfter, snapshotOf, type Entry } from './chain.ts';
import { entryBody, readBody } from './journal-entry.ts';
import { keptResultsOf, resultsRecord } from './kept-results.ts';
import { Overtaken, type Leg, type Write } from './leg.ts';
import { damageWords, mendWords } from './mend-words.ts';
import { readTabMessage, type TabMessage } from './notebook-channel.ts';
import { NotebookList } from './notebook-list.ts';
import { NotebookLock } from './notebook-lock.ts';
import { recordKey, type Head } from './notebook-records.ts';
import type { OpenedNotebook, ShelfEvents, ShelfSurroundings } from './opened-notebook.ts';
import { readFirst, readKept, type KeptNotebook } from './read-kept.ts';
import { findItem, type KeptItem } from './shelf-index.ts';

const SNAPSHOT_EVERY = 200;
/** Entries that stay after a snapshot has made them needless, so that their steps can be taken back: at most so many, and so many characters. */
const STEPS_KEPT = 400;
const STEPS_LENGTH = 6_000_000;
/** Milliseconds in which another tab may finish its edit before the notebook is taken from it. */
const PATIENCE = 4000;

const READS_ONLY: ShelfEvents = {
  lost: () => undefined,
  wanted: () => Promise.resolve(),
  edited: () => undefined,
  reloaded: () => undefined,
  listed: () => undefined,
};

export class DeviceShelf extends NotebookList {
  readonly #lock: NotebookLock;
  #events: ShelfEvents = READS_ONLY;
  #id = '';
  /** What the first leg has confirmed. */
  #head: Head = { seq: 0, hash: '' };
  /** Entries that not every leg has confirmed. */
  #pending: Entry[] = [];
  #snapshotSeq = 0;
  #olderSnapshots: readonly number[] = [];
  /** Entries on the legs, oldest first. */
  #entries: { readonly seq: number; readonly length: number }[] = [];
  #notebook: Notebook | undefined;
  #meta: KeptItem | undefined;
  /** This tab holds the notebook; others only read and write nothing. */
  #mine = false;
  /** The other legs were compared by their heads alone. */
  #unchecked = false;
  #turn: Promise<unknown> = Promise.resolve();

  constructor(around: ShelfSurroundings) {
    super(around);
    this.#lock = new NotebookLock(around.locks);
    this.#lock.onLost(() => this.#lose());
    around.channel?.addEventListener('message', ({ data }) => {
      const message = readTabMessage(data);
      if (message) void this.#hear(message);
    });
  }

  listen(events: ShelfEvents): void {
    this.#events = events;
  }

  async open(id: string): Promise<OpenedNotebook | undefined> {
    const { legs } = this.around;
    // The lock first: nothing can be written between reading and holding it.
    const lock = await this.#lock.take(id);
    const first = await readFirst(legs, id);
    const found = first ?? (await readKept(legs, id));
    if (!found) {
      await this.#lock.release();
      return undefined;
    }
    this.#unchecked = first !== undefined && legs.length > 1;
    const { notebook, history, newer } = found;
    this.#mine = lock && !newer;
    if (newer) await this.#lock.release();
    this.#id = id;
    await this.#stand(found);
    const notices = this.#mine && !first ? await this.#mend(found) : damageWords(found);
    if (newer)
      notices.push(
        'A newer version of the program has kept this notebook: it can be read here, not changed.',
      );
    return { notebook, history, kept: keptResultsOf(found), notices, readOnly: !this.#mine, newer };
  }

  /** Takes the state of what was read as the one to go on from. */
  async #stand(found: KeptNotebook): Promise<void> {
    const { notebook, best } = found;
    this.#notebook = notebook;
    this.#pending = [];
    this.#head = { seq: best.seq, hash: best.hash };
    this.#count(found);
    this.#meta = await findItem(this.around.legs, this.#id);
  }

  /** What lies on the legs that were read. */
  #count({ best, finds, steps }: KeptNotebook): void {
    this.#snapshotSeq = best.snapshot.seq;
    this.#olderSnapshots = [...new Set(finds.flatMap((find) => find.snapshotNumbers))].filter(
      (seq) => seq < best.snapshot.seq,
    );
    const lengths = new Map(steps.map(({ seq, body }) => [seq, body.length]));
    this.#entries = [...new Set(finds.flatMap((find) => find.entryNumbers))]
      .filter((seq) => seq <= best.seq)
      .sort((a, b) => a - b)
      .map((seq) => ({ seq, length: lengths.get(seq) ?? 0 }));
  }

  /** In a quiet moment after opening the other legs are read wholly too, and mended; gives the words for it. */
  async check(): Promise<readonly string[]> {
    const id = this.#id;
    await this.around.quiet?.();
    return this.#inTurn(async () => {
      if (!this.#unchecked || !this.#mine || id !== this.#id || this.#pending.length > 0) return [];
      this.#unchecked = false;
      const found = await readKept(this.around.legs, id);
      if (!found || !isSame(found.best, this.#head)) return [];
      this.#count(found);
      return this.#mend(found);
    });
  }

  /** One after the other: what is written must not meet what is mended. */
  #inTurn<Result>(work: () => Promise<Result>): Promise<Result> {
    const done = this.#turn.then(work);
    this.#turn = done.catch(() => undefined);
    return done;
  }

  /** Makes legs that lag behind equal to the best chain; gives the words for it. */
  async #mend(found: KeptNotebook): Promise<string[]> {
    const { best, chains, finds } = found;
    const notices = damageWords(found);
    const behind = this.around.legs.filter((_, k) => {
      const { head } = finds[k] ?? {};
      const chain = chains[k];
      return chain?.seq !== best.seq || chain.damaged || head?.seq !== best.seq || head.hash !== best.hash;
    });
    if (behind.length === 0) return notices;
    const restored = await this.#restore(behind, found);
    return [...notices, ...mendWords(found, restored)];
  }

  /** False where a leg can not be written. */
  async #restore(legs: readonly Leg[], { best, steps, finds, chains }: KeptNotebook): Promise<boolean> {
    const id = this.#id;
    const put = new Map<string, unknown>();
    // The one before goes along from where all is well.
    for (const snapshot of finds.flatMap((find, k) => (chains[k]?.damaged === false ? find.snapshots : [])))
      if (snapshot.seq < best.snapshot.seq) put.set(recordKey.snapshot(id, snapshot.seq), snapshot);
    put.set(recordKey.snapshot(id, best.snapshot.seq), best.snapshot);
    for (const entry of [...steps, ...best.entries]) put.set(recordKey.entry(id, entry.seq), entry);
    put.set(recordKey.head(id), this.#head);
    if (this.#meta) put.set(recordKey.meta(id), this.#meta);
    const written = legs.map(async (leg) => {
      const old = await leg.keys(recordKey.all(id)).catch(() => []);
      await leg.write({ put, remove: old.filter((each) => !put.has(each)) });
    });
    return (await Promise.allSettled(written)).every((each) => each.status === 'fulfilled');
  }

  async append(notebook: Notebook, transaction: Transaction): Promise<void> {
    const id = this.#id;
    if (notebook.id !== id) throw new RangeError(`notebook ${notebook.id} is not the open one, ${id}`);
    if (!this.#mine) throw new Overtaken(this.#head);
    const before = this.#pending.at(-1) ?? this.#head;
    const entry = entryAfter(before.hash, before.seq + 1, entryBody(transaction, this.around.now()));
    this.#pending.push(entry);
    this.#notebook = notebook;
    const { removedAt: _removed, ...meta } = this.#meta ?? { id };
    this.#meta = { ...meta, title: notebook.title, changedAt: this.around.now() };
    await this.#inTurn(() => this.#writePending(notebook));
    if (this.#head.seq - this.#snapshotSeq >= SNAPSHOT_EVERY) await this.settle();
  }

  /** Writes what could not be written before; false where there was nothing to write. */
  async flush(): Promise<boolean> {
    const notebook = this.#notebook;
    if (!notebook || this.#pending.length === 0) return false;
    if (!this.#mine) throw new Overtaken(this.#head);
    await this.#inTurn(() => this.#writePending(notebook));
    return true;
  }

  /** Writes every entry that is not safe yet, in one step a leg. */
  async #writePending(notebook: Notebook): Promise<void> {
    const id = this.#id;
    const entries = [...this.#pending];
    const last = entries.at(-1);
    if (!last) return;
    const head: Head = { seq: last.seq, hash: last.hash };
    const put = new Map<string, unknown>(entries.map((each) => [recordKey.entry(id, each.seq), each]));
    put.set(recordKey.head(id), head);
    put.set(recordKey.meta(id), this.#meta);
    // A write whose confirmation was lost may have arrived all the same.
    const heads: unknown[] = [this.#head, ...entries.map(({ seq, hash }) => ({ seq, hash }))];
    const write = (): Promise<void> =>
      this.#everywhere({ put, guard: { key: recordKey.head(id), anyOf: heads } }, () => (this.#head = head));
    try {
      await write();
    } catch (reason) {
      if (!(reason instanceof Overtaken) || reason.found !== undefined) throw reason;
      // Thrown away under the open page: everything is written anew.
      put.set(recordKey.snapshot(id, head.seq), snapshotOf(head.seq, head.hash, writeNotebook(notebook)));
      heads.push(undefined);
      await write();
      this.#snapshotSeq = head.seq;
      this.#olderSnapshots = [];
      this.#entries = [];
    }
    this.#pending = this.#pending.filter((each) => !entries.includes(each));
    this.#entries.push(...entries.map(({ seq, body }) => ({ seq, length: body.length })));
    this.tell({ type: 'edits', id, entries });
  }

  /**
   * Writes a snapshot if something is new since the last one; keeps the one before, the entries since then, and as many
   * older ones as steps can be taken back. Where that fails nothing is lost, because the journal has every edit: the
   * next call tries again.
   */
  settle(): Promise<void> {
    return this.#inTurn(() => this.#snap());
  }

  async #snap(): Promise<void> {
    const id = this.#id;
    const { seq, hash } = this.#head;
    if (!this.#mine || !this.#notebook || this.#pending.length > 0 || seq === this.#snapshotSeq) return;
    const last = this.#snapshotSeq;
    const snapshot = snapshotOf(seq, hash, writeNotebook(this.#notebook));
    // What could not be read again must not take the place of what can.
    if (!('notebook' in readNotebook(snapshot.body, 'own'))) return;
    const needless = this.#needless(last);
    const remove = [
      ...needless.map((old) => recordKey.entry(id, old)),
      ...this.#olderSnapshots.map((old) => recordKey.snapshot(id, old)),
    ];
    const guard = { key: recordKey.head(id), anyOf: [this.#head] };
    const put = new Map<string, unknown>([[recordKey.snapshot(id, seq), snapshot]]);
    try {
      await this.#everywhere({ put, remove, guard });
    } catch {
      return;
    }
    const gone = new Set(needless);
    this.#entries = this.#entries.filter((each) => !gone.has(each.seq));
    this.#olderSnapshots = [last];
    this.#snapshotSeq = seq;
  }

  /** Entries that neither a snapshot nor undo needs any more. */
  #needless(last: number): readonly number[] {
    let [count, length] = [0, 0];
    return this.#entries
      .toReversed()
      .filter((each) => {
        count += 1;
        length += each.length;
        return each.seq <= last && (count > STEPS_KEPT || length > STEPS_LENGTH);
      })
      .map((each) => each.seq);
  }

  /**
   * Keeps the results of the notebook as it is now, to be painted at the next start: `results` must stay as they are
   * meanwhile. An edit that comes between two pieces ends it. A loss of them is no loss.
   */
  async keepResults(notebook: Notebook, results: PassingResults): Promise<void> {
    const [leg] = this.around.legs;
    const stands = (): boolean => this.#mine && notebook === this.#notebook && this.#pending.length === 0;
    if (!leg || !stands()) return;
    const key = recordKey.results(this.#id);
    const of = { hash: this.#head.hash, program: this.around.program };
    const record = await resultsRecord(notebook, results, of, async () => {
      await this.around.pause?.();
      return stands();
    });
    if (!stands()) return;
    const put = new Map(record ? [[key, record]] : []);
    await leg.write({ put, remove: record ? [] : [key] }).catch(() => undefined);
  }

  /** Words why not, where it can not be done now. */
  async rename(id: string, title: string): Promise<string | undefined> {
    const { channel: _channel, ...around } = this.around;
    const other = new DeviceShelf(around);
    const opened = await other.open(id);
    try {
      if (!opened) return 'This notebook is no longer there.';
      if (opened.readOnly) return 'It is open in another tab: give it another title there.';
      const answer = changeSettings(opened.notebook, { title });
      if (isRefusal(answer)) return answer.message;
      await other.append(apply(opened.notebook, answer.changes), answer);
      await other.settle();
    } finally {
      await other.close();
    }
    this.tell({ type: 'listed', id });
    return undefined;
  }

  protected override async index(meta: KeptItem): Promise<void> {
    if (meta.id === this.#id) this.#meta = meta;
    await super.index(meta);
  }

  /** Asks the tab that edits to let go, and waits for it a while; then this one may open the notebook to edit. */
  async takeOver(id: string): Promise<void> {
    this.tell({ type: 'wanted', id });
    await this.#lock.take(id, PATIENCE, true);
  }

  /** Lets the notebook go. */
  async close(): Promise<void> {
    await this.settle();
    this.#id = '';
    this.#mine = false;
    this.#notebook = undefined;
    await this.#lock.release();
  }

  /** After sleep: a dead connection is opened again, and edits of another tab that were missed are read. */
  async wake(): Promise<void> {
    const id = this.#id;
    const [leg] = this.around.legs;
    if (id === '' || !leg) return;
    const key = recordKey.head(id);
    const head = await leg.get(key).catch(() => undefined);
    if (!this.#mine && id === this.#id && JSON.stringify(head) !== JSON.stringify(this.#head))
      await this.#reload();
  }

  #lose(): void {
    if (!this.#mine) return;
    this.#mine = false;
    this.#events.lost();
  }

  async #hear(message: TabMessage): Promise<void> {
    const { id, type } = message;
    if (type === 'listed') {
      if (id === this.#id) this.#meta = (await findItem(this.around.legs, id)) ?? this.#meta;
      return this.#events.listed(id);
    }
    if (id !== this.#id) return;
    if (type === 'edits') return this.#follow(message.entries);
    if (!this.#mine || !this.around.locks) return;
    await this.#events.wanted();
    await this.settle();
    await this.#lock.release();
    this.#lose();
  }

  /** Carries edits of another tab out; where they do not follow what is here, the notebook is read anew. */
  async #follow(entries: readonly Entry[]): Promise<void> {
    if (this.#pending.length > 0) return;
    for (const entry of entries) {
      if (entry.seq <= this.#head.seq) continue;
      const step = entry.before === this.#head.hash ? readBody(entry.body) : undefined;
      if (!step || !this.#notebook) return this.#reload();
      try {
        this.#notebook = apply(this.#notebook, step.changes);
      } catch {
        return this.#reload();
      }
      this.#head = { seq: entry.seq, hash: entry.hash };
      this.#events.edited(this.#notebook, step);
    }
  }

  async #reload(): Promise<void> {
    const id = this.#id;
    const found = await readKept(this.around.legs, id).catch(() => undefined);
    if (!found || id !== this.#id || this.#pending.length > 0) return;
    await this.#stand(found);
    const { notebook, history, newer } = found;
    const kept = keptResultsOf(found);
    this.#events.reloaded({ notebook, history, kept, notices: [], readOnly: !this.#mine, newer });
  }

  /** The first leg goes first, because it alone can refuse a write that another tab has overtaken; others may lag behind it. */
  async #everywhere({ guard, ...write }: Write, first: () => unknown = () => undefined): Promise<void> {
    for (const [k, leg] of this.around.legs.entries()) {
      await leg.write(k === 0 && guard ? { ...write, guard } : write);
      if (k === 0) first();
    }
  }
}

const isSame = (a: Head, b: Head): boolean => a.seq === b.seq && a.hash === b.hash;
