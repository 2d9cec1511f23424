import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  apply,
  cellAt,
  deleteLines,
  emptyNotebook,
  insertLines,
  isRefusal,
  renameName,
  renameWorksheet,
  worksheetOf,
  defineName,
  addWorksheet,
  deleteWorksheet,
} from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import { compareNotebooks, laidBeside, mergeNotebooks, takeDifferences } from '../../src/exchange/index.ts';
import type { Merged } from '../../src/exchange/index.ts';
import { addTrial, recordPass } from '../../src/trial/index.ts';
import { done, typed } from '../document/sample.ts';
import { edited, edits, tagsIn } from './random-edits.ts';

const start: Notebook = typed(emptyNotebook({ id: 'n', title: 'Merge', worksheetTitle: 'Feeds' }), {
  A1: 'speed',
  B1: '150 m/min',
  A2: 'diameter',
  B2: '20 mm',
  A3: 'rate',
  B3: '=B1/B2',
  A4: 'twice',
  B4: '=B3*2',
});

function merged(base: Notebook, ours: Notebook, theirs: Notebook): Merged & { readonly notebook: Notebook } {
  const merge = mergeNotebooks(base, ours, theirs);
  return { ...merge, notebook: done(ours, merge.transaction) };
}

const column = (notebook: Notebook, at = 1): (string | undefined)[] =>
  worksheetOf(notebook, 'w1').rows.map((_, row) => cellAt(worksheetOf(notebook, 'w1'), row, at)?.content);

const lines = (notebook: Notebook, what: typeof insertLines, at: number, count = 1): Notebook =>
  done(notebook, what(notebook, { worksheet: 'w1', axis: 'row', at, count }));

test('a row inserted here and values changed there come together, formulas meaning what they meant', () => {
  const ours = typed(lines(start, insertLines, 1), { A2: 'coolant', B2: '20 l/min' });
  const theirs = typed(start, { B2: '25 mm', B4: '=B3*3' });
  const { notebook, conflicts } = merged(start, ours, theirs);
  expect(conflicts).toEqual([]);
  expect(column(notebook)).toEqual(['150 m/min', '20 l/min', '25 mm', '=B1/B3', '=B4*3']);
});

test('a row inserted there makes room here', () => {
  const theirs = typed(lines(start, insertLines, 2), { A3: 'teeth', B3: '4' });
  const ours = typed(start, { B2: '25 mm' });
  const { notebook, conflicts } = merged(start, ours, theirs);
  expect(conflicts).toEqual([]);
  expect(column(notebook)).toEqual(['150 m/min', '25 mm', '4', '=B1/B2', '=B4*2']);
});

test('a row taken away there goes here as well where it was left alone, and is listed; one that was changed is asked', () => {
  const theirs = lines(start, deleteLines, 3);
  const alone = merged(start, typed(start, { B2: '25 mm' }), theirs);
  expect(column(alone.notebook)).toEqual(['150 m/min', '25 mm', '=B1/B2']);
  expect(tagless(alone.taken)).toContain('=B3*2');
  const changed = merged(start, typed(start, { B4: '=B3*7' }), theirs);
  expect(column(changed.notebook)).toContain('=B3*7');
  expect(changed.conflicts.length).toBeGreaterThan(0);
});

const tagless = (list: readonly { readonly type: string; readonly ours?: unknown }[]): string[] =>
  list.flatMap(({ ours }) =>
    typeof ours === 'object' && ours && 'content' in ours ? [String(ours.content)] : [],
  );

test('worksheets and names that one side renamed are called so in what the other side wrote', () => {
  const named = done(
    start,
    defineName(start, { worksheet: 'w1', name: 'vc', target: { row: 0, column: 1, rows: 1, columns: 1 } }),
  );
  const two = done(named, addWorksheet(named, { title: 'Second' }));
  const renamed = done(two, renameWorksheet(two, { worksheet: 'w1', title: 'Speeds' }));
  const ours = done(renamed, renameName(renamed, { worksheet: 'w1', name: 'vc', to: 'v_c' }));
  const theirs = typed(typed(two, { A1: '=Feeds.B2*2' }, 'w2'), { B5: '=vc*2' });
  const { notebook, conflicts } = merged(two, ours, theirs);
  expect(conflicts).toEqual([]);
  expect(cellAt(worksheetOf(notebook, 'w2'), 0, 0)?.content).toBe('=Speeds.B2*2');
  expect(column(notebook)[4]).toBe('=v_c*2');
});

test('worksheets that both added under one id and title are both there', () => {
  const ours = typed(done(start, addWorksheet(start, { title: 'Trial' })), { A1: 'ours' }, 'w2');
  const theirs = typed(typed(done(start, addWorksheet(start, { title: 'Trial' })), { A1: 'theirs' }, 'w2'), {
    B5: '=Trial.A1',
  });
  const { notebook, conflicts } = merged(start, ours, theirs);
  expect(conflicts).toEqual([]);
  expect(notebook.worksheets.map(({ title }) => title)).toEqual(['Feeds', 'Trial', 'Trial 2']);
  expect(column(notebook)[4]).toBe("='Trial 2'.A1");
});

