import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addWorksheet,
  apply,
  changesBetween,
  clear,
  copy,
  cut,
  defineName,
  deleteLines,
  deleteName,
  deleteWorksheet,
  duplicateWorksheet,
  emptyNotebook,
  EMPTY_HISTORY,
  enter,
  fill,
  HISTORY_LENGTH,
  insertLines,
  isRefusal,
  moveLines,
  moveWorksheet,
  paste,
  recorded,
  redo,
  renameName,
  renameWorksheet,
  setCommon,
  setLabel,
  setRole,
  setUnit,
  setWidth,
  sort,
  takeCells,
  undo,
  usersOf,
} from '../../src/document/index.ts';
import type { Notebook, Refusal, Transaction } from '../../src/document/index.ts';
import { block, contentAt, done, sample } from './sample.ts';

/** One random command: numbers choose what, where and with what. */
interface Draw {
  readonly command: number;
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
  readonly word: number;
}

const TEXTS = [
  '12.5 mm',
  '3',
  'feed',
  '=A1+B2*$C$3',
  '=SUM(A1:C4)',
  '=fz*2',
  '=Other.B2+a_e',
  "='A b'.A1",
  '',
  '2026-03-09',
  'TRUE',
  '12 mmm',
  '=A1+',
  '5 %',
];
const TITLES = ['Other', 'A b', '__proto__', 'Feeds', 'Cost'];
const NAMES = ['fz', 'a_e', 'D', 'constructor', 'kc1.1'];

const pick = <T>(list: readonly T[], index: number, otherwise: T): T =>
  list[index % list.length] ?? otherwise;

function answerOf(notebook: Notebook, draw: Draw): Transaction | Refusal {
  const { row, column, rows, columns } = draw;
  const ids = notebook.worksheets.map(({ id }) => id);
  const worksheet = pick(ids, draw.sheet, 'w1');
  const place = { row, column, rows, columns };
  const other = pick(ids, draw.word, 'w1');
  const name = pick(NAMES, draw.word, 'fz');
  const title = pick(TITLES, draw.word, 'Other');
  const typed = pick(TEXTS, draw.word, '');
  const lines = {
    worksheet,
    axis: draw.word % 2 ? ('row' as const) : ('column' as const),
    at: row,
    count: rows,
  };
  const goal = { worksheet: other, row: column, column: row };
  const commands: (() => Transaction | Refusal)[] = [
    () => enter(notebook, { worksheet, row, column, typed }),
    () =>
      enter(notebook, {
        worksheet,
        row,
        column,
        typed: [
          [typed, '1'],
          ['x', typed],
        ],
      }),
    () => clear(notebook, { worksheet, block: place, what: draw.word % 2 ? 'all' : 'content' }),
    () =>
      fill(notebook, {
        worksheet,
        block: place,
        direction: pick(['down', 'right', 'up', 'left'], draw.word, 'down'),
      }),
    () =>
      takeCells(notebook, [{ worksheet, row, column, content: typed, label: title, name }], 'take')
        .transaction,
    () => paste(notebook, { clipboard: copy(notebook, { worksheet, block: place }), ...goal }),
    () => paste(notebook, { clipboard: cut(notebook, { worksheet, block: place }), ...goal }),
    () => insertLines(notebook, lines),
    () => deleteLines(notebook, lines),
    () => moveLines(notebook, { ...lines, to: column }),
    () => sort(notebook, { worksheet, block: place, keys: [{ column }], resultOf: () => null }),
    () => addWorksheet(notebook, { title }),
    () => renameWorksheet(notebook, { worksheet, title }),
    () => moveWorksheet(notebook, { worksheet, index: 0 }),
    () => deleteWorksheet(notebook, { worksheet }),
    () => duplicateWorksheet(notebook, { worksheet }),
    () => defineName(notebook, { worksheet, name, target: place }),
    () => renameName(notebook, { worksheet, name, to: pick(NAMES, draw.word + 1, 'D') }),
    () => deleteName(notebook, { worksheet, name }),
    () => setCommon(notebook, { worksheet, common: draw.word % 2 === 0 }),
    () => setUnit(notebook, { worksheet, block: place, unit: 'mm' }),
    () => setLabel(notebook, { worksheet, block: place, label: title }),
    () => setRole(notebook, { worksheet, block: place, role: 'measured' }),
    () => setWidth(notebook, { worksheet, column, width: 100 }),
  ];
  return pick(commands, draw.command, () => ({ message: '' }))();
}

const draws = fc.array(
  fc.record({
    command: fc.nat(22),
    sheet: fc.nat(4),
    row: fc.nat(6),
    column: fc.nat(6),
    rows: fc.integer({ min: 1, max: 3 }),
    columns: fc.integer({ min: 1, max: 3 }),
    word: fc.nat(30),
  }),
  { minLength: 5, maxLength: 40 },
);

/** No holes, nothing undefined at the end of a sparse list, no empty row. */
function expectTidy(notebook: Notebook): void {
  for (const { rows, widths } of notebook.worksheets) {
    for (const list of [rows, widths, ...rows.flatMap((row) => (row ? [row] : []))]) {
      expect(Object.keys(list).length).toBe(list.length);
      if (list.length > 0) expect(list.at(-1)).toBeDefined();
    }
    for (const row of rows) if (row) expect(row.some(Boolean)).toBe(true);
  }
}

