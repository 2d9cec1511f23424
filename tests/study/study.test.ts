/** Variants, sweeps, influences, plans with lists and look-ups, and the desk with its progress and cancelling. */

import { expect, test } from 'vitest';
import { functionTable } from '../../src/catalogue.ts';
import type { FromStudy, StudyQuestion, SweepAxis } from '../../src/calculation/index.ts';
import { createEngine } from '../../src/engine/index.ts';
import { Plan, StudyBook, StudyDesk } from '../../src/study/index.ts';
import { at, notebookOf, typed } from '../engine/notebook.ts';
import type { Cells } from '../engine/notebook.ts';
import { answerTo, finished } from './asking.ts';

const functions = functionTable();
const sheet = (cells: Cells) => notebookOf([{ title: 'Sheet', cells }]);

const CUT: Cells = {
  A1: '120 m/min',
  A2: '4',
  A3: '0.1 mm',
  A4: '20 mm',
  B1: '=CUT.SPINDLE_SPEED(A4;A1)',
  B2: {
    content: '=CUT.FEED_RATE(A2;A3;B1)',
    unit: 'mm/min',
    limits: { high: '900 mm/min', highText: 'drive' },
  },
};

test('variants stand side by side with differences, shares and limits passed', () => {
  // By hand: n = 120/(pi 0.02) = 1909.859 1/min, vf = 763.944 mm/min; 5 teeth give a quarter more, 954.930.
  const { rows } = answerTo(sheet(CUT), {
    type: 'variants',
    variants: [
      { name: 'five teeth', contents: [{ cell: at('A2'), content: '5' }] },
      { name: 'wrong', contents: [{ cell: at('A4'), content: '0 mm' }] },
    ],
    watched: [at('A2'), at('B2')],
  });
  const [teeth, feed] = rows;
  expect(teeth?.values.map(({ value }) => value)).toEqual([4, 5, 4]);
  const [base, five, wrong] = feed?.values ?? [];
  expect((base?.value as number) * 60_000).toBeCloseTo(763.9437268, 6);
  expect(base).toMatchObject({ kind: 'feed rate', unit: 'mm/min', breaches: [] });
  expect((five?.difference ?? NaN) * 60_000).toBeCloseTo(190.9859317, 6);
  expect(five?.relative).toBeCloseTo(0.25, 12);
  expect(five?.breaches).toEqual(['above 900 mm/min (drive)']);
  expect(wrong?.value).toBeNull();
  expect(wrong?.error?.root).toEqual(at('B1'));
  expect(wrong?.difference).toBeUndefined();
});

test('a variant can not make a formula of a given, nor a given of a formula', () => {
  const ask = (address: string, content: string) => () =>
    answerTo(sheet(CUT), {
      type: 'variants',
      variants: [{ name: 'v', contents: [{ cell: at(address), content }] }],
      watched: [at('B2')],
    });
  expect(ask('A2', '=A3')).toThrow(/can not become a formula/);
  expect(ask('B1', '1000 1/min')).toThrow(/computed/);
});

test('a variant that fills a blank cell or changes a text leaves no trace in the next', () => {
  const { rows } = answerTo(sheet({ A1: 'down', B1: '=IF(A1="down";1;2)', B2: '=A9+1' }), {
    type: 'variants',
    variants: [
      {
        name: 'up',
        contents: [
          { cell: at('A1'), content: 'up' },
          { cell: at('A9'), content: '4' },
        ],
      },
      { name: 'same', contents: [] },
    ],
    watched: [at('B1'), at('B2')],
  });
  expect(rows.map(({ values }) => values.map(({ value }) => value))).toEqual([
    [1, 2, 1],
    [1, 5, 1],
  ]);
});

test('the givens that decide a result are told, teeth as whole numbers', () => {
  const { givens } = answerTo(sheet({ ...CUT, A9: '7' }), {
    type: 'influences',
    results: [at('B1'), at('B2')],
  });
  const told = givens.map(({ cell, whole, reaches }) => [cell.row, whole, reaches]).toSorted();
  expect(told).toEqual([
    [0, false, [0, 1]],
    [1, true, [1]],
    [2, false, [1]],
    [3, false, [0, 1]],
  ]);
});