test('a worksheet that they deleted and we went on with is asked', () => {
  const two = typed(done(start, addWorksheet(start, { title: 'Second' })), { A1: 'x' }, 'w2');
  const theirs = done(two, deleteWorksheet(two, { worksheet: 'w2' }));
  const { notebook, conflicts } = merged(two, typed(two, { A1: 'y' }, 'w2'), theirs);
  expect(notebook.worksheets).toHaveLength(2);
  expect(conflicts.map(({ type }) => type)).toEqual(['worksheet']);
  const other = merged(two, theirs, typed(two, { A1: 'y' }, 'w2'));
  expect(other.conflicts.map(({ type }) => type)).toEqual(['worksheet']);
  const taken = done(other.notebook, takeDifferences(other.notebook, other.conflicts));
  expect(taken.worksheets).toHaveLength(2);
});

test('passes recorded on both sides of one trial are all kept', () => {
  const planned = done(
    start,
    addTrial(start, {
      title: 'T',
      factors: [],
      repeats: 2,
      seed: 1,
      measurands: [{ name: 'VB', unit: 'mm' }],
    }),
  );
  const pass = (notebook: Notebook, cut: string): Notebook =>
    done(
      notebook,
      recordPass(notebook, {
        trial: 't1',
        run: 'r1',
        edge: '1',
        cut,
        values: [],
        by: 'ab',
        at: '2026-03-09',
      }),
    );
  const base = pass(planned, '1');
  const { notebook, conflicts } = merged(base, pass(pass(base, '2'), '3'), pass(base, '4'));
  expect(conflicts).toEqual([]);
  expect(notebook.parts?.trials?.[0]?.passes.map(({ id, cut }) => [id, cut])).toEqual([['p1', '1 min'], ['p2', '2 min'], ['p3', '3 min'], ['p4', '4 min']]); // prettier-ignore
});

test('a notebook in which rows were inserted and deleted is laid beside ours so that only what was typed differs', () => {
  const theirs = typed(lines(lines(start, insertLines, 1), deleteLines, 3), { B2: '12 mm' });
  const beside = laidBeside(start, theirs);
  const room = done(start, beside.room);
  const places = compareNotebooks(room, beside.theirs).map((each) => (each.type === 'cell' ? [each.row, each.ours?.content, each.theirs?.content] : each.type)); // prettier-ignore
  // Row 2 was inserted with a value; rate went, and what used it says so.
  expect(places).toEqual([
    [1, undefined, '12 mm'],
    [3, 'rate', undefined],
    [3, '=B1/B3', undefined],
    [4, '=B4*2', '=#REF!*2'],
  ]);
  expect(laidBeside(start, start).room).toMatchObject({ changes: [] });
});

test('10 000 random merges: no text of either side goes without being listed', { timeout: 600_000 }, () => {
  let merges = 0;
  let refused = 0;
  fc.assert(
    fc.property(edits(6), edits(5), edits(5), (before, here, there) => {
      const base = edited(start, before, 'base');
      const ours = edited(base, here, 'our');
      const theirs = edited(base, there, 'their');
      const { transaction, conflicts, taken, kept } = mergeNotebooks(base, ours, theirs);
      merges += 1;
      // A merge past a limit is refused whole: then nothing is changed.
      if (isRefusal(transaction)) {
        refused += 1;
        return;
      }
      const after = apply(ours, transaction.changes);
      const known = tagsIn([after, conflicts, taken, kept]);
      const lost = [...tagsIn(ours), ...tagsIn(theirs)].filter((tag) => !known.has(tag));
      expect(lost).toEqual([]);
      // Texts that only we typed stay in the notebook itself, unless they stood where a conflict is listed.
      const shown = tagsIn([after, conflicts]);
      const overwritten = [...tagsIn(ours)].filter((tag) => tag.startsWith('our') && !shown.has(tag));
      expect(overwritten).toEqual([]);
    }),
    { seed: 20260309, numRuns: 10_000 },
  );
  expect(merges).toBeGreaterThanOrEqual(10_000);
  expect(refused).toBeLessThan(merges / 100);
});

test('merging with a side that did nothing gives the other side', { timeout: 120_000 }, () => {
  fc.assert(
    fc.property(edits(5), edits(6), (before, there) => {
      const base = edited(start, before, 'base');
      const theirs = edited(base, there, 'their');
      const taken = merged(base, base, theirs);
      expect(taken.conflicts).toEqual([]);
      expect(compareNotebooks(taken.notebook, theirs)).toEqual([]);
      const kept = merged(base, theirs, base);
      expect([kept.conflicts, compareNotebooks(kept.notebook, theirs)]).toEqual([[], []]);
    }),
    { seed: 20260309, numRuns: 1500 },
  );
});
