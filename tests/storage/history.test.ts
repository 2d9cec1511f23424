/** Steps that can be taken back come from the journal: after a reload, beside a lost leg, and never at the price of opening. */

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  EMPTY_HISTORY,
  HISTORY_LENGTH,
  apply,
  emptyNotebook,
  enter,
  insertLines,
  isRefusal,
  recorded,
  redo,
  undo,
  type History,
  type Notebook,
  type Refusal,
  type Transaction,
} from '../../src/document/index.ts';
import { entryBody, historyAfter, readBody } from '../../src/storage/index.ts';
import { MemoryLeg, shelfOn } from './memory-leg.ts';

const sure = (answer: Transaction | Refusal): Transaction => {
  if (isRefusal(answer)) throw new Error(answer.message);
  return answer;
};

/** A user at work: the notebook, what can be taken back, and the journal. */
class Desk {
  history: History = EMPTY_HISTORY;
  constructor(
    public notebook: Notebook,
    readonly keep: (notebook: Notebook, transaction: Transaction) => Promise<void>,
  ) {}

  async do(transaction: Transaction): Promise<void> {
    this.history = recorded(this.history, transaction);
    await this.#carryOut(transaction);
  }

  async back(): Promise<void> {
    const step = undo(this.history);
    if (!step) return;
    this.history = step.history;
    await this.#carryOut(step.transaction);
  }

  async again(): Promise<void> {
    const step = redo(this.history);
    if (!step) return;
    this.history = step.history;
    await this.#carryOut(step.transaction);
  }

  async #carryOut(transaction: Transaction): Promise<void> {
    this.notebook = apply(this.notebook, transaction.changes);
    await this.keep(this.notebook, transaction);
  }

  type(row: number, typed: string): Promise<void> {
    return this.do(sure(enter(this.notebook, { worksheet: 'w1', row, column: 0, typed })));
  }
}

async function deskOn(...legs: MemoryLeg[]): Promise<Desk> {
  const start = emptyNotebook({ id: 'n1', title: 'Trial' });
  const shelf = shelfOn(...legs);
  await shelf.add(start);
  await shelf.open('n1');
  return new Desk(start, (notebook, transaction) => shelf.append(notebook, transaction));
}

/** Takes everything back that can be taken back. */
function toTheBeginning(notebook: Notebook, history: History): { notebook: Notebook; steps: number } {
  let steps = 0;
  for (let step = undo(history); step; step = undo(step.history)) {
    notebook = apply(notebook, step.transaction.changes);
    steps += 1;
  }
  return { notebook, steps };
}

test('7 after a reload every step can be taken back, to the beginning', async () => {
  const leg = new MemoryLeg();
  const desk = await deskOn(leg);
  for (let row = 0; row < 30; row += 1) await desk.type(row % 7, `${row + 1} mm`);
  const opened = await shelfOn(leg).open('n1');
  if (!opened) throw new Error('not there');
  expect(opened.history.past.map((step) => step.description)).toEqual(
    desk.history.past.map((step) => step.description),
  );
  const { notebook, steps } = toTheBeginning(opened.notebook, opened.history);
  expect(steps).toBe(30);
  expect(notebook).toEqual(emptyNotebook({ id: 'n1', title: 'Trial' }));
});

test('7 the last 200 steps stay, also where snapshots have made their entries needless', async () => {
  const leg = new MemoryLeg();
  const desk = await deskOn(leg);
  for (let k = 0; k < 730; k += 1) await desk.type(k % 11, `${k + 1} mm`);
  const opened = await shelfOn(leg).open('n1');
  if (!opened) throw new Error('not there');
  expect(opened.history.past).toHaveLength(HISTORY_LENGTH);
  const here = toTheBeginning(desk.notebook, desk.history);
  const there = toTheBeginning(opened.notebook, opened.history);
  expect(there).toEqual(here);
});

