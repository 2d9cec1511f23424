/** Opening reads the first place wholly and of the others the head alone; a quiet moment later they are looked over and mended. */

import { expect, test } from 'vitest';
import { emptyNotebook } from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import { MemoryLeg, shelfOn, shelfWith, typed } from './memory-leg.ts';

/** Counts what is read. */
class CountingLeg extends MemoryLeg {
  reads = 0;

  override get(key: string): Promise<unknown> {
    this.reads += 1;
    return super.get(key);
  }

  override async read(...given: Parameters<MemoryLeg['read']>): Promise<ReadonlyMap<string, unknown>> {
    const found = await super.read(...given);
    this.reads += found.size;
    return found;
  }
}

async function kept(a: MemoryLeg, b: MemoryLeg, edits: number): Promise<Notebook> {
  const shelf = shelfOn(a, b);
  let notebook = emptyNotebook({ id: 'n1', title: 'Trial' });
  await shelf.add(notebook);
  await shelf.open('n1');
  for (let row = 0; row < edits; row += 1) notebook = await typed(shelf, notebook, row, `${row + 1} mm`);
  return notebook;
}

const records = (leg: MemoryLeg): Record<string, unknown> =>
  Object.fromEntries([...leg.values].sort(([a], [b]) => (a < b ? -1 : 1)));

test('2 where the heads agree a hundred entries of the second place are not read before the notebook is there', async () => {
  const [a, b] = [new MemoryLeg(), new CountingLeg()];
  const notebook = await kept(a, b, 100);
  b.reads = 0;
  const shelf = shelfOn(a, b);
  const opened = await shelf.open('n1');
  expect(opened?.notebook).toEqual(notebook);
  expect(opened?.history.past).toHaveLength(100);
  // Its head, and its record in the list.
  expect(b.reads).toBeLessThanOrEqual(2);
  expect(await shelf.check()).toEqual([]);
  expect(b.reads).toBeGreaterThan(100);
});

test('2 a second place that was damaged behind an equal head is mended in a quiet moment, and that is said once', async () => {
  const [a, b] = [new MemoryLeg(), new MemoryLeg()];
  const notebook = await kept(a, b, 5);
  b.values.delete('doc/n1/j/000000004');
  const shelf = shelfOn(a, b);
  const opened = await shelf.open('n1');
  expect(opened?.notices).toEqual([]);
  const after = await typed(shelf, opened?.notebook ?? notebook, 9, '9 mm');
  expect((await shelf.check()).join()).toContain('damaged: it was restored from the other');
  expect(await shelf.check()).toEqual([]);
  expect(records(b)).toEqual(records(a));
  expect((await shelfOn(b).open('n1'))?.notebook).toEqual(after);
});

test('1 an edit that is made while the places are looked over is in both of them', async () => {
  const [a, b] = [new MemoryLeg(), new MemoryLeg()];
  const notebook = await kept(a, b, 5);
  b.values.delete('doc/n1/j/000000004');
  let go: () => void = () => undefined;
  const shelf = shelfWith({ legs: [a, b], quiet: () => new Promise((resolve) => (go = resolve)) });
  await shelf.open('n1');
  const looking = shelf.check();
  go();
  const after = await typed(shelf, notebook, 9, '9 mm');
  await looking;
  const last = await typed(shelf, after, 10, '10 mm');
  expect(records(b)).toEqual(records(a));
  for (const leg of [a, b]) expect((await shelfOn(leg).open('n1'))?.notebook).toEqual(last);
});

test('2 a first place that went back to an earlier state, sound in itself, does not win over a longer second one', async () => {
  const [a, b] = [new MemoryLeg(), new MemoryLeg()];
  const before = await kept(a, b, 3);
  const earlier = new Map(a.values);
  const shelf = shelfOn(a, b);
  await shelf.open('n1');
  const notebook = await typed(shelf, before, 9, '9 mm');
  a.values.clear();
  for (const [key, value] of earlier) a.values.set(key, value);
  expect((await shelfOn(a, b).open('n1'))?.notebook).toEqual(notebook);
  expect((await shelfOn(a).open('n1'))?.notebook).toEqual(notebook);
});

test('2 a notebook that was closed meanwhile is not looked over', async () => {
  const [a, b] = [new MemoryLeg(), new MemoryLeg()];
  await kept(a, b, 3);
  b.values.delete('doc/n1/j/000000003');
  let go: () => void = () => undefined;
  const shelf = shelfWith({ legs: [a, b], quiet: () => new Promise((resolve) => (go = resolve)) });
  await shelf.open('n1');
  const looking = shelf.check();
  await shelf.close();
  go();
  expect(await looking).toEqual([]);
  expect(b.values.has('doc/n1/j/000000003')).toBe(false);
});
