import { expect, test } from 'vitest';
import {
  addWorksheet,
  apply,
  changeSettings,
  cellAt,
  defineName,
  deleteWorksheet,
  emptyNotebook,
  enter,
  isRefusal,
  setCommon,
  worksheetOf,
} from '../../src/document/index.ts';
import type { Notebook, Refusal, Transaction } from '../../src/document/index.ts';
import {
  compareNotebooks,
  mergeNotebooks,
  readNotebook,
  takeDifferences,
  writeNotebook,
} from '../../src/exchange/index.ts';

function done(notebook: Notebook, answer: Transaction | Refusal): Notebook {
  if (isRefusal(answer)) throw new Error(answer.message);
  return apply(notebook, answer.changes);
}

const typed = (notebook: Notebook, row: number, text: string, worksheet = 'w1'): Notebook =>
  done(notebook, enter(notebook, { worksheet, row, column: 0, typed: text }));

const base = typed(typed(emptyNotebook({ id: 'n' }), 0, '1 mm'), 1, '2 mm');

const at = (notebook: Notebook, row: number): string | undefined =>
  cellAt(worksheetOf(notebook, 'w1'), row, 0)?.content;

test('a notebook that went through a file has no difference', () => {
  const read = readNotebook(writeNotebook(base));
  expect(!isRefusal(read) && compareNotebooks(base, read.notebook)).toEqual([]);
});

test('cells, names, worksheets and settings that differ are listed, and can be taken over as one step', () => {
  const changed = typed(typed(base, 1, '3 mm'), 4, 'new');
  const target = { row: 0, column: 0, rows: 1, columns: 1 };
  const named = done(changed, defineName(changed, { worksheet: 'w1', name: 'ap', target }));
  const more = done(named, addWorksheet(named, { title: 'Trial' }));
  const common = done(more, setCommon(more, { worksheet: 'w1', common: true }));
  const theirs = done(common, changeSettings(common, { title: 'Trial of Tuesday' }));
  const differences = compareNotebooks(base, theirs);
  expect(differences.map(({ type }) => type)).toEqual([
    'setting',
    'mark',
    'name',
    'cell',
    'cell',
    'worksheet',
  ]);
  const after = done(base, takeDifferences(base, differences));
  expect(compareNotebooks(after, theirs)).toEqual([]);
  expect(at(done(base, takeDifferences(base, differences.slice(3, 4))), 1)).toBe('3 mm');
});

test('what only one device changed is merged, what both changed is shown as a conflict and ours stays', () => {
  const ours = typed(typed(base, 0, '1.5 mm'), 5, 'ours');
  const theirs = typed(typed(typed(base, 0, '1.7 mm'), 1, '2.5 mm'), 6, 'theirs');
  const { transaction, conflicts } = mergeNotebooks(base, ours, theirs);
  const merged = done(ours, transaction);
  expect([0, 1, 5, 6].map((row) => at(merged, row))).toEqual(['1.5 mm', '2.5 mm', 'ours', 'theirs']);
  expect(conflicts).toEqual([
    {
      type: 'cell',
      worksheet: 'w1',
      row: 0,
      column: 0,
      ours: { content: '1.5 mm' },
      theirs: { content: '1.7 mm' },
    },
  ]);
  expect(at(done(merged, takeDifferences(merged, conflicts)), 0)).toBe('1.7 mm');
});

test('a worksheet that we added stays in a merge, one that they deleted goes', () => {
  const two = done(base, addWorksheet(base, { title: 'Old' }));
  const ours = done(two, addWorksheet(two, { title: 'Ours' }));
  const theirs = done(two, deleteWorksheet(two, { worksheet: 'w2' }));
  const { transaction, conflicts } = mergeNotebooks(two, ours, theirs);
  expect(conflicts).toEqual([]);
  expect(done(ours, transaction).worksheets.map(({ title }) => title)).toEqual(['Worksheet 1', 'Ours']);
});
