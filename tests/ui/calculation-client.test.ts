/** The page's watchdog: slow is said, silence ends the worker, the cell that hangs is set aside and the rest computed. */

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { FromEngine, ToEngine } from '../../src/calculation/index.ts';
import {
  apply,
  cellAt,
  emptyNotebook,
  enter,
  isRefusal,
  type Notebook,
  type Transaction,
} from '../../src/document/index.ts';
import { CalculationClient, type ResultsMessage } from '../../src/ui/calculation-client.ts';

interface FakeWorker {
  readonly got: ToEngine[];
  readonly say: (message: FromEngine) => void;
  ended: boolean;
}

let workers: FakeWorker[] = [];
let states: string[] = [];
let results: ResultsMessage[] = [];

const client = (): CalculationClient =>
  new CalculationClient(
    (receive) => {
      const worker: FakeWorker = { got: [], say: receive, ended: false };
      workers.push(worker);
      return { post: (message) => worker.got.push(message), terminate: () => (worker.ended = true) };
    },
    'build 1',
    {
      results: (message) => results.push(message),
      state: (state) => states.push(state),
    },
  );

const answer = (revision: number): FromEngine => ({
  type: 'results',
  revision,
  worksheets: ['w1'],
  numbers: { addresses: new Uint32Array(), values: new Float64Array() },
  results: [],
  complete: true,
});

function edited(
  notebook: Notebook,
  row: number,
  typed: string,
): { notebook: Notebook; transaction: Transaction } {
  const transaction = enter(notebook, { worksheet: 'w1', row, column: 0, typed });
  if (isRefusal(transaction)) throw new Error(transaction.message);
  return { transaction, notebook: apply(notebook, transaction.changes) };
}

beforeEach(() => {
  vi.useFakeTimers();
  workers = [];
  states = [];
  results = [];
});
afterEach(() => {
  vi.useRealTimers();
});

const notebook = edited(emptyNotebook({ id: 'n' }), 0, '5 mm').notebook;

test('an answer in time is quiet', () => {
  const calculation = client();
  calculation.open(notebook);
  workers[0]?.say(answer(1));
  vi.advanceTimersByTime(60_000);
  expect(states).toEqual(['busy', 'idle']);
});

test('after two seconds "still computing" is said', () => {
  client().open(notebook);
  vi.advanceTimersByTime(1_999);
  expect(states).toEqual(['busy']);
  vi.advanceTimersByTime(1);
  expect(states).toEqual(['busy', 'slow']);
});

test('a sign of life prolongs the patience', () => {
  client().open(notebook);
  vi.advanceTimersByTime(9_000);
  workers[0]?.say({ type: 'started', address: { worksheet: 'w1', row: 3, column: 0 } });
  vi.advanceTimersByTime(9_000);
  expect(workers[0]?.ended).toBe(false);
  vi.advanceTimersByTime(1_000);
  expect(workers[0]?.ended).toBe(true);
});

test('the edit after which nothing came is set aside, the rest is computed, and the cell says so', () => {
  const calculation = client();
  calculation.open(notebook);
  workers[0]?.say(answer(1));
  const bad = edited(notebook, 4, '=A1*2');
  calculation.apply(bad.notebook, bad.transaction.changes);
  vi.advanceTimersByTime(10_000);
  expect(workers).toHaveLength(2);
  const opened = workers[1]?.got[0];
  if (opened?.type !== 'open') throw new Error('the new worker was not given the notebook');
  const [sheet] = opened.notebook.worksheets;
  expect(sheet && cellAt(sheet, 0, 0)?.content).toBe('5 mm');
  expect(sheet && cellAt(sheet, 4, 0)).toBeUndefined();
  workers[1]?.say(answer(opened.revision));
  expect(results.at(-1)?.results).toMatchObject([
    { address: { row: 4 }, result: { error: { code: '#LIMIT!' } } },
  ]);
  expect(states.at(-1)).toBe('idle');
});

test('editing the cell that was set aside computes it again', () => {
  const calculation = client();
  calculation.open(notebook);
  workers[0]?.say(answer(1));
  const bad = edited(notebook, 4, '=A1*2');
  calculation.apply(bad.notebook, bad.transaction.changes);
  vi.advanceTimersByTime(10_000);
  const better = edited(bad.notebook, 4, '=A1*3');
  calculation.apply(better.notebook, better.transaction.changes);
  const last = workers[1]?.got.at(-1);
  if (last?.type !== 'open') throw new Error('the notebook was not opened again');
  const [sheet] = last.notebook.worksheets;
  expect(sheet && cellAt(sheet, 4, 0)?.content).toBe('=A1*3');
});

test('with nothing to set aside it rests until the next edit', () => {
  const calculation = client();
  calculation.open(notebook);
  vi.advanceTimersByTime(10_000);
  expect(states.at(-1)).toBe('restarted');
  expect(workers).toHaveLength(1);
  const next = edited(notebook, 1, '6 mm');
  calculation.apply(next.notebook, next.transaction.changes);
  expect(workers).toHaveLength(2);
  expect(workers[1]?.got[0]?.type).toBe('open');
});

test('a worker of the same build is heard, one of another build is ended and the words say what to do', () => {
  const calculation = client();
  calculation.open(notebook);
  workers[0]?.say({ type: 'ready', build: 'build 1' });
  workers[0]?.say(answer(1));
  expect(states.at(-1)).toBe('idle');
  expect(workers[0]?.ended).toBe(false);
  const other = client();
  other.open(notebook);
  workers[1]?.say({ type: 'ready', build: 'build 2' });
  expect(workers[1]?.ended).toBe(true);
  expect(states.at(-1)).toBe('foreign');
});
