/** Two tabs over the same legs: the second follows, takes over without a loss, and believes nothing that does not fit. */

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { apply, emptyNotebook, enter, isRefusal } from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import { Overtaken, readTabMessage, type DeviceShelf, type OpenedNotebook } from '../../src/storage/index.ts';
import { ChannelEnd, MemoryLeg, MemoryLocks, shelfWith } from './memory-leg.ts';

/** A tab with a notebook open in it, as a screen would hold it. */
class Tab {
  notebook: Notebook = emptyNotebook({ id: 'n1', title: 'Trial' });
  readOnly = false;
  reloads = 0;
  lost = 0;
  listed: string[] = [];
  /** Typed and not committed: taken into its cell when another tab wants the notebook. */
  draft: string | undefined;

  constructor(
    readonly shelf: DeviceShelf,
    readonly end: ChannelEnd,
  ) {
    shelf.listen({
      lost: () => {
        this.lost += 1;
        this.readOnly = true;
      },
      wanted: async () => {
        const { draft } = this;
        this.draft = undefined;
        if (draft !== undefined) await this.type(50, draft);
      },
      edited: (notebook) => (this.notebook = notebook),
      reloaded: (opened) => {
        this.reloads += 1;
        this.take(opened);
      },
      listed: (id) => void this.listed.push(id),
    });
  }

  take(opened: OpenedNotebook | undefined): void {
    if (!opened) throw new Error('not there');
    this.notebook = opened.notebook;
    this.readOnly = opened.readOnly;
  }

  async open(): Promise<void> {
    this.take(await this.shelf.open('n1'));
  }

  async takeOver(): Promise<void> {
    await this.shelf.takeOver('n1');
    await this.open();
  }

  async type(row: number, typed: string): Promise<void> {
    const transaction = enter(this.notebook, { worksheet: 'w1', row, column: 0, typed });
    if (isRefusal(transaction)) throw new Error(transaction.message);
    this.notebook = apply(this.notebook, transaction.changes);
    await this.shelf.append(this.notebook, transaction);
  }
}

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));

async function twoTabs(): Promise<{ a: Tab; b: Tab; legs: readonly MemoryLeg[]; room: ChannelEnd[] }> {
  const legs = [new MemoryLeg(), new MemoryLeg()];
  const room: ChannelEnd[] = [];
  const locks = new MemoryLocks() as unknown as LockManager;
  const tab = (): Tab => {
    const end = new ChannelEnd(room);
    return new Tab(shelfWith({ legs, locks, channel: end }), end);
  };
  const [a, b] = [tab(), tab()];
  await a.shelf.add(a.notebook);
  await a.open();
  await a.type(0, '1 mm');
  await b.open();
  return { a, b, legs, room };
}

test('5 the second tab only reads and shows every edit of the first', async () => {
  const { a, b } = await twoTabs();
  expect([a.readOnly, b.readOnly]).toEqual([false, true]);
  for (let row = 1; row < 9; row += 1) await a.type(row, `${row} mm`);
  await settled();
  expect(b.notebook).toEqual(a.notebook);
  expect(b.reloads).toBe(0);
});

test('5 taken over in both directions nothing is lost, not even what was being typed', async () => {
  const { a, b } = await twoTabs();
  a.draft = '77 mm';
  await b.takeOver();
  expect([a.readOnly, b.readOnly, a.lost]).toEqual([true, false, 1]);
  expect(JSON.stringify(b.notebook)).toContain('77 mm');
  await b.type(1, '2 mm');
  b.draft = '88 mm';
  await a.takeOver();
  expect([a.readOnly, b.readOnly, b.lost]).toEqual([false, true, 1]);
  expect(JSON.stringify(a.notebook)).toContain('88 mm');
  await a.type(2, '3 mm');
  await settled();
  expect(b.notebook).toEqual(a.notebook);
  await expect(b.type(3, '4 mm'))
    .rejects.toThrow(Overtaken)
    .catch(() => undefined);
});

test('5 a notebook is taken from a tab that hangs, after a while, and what that tab had saved is there', async () => {
  const { a, b } = await twoTabs();
  await a.type(1, '2 mm');
  a.shelf.listen({
    lost: () => void (a.lost += 1),
    wanted: () => new Promise(() => undefined),
    edited: () => undefined,
    reloaded: () => undefined,
    listed: () => undefined,
  });
  await b.takeOver();
  expect([b.readOnly, a.lost]).toEqual([false, 1]);
  expect(b.notebook).toEqual(a.notebook);
  await b.type(2, '3 mm');
  await expect(a.type(3, '4 mm')).rejects.toThrow(Overtaken);
}, 15_000);

test('5 a tab that missed edits reads the notebook anew, at once or when it wakes', async () => {
  const { a, b, room } = await twoTabs();
  const away = room.splice(1, 1);
  await a.type(1, '2 mm');
  room.push(...away);
  await a.type(2, '3 mm');
  await settled();
  expect(b.reloads).toBe(1);
  expect(b.notebook).toEqual(a.notebook);
  room.splice(1, 1);
  await a.type(3, '4 mm');
  await b.shelf.wake();
  expect(b.reloads).toBe(2);
  expect(b.notebook).toEqual(a.notebook);
});

test('5 messages that do not fit change nothing: forged hashes, foreign shapes, other notebooks', async () => {
  const { a, b } = await twoTabs();
  const before = b.notebook;
  const [edits] = a.end.sent.filter((each) => JSON.stringify(each).includes('edits'));
  expect(edits).toBeDefined();
  const forged = structuredClone(edits) as { entries: { body: string }[] };
  for (const entry of forged.entries) entry.body = entry.body.replace('1 mm', '9 mm');
  for (const message of [
    null,
    'edits',
    { type: 'edits', id: 'n1', entries: [null] },
    { type: 'edits', id: 'n1', entries: 'all' },
    { type: 'erase', id: 'n1' },
    { ...forged, id: 'other' },
    forged,
    edits,
  ])
    b.end.hear(message);
  await settled();
  expect(b.notebook).toEqual(before);
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 4 }), (message) => {
      readTabMessage(message);
    }),
    { seed: 20_261_125, numRuns: 1000 },
  );
});

test('5 removed in one tab while open in another: the other is told, and its next edit brings it back', async () => {
  const { a, b } = await twoTabs();
  await b.shelf.remove('n1');
  await settled();
  expect(a.listed).toContain('n1');
  expect((await b.shelf.list())[0]?.removedAt).toBeDefined();
  expect(await b.shelf.erase('n1')).toBe(false);
  await a.type(1, '2 mm');
  expect((await b.shelf.list())[0]?.removedAt).toBeUndefined();
});

test('5 given another title while open in another tab: refused in words', async () => {
  const { b } = await twoTabs();
  expect(await b.shelf.rename('n1', 'Other')).toContain('another tab');
});
