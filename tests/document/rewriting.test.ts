/** Formulas rewritten by commands: what each reads afterwards, and that the way back gives it back. */

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  apply,
  deleteLines,
  insertLines,
  isRefusal,
  moveLines,
  renameWorksheet,
  shiftedContent,
} from '../../src/document/index.ts';
import type { Lines, Notebook } from '../../src/document/index.ts';
import { addressText, parse, print } from '../../src/expression/index.ts';
import { trees } from '../expression-syntax/random-trees.ts';
import { contentAt, done, refusalOf, sample } from './sample.ts';

const RUNS = { seed: 20_260_309, numRuns: 500 };

const lines = (axis: Lines['axis'], at: number, count: number): Lines => ({
  worksheet: 'w1',
  axis,
  at,
  count,
});

/** A notebook whose A1 holds a text just as it is. */
function holding(text: string): Notebook {
  const notebook = sample({ A1: '1' });
  const [worksheet] = notebook.worksheets;
  if (!worksheet) throw new Error('no worksheet');
  return { ...notebook, worksheets: [{ ...worksheet, rows: [[{ content: text }]] }] };
}

/** The formula stands in A1 of Feeds, before everything that moves. */
const inserted = (text: string, axis: Lines['axis'], at: number, count: number): string => {
  const notebook = sample({ A1: text });
  return contentAt(done(notebook, insertLines(notebook, lines(axis, at, count))), 'A1');
};
const deleted = (text: string, axis: Lines['axis'], at: number, count: number): string => {
  const notebook = sample({ A1: text });
  return contentAt(done(notebook, deleteLines(notebook, lines(axis, at, count))), 'A1');
};

test.each([
  // Rows count from 0: at 4 is before row 5.
  ['=B3+B5+B6', 'row', 4, 2, '=B3+B7+B8'],
  ['=SUM(B3:B9)', 'row', 2, 1, '=SUM(B4:B10)'],
  ['=SUM(B3:B9)', 'row', 3, 1, '=SUM(B3:B10)'],
  ['=SUM(B3:B9)', 'row', 8, 1, '=SUM(B3:B10)'],
  ['=SUM(B3:B9)', 'row', 9, 1, '=SUM(B3:B9)'],
  ['=SUM($B$9:B3)', 'row', 4, 1, '=SUM($B$10:B3)'],
  ['=B3*$C$3', 'column', 1, 1, '=C3*$D$3'],
  ["='Tool trial'.B9 + Feeds.B9 + Feeds.fz", 'row', 1, 1, "='Tool trial'.B9 + Feeds.B10 + Feeds.fz"],
] as const)('F6 %s after an insert at %s %i of %i reads %s', (text, axis, at, count, expected) => {
  expect(inserted(text, axis, at, count)).toBe(expected);
});

test.each([
  ['=B3+B4+B5', 'row', 3, 1, '=B3+#REF!+B4'],
  ['=SUM(B3:B9)', 'row', 2, 2, '=SUM(B3:B7)'],
  ['=SUM(B3:B9)', 'row', 8, 5, '=SUM(B3:B8)'],
  ['=SUM(B3:B9)', 'row', 1, 20, '=SUM(#REF!)'],
  ['=SUM(B3:D3)', 'column', 2, 1, '=SUM(B3:C3)'],
] as const)('F6 %s after a delete at %s %i of %i reads %s', (text, axis, at, count, expected) => {
  expect(deleted(text, axis, at, count)).toBe(expected);
});

test.each([
  ['=B3', '=B7'],
  ['=B7', '=B5'],
  ['=SUM(B3:B4)', '=SUM(B7:B8)'],
  ['=SUM(B3:B8)', '=SUM(B3:B8)'],
  ['=B1+B9', '=B1+B9'],
])('rows 3 and 4 moved before row 9: %s reads %s', (text, expected) => {
  const notebook = sample({ A1: text });
  const moved = done(notebook, moveLines(notebook, { ...lines('row', 2, 2), to: 8 }));
  expect(contentAt(moved, 'A1')).toBe(expected);
});