test('a sweep over two givens gives a row for each pair, as typed', () => {
  const { rows, columns } = answerTo(sheet(CUT), {
    type: 'sweep',
    axes: [
      { cell: at('A2'), spacing: 'list', values: ['2', '3'] },
      { cell: at('A3'), spacing: 'linear', from: '0.1', to: '0.3 mm', points: 3 },
    ],
    results: [at('B2')],
  });
  expect(rows).toBe(6);
  expect(columns.map(({ role, unit }) => [role, unit])).toEqual([
    ['given', ''],
    ['given', 'mm'],
    ['result', 'mm/min'],
  ]);
  expect(columns[0]?.values).toEqual([2, 2, 2, 3, 3, 3]);
  expect(columns[1]?.values).toEqual([0.0001, 0.0002, 0.0003, 0.0001, 0.0002, 0.0003]);
  // By hand: z fz n with n = 31.83099 1/s.
  const n = 2 / (Math.PI * 0.02);
  columns[2]?.values.forEach((value, row) => {
    const [z, fz] = [columns[0]?.values[row] as number, columns[1]?.values[row] as number];
    expect(value).toBeCloseTo(z * fz * n, 12);
  });
});

test('a logarithmic sweep has equal ratios, and errors keep their words', () => {
  const { columns } = answerTo(sheet({ A1: '1', B1: '=SQRT(A1-2)' }), {
    type: 'sweep',
    axes: [{ cell: at('A1'), spacing: 'logarithmic', from: '1', to: '1000', points: 4 }],
    results: [at('B1')],
  });
  expect(columns[0]?.values).toEqual([1, 10, 100, 1000]);
  expect(columns[1]?.values[0]).toBeNull();
  expect(columns[1]?.errors).toEqual([{ row: 0, message: expect.stringMatching(/./) as string }]);
});

test('a sweep refuses what it can not run through', () => {
  const cell = at('A1');
  const ask = (axis: SweepAxis) => () =>
    answerTo(sheet(CUT), { type: 'sweep', axes: [axis], results: [at('B2')] });
  expect(ask({ cell, spacing: 'list', values: [] })).toThrow(/no value/);
  expect(ask({ cell, spacing: 'linear', from: '1', to: '2', points: 1 })).toThrow(/2 to/);
  expect(ask({ cell, spacing: 'logarithmic', from: '0', to: '2', points: 5 })).toThrow(/logarithmic/);
  expect(ask({ cell, spacing: 'linear', from: '1 mm', to: '2', points: 5 })).toThrow(/first value/);
});

/** Engine and plan on the same samples of one given. */
function bothWays(cells: Cells, given: string, contents: readonly string[], results: readonly string[]) {
  const notebook = sheet(cells);
  const engine = createEngine({ functions });
  engine.open(notebook);
  const numbers: number[] = [];
  const expected = contents.map((content) => {
    engine.apply([typed(given, content)]);
    numbers.push(engine.result(at(given)).value as number);
    return results.map((address) => {
      const { value, error } = engine.result(at(address));
      return error ? error.code : value;
    });
  });
  const book = new StudyBook(notebook, functions);
  const plan = new Plan(
    book,
    [book.state(at(given))],
    results.map((address) => book.state(at(address))),
  );
  const found = finished(plan.values([Float64Array.from(numbers)], numbers.length));
  const own = numbers.map((_, sample) =>
    found.map((column) => {
      const value = column[sample] ?? null;
      return typeof value === 'object' && value !== null ? value.failure : value;
    }),
  );
  return { own, expected, plan, book };
}

