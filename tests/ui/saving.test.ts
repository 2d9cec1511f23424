/** When results are kept: in a quiet moment, for the notebook they are of, and before the notebook is let go. */

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { emptyNotebook, enter, isRefusal } from '../../src/document/index.ts';
import { NO_RESULTS } from '../../src/exchange/index.ts';
import type { World } from '../../src/ui/ports.ts';
import { Saving } from '../../src/ui/saving.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const NOTEBOOK = emptyNotebook({ id: 'n1', title: 'Trial' });

function edit() {
  const answer = enter(NOTEBOOK, { worksheet: 'w1', row: 0, column: 0, typed: '1 mm' });
  if (isRefusal(answer)) throw new Error(answer.message);
  return answer;
}

/** Notes what the shelf is told; keeping results takes until it is let go. */
function savingOn() {
  const told: string[] = [];
  let letGo: () => void = () => undefined;
  const free = new Promise<void>((resolve) => (letGo = resolve));
  const shelf: Partial<World['shelf']> = {
    append: () => Promise.resolve(void told.push('edit')),
    keepResults: () => free.then(() => void told.push('results')),
    settle: () => Promise.resolve(),
    close: () => Promise.resolve(void told.push('closed')),
  };
  const world = { shelf, clock: { now: () => 0, newId: () => 'n2' } };
  return { told, letGo: () => letGo(), saving: new Saving(world as World, () => undefined) };
}

test('8 results are kept after a quiet moment, and once', async () => {
  const { told, letGo, saving } = savingOn();
  letGo();
  saving.keepResults(NOTEBOOK, () => NO_RESULTS);
  await vi.advanceTimersByTimeAsync(1_000);
  expect(told).toEqual([]);
  await vi.advanceTimersByTimeAsync(2_000);
  expect(told).toEqual(['results']);
  saving.keepResults(NOTEBOOK, () => NO_RESULTS);
  await vi.advanceTimersByTimeAsync(3_000);
  expect(told).toEqual(['results']);
});

test('8 results that wait when an edit comes, or that are no longer those of their notebook, are not kept', async () => {
  const { told, letGo, saving } = savingOn();
  letGo();
  saving.keepResults(NOTEBOOK, () => NO_RESULTS);
  saving.keep({ ...NOTEBOOK }, edit());
  await vi.advanceTimersByTimeAsync(3_000);
  expect(told).toEqual(['edit']);
  saving.keepResults(NOTEBOOK, () => undefined);
  await vi.advanceTimersByTimeAsync(3_000);
  expect(told).toEqual(['edit']);
});

test('8 a notebook is let go when the results that are being written are kept', async () => {
  const { told, letGo, saving } = savingOn();
  saving.keepResults(NOTEBOOK, () => NO_RESULTS);
  await vi.advanceTimersByTimeAsync(3_000);
  const closing = saving.close();
  await vi.advanceTimersByTimeAsync(1_000);
  expect(told).toEqual([]);
  letGo();
  await closing;
  expect(told).toEqual(['results', 'closed']);
});
