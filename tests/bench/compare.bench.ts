/**
 * What it costs to lay two states of a full worksheet beside one another and to merge them: processor time beside writing the
 * notebook down in the same run, the best of several turns. It runs on the page's thread; nothing is asserted of time.
 */

import { expect, test } from 'vitest';
import { apply, emptyNotebook, enter, insertLines, isRefusal } from '../../src/document/index.ts';
import type { Notebook, Refusal, Transaction } from '../../src/document/index.ts';
import { compareNotebooks, laidBeside, mergeNotebooks, writeNotebook } from '../../src/exchange/index.ts';

const TURNS = 5;
const ROWS = 1900;
const COLUMNS = 20;

function cost(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const carriedOut = (notebook: Notebook, answer: Transaction | Refusal): Notebook => {
  if (isRefusal(answer)) throw new Error(answer.message);
  return apply(notebook, answer.changes);
};

/** A number, three quantities and a formula of its row, over and over. */
function full(): Notebook {
  let notebook = emptyNotebook({ id: 'full', title: 'Full', reading: 'metric' });
  const [worksheet] = notebook.worksheets;
  if (!worksheet) throw new Error('no worksheet');
  const lines = { worksheet: worksheet.id, axis: 'row', at: worksheet.rowCount } as const;
  notebook = carriedOut(notebook, insertLines(notebook, { ...lines, count: ROWS - worksheet.rowCount }));
  const typed = Array.from({ length: ROWS }, (_, row) =>
    Array.from({ length: COLUMNS }, (__, column) =>
      column % 4 === 3 ? `=A${row + 1}*${column}` : `${row * COLUMNS + column} mm`,
    ),
  );
  return carriedOut(notebook, enter(notebook, { worksheet: worksheet.id, row: 0, column: 0, typed }));
}

const base = full();
const worksheet = base.worksheets[0]?.id ?? '';

/** Every 40th row has one value changed, from this row on. */
function edited(from: number): Notebook {
  let notebook = base;
  for (let row = from; row < ROWS; row += 40)
    notebook = carriedOut(notebook, enter(notebook, { worksheet, row, column: 0, typed: [[`${row}.5 mm`]] }));
  return notebook;
}
const inserted = carriedOut(edited(7), insertLines(edited(7), { worksheet, axis: 'row', at: 3, count: 2 }));
const ours = edited(20);

const CASES: readonly (readonly [what: string, work: () => number, found: number])[] = [
  [
    'compared',
    () => {
      const { room, theirs } = laidBeside(base, inserted, base);
      return compareNotebooks(carriedOut(base, room), theirs).length;
    },
    48,
  ],
  ['merged', () => mergeNotebooks(base, ours, inserted).conflicts.length, 0],
];

test('two states of a worksheet of 1 900 rows and 20 columns', () => {
  for (const [what, work, found] of CASES) {
    const times = Array.from({ length: TURNS }, () => [cost(() => writeNotebook(base)), cost(work)] as const);
    const [writing, own] = [0, 1].map((at) => Math.min(...times.map((each) => each[at] ?? Infinity)));
    console.log(
      `${what}: ${own?.toFixed(0)} ms of processor time, ${((own ?? 0) / (writing ?? 1)).toFixed(1)} times writing the notebook down`,
    );
    expect(work()).toBe(found);
  }
});