test.each<{ what: string; cells: Cells; results: string[]; contents?: string[] }>([
  {
    what: 'ranges',
    cells: {
      A1: '1',
      A2: '2',
      A3: 'note',
      B1: '=SUM(A1:A3)',
      B2: '=MAX(A1:A2)',
      B3: '=AVERAGE(A1:A3)+COUNT(A1:A4)',
    },
    results: ['B1', 'B2', 'B3'],
  },
  {
    what: 'texts',
    cells: { A1: '1', B1: '=IF(A1>2;"long";"short")', B2: '=B1&" life"', B3: '=LEN(B2)+A1' },
    results: ['B1', 'B2', 'B3'],
  },
  {
    what: 'look-ups',
    cells: {
      A1: '1',
      C1: '1',
      C2: '2',
      C3: '3',
      D1: '10',
      D2: '20',
      D3: '30',
      B1: '=VLOOKUP(A1;C1:D3;2)',
      B2: '=INDEX(D1:D3;A1)',
      B3: '=MATCH(A1;C1:C3;1)',
    },
    results: ['B1', 'B2', 'B3'],
  },
  {
    what: 'errors caught',
    cells: {
      A1: '1',
      B1: '=IFERROR(1/(A1-2);-1)',
      B2: '=IFNA(VLOOKUP(A1;C1:D1;2;FALSE());7)',
      C1: '1',
      D1: '4',
      B3: '=ISERROR(B2/(A1-3))',
    },
    results: ['B1', 'B2', 'B3'],
  },
  {
    what: 'errors',
    cells: { A1: '1', B1: '=1/(A1-2)', B2: '=B1+1', B3: '=SQRT(2-A1)' },
    results: ['B1', 'B2', 'B3'],
  },
  {
    what: 'logicals',
    cells: { A1: '1', B1: '=AND(A1>1;A1<3)', B2: '=IF(B1;A1;-A1)', B3: '=NOT(B1)' },
    results: ['B1', 'B2', 'B3'],
  },
  {
    what: 'blanks',
    cells: { A1: '1', B1: '=A1+C9', B2: '=IF(A1>1;C9;2)', B3: '=C9' },
    results: ['B1', 'B2', 'B3'],
  },
  {
    what: 'several values',
    cells: {
      A1: '1',
      C1: '=TRANSPOSE(D1:F1)',
      D1: '=A1*2',
      E1: '5',
      F1: '=A1+1',
      B1: '=SUM(C1:C3)',
      B2: '=C3*2',
    },
    results: ['C1', 'C2', 'C3', 'B1', 'B2'],
  },
  {
    what: 'values that fill more and fewer cells',
    cells: { A1: '2', C1: '=MUNIT(A1)', B1: '=SUM(C1:F4)' },
    results: ['C1', 'B1'],
    contents: ['2', '3', '1'],
  },
  {
    what: 'an exponent that moves',
    cells: { A1: '2', A2: '3 mm', B1: '=A2^A1', B2: '=B1/(1 mm2)' },
    results: ['B1', 'B2'],
  },
])('plan and engine agree on $what', ({ cells, results, contents = ['1', '2', '3', '2.5'] }) => {
  const { own, expected, plan, book } = bothWays(cells, 'A1', contents, results);
  expect(own).toEqual(expected);
  // Nothing of the samples stays behind.
  expect(finished(plan.values([Float64Array.of(2)], 1))).toHaveLength(results.length);
  const before = new StudyBook(sheet(cells), functions);
  for (const address of results)
    expect(book.state(at(address)).value).toEqual(before.state(at(address)).value);
});

test('columns of a recording stand still while a given moves', () => {
  const recording = { id: 'r1', title: 'Log', columns: [{ name: 'force', unit: 'N', values: [10, 20, 60] }] };
  const cells: Cells = { A1: '2', B1: '=A1*MAX(Log.force)', B2: '=SUM(Log.force*A1)' };
  const { rows, columns } = answerTo(
    notebookOf([{ title: 'Sheet', cells }], { parts: { recordings: [recording] } }),
    {
      type: 'sweep',
      axes: [{ cell: at('A1'), spacing: 'list', values: ['1', '3'] }],
      results: [at('B1'), at('B2')],
    },
  );
  expect(rows).toBe(2);
  expect(columns.slice(1).map(({ values }) => values)).toEqual([
    [60, 180],
    [90, 270],
  ]);
});

const ASKED: StudyQuestion = {
  type: 'spread',
  givens: [{ cell: at('A1'), distribution: { shape: 'uniform', half: '10 m/min' } }],
  results: [at('B2')],
  samples: 20_000,
};