test('random commands, all undone, give the identical notebook; all done again, the identical end', () => {
  fc.assert(
    fc.property(draws, (list) => {
      const start = sample({ A1: '1 mm', B2: '=A1*2', C3: '=SUM(A1:B2)' });
      let notebook = start;
      let history = EMPTY_HISTORY;
      for (const draw of list) {
        const answer = answerOf(notebook, draw);
        if (isRefusal(answer)) continue;
        notebook = apply(notebook, answer.changes);
        history = recorded(history, answer);
        expectTidy(notebook);
      }
      const end = notebook;
      for (let step = undo(history); step; step = undo(history)) {
        notebook = apply(notebook, step.transaction.changes);
        history = step.history;
      }
      expect(notebook).toStrictEqual(start);
      expect(JSON.stringify(notebook)).toBe(JSON.stringify(start));
      for (let step = redo(history); step; step = redo(history)) {
        notebook = apply(notebook, step.transaction.changes);
        history = step.history;
      }
      expect(notebook).toStrictEqual(end);
    }),
    { seed: 20260309, numRuns: 400 },
  );
});

function run(list: readonly Draw[]): Notebook {
  let notebook: Notebook = sample({ A1: '1 mm' });
  for (const draw of list) {
    const answer = answerOf(notebook, draw);
    if (!isRefusal(answer)) notebook = apply(notebook, answer.changes);
  }
  return notebook;
}

test('the changes between two states lead from one to the other', () => {
  fc.assert(
    fc.property(draws, draws, (first, second) => {
      const [from, to] = [run(first), run(second)];
      expect(apply(from, changesBetween(from, to))).toStrictEqual(to);
    }),
    { seed: 7, numRuns: 100 },
  );
});

test('an edit shares everything that did not change', () => {
  const before = sample({ A1: '1', A2: '2' });
  const after = done(before, enter(before, { worksheet: 'w1', row: 0, column: 1, typed: '5' }));
  expect(after.worksheets[0]?.rows[1]).toBe(before.worksheets[0]?.rows[1]);
  expect(after.worksheets[0]?.names).toBe(before.worksheets[0]?.names);
  expect(Object.isFrozen(after) && Object.isFrozen(after.worksheets[0]?.rows[0])).toBe(true);
});

test('the history keeps the last 200 steps and forgets what was undone when something new is done', () => {
  let history = EMPTY_HISTORY;
  const notebook = sample();
  for (let step = 0; step < HISTORY_LENGTH + 5; step++) {
    const answer = enter(notebook, { worksheet: 'w1', row: 0, column: 0, typed: `${step}` });
    if (!isRefusal(answer)) history = recorded(history, answer);
  }
  expect(history.past).toHaveLength(HISTORY_LENGTH);
  const back = undo(history);
  expect(back?.transaction.origin).toBe('undo');
  expect(back?.history.future).toHaveLength(1);
  const answer = enter(notebook, { worksheet: 'w1', row: 5, column: 0, typed: 'new' });
  expect(back && !isRefusal(answer) && recorded(back.history, answer).future).toEqual([]);
  expect(undo(EMPTY_HISTORY)).toBeUndefined();
});

test('a deleted worksheet comes back by undo with the formulas that named it', () => {
  const start = sample({ A1: '1' });
  const two = done(start, addWorksheet(start, { title: 'Other' }));
  const linked = done(two, enter(two, { worksheet: 'w2', row: 0, column: 0, typed: '=Feeds.A1' }));
  const answer = deleteWorksheet(linked, { worksheet: 'w1' });
  const gone = done(linked, answer);
  expect(contentAt(gone, 'A1', 'w2')).toBe('=#REF!');
  const step = isRefusal(answer) ? undefined : undo(recorded(EMPTY_HISTORY, answer));
  expect(step && apply(gone, step.transaction.changes)).toStrictEqual(linked);
});

function timed(work: () => Transaction | Refusal, notebook: Notebook): Notebook {
  const from = performance.now();
  const after = done(notebook, work());
  expect(performance.now() - from).toBeLessThan(3000);
  return after;
}

test('commands on 20 000 cells stay quick (common practice, no source: under a second on a slow machine)', () => {
  const start = emptyNotebook({ id: 'n' });
  const rows = Array.from({ length: 2000 }, (_, row) => [
    ...Array.from({ length: 5 }, (_cell, column) => `${row}.${column} mm`),
    ...Array.from({ length: 5 }, () => `=A${row + 1}*$L$1`),
  ]);
  const full = timed(() => enter(start, { worksheet: 'w1', row: 0, column: 0, typed: rows }), start);
  timed(() => insertLines(full, { worksheet: 'w1', axis: 'column', at: 0, count: 1 }), full);
  timed(() => deleteLines(full, { worksheet: 'w1', axis: 'row', at: 0, count: 1 }), full);
  timed(
    () => sort(full, { worksheet: 'w1', block: block('A1:J2000'), keys: [{ column: 0, descending: true }] }),
    full,
  );
  const from = performance.now();
  for (let edit = 0; edit < 100; edit++) {
    done(full, enter(full, { worksheet: 'w1', row: edit, column: 0, typed: '7' }));
  }
  expect((performance.now() - from) / 100).toBeLessThan(10);
  expect(usersOf(full, { worksheet: 'w1', block: block('L1') })).toHaveLength(10_000);
});
