/** A list of cells comes back: what it would change, and that one that was not touched changes nothing. */

import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import {
  addWorksheet,
  apply,
  cellAt,
  defineName,
  emptyNotebook,
  enter,
  forEachCell,
  isRefusal,
  labelOf,
  roleOf,
  setLabel,
} from '../../src/document/index.ts';
import type { Notebook, Refusal, Transaction } from '../../src/document/index.ts';
import { readNotebook, understandList, writeCsvList } from '../../src/exchange/index.ts';
import { takenList, type TakenList } from '../../src/ui/taking-list.ts';

function after(before: Notebook, answer: Transaction | Refusal): Notebook {
  if (isRefusal(answer)) throw new Error(answer.message);
  return apply(before, answer.changes);
}

function notebook(): Notebook {
  const typed = [
    ['feed', '0.1 mm', '3'],
    ['double', '=B1*2', 'it'],
  ];
  const start = emptyNotebook({ id: 'n', worksheetTitle: 'Feeds' });
  const filled = after(start, enter(start, { worksheet: 'w1', row: 0, column: 0, typed }));
  const target = { row: 0, column: 1, rows: 1, columns: 1 };
  return after(filled, defineName(filled, { worksheet: 'w1', name: 'fz', target, symbol: 'f_z' }));
}

const list = (open: Notebook): string => writeCsvList(open, undefined, { bom: false });

function taken(open: Notebook, text: string): TakenList {
  const read = understandList(text);
  if (isRefusal(read)) throw new Error(read.message);
  return takenList(open, read.cells, 'a.csv');
}

const SHEETS = join(import.meta.dirname, '../../sheets');

test('the list of every shipped notebook changes nothing in it, and fills an empty one with the same', () => {
  for (const file of readdirSync(SHEETS)) {
    const read = readNotebook(readFileSync(join(SHEETS, file), 'utf8'));
    if (isRefusal(read)) throw new Error(read.message);
    const open = read.notebook;
    const back = taken(open, list(open));
    expect([file, back.changes, back.left]).toEqual([file, [], []]);
    const empty = emptyNotebook({ id: 'e', worksheetTitle: 'Nothing' });
    const other = taken(empty, list(open));
    expect([file, other.left]).toEqual([file, []]);
    const filled = after(empty, other.transaction);
    expect(taken(filled, list(open)).changes, file).toEqual([]);
  }
});

test('what was changed in the list is changed here, in one step; what is not listed stays', () => {
  const open = notebook();
  const text = list(open)
    .replace('fz,f_z,feed,0.1,mm', 'f_z,f_zz,feed per tooth,0.12,mm')
    .replace("'=B1*2", "'=B1*3")
    .replace(/^Feeds,C2.*\r\n/m, '');
  const { transaction, changes, same, left } = taken(open, text);
  expect(changes.map(({ row, column, was, is }) => [row, column, was, is])).toEqual([
    [0, 1, '0.1 mm', '0.12 mm'],
    [1, 1, '=B1*2', '=B1*3'],
  ]);
  expect([same, left]).toEqual([3, []]);
  const changed = after(open, transaction);
  const [sheet] = changed.worksheets;
  if (!sheet) throw new Error('no worksheet');
  expect(cellAt(sheet, 1, 2)?.content).toBe('it');
  expect(sheet.names).toMatchObject([{ name: 'f_z', symbol: 'f_zz' }]);
  expect(labelOf(sheet, 0, 1)).toBe('feed per tooth');
});

test('worksheets that are not here are added, cells that are emptied are empty, roles are taken where they can be', () => {
  const open = notebook();
  const text = list(open)
    .replace('Feeds,C1,,,feed,3,,,given,', 'Feeds,C1,,,feed,,,,given,')
    .replace('mm,mm,given,', 'mm,mm,measured,')
    .replace(/worked,'=B1\*2/, "measured,'=B1*2")
    .concat('Tool trial,B2,VB,,,0.3,mm,mm,given,\r\n');
  const { transaction, added, left } = taken(open, text);
  expect(added).toEqual(['Tool trial']);
  expect(left.map(({ row, column, why }) => [row, column, why])).toEqual([
    [1, 1, 'it is worked and can not be measured'],
  ]);
  const changed = after(open, transaction);
  const [first, second] = changed.worksheets;
  if (!first || !second) throw new Error('a worksheet is missing');
  expect(cellAt(first, 0, 2)).toBeUndefined();
  const feed = cellAt(first, 0, 1);
  expect(feed && roleOf(feed)).toBe('measured');
  expect([second.title, cellAt(second, 1, 1)?.content, second.names[0]?.name]).toEqual([
    'Tool trial',
    '0.3 mm',
    'VB',
  ]);
  // All of it is one step.
  if (isRefusal(transaction)) throw new Error(transaction.message);
  expect(transaction.description).toBe('take a.csv in');
});

test('units that are not known are asked for, but not those that stand here already', () => {
  const start = notebook();
  const open = after(start, enter(start, { worksheet: 'w1', row: 4, column: 0, typed: '5 foo' }));
  expect(taken(open, list(open)).unknownUnits.size).toBe(0);
  const text = list(open).replace('0.1,mm,mm', '0.1,kNn,');
  expect([...taken(open, text).unknownUnits.keys()]).toEqual(['kNn']);
  const read = understandList(text, { units: new Map([['kNn', 'kN']]) });
  if (isRefusal(read)) throw new Error(read.message);
  expect(takenList(open, read.cells, 'a.csv').changes).toMatchObject([{ is: '0.1 kN' }]);
});

test('an own label stays an own label, and one that the text beside already gives is none', () => {
  const start = notebook();
  const block = { row: 1, column: 1, rows: 1, columns: 1 };
  const open = after(start, setLabel(start, { worksheet: 'w1', block, label: 'twice' }));
  const empty = emptyNotebook({ id: 'e', worksheetTitle: 'Feeds' });
  const two = after(empty, addWorksheet(empty, { title: 'Other' }));
  const filled = after(two, taken(two, list(open)).transaction);
  const labels: (string | undefined)[] = [];
  const [sheet] = filled.worksheets;
  if (sheet) forEachCell(sheet, ({ label }) => labels.push(label));
  expect(labels.filter((label) => label !== undefined)).toEqual(['twice']);
});