function desk(onPost: (message: FromStudy, desk: StudyDesk) => void): { desk: StudyDesk; told: FromStudy[] } {
  const told: FromStudy[] = [];
  const made: StudyDesk = new StudyDesk({
    functions,
    post: (message) => {
      told.push(message);
      onPost(message, made);
    },
    rest: () => Promise.resolve(),
  });
  return { desk: made, told };
}

const settled = async (told: readonly FromStudy[], count: number): Promise<void> => {
  for (let i = 0; i < 100_000 && told.filter(({ type }) => type !== 'progress').length < count; i++)
    await Promise.resolve();
};

test('progress rises to the answer', async () => {
  const { desk: atDesk, told } = desk(() => undefined);
  atDesk.take({ type: 'ask', request: 3, notebook: sheet(CUT), question: ASKED });
  await settled(told, 1);
  expect(told.at(-1)).toMatchObject({
    type: 'answered',
    request: 3,
    answer: { type: 'spread', samples: 20_000 },
  });
  const shares = told.flatMap((message) => (message.type === 'progress' ? [message.done] : []));
  expect(shares.length).toBeGreaterThan(10);
  expect(shares).toEqual(shares.toSorted((a, b) => a - b));
});

test('a cancelled question stops between two pieces, and the next is answered', async () => {
  const { desk: atDesk, told } = desk((message, own) => {
    if (message.type === 'progress' && message.request === 1 && message.done > 0.2)
      own.take({ type: 'cancel', request: 1 });
  });
  atDesk.take({ type: 'ask', request: 1, notebook: sheet(CUT), question: ASKED });
  atDesk.take({
    type: 'ask',
    request: 2,
    notebook: sheet(CUT),
    question: { type: 'influences', results: [at('B2')] },
  });
  await settled(told, 2);
  const ends = told.filter(({ type }) => type !== 'progress');
  expect(ends).toMatchObject([
    { type: 'cancelled', request: 1 },
    { type: 'answered', request: 2 },
  ]);
});

test('one question leaves nothing behind for the next on the same notebook, a changed notebook is read anew', async () => {
  const { desk: atDesk, told } = desk(() => undefined);
  const variants: StudyQuestion = {
    type: 'variants',
    variants: [{ name: 'five teeth', contents: [{ cell: at('A2'), content: '5' }] }],
    watched: [at('B2')],
  };
  const solve: StudyQuestion = {
    type: 'solve',
    result: at('B2'),
    wanted: '800 mm/min',
    given: { cell: at('A1'), low: '50', high: '300' },
  };
  const questions = [variants, solve, variants, ASKED, variants];
  questions.forEach((question, request) =>
    atDesk.take({ type: 'ask', request, notebook: sheet(CUT), question }),
  );
  atDesk.take({ type: 'ask', request: 9, notebook: sheet({ ...CUT, A2: '8' }), question: variants });
  await settled(told, 6);
  const answers = told.flatMap((message) => (message.type === 'answered' ? [message.answer] : []));
  expect(answers[2]).toEqual(answers[0]);
  expect(answers[4]).toEqual(answers[0]);
  const values = answers[5]?.type === 'variants' ? answers[5].rows[0]?.values : [];
  // 8 teeth against 5: 1527.887 and 954.930 mm/min, by hand.
  expect(values?.map(({ value }) => Number(value) * 60_000)).toEqual([
    expect.closeTo(1527.8874537, 5),
    expect.closeTo(954.9296586, 5),
  ]);
});

test('a question that can not be worked on is refused with its cell', async () => {
  const { desk: atDesk, told } = desk(() => undefined);
  atDesk.take({
    type: 'ask',
    request: 9,
    notebook: sheet(CUT),
    question: {
      type: 'solve',
      result: at('B2'),
      wanted: '1',
      given: { cell: at('B1'), low: '1', high: '2' },
    },
  });
  await settled(told, 1);
  expect(told.at(-1)).toEqual({
    type: 'refused',
    request: 9,
    message: expect.stringContaining('computed') as string,
    cell: at('B1'),
  });
});