test('7 whatever was done, taken back and done again, a reload changes nothing of what can be taken back or done again', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 6 })), { maxLength: 60 }),
      async (acts) => {
        const leg = new MemoryLeg();
        const desk = await deskOn(leg);
        for (const [act, row] of acts)
          if (act < 4) await desk.type(row, `${act + row} mm`);
          else if (act === 4)
            await desk.do(
              sure(insertLines(desk.notebook, { worksheet: 'w1', axis: 'row', at: row, count: 1 })),
            );
          else if (act < 8) await desk.back();
          else await desk.again();
        const opened = await shelfOn(leg).open('n1');
        expect(opened?.notebook).toEqual(desk.notebook);
        const { past, future } = opened?.history ?? EMPTY_HISTORY;
        expect(past.map((step) => step.changes)).toEqual(desk.history.past.map((step) => step.changes));
        expect(future.map((step) => step.changes)).toEqual(desk.history.future.map((step) => step.changes));
      },
    ),
    { seed: 20_261_125, numRuns: 60 },
  );
});

test('7 a step in the middle of a cut-off journal is taken back and done again by itself', () => {
  const start = emptyNotebook({ id: 'n1', title: 'Trial' });
  const step = sure(enter(start, { worksheet: 'w1', row: 0, column: 0, typed: '5 mm' }));
  const back = undo(recorded(EMPTY_HISTORY, step))?.transaction;
  const history = historyAfter(EMPTY_HISTORY, back);
  expect(history.future.map((each) => each.changes)).toEqual([step.changes]);
  expect(redo(history)?.history.past).toHaveLength(1);
  expect(historyAfter(EMPTY_HISTORY, { ...step, origin: 'redo' }).past).toHaveLength(1);
});

test('7 beside a lost first leg the steps come from the second', async () => {
  const [a, b] = [new MemoryLeg(), new MemoryLeg()];
  const desk = await deskOn(a, b);
  for (let k = 0; k < 250; k += 1) await desk.type(k % 5, `${k + 1} mm`);
  a.values.clear();
  expect((await shelfOn(a, b).open('n1'))?.history.past).toHaveLength(HISTORY_LENGTH);
  b.values.clear();
  expect((await shelfOn(a, b).open('n1'))?.history.past).toHaveLength(HISTORY_LENGTH);
});

test('7 damaged or foreign steps cost the steps before them and nothing else', async () => {
  const foreign: unknown[] = [
    null,
    7,
    {},
    { seq: 9, body: '{' },
    { seq: '9', before: 1, hash: [], body: { changes: [] } },
  ];
  for (const record of foreign) {
    const leg = new MemoryLeg();
    const desk = await deskOn(leg);
    for (let k = 0; k < 230; k += 1) await desk.type(k % 5, `${k + 1} mm`);
    const key = 'doc/n1/j/000000100';
    expect(leg.values.has(key)).toBe(true);
    leg.values.set(key, record);
    const opened = await shelfOn(leg).open('n1');
    expect(opened?.notebook).toEqual(desk.notebook);
    expect(opened?.history.past).toHaveLength(131);
    expect(opened?.notices.filter((words) => words.includes('restored to the last edit'))).toEqual([]);
  }
});

test('7 no text whatever makes reading a step throw, and what is read has the shape of a transaction', () => {
  const start = emptyNotebook({ id: 'n1', title: 'Trial' });
  const step = sure(insertLines(start, { worksheet: 'w1', axis: 'row', at: 2, count: 1 }));
  const body = entryBody(step, 5);
  expect(readBody(body)?.changes).toEqual(step.changes);
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: body.length - 1 }),
      fc.integer({ min: 0, max: 12 }),
      fc.oneof(fc.string({ maxLength: 8 }), fc.constantFrom('null', '-1', '[]', '{}', '1e99', '"', '\\')),
      (at, cut, put) => {
        const read = readBody(body.slice(0, at) + put + body.slice(at + cut));
        if (read) for (const { type } of read.changes) expect(typeof type).toBe('string');
      },
    ),
    { seed: 20_261_125, numRuns: 3000 },
  );
  fc.assert(
    fc.property(fc.json({ maxDepth: 5 }), (text) => {
      readBody(text);
    }),
    { seed: 20_261_125, numRuns: 2000 },
  );
});

test('7 readings that are missing in a recording stay null in the journal', () => {
  const recording = {
    id: 'r1',
    title: 'Spindle',
    columns: [{ name: 'power', unit: 'kW', values: [1, null, 3] }],
  };
  const step: Transaction = {
    changes: [{ type: 'part', part: 'recordings', index: 0, to: recording }],
    description: 'a recording',
    origin: 'user',
  };
  expect(readBody(entryBody(step, 5))?.changes).toEqual(step.changes);
});
