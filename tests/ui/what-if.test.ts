/** What-if on the page's side: the line to the worker, the best of a row, a sweep as a worksheet. */

import { expect, test } from 'vitest';
import type { FromStudy, StudyAnswer, ToStudy } from '../../src/calculation/index.ts';
import { apply, cellAt, emptyNotebook, isRefusal, partsOf } from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import { bestOf } from '../../src/ui/what-if/best-of.ts';
import { StudyClient } from '../../src/ui/what-if/study-client.ts';
import { sweepWorksheet } from '../../src/ui/what-if/sweep-worksheet.ts';

const notebook = emptyNotebook({ id: 'n1', title: 'Invented', worksheetTitle: 'Feeds' });

/** A worker that keeps what it hears; the test answers for it. */
function line(): {
  readonly client: StudyClient;
  readonly heard: ToStudy[];
  answer(message: FromStudy): void;
  fail(words: string): void;
  started(): number;
} {
  const heard: ToStudy[] = [];
  let starts = 0;
  let receive: (message: FromStudy) => void = () => {};
  let failed: (words: string) => void = () => {};
  const client = new StudyClient((hear, stop) => {
    starts += 1;
    [receive, failed] = [hear, stop];
    return { post: (message) => heard.push(message), terminate: () => {} };
  }, 'build 1');
  return {
    client,
    heard,
    answer: (message) => receive(message),
    fail: (words) => failed(words),
    started: () => starts,
  };
}

const question = { type: 'influences', results: [] } as const;
const answer: StudyAnswer = { type: 'influences', givens: [] };

test('the worker is started with the first question only, and each answer finds its question', async () => {
  const { client, answer: tell, heard, started } = line();
  expect(started()).toBe(0);
  const progress: number[] = [];
  const first = client.ask(notebook, question, (done) => progress.push(done));
  const second = client.ask(notebook, question);
  expect(started()).toBe(1);
  tell({ type: 'progress', request: 1, done: 0.5 });
  tell({ type: 'refused', request: 2, message: 'no result is asked for' });
  tell({ type: 'answered', request: 1, answer });
  expect(await first.outcome).toEqual({ type: 'answered', answer });
  expect(await second.outcome).toEqual({ type: 'refused', message: 'no result is asked for' });
  expect(progress).toEqual([0.5]);
  first.cancel();
  expect(heard.at(-1)).toEqual({ type: 'cancel', request: 1 });
});

test('a worker that stops answers every open question with words, and the next question starts another', async () => {
  const { client, fail, answer: tell, started } = line();
  const open = client.ask(notebook, question);
  fail('out of memory');
  expect(await open.outcome).toEqual({
    type: 'refused',
    message: 'the what-if computation stopped: out of memory',
  });
  const next = client.ask(notebook, question);
  expect(started()).toBe(2);
  tell({ type: 'answered', request: 2, answer });
  expect((await next.outcome).type).toBe('answered');
});

test('the best of a row keeps its limits; where all are equal none is the best', () => {
  const values = [5, 9, 7, null, 9].map((value, at) => ({
    value,
    breaches: at === 1 ? ['above 8 kW'] : [],
  }));
  expect([...bestOf(values, 'largest')]).toEqual([4]);
  expect([...bestOf(values, 'smallest')]).toEqual([0]);
  expect([...bestOf(values, undefined)]).toEqual([]);
  expect([
    ...bestOf(
      [
        { value: 2, breaches: [] },
        { value: 2, breaches: [] },
      ],
      'largest',
    ),
  ]).toEqual([]);
});

const at = { worksheet: 'w1', row: 0, column: 0 };
const columnOf = (
  role: 'given' | 'result',
  unit: string,
  values: readonly (number | null)[],
): Extract<StudyAnswer, { readonly type: 'sweep' }>['columns'][number] => ({
  cell: at,
  kind: 'length',
  unit,
  role,
  values,
  errors: [],
});

const contents = (made: Notebook): readonly (readonly string[])[] => {
  const sheet = made.worksheets.at(-1);
  if (!sheet) throw new Error('no worksheet');
  return Array.from({ length: sheet.rows.length }, (_, row) =>
    Array.from({ length: 3 }, (__, column) => cellAt(sheet, row, column)?.content ?? ''),
  );
};

test('a sweep becomes a worksheet with units, blanks where there is no number, and a plot of it, in one step', () => {
  const swept = sweepWorksheet(
    notebook,
    {
      type: 'sweep',
      rows: 2,
      columns: [columnOf('given', 'mm', [0.001, 0.002]), columnOf('result', 'kW', [1500, null])],
    },
    ['a_p', 'P'],
    'Depth',
  );
  if (isRefusal(swept)) throw new Error(swept.message);
  const made = apply(notebook, swept.changes);
  expect(contents(made)).toEqual([
    ["'a_p", "'P", ''],
    ['1 mm', '1.5 kW', ''],
    ['2 mm', '', ''],
  ]);
  const [figure] = partsOf(made, 'figures');
  expect(figure?.content).toEqual({
    type: 'plot',
    x: { worksheet: 'w2', block: { row: 1, column: 0, rows: 2, columns: 1 } },
    series: [
      { mark: 'line', y: { worksheet: 'w2', block: { row: 1, column: 1, rows: 2, columns: 1 } }, label: 'P' },
    ],
  });
});

test('of two givens the slower one parts the plot into a line for each of its values', () => {
  const slow = [1, 1, 2, 2].map((each) => each / 1000);
  const swept = sweepWorksheet(
    notebook,
    {
      type: 'sweep',
      rows: 4,
      columns: [
        columnOf('given', 'mm', slow),
        columnOf('given', 'mm', [0.01, 0.02, 0.01, 0.02]),
        columnOf('result', 'mm', [0.1, 0.2, 0.3, 0.4]),
      ],
    },
    ['a_p', 'a_e', 'Q'],
    'Both',
  );
  if (isRefusal(swept)) throw new Error(swept.message);
  const [figure] = partsOf(apply(notebook, swept.changes), 'figures');
  const rows = figure?.content.type === 'plot' ? figure.content.series.map(({ y }) => y.block.row) : [];
  expect(rows).toEqual([1, 3]);
});

test('a what-if worker of another build is refused with what to do about it', async () => {
  const bench = line();
  const { outcome } = bench.client.ask(notebook, question);
  bench.answer({ type: 'ready', build: 'build 2' });
  const refused = await outcome;
  expect(refused.type === 'refused' && refused.message).toContain('load the page again');
  const next = bench.client.ask(notebook, question);
  bench.answer({ type: 'ready', build: 'build 1' });
  bench.answer({ type: 'answered', request: 2, answer });
  expect(await next.outcome).toMatchObject({ type: 'answered' });
});