test.each([
  ['=B3+$B3+B$3+$B$3', '=D4+$B4+D$3+$B$3'],
  ['=SUM(B3:$C$9)', '=SUM(D4:$C$9)'],
  ['=Feeds.B3*fz', '=Feeds.D4*fz'],
  ['=BL1', '=#REF!'],
  ['=SUM(BK1:BL2)', '=SUM(#REF!)'],
])('a copy one row down and two columns right: %s reads %s', (text, expected) => {
  expect(shiftedContent({ content: text }, 1, 2)).toBe(expected);
});

test('an unfinished formula follows too, and what is no reference in it stays as typed', () => {
  const text = '= sum( b3 ;2.50 mm ; "B9" ) *kc1.1 + B9 + h(';
  const unfinished = holding(text);
  expect(contentAt(done(unfinished, insertLines(unfinished, lines('row', 5, 1))), 'A1')).toBe(
    '= sum( b3 ;2.50 mm ; "B9" ) *kc1.1 + B10 + h(',
  );
});

test('a reference that would leave the worksheet refuses the insert', () => {
  const cell = sample({ A1: '=1+B2000' });
  expect(refusalOf(insertLines(cell, lines('row', 1, 1)))).toContain('beyond row 2000');
  const column = sample({ A1: '=BL3' });
  expect(refusalOf(insertLines(column, lines('column', 1, 1)))).toContain('column BL');
});

test('an insert and the delete of what was inserted give the formula back, as far as nothing was refused', () => {
  fc.assert(
    fc.property(
      trees,
      fc.constantFrom('row', 'column' as const),
      fc.integer({ min: 1, max: 50 }),
      fc.integer({ min: 1, max: 5 }),
      (tree, axis, at, count) => {
        const text = `=${print(tree)}`;
        const before = holding(text);
        const there = insertLines(before, lines(axis, at, count));
        if (isRefusal(there)) return;
        const grown = apply(before, there.changes);
        const back = done(grown, deleteLines(grown, lines(axis, at, count)));
        expect(contentAt(back, 'A1')).toBe(text);
      },
    ),
    RUNS,
  );
});

test('a move and the move back give every cell back', () => {
  fc.assert(
    fc.property(
      fc.nat(63),
      fc.integer({ min: 1, max: 60 }),
      fc.integer({ min: 1, max: 40 }),
      fc.integer({ min: 1, max: 9 }),
      fc.integer({ min: 1, max: 50 }),
      (column, row, at, count, place) => {
        const to = place >= at ? place + count : place;
        fc.pre(to !== at && to !== at + count);
        const text = `=${addressText(column, row)}`;
        const before = sample({ A1: text, A100: '1' });
        const moved = done(before, moveLines(before, { ...lines('row', at, count), to }));
        const home = to > at ? to - count : to;
        const back = { ...lines('row', home, count), to: to > at ? at : at + count };
        expect(contentAt(done(moved, moveLines(moved, back)), 'A1')).toBe(text);
      },
    ),
    RUNS,
  );
});

test('a copy and the copy back, and a renaming and its undoing, give the formula back', () => {
  fc.assert(
    fc.property(
      trees,
      fc.integer({ min: -5, max: 5 }),
      fc.integer({ min: -5, max: 5 }),
      (tree, down, right) => {
        const text = `=${print(tree)}`;
        const there = shiftedContent({ content: text }, down, right);
        const lost = (content: string): number => content.split('#REF!').length;
        if (lost(there) === lost(text)) {
          expect(shiftedContent({ content: there }, -down, -right)).toBe(text);
        }
        const before = holding(text);
        const renamed = renameWorksheet(before, { worksheet: 'w1', title: 'New one' });
        if (isRefusal(renamed)) return;
        const named = apply(before, renamed.changes);
        expect(parse(contentAt(named, 'A1')).problem).toBeUndefined();
        const again = done(named, renameWorksheet(named, { worksheet: 'w1', title: 'Feeds' }));
        expect(contentAt(again, 'A1')).toBe(text);
      },
    ),
    RUNS,
  );
});
