import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { addressText, linesAfter, parse, print, readAddress, rewrite } from '../../src/expression/index.ts';
import type { LineRewriting, Rewriting } from '../../src/expression/index.ts';
import { trees } from './random-trees.ts';

const RUNS = { seed: 20_260_309, numRuns: 2000 };
const HERE = { worksheet: 'Feeds' };

const rows = (type: 'insert' | 'delete', at: number, count: number): Rewriting => ({
  type,
  axis: 'row',
  worksheet: 'Feeds',
  at,
  count,
});
const columns = (type: 'insert' | 'delete', at: number, count: number): Rewriting => ({
  type,
  axis: 'column',
  worksheet: 'Feeds',
  at,
  count,
});
const textAfter = (text: string, rewriting: Rewriting, place = HERE): string =>
  rewrite(text, rewriting, place).text ?? 'refused';

test.each([
  // Rows count from 0: at 4 is before row 5.
  ['=B3+B5+B6', rows('insert', 4, 2), '=B3+B7+B8'],
  ['=SUM(B3:B9)', rows('insert', 2, 1), '=SUM(B4:B10)'],
  ['=SUM(B3:B9)', rows('insert', 3, 1), '=SUM(B3:B10)'],
  ['=SUM(B3:B9)', rows('insert', 8, 1), '=SUM(B3:B10)'],
  ['=SUM(B3:B9)', rows('insert', 9, 1), '=SUM(B3:B9)'],
  ['=SUM($B$9:B3)', rows('insert', 4, 1), '=SUM($B$10:B3)'],
  ['=B3+B4+B5', rows('delete', 3, 1), '=B3+#REF!+B4'],
  ['=SUM(B3:B9)', rows('delete', 2, 2), '=SUM(B3:B7)'],
  ['=SUM(B3:B9)', rows('delete', 8, 5), '=SUM(B3:B8)'],
  ['=SUM(B3:B9)', rows('delete', 0, 20), '=SUM(#REF!)'],
  ['=B3*$C$3', columns('insert', 1, 1), '=C3*$D$3'],
  ['=SUM(B3:D3)', columns('delete', 2, 1), '=SUM(B3:C3)'],
  ["='Tool trial'.B9 + Feeds.B9 + Feeds.fz", rows('insert', 0, 1), "='Tool trial'.B9 + Feeds.B10 + Feeds.fz"],
])('F6 %s after %o reads %s', (text, rewriting, expected) => {
  expect(textAfter(text, rewriting)).toBe(expected);
});

test('what is not a reference stays as it was typed: spaces, case, units, texts, unfinished text', () => {
  const text = '= sum( b3 ;2.50 mm ; "B9" ) *kc1.1 + B9 + h(';
  expect(textAfter(text, rows('insert', 5, 1))).toBe('= sum( b3 ;2.50 mm ; "B9" ) *kc1.1 + B10 + h(');
});

test('on another worksheet only qualified references follow', () => {
  expect(textAfter('=B9+Feeds.B9', rows('insert', 0, 1), { worksheet: 'Tools' })).toBe('=B9+Feeds.B10');
});

test('a range that would grow over 20 000 cells is refused, and so is a cell that would leave the worksheet', () => {
  expect(rewrite('=SUM(A1:J2000)', columns('insert', 5, 1), HERE)).toEqual({
    refused: 'Feeds.A1:J2000 would grow to 22000 cells; 20000 is the most',
  });
  expect(rewrite('=1+B2000', rows('insert', 0, 1), HERE)).toEqual({
    refused: 'Feeds.B2000 would leave the worksheet',
  });
  expect(rewrite('=BL3', columns('insert', 0, 1), HERE).refused).toBe('Feeds.BL3 would leave the worksheet');
});

test.each([
  ['=B3', '=B7'],
  ['=B7', '=B5'],
  ['=SUM(B3:B4)', '=SUM(B7:B8)'],
  ['=SUM(B3:B8)', '=SUM(B3:B8)'],
  ['=B1+B9', '=B1+B9'],
])('rows 3 and 4 moved before row 9: %s reads %s', (text, expected) => {
  const move: Rewriting = { type: 'move', axis: 'row', worksheet: 'Feeds', at: 2, count: 2, to: 8 };
  expect(textAfter(text, move)).toBe(expected);
});

test.each([
  ['=B3+$B3+B$3+$B$3', '=D4+$B4+D$3+$B$3'],
  ['=SUM(B3:$C$9)', '=SUM(D4:$C$9)'],
  ['=Feeds.B3*fz', '=Feeds.D4*fz'],
  ['=BL1', '=#REF!'],
])('a copy one row down and two columns right: %s reads %s', (text, expected) => {
  expect(textAfter(text, { type: 'copy', rows: 1, columns: 2 })).toBe(expected);
});

test('a renamed worksheet is renamed wherever it stands, in quotation marks where it needs them', () => {
  const rename: Rewriting = { type: 'rename worksheet', from: 'Feeds', to: "Smith's feeds" };
  expect(textAfter('=Feeds.B3+Feeds.fz+SUM(Feeds.B3:C9)+Tools.B3', rename)).toBe(
    "='Smith''s feeds'.B3+'Smith''s feeds'.fz+SUM('Smith''s feeds'.B3:C9)+Tools.B3",
  );
});

