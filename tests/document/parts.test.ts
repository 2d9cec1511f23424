import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addWorksheet,
  apply,
  changesBetween,
  cut,
  deleteLines,
  deleteWorksheet,
  inverse,
  insertLines,
  isSame,
  moveLines,
  partsOf,
  paste,
  PART_LIMITS,
  PART_NAMES,
  putPart,
  removeParts,
  renameWorksheet,
  transactionTo,
  checkColumns,
  addRecording,
  changeRecordingColumn,
} from '../../src/document/index.ts';
import type { Notebook, PartName, Parts, Transaction, Variant } from '../../src/document/index.ts';
import { done, refusalOf, typed } from './sample.ts';
import { ALL_PARTS, withAllParts } from './sample-parts.ts';

const lines = { worksheet: 'w1', axis: 'row' as const };

/** Every place that a list names, in order. */
function rowsIn(notebook: Notebook, part: PartName): number[] {
  const rows: number[] = [];
  const walk = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    if ('row' in value && typeof value.row === 'number') rows.push(value.row);
    for (const each of Object.values(value)) walk(each);
  };
  walk(notebook.parts?.[part]);
  return rows;
}

test('every list goes along when rows are inserted, and comes back with undo', () => {
  const before = withAllParts();
  const inserted = insertLines(before, { ...lines, at: 1, count: 2 }) as Transaction;
  const after = apply(before, inserted.changes);
  expect(rowsIn(after, 'variants')).toEqual([3, 4, 3]);
  expect(rowsIn(after, 'watched')).toEqual([5]);
  expect(rowsIn(after, 'figures')).toEqual([0, 3, 6]);
  expect(partsOf(after, 'spreads')[1]?.distribution).toMatchObject({ from: { block: { row: 0, rows: 5 } } });
  expect(after.parts?.trials?.[0]).toBe(before.parts?.trials?.[0]);
  expect(apply(after, inverse(inserted).changes)).toEqual(before);
});

test('a tick and the formulas of a variant follow what they refer to, so that neither falls nor comes to mean another cell', () => {
  const before = withAllParts();
  const after = done(before, insertLines(before, { ...lines, at: 0, count: 1 }));
  expect(partsOf(after, 'reviews')[0]).toMatchObject({ content: '=B2*B3', place: { row: 4 } });
  expect(partsOf(after, 'variants')[0]?.values[1]).toEqual({
    place: { worksheet: 'w1', row: 3, column: 1 },
    content: '=B2*2',
  });
  const changed = typed(after, { B5: '=B2*B3*2' });
  expect(partsOf(changed, 'reviews')[0]?.content).toBe('=B2*B3');
  const other = done(before, addWorksheet(before, { title: 'Second' }));
  const away = typed(other, { A1: '=Feeds.B1' }, 'w2');
  const ticked = done(
    away,
    putPart(away, {
      part: 'reviews',
      record: {
        id: 'r2',
        place: { worksheet: 'w2', row: 0, column: 0 },
        content: '=Feeds.B1',
        unit: 'mm',
        initials: 'cd',
        at: '',
      },
      description: 'tick',
    }),
  );
  const renamed = done(ticked, renameWorksheet(ticked, { worksheet: 'w1', title: 'Speeds' }));
  expect(partsOf(renamed, 'reviews')[1]?.content).toBe('=Speeds.B1');
});

test('what named a deleted row goes with it: an entry of a list alone, a record where it can not do without', () => {
  const before = withAllParts();
  const after = done(before, deleteLines(before, { ...lines, at: 1, count: 1 }));
  expect(partsOf(after, 'variants').map(({ values }) => values.length)).toEqual([1, 0]);
  expect(partsOf(after, 'spreads').map(({ id }) => id)).toEqual(['s1']);
  const without = done(before, deleteLines(before, { ...lines, at: 3, count: 1 }));
  expect(partsOf(without, 'watched')).toEqual([]);
  expect(partsOf(without, 'reviews')).toEqual([]);
  expect(partsOf(without, 'studies').map(({ id }) => id)).toEqual(['s2']);
  const given = done(before, deleteLines(before, { ...lines, at: 0, count: 1 }));
  expect(partsOf(given, 'studies')).toEqual([]);
});

test('moved rows and cut cells take along what names them', () => {
  const before = withAllParts();
  const moved = done(before, moveLines(before, { ...lines, at: 3, count: 1, to: 1 }));
  expect(rowsIn(moved, 'watched')).toEqual([1]);
  expect(partsOf(moved, 'reviews')[0]).toMatchObject({ place: { row: 1 }, content: '=B1*B3' });
  const clipboard = cut(before, { worksheet: 'w1', block: { row: 3, column: 1, rows: 1, columns: 1 } });
  const pasted = done(before, paste(before, { clipboard, worksheet: 'w1', row: 8, column: 2 }));
  expect(partsOf(pasted, 'watched')[0]?.place).toEqual({ worksheet: 'w1', row: 8, column: 2 });
  expect(partsOf(pasted, 'reviews')[0]?.place).toEqual({ worksheet: 'w1', row: 8, column: 2 });
});

