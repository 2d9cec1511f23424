/** The notebooks on this device as a list: put there, copied, kept aside, brought back, erased. */

import { NO_RESULTS, writeNotebook } from '../exchange/index.ts';
import type { StoredResults } from '../exchange/index.ts';
import type { Notebook } from '../document/index.ts';
import { entryAfter, snapshotOf } from './chain.ts';
import { keptResultsOf, resultsRecord } from './kept-results.ts';
import type { TabMessage } from './notebook-channel.ts';
import { NotebookLock } from './notebook-lock.ts';
import { recordKey } from './notebook-records.ts';
import type { ShelfSurroundings } from './opened-notebook.ts';
import { readKept } from './read-kept.ts';
import { KEPT_ASIDE, eraseRecords, findItem, listItems, writeItem, type KeptItem } from './shelf-index.ts';

export class NotebookList {
  readonly keptAside = KEPT_ASIDE;

  constructor(protected readonly around: ShelfSurroundings) {}

  /** Those that are kept aside too. */
  list(): Promise<readonly KeptItem[]> {
    return listItems(this.around.legs);
  }

  /** Puts a new notebook on the shelf. */
  async add(notebook: Notebook, results: StoredResults = NO_RESULTS, program = ''): Promise<void> {
    const { id } = notebook;
    const at = this.around.now();
    const first = entryAfter('', 1, JSON.stringify({ made: at }));
    const snapshot = snapshotOf(1, first.hash, writeNotebook(notebook));
    const meta: KeptItem = { id, title: notebook.title, changedAt: at, madeAt: at };
    const put = new Map<string, unknown>([
      [recordKey.snapshot(id, 1), snapshot],
      [recordKey.head(id), { seq: 1, hash: first.hash }],
      [recordKey.meta(id), meta],
    ]);
    const record = await resultsRecord(notebook, results, { hash: first.hash, program }, async () => {
      await this.around.pause?.();
      return true;
    });
    if (record) put.set(recordKey.results(id), record);
    for (const leg of this.around.legs) await leg.write({ put });
    this.tell({ type: 'listed', id });
  }

  /** One of them. */
  item(id: string): Promise<KeptItem | undefined> {
    return findItem(this.around.legs, id);
  }

  async markCopied(id: string): Promise<void> {
    const known = await this.item(id);
    if (!known) return;
    const meta = { ...known, copiedAt: this.around.now() };
    await this.index(meta);
  }

  /** Keeps it aside: it is no longer listed among the others and can be brought back. */
  async remove(id: string): Promise<void> {
    const known = await this.item(id);
    if (known) await this.index({ ...known, removedAt: this.around.now() });
  }

  async bringBack(id: string): Promise<void> {
    const known = await this.item(id);
    if (!known) return;
    const { removedAt: _removed, ...meta } = known;
    await this.index({ ...meta, changedAt: Math.max(known.changedAt, this.around.now()) });
  }

  /** Removes for good; false while a tab has it open. */
  async erase(id: string): Promise<boolean> {
    const lock = new NotebookLock(this.around.locks);
    if (!(await lock.take(id))) return false;
    try {
      await eraseRecords(this.around.legs, id);
    } finally {
      await lock.release();
    }
    this.tell({ type: 'listed', id });
    return true;
  }

  /** Erases what was removed long enough ago. */
  async sweep(): Promise<void> {
    const before = this.around.now() - this.keptAside;
    for (const { id, removedAt } of await this.list())
      if (removedAt !== undefined && removedAt < before) await this.erase(id);
  }

  /** Puts a copy under another id and title. */
  async duplicate(id: string, newId: string, title: string): Promise<void> {
    const found = await readKept(this.around.legs, id);
    if (!found) throw new Error('this notebook is no longer there');
    const { results, program, exact } = keptResultsOf(found);
    await this.add({ ...found.notebook, id: newId, title }, exact ? results : NO_RESULTS, program);
  }

  protected async index(meta: KeptItem): Promise<void> {
    await writeItem(this.around.legs, meta);
    this.tell({ type: 'listed', id: meta.id });
  }

  protected tell(message: TabMessage): void {
    this.around.channel?.postMessage(message);
  }
}
