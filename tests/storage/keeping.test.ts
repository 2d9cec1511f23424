/** What is kept when things go wrong or slow: lost confirmations, places thrown away under the open page, the list. */

import { expect, test } from 'vitest';
import { apply, emptyNotebook, enter, isRefusal, undo } from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import { KEPT_ASIDE, riskWords, type DeviceShelf } from '../../src/storage/index.ts';
import { MemoryLeg, NOW, shelfOn, shelfWith, typed } from './memory-leg.ts';

async function opened(...legs: MemoryLeg[]): Promise<{ shelf: DeviceShelf; notebook: Notebook }> {
  const shelf = shelfOn(...legs);
  const notebook = emptyNotebook({ id: 'n1', title: 'Trial' });
  await shelf.add(notebook);
  await shelf.open('n1');
  return { shelf, notebook: await typed(shelf, notebook, 0, '1 mm') };
}

test('1 an edit whose write arrived without a confirmation does not stop the next one', async () => {
  const leg = new MemoryLeg();
  const { shelf, notebook } = await opened(leg);
  leg.mute = true;
  const after = apply(notebook, []);
  await expect(typed(shelf, after, 1, '2 mm')).rejects.toThrow('no confirmation');
  leg.mute = false;
  const both = await shelfOn(leg).open('n1');
  expect(JSON.stringify(both?.notebook)).toContain('2 mm');
  const last = await typed(shelf, both?.notebook ?? notebook, 2, '3 mm');
  const again = await shelfOn(leg).open('n1');
  expect(again?.notebook).toEqual(last);
  expect(again?.notices).toEqual([]);
});

test('1 edits that could not be written are each a step once they are', async () => {
  const [a, b] = [new MemoryLeg(), new MemoryLeg()];
  const { shelf, notebook } = await opened(a, b);
  b.broken = true;
  let now = notebook;
  for (const [row, text] of ['2 mm', '3 mm'].entries()) {
    const transaction = enter(now, { worksheet: 'w1', row: row + 1, column: 0, typed: text });
    if (isRefusal(transaction)) throw new Error(transaction.message);
    now = apply(now, transaction.changes);
    await expect(shelf.append(now, transaction)).rejects.toThrow('full');
  }
  b.broken = false;
  now = await typed(shelf, now, 3, '4 mm');
  a.values.clear();
  const again = await shelfOn(a, b).open('n1');
  expect(again?.notebook).toEqual(now);
  expect(again?.history.past).toHaveLength(4);
  expect(again && undo(again.history)?.history.past).toHaveLength(3);
});

test('1 what could not be written is written by trying again, without another edit', async () => {
  const [a, b] = [new MemoryLeg(), new MemoryLeg()];
  const { shelf, notebook } = await opened(a, b);
  expect(await shelf.flush()).toBe(false);
  a.broken = true;
  const transaction = enter(notebook, { worksheet: 'w1', row: 1, column: 0, typed: '2 mm' });
  if (isRefusal(transaction)) throw new Error(transaction.message);
  const after = apply(notebook, transaction.changes);
  await expect(shelf.append(after, transaction)).rejects.toThrow('full');
  await expect(shelf.flush()).rejects.toThrow('full');
  a.broken = false;
  expect(await shelf.flush()).toBe(true);
  for (const leg of [a, b]) expect((await shelfOn(leg).open('n1'))?.notebook).toEqual(after);
});

test('2 thrown away under the open page everything is written anew with the next edit', async () => {
  const [a, b] = [new MemoryLeg(), new MemoryLeg()];
  const { shelf, notebook } = await opened(a, b);
  a.values.clear();
  b.values.clear();
  const after = await typed(shelf, notebook, 1, '2 mm');
  const last = await typed(shelf, after, 2, '3 mm');
  const again = await shelfOn(a, b).open('n1');
  expect(again?.notebook).toEqual(last);
  expect((await shelf.list()).map((item) => item.title)).toEqual(['Trial']);
});

test('9 the list passes over what is no record and still shows notebooks whose record is lost', async () => {
  const leg = new MemoryLeg();
  const { shelf } = await opened(leg);
  for (const [key, value] of [
    ['meta/x', null],
    ['meta/y', 'text'],
    ['meta/z', { id: 'other', title: 'Other', changedAt: 1 }],
    ['meta/q', { id: 'q', title: 5 }],
  ] as const)
    leg.values.set(key, value);
  expect((await shelf.list()).map((item) => item.id)).toEqual(['n1']);
  leg.values.set('meta/n1', { id: 'n1', title: 'Trial', changedAt: 'yesterday', copiedAt: {} });
  expect(await shelf.list()).toEqual([{ id: 'n1', title: 'Trial', changedAt: 0 }]);
  leg.values.delete('meta/n1');
  expect((await shelf.list()).map((item) => item.title)).toEqual(['Notebook whose title was lost']);
});

test('9 removed is kept aside, can be brought back for 30 days, and is erased by a sweep only after that', async () => {
  const leg = new MemoryLeg();
  let now = NOW;
  const shelf = shelfWith({ legs: [leg], now: () => now });
  const notebook = emptyNotebook({ id: 'n1', title: 'Trial' });
  await shelf.add(notebook);
  await shelf.remove('n1');
  now += KEPT_ASIDE - 1000;
  await shelf.sweep();
  expect((await shelf.list())[0]?.removedAt).toBe(NOW);
  await shelf.bringBack('n1');
  expect((await shelf.list())[0]?.removedAt).toBeUndefined();
  expect((await shelf.open('n1'))?.notebook).toEqual(notebook);
  await shelf.close();
  await shelf.remove('n1');
  now += KEPT_ASIDE + 1000;
  await shelf.sweep();
  expect(await shelf.list()).toEqual([]);
});

test('9 a copy is another notebook with the same content; a new title is an edit like any other', async () => {
  const leg = new MemoryLeg();
  const { shelf, notebook } = await opened(leg);
  await shelf.close();
  await shelf.duplicate('n1', 'n2', 'Trial, copy');
  expect((await shelfOn(leg).open('n2'))?.notebook).toEqual({ ...notebook, id: 'n2', title: 'Trial, copy' });
  expect(await shelf.rename('n1', 'Later trial')).toBeUndefined();
  const renamed = await shelfOn(leg).open('n1');
  expect(renamed?.notebook.title).toBe('Later trial');
  expect(renamed?.history.past).toHaveLength(2);
  expect((await shelf.list()).map((item) => item.title).sort()).toEqual(['Later trial', 'Trial, copy']);
});

test('10 a risk is named where there are signs of it, and only there', () => {
  const none = { quota: 10e9, hasWorkers: true, onTablet: false, persisted: undefined };
  expect(riskWords(none)).toBeUndefined();
  expect(riskWords({ ...none, persisted: true })).toBeUndefined();
  expect(riskWords({ ...none, quota: 3e8 })).toContain('private window');
  expect(riskWords({ ...none, hasWorkers: false })).toContain('private window');
  expect(riskWords({ ...none, onTablet: true })).toContain('7 days');
  expect(riskWords({ ...none, persisted: false })).toContain('has not promised');
});