test('F6a a renamed name follows on its own worksheet, qualified ones everywhere, others of the same name nowhere', () => {
  const rename: Rewriting = { type: 'rename name', worksheet: 'Feeds', from: 'fz', to: 'f_z' };
  expect(textAfter('=fz+Tools.fz+Feeds.fz+Fz', rename)).toBe('=f_z+Tools.fz+Feeds.f_z+Fz');
  expect(textAfter('=fz+Feeds.fz', rename, { worksheet: 'Tools' })).toBe('=fz+Feeds.f_z');
  const place = { worksheet: 'Tools', homeOfName: () => 'Feeds' };
  expect(rewrite('=fz', rename, place)).toEqual({ text: '=f_z' });
});

test('a deleted worksheet leaves #REF!', () => {
  const gone: Rewriting = { type: 'delete worksheet', worksheet: 'Feeds' };
  expect(textAfter('=Feeds.B3*2+B3', gone, { worksheet: 'Tools' })).toBe('=#REF!*2+B3');
});

/** The oracle: numbered lines in a list that is really spliced. */
function spliced(rewriting: LineRewriting): number[] {
  const lines = Array.from({ length: 60 }, (_, index) => index);
  const { at, count } = rewriting;
  if (rewriting.type === 'insert') lines.splice(at, 0, ...Array.from({ length: count }, () => -1));
  if (rewriting.type === 'delete') lines.splice(at, count);
  if (rewriting.type === 'move') {
    const taken = lines.splice(at, count);
    lines.splice(rewriting.to > at ? rewriting.to - count : rewriting.to, 0, ...taken);
  }
  return lines;
}

const lineRewritings: fc.Arbitrary<LineRewriting> = fc
  .tuple(
    fc.constantFrom('insert', 'delete', 'move' as const),
    fc.nat(30),
    fc.integer({ min: 1, max: 9 }),
    fc.nat(40),
  )
  .map(([type, at, count, place]): LineRewriting => {
    const lines = { axis: 'row', worksheet: 'Feeds', at, count } as const;
    if (type !== 'move') return { type: type === 'insert' ? 'insert' : 'delete', ...lines };
    return { type, ...lines, to: place >= at ? place + count : place };
  });

test('lines go where a spliced list takes them', () => {
  fc.assert(
    fc.property(lineRewritings, fc.nat(40), fc.nat(12), (rewriting, first, more) => {
      const last = first + more;
      const places = spliced(rewriting)
        .map((line, index) => (line >= first && line <= last ? index : -1))
        .filter((index) => index >= 0);
      const after = linesAfter([first, last], rewriting);
      const ends = places.length === 0 ? undefined : [Math.min(...places), Math.max(...places)];
      const together = ends && ends[1] === (ends[0] ?? 0) + places.length - 1;
      if (rewriting.type !== 'move' || together) expect(after).toEqual(ends);
      else expect(after).toBeDefined();
    }),
    RUNS,
  );
});

const inverse = (rewriting: LineRewriting): LineRewriting => {
  const { axis, worksheet, at, count } = rewriting;
  if (rewriting.type === 'insert') return { ...rewriting, type: 'delete' };
  if (rewriting.type === 'delete') return { ...rewriting, type: 'insert' };
  const forward = rewriting.to > at;
  return {
    type: 'move',
    axis,
    worksheet,
    count,
    at: forward ? rewriting.to - count : rewriting.to,
    to: forward ? at : at + count,
  };
};

test('an insert and the delete of what was inserted give the formula back, as far as nothing was refused', () => {
  fc.assert(
    fc.property(
      trees,
      fc.constantFrom('row', 'column' as const),
      fc.nat(50),
      fc.integer({ min: 1, max: 5 }),
      (tree, axis, at, count) => {
        const text = `=${print(tree)}`;
        const there: LineRewriting = { type: 'insert', axis, worksheet: 'Feeds', at, count };
        const once = rewrite(text, there, HERE);
        if (once.text === undefined) return;
        expect(rewrite(once.text, inverse(there), HERE)).toEqual({ text });
      },
    ),
    RUNS,
  );
});

test('a move and the move back give every cell back', () => {
  fc.assert(
    fc.property(
      fc.nat(63),
      fc.nat(1999),
      fc.nat(1900),
      fc.integer({ min: 1, max: 99 }),
      fc.nat(1900),
      (column, row, at, count, place) => {
        const text = `=${addressText(column, row)}`;
        const to = place >= at ? Math.max(place, at + count) : place;
        fc.pre(to <= 2000 && at + count <= 2000);
        const there: LineRewriting = { type: 'move', axis: 'row', worksheet: 'Feeds', at, count, to };
        const once = textAfter(text, there);
        expect(textAfter(once, inverse(there))).toBe(text);
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
        const there = textAfter(text, { type: 'copy', rows: down, columns: right });
        if (!there.includes('#REF!')) {
          expect(textAfter(there, { type: 'copy', rows: -down, columns: -right })).toBe(text);
        }
        const named = textAfter(text, { type: 'rename worksheet', from: 'Feeds', to: 'New one' });
        expect(parse(named).problem).toBeUndefined();
        expect(textAfter(named, { type: 'rename worksheet', from: 'New one', to: 'Feeds' })).toBe(text);
      },
    ),
    RUNS,
  );
});

test('F6 addresses are exactly A1 to BL2000, and reading gives back what was written', () => {
  for (let column = 0; column < 64; column++) {
    for (const row of [0, 1, 9, 99, 999, 1999]) {
      expect(readAddress(addressText(column, row))).toEqual({
        column,
        row,
        columnFixed: false,
        rowFixed: false,
      });
    }
  }
  expect(addressText(63, 1999)).toBe('BL2000');
  for (const text of ['BM1', 'A0', 'A01', 'A2001', 'kc11', 'AAA1', '1A', 'A', '', 'A1 ', '$A$$1', 'Ä1']) {
    expect(readAddress(text), text).toBeUndefined();
  }
});