test('a deleted worksheet takes what names its cells with it, and undo brings all back', () => {
  const two = done(withAllParts(), addWorksheet(withAllParts(), { title: 'Second' }));
  const deleted = deleteWorksheet(two, { worksheet: 'w1' }) as Transaction;
  const after = apply(two, deleted.changes);
  expect(Object.keys(after.parts ?? {}).sort()).toEqual(['photographs', 'recordings', 'trials', 'variants']);
  expect(partsOf(after, 'variants').map(({ values }) => values)).toEqual([[], []]);
  expect(apply(after, inverse(deleted).changes)).toEqual(two);
});

const ids = fc.uniqueArray(fc.constantFrom('v1', 'v2', 'v3', 'v4', 'v5', 'v6'));
const variants = ids.chain((list) =>
  fc.tuple(...list.map((id) => fc.nat(2).map((n): Variant => ({ id, title: `title ${n}`, values: [] })))),
);

test('any list of records leads to any other by its changes, and back by their inverse', () => {
  const base = withAllParts();
  const state = (list: readonly Variant[]): Notebook => {
    const { variants: _none, ...rest } = ALL_PARTS;
    const parts: Parts = list.length === 0 ? rest : { variants: list, ...rest };
    return { ...base, parts };
  };
  fc.assert(
    fc.property(variants, variants, (one, two) => {
      const [before, after] = [state(one), state(two)];
      const step = transactionTo(before, after, 'x') as Transaction;
      expect(isSame(apply(before, step.changes), after)).toBe(true);
      expect(isSame(apply(after, inverse(step).changes), before)).toBe(true);
    }),
    { seed: 20260309, numRuns: 2000 },
  );
});

test('the first record makes the lists, and the last one taken away leaves none', () => {
  const { parts: _parts, ...plain } = withAllParts();
  const step = putPart(plain, {
    part: 'watched',
    record: { id: 'w1', place: { worksheet: 'w1', row: 0, column: 0 } },
    description: 'x',
  }) as Transaction;
  const after = apply(plain, step.changes);
  expect(Object.keys(after.parts ?? {})).toEqual(['watched']);
  expect('parts' in done(after, removeParts(after, { part: 'watched', ids: ['w1'], description: 'x' }))).toBe(
    false,
  );
  expect(apply(after, inverse(step).changes)).toEqual(plain);
});

test('lists of a newer program stay through any change', () => {
  const before: Notebook = { ...withAllParts(), parts: { ...ALL_PARTS, kept: { dreams: [{ id: 'd1' }] } } };
  let after = done(before, insertLines(before, { ...lines, at: 0, count: 1 }));
  for (const part of PART_NAMES)
    after = done(
      after,
      removeParts(after, { part, ids: partsOf(after, part).map(({ id }) => id), description: 'x' }),
    );
  expect(after.parts).toEqual({ kept: { dreams: [{ id: 'd1' }] } });
  expect(changesBetween(after, after)).toEqual([]);
});

test('what would make the file too large is refused and nothing changes', () => {
  const notebook = withAllParts();
  const long = 'A'.repeat(170_000);
  let so = notebook;
  for (let k = 2; k <= PART_LIMITS.photographs; k++)
    so = done(
      so,
      putPart(so, {
        part: 'photographs',
        record: { id: `p${k}`, type: 'image/png', data: long, width: 1, height: 1, words: '' },
        description: 'x',
      }),
    );
  expect(
    refusalOf(
      putPart(so, {
        part: 'photographs',
        record: { id: 'p99', type: 'image/png', data: '', width: 1, height: 1, words: '' },
        description: 'x',
      }),
    ),
  ).toMatch(/40 is the most/);
  const values = Array.from({ length: 200_000 }, (_, k) => Math.sin(k));
  const columns = Array.from({ length: 8 }, (_, k) => ({ name: `c_${k}`, values }));
  expect(refusalOf(addRecording(so, { title: 'Big', columns }))).toMatch(/too large/);
});

test('titles and columns of recordings are names, and each is there once', () => {
  const notebook = withAllParts();
  const add = (title: string, name = 'x'): string =>
    refusalOf(addRecording(notebook, { title, columns: [{ name, values: [1] }] }));
  expect(add('Log')).toMatch(/recording Log already/);
  expect(add('Feeds')).toMatch(/worksheet Feeds/);
  expect(add('B7')).toMatch(/address of a cell/);
  expect(add('My log')).toMatch(/Try My_log/);
  expect(add('Other', 'F1')).toMatch(/Column F1: .*Try F_1/);
  expect(
    checkColumns([
      { name: 'a', values: [1] },
      { name: 'a', values: [1] },
    ])?.message,
  ).toMatch(/stands twice/);
  expect(
    checkColumns([
      { name: 'a', values: [1] },
      { name: 'b', values: [] },
    ])?.message,
  ).toMatch(/has 0 rows, a has 1/);
  expect(checkColumns([])?.message).toMatch(/at least one column/);
  expect(refusalOf(addWorksheet(notebook, { title: 'Log' }))).toMatch(/recording Log/);
  const used = typed(notebook, { C1: '=MAX(Log.force)' });
  const renamed = done(
    used,
    changeRecordingColumn(used, { recording: 'r1', column: 'force', to: 'F_c', unit: 'kN' }),
  );
  expect(renamed.worksheets[0]?.rows[0]?.[2]?.content).toBe('=MAX(Log.F_c)');
  expect(partsOf(renamed, 'recordings')[0]?.columns[0]).toMatchObject({ name: 'F_c', unit: 'kN' });
});
