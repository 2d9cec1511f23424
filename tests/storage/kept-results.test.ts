/** Results are kept beside the notebook they were computed from: exact only for it, in pieces, never a mixture of two states. */

import { expect, test } from 'vitest';
import { emptyNotebook } from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import type { StoredResults } from '../../src/exchange/index.ts';
import type { DeviceShelf } from '../../src/storage/index.ts';
import { MemoryLeg, shelfOn, shelfWith, typed } from './memory-leg.ts';

async function opened(
  leg: MemoryLeg,
  pause = (): Promise<void> => Promise.resolve(),
): Promise<{ shelf: DeviceShelf; notebook: Notebook }> {
  const shelf = shelfWith({ legs: [leg], pause });
  const notebook = emptyNotebook({ id: 'n1', title: 'Trial' });
  await shelf.add(notebook);
  await shelf.open('n1');
  return { shelf, notebook: await typed(shelf, notebook, 0, '1 mm') };
}

const KEY = 'doc/n1/results';

const results: StoredResults = new Map([
  ['w1', new Map([['A2', { value: 0.002, kind: 'length', unit: 'mm', cautions: [] }]])],
]);

test('8 kept results come back with the version that computed them, exact only for the notebook they are of', async () => {
  const leg = new MemoryLeg();
  const { shelf, notebook } = await opened(leg);
  const after = await typed(shelf, notebook, 1, '=2*A1');
  await shelf.keepResults(after, results);
  const first = await shelfOn(leg).open('n1');
  expect(first?.kept).toMatchObject({ program: '1.0.0+test', exact: true });
  expect(first?.kept.results.get('w1')?.get('A2')?.value).toBe(0.002);
  await typed(shelf, after, 0, '2 mm');
  expect((await shelfOn(leg).open('n1'))?.kept.exact).toBe(false);
});

test('8 kept results that are damaged, foreign or too many never keep a notebook from opening', async () => {
  const leg = new MemoryLeg();
  const { shelf, notebook } = await opened(leg);
  for (const record of [
    null,
    5,
    {},
    { hash: '', program: '', body: '{"w1":{"A2":{"value":[]}}}' },
    { hash: 1 },
  ]) {
    leg.values.set(KEY, record);
    const again = await shelfOn(leg).open('n1');
    expect(again?.notebook).toEqual(notebook);
    expect(again?.kept.results.size).toBe(0);
  }
  const many = new Map(
    Array.from({ length: 20_000 }, (_, k): [string, { value: number; kind: string; unit: string }] => [
      `B${(k % 2000) + 1}`.replace('B', String.fromCodePoint(66 + Math.floor(k / 2000))),
      { value: 1 / (k + 3), kind: 'a kind with quite a long name, as no kind has it in earnest', unit: 'mm' },
    ]),
  );
  await shelf.keepResults(notebook, new Map([['w1', many]]));
  expect(leg.values.has(KEY)).toBe(false);
});

/** 10 000 results of one value in columns B to K, so that a mixture of two states would show. */
const all = (value: number): StoredResults =>
  new Map([
    [
      'w1',
      new Map(
        Array.from({ length: 10_000 }, (_, k) => [
          `${String.fromCodePoint(66 + (k % 10))}${Math.floor(k / 10) + 1}`,
          { value, kind: 'length', unit: 'mm' },
        ]),
      ),
    ],
  ]);

/** Pauses that last until they are let go on; `turn` gives false where nothing waits. */
function pauses() {
  const waiting: (() => void)[] = [];
  return {
    pause: (): Promise<void> => new Promise((resolve) => waiting.push(resolve)),
    async turn(): Promise<boolean> {
      const next = waiting.shift();
      next?.();
      await new Promise((resolve) => setTimeout(resolve));
      return next !== undefined;
    },
  };
}

/** The values that a start would paint, and whether they would be taken for those of the notebook as it is. */
async function painted(leg: MemoryLeg): Promise<{ values: unknown[]; exact: boolean | undefined }> {
  const kept = (await shelfOn(leg).open('n1'))?.kept;
  const values = [...(kept?.results.get('w1')?.values() ?? [])].map(({ value }) => value);
  return { values: [...new Set(values)], exact: kept?.exact };
}

test('8 many results are written in pieces, the page has its turn between them, and they come back whole', async () => {
  const leg = new MemoryLeg();
  let turns = 0;
  const { shelf, notebook } = await opened(leg, () => {
    turns += 1;
    return Promise.resolve();
  });
  await shelf.keepResults(notebook, all(1));
  expect(turns).toBeGreaterThanOrEqual(10);
  const kept = (await shelfOn(leg).open('n1'))?.kept;
  expect(kept).toEqual({ results: all(1), program: '1.0.0+test', exact: true });
});

test('8 an edit after any piece ends the writing: its own results are kept, and nothing of those before', async () => {
  for (let after = 0; after <= 10; after += 1) {
    const leg = new MemoryLeg();
    const { pause, turn } = pauses();
    const { shelf, notebook } = await opened(leg, pause);
    const earlier = shelf.keepResults(notebook, all(1));
    for (let k = 0; k < after; k += 1) expect(await turn()).toBe(true);
    expect(leg.values.has(KEY)).toBe(false);
    const edited = await typed(shelf, notebook, 0, '2 mm');
    const later = shelf.keepResults(edited, all(2));
    while (await turn());
    await Promise.all([earlier, later]);
    expect(await painted(leg)).toEqual({ values: [2], exact: true });
  }
});

test('8 results whose writing an edit ended leave what was kept before as it was, of its own state', async () => {
  const leg = new MemoryLeg();
  const { pause, turn } = pauses();
  const { shelf, notebook } = await opened(leg, pause);
  const first = shelf.keepResults(notebook, all(1));
  while (await turn());
  await first;
  expect(await painted(leg)).toEqual({ values: [1], exact: true });
  const edited = await typed(shelf, notebook, 0, '2 mm');
  const second = shelf.keepResults(edited, all(2));
  await turn();
  await typed(shelf, edited, 0, '3 mm');
  while (await turn());
  await second;
  expect(await painted(leg)).toEqual({ values: [1], exact: false });
});

test('8 a notebook that is closed between two pieces is not written to any more', async () => {
  const leg = new MemoryLeg();
  const { pause, turn } = pauses();
  const { shelf, notebook } = await opened(leg, pause);
  const keeping = shelf.keepResults(notebook, all(1));
  await turn();
  await shelf.close();
  while (await turn());
  await keeping;
  expect(leg.values.has(KEY)).toBe(false);
});
