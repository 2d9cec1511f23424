/** The shelf over legs in memory: edits come back, a lost leg is restored, another tab's writing is noticed. */

import { expect, test } from 'vitest';
import {
  apply,
  emptyNotebook,
  enter,
  isRefusal,
  type Notebook,
  type Transaction,
} from '../../src/document/index.ts';
import { DeviceShelf, Overtaken } from '../../src/storage/index.ts';
import { MemoryLeg, shelfOn } from './memory-leg.ts';

function edit(
  notebook: Notebook,
  row: number,
  typed: string,
): { notebook: Notebook; transaction: Transaction } {
  const transaction = enter(notebook, { worksheet: 'w1', row, column: 0, typed });
  if (isRefusal(transaction)) throw new Error(transaction.message);
  return { notebook: apply(notebook, transaction.changes), transaction };
}

async function withEdits(shelf: DeviceShelf, count: number): Promise<Notebook> {
  let notebook = emptyNotebook({ id: 'n1', title: 'Trial' });
  await shelf.add(notebook);
  await shelf.open('n1');
  for (let row = 0; row < count; row += 1) {
    const { transaction, notebook: after } = edit(notebook, row, `${row + 1} mm`);
    await shelf.append(after, transaction);
    notebook = after;
  }
  return notebook;
}

test('1 every edit is back when the notebook is opened again', async () => {
  const legs = [new MemoryLeg(), new MemoryLeg()];
  const notebook = await withEdits(shelfOn(...legs), 7);
  const opened = await shelfOn(...legs).open('n1');
  expect(opened?.notebook).toEqual(notebook);
  expect(opened?.notices).toEqual([]);
});

test('4 after more than 600 edits the notebook is the same and entries that undo does not need are gone', async () => {
  const leg = new MemoryLeg();
  const notebook = await withEdits(shelfOn(leg), 650);
  expect((await shelfOn(leg).open('n1'))?.notebook).toEqual(notebook);
  const entries = [...leg.values.keys()].filter((key) => key.startsWith('doc/n1/j/'));
  expect(entries.length).toBeLessThanOrEqual(600);
  expect([...leg.values.keys()].filter((key) => key.startsWith('doc/n1/snap/'))).toHaveLength(2);
});

test('2 an empty leg is restored from the other, and that is said', async () => {
  const [a, b] = [new MemoryLeg(), new MemoryLeg()];
  const notebook = await withEdits(shelfOn(a, b), 5);
  a.values.clear();
  const shelf = shelfOn(a, b);
  expect((await shelf.list()).map((item) => item.title)).toEqual(['Trial']);
  const opened = await shelf.open('n1');
  expect(opened?.notebook).toEqual(notebook);
  expect(opened?.notices.join()).toContain('restored');
  expect((await shelfOn(a).open('n1'))?.notebook).toEqual(notebook);
});

test('2 where the empty leg can not be written the notebook opens all the same, and that is said', async () => {
  const [a, b] = [new MemoryLeg(), new MemoryLeg()];
  const notebook = await withEdits(shelfOn(a, b), 5);
  a.values.clear();
  a.broken = true;
  const opened = await shelfOn(a, b).open('n1');
  expect(opened?.notebook).toEqual(notebook);
  expect(opened?.notices.join()).toContain('can not be written');
});

test('3 a leg with records that are no records at all is restored from the other, and that is said', async () => {
  const [a, b] = [new MemoryLeg(), new MemoryLeg()];
  const notebook = await withEdits(shelfOn(a, b), 5);
  for (const key of a.values.keys()) if (key.includes('/j/')) a.values.set(key, null);
  const opened = await shelfOn(a, b).open('n1');
  expect(opened?.notebook).toEqual(notebook);
  expect(opened?.notices.join()).toContain('damaged: it was restored from the other');
  expect((await shelfOn(a).open('n1'))?.notices).toEqual([]);
});

test('4 opening and settling day after day leaves two snapshots and the entries of the steps that can be taken back', async () => {
  const leg = new MemoryLeg();
  let notebook = await withEdits(shelfOn(leg), 3);
  for (let day = 0; day < 6; day += 1) {
    const shelf = shelfOn(leg);
    await shelf.open('n1');
    const { transaction, notebook: after } = edit(notebook, day, `${100 + day} mm`);
    await shelf.append(after, transaction);
    await shelf.settle();
    notebook = after;
  }
  const keys = [...leg.values.keys()];
  expect(keys.filter((key) => key.startsWith('doc/n1/snap/'))).toHaveLength(2);
  expect(keys.filter((key) => key.startsWith('doc/n1/j/'))).toHaveLength(9);
  const opened = await shelfOn(leg).open('n1');
  expect(opened?.notebook).toEqual(notebook);
  expect(opened?.history.past).toHaveLength(9);
});

test('4 a snapshot that can not be written is no loss: the edits are in the journal', async () => {
  const leg = new MemoryLeg();
  const shelf = shelfOn(leg);
  const notebook = await withEdits(shelf, 3);
  leg.broken = true;
  await shelf.settle();
  leg.broken = false;
  expect((await shelfOn(leg).open('n1'))?.notebook).toEqual(notebook);
});

test('2 the longer chain wins where one leg lags behind', async () => {
  const [a, b] = [new MemoryLeg(), new MemoryLeg()];
  const notebook = await withEdits(shelfOn(a, b), 5);
  for (const key of a.values.keys())
    if (key.endsWith('000000006') || key.endsWith('000000005')) a.values.delete(key);
  expect((await shelfOn(a, b).open('n1'))?.notebook).toEqual(notebook);
});

test('1 after a failed write the next one carries the whole notebook', async () => {
  const leg = new MemoryLeg();
  const shelf = shelfOn(leg);
  const before = await withEdits(shelf, 2);
  leg.broken = true;
  const lost = edit(before, 10, '5 mm');
  await expect(shelf.append(lost.notebook, lost.transaction)).rejects.toThrow('full');
  leg.broken = false;
  const next = edit(lost.notebook, 11, '6 mm');
  await shelf.append(next.notebook, next.transaction);
  expect((await shelfOn(leg).open('n1'))?.notebook).toEqual(next.notebook);
});

test('5 a write is refused where another tab has written in between', async () => {
  const leg = new MemoryLeg();
  const first = shelfOn(leg);
  const notebook = await withEdits(first, 1);
  const second = shelfOn(leg);
  await second.open('n1');
  const theirs = edit(notebook, 5, '1 mm');
  await second.append(theirs.notebook, theirs.transaction);
  const ours = edit(notebook, 6, '2 mm');
  await expect(first.append(ours.notebook, ours.transaction)).rejects.toThrow(Overtaken);
});

test('an erased notebook leaves nothing behind', async () => {
  const leg = new MemoryLeg();
  const shelf = shelfOn(leg);
  await withEdits(shelf, 3);
  await shelf.close();
  expect(await shelf.erase('n1')).toBe(true);
  expect([...leg.values.keys()]).toEqual([]);
});
