import { expect, test } from 'vitest';
import {
  addWorksheet,
  copy,
  cut,
  defineName,
  deleteLines,
  deleteName,
  deleteWorksheet,
  duplicateWorksheet,
  fill,
  insertLines,
  moveLines,
  namesOn,
  paste,
  renameName,
  renameWorksheet,
  setCommon,
  usersOf,
  worksheetOf,
} from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import { block, contentAt, done, placeOf, refusalOf, sample, typed } from './sample.ts';

/** Two worksheets: Feeds (w1) and Tool trial (w2), whose formulas look at each other. */
function two(first: Record<string, string> = {}, second: Record<string, string> = {}): Notebook {
  const start = sample(first);
  return typed(done(start, addWorksheet(start, { title: 'Tool trial' })), second, 'w2');
}

const named = (notebook: Notebook, name: string, at: string, worksheet = 'w1'): Notebook =>
  done(notebook, defineName(notebook, { worksheet, name, target: block(at) }));

test('inserted rows move references on every worksheet, and ranges grow between their ends', () => {
  const before = two(
    { A1: '1', A2: '2', A3: '=A1+$A$2', B1: '=SUM(A1:A2)' },
    { A1: '=Feeds.A2 + SUM(Feeds.A1:A3)', B1: '=A2' },
  );
  const after = done(before, insertLines(before, { worksheet: 'w1', axis: 'row', at: 1, count: 2 }));
  expect(contentAt(after, 'A5')).toBe('=A1+$A$4');
  expect(contentAt(after, 'B1')).toBe('=SUM(A1:A4)');
  expect(contentAt(after, 'A1', 'w2')).toBe('=Feeds.A4 + SUM(Feeds.A1:A5)');
  expect(contentAt(after, 'B1', 'w2')).toBe('=A2');
});

test('inserted columns move references and names', () => {
  const before = named(sample({ B2: '0.1 mm', C2: '=B2*2' }), 'fz', 'B2');
  const after = done(before, insertLines(before, { worksheet: 'w1', axis: 'column', at: 0, count: 1 }));
  expect(contentAt(after, 'D2')).toBe('=C2*2');
  expect(namesOn(worksheetOf(after, 'w1')).get('fz')?.target).toEqual(block('C2'));
});

test('what referred to deleted rows reads #REF!, ranges shrink, and usersOf tells it beforehand', () => {
  const before = named(
    two({ A1: '1', A2: '2', A3: '3', B1: '=A2', B3: '=SUM(A1:A3)', C1: '=n' }, { A1: '=Feeds.A2' }),
    'n',
    'A2',
  );
  const rows = { worksheet: 'w1', block: { row: 1, column: 0, rows: 1, columns: 64 } };
  expect(usersOf(before, rows).map(({ text }) => text)).toEqual([
    'Feeds.B1',
    'Feeds.C1',
    'Feeds.B3',
    "'Tool trial'.A1",
  ]);
  const after = done(before, deleteLines(before, { worksheet: 'w1', axis: 'row', at: 1, count: 1 }));
  expect(contentAt(after, 'B1')).toBe('=#REF!');
  expect(contentAt(after, 'C1')).toBe('=#REF!');
  expect(contentAt(after, 'B2')).toBe('=SUM(A1:A2)');
  expect(contentAt(after, 'A1', 'w2')).toBe('=#REF!');
});

test('moved rows are followed by references to them; a range keeps what stays between its ends', () => {
  const before = sample({ A1: '1', A2: '2', A3: '3', B1: '=A3', B2: '=SUM(A1:A3)' });
  const after = done(before, moveLines(before, { worksheet: 'w1', axis: 'row', at: 2, count: 1, to: 0 }));
  expect(contentAt(after, 'A1')).toBe('3');
  expect(contentAt(after, 'B2')).toBe('=A1');
  expect(contentAt(after, 'B3')).toBe('=SUM(A1:A3)');
});

test('a row moved out of a range leaves it', () => {
  const before = sample({ A1: '1', A2: '2', A3: '3', C1: '=SUM(A1:A3)' });
  const after = done(before, moveLines(before, { worksheet: 'w1', axis: 'row', at: 1, count: 1, to: 6 }));
  expect(contentAt(after, 'C1')).toBe('=SUM(A1:A2)');
  expect(contentAt(after, 'A6')).toBe('2');
});

test('a renamed worksheet is renamed in the formulas that name it', () => {
  const before = two({}, { A1: '=Feeds.B3 + feeds + "Feeds.B3"' });
  const after = done(before, renameWorksheet(before, { worksheet: 'w1', title: "Shop's feeds" }));
  expect(contentAt(after, 'A1', 'w2')).toBe(`='Shop''s feeds'.B3 + feeds + "Feeds.B3"`);
});

test('a renamed name is renamed where it is meant, and nowhere else', () => {
  const start = named(
    two({ A1: '0.1 mm', B1: '=fz*2' }, { A1: '=Feeds.fz', B1: '=fz', C1: '5' }),
    'fz',
    'A1',
  );
  const before = named(start, 'fz', 'C1', 'w2');
  const after = done(before, renameName(before, { worksheet: 'w1', name: 'fz', to: 'f_z' }));
  expect(contentAt(after, 'B1')).toBe('=f_z*2');
  expect(contentAt(after, 'A1', 'w2')).toBe('=Feeds.f_z');
  expect(contentAt(after, 'B1', 'w2')).toBe('=fz');
});

test('F6a a name of a common worksheet is followed on the others', () => {
  const start = named(two({ A1: '600 MPa' }, { A1: '=Rm' }), 'Rm', 'A1');
  const before = done(start, setCommon(start, { worksheet: 'w1', common: true }));
  const after = done(before, renameName(before, { worksheet: 'w1', name: 'Rm', to: 'R_m' }));
  expect(contentAt(after, 'A1', 'w2')).toBe('=R_m');
  const gone = done(before, deleteName(before, { worksheet: 'w1', name: 'Rm' }));
  expect(contentAt(gone, 'A1', 'w2')).toBe('=#REF!');
});

test('a deleted worksheet leaves #REF! on the others', () => {
  const before = two({ A1: '1' }, { A1: '=Feeds.A1*2' });
  expect(usersOf(before, { worksheet: 'w1' }).map(({ text }) => text)).toEqual(["'Tool trial'.A1"]);
  const after = done(before, deleteWorksheet(before, { worksheet: 'w1' }));
  expect(contentAt(after, 'A1', 'w2')).toBe('=#REF!*2');
});

test('a duplicate looks at its own cells where the original looked at its own', () => {
  const before = two({ A1: '1', A2: "=A1+Feeds.A1+'Tool trial'.A1" });
  const after = done(before, duplicateWorksheet(before, { worksheet: 'w1' }));
  expect(after.worksheets.map(({ title }) => title)).toEqual(['Feeds', 'Feeds 2', 'Tool trial']);
  expect(contentAt(after, 'A2', 'w3')).toBe("=A1+'Feeds 2'.A1+'Tool trial'.A1");
});

test('a filled or copied formula shifts its references but not the fixed ones', () => {
  const before = sample({ A1: '=B1*$C$1+D$1', A2: '' });
  const after = done(before, fill(before, { worksheet: 'w1', block: block('A1:A3'), direction: 'down' }));
  expect(contentAt(after, 'A3')).toBe('=B3*$C$1+D$1');
  const copied = copy(after, { worksheet: 'w1', block: block('A3') });
  const pasted = done(after, paste(after, { clipboard: copied, worksheet: 'w1', ...placeOf('B1') }));
  expect(contentAt(pasted, 'B1')).toBe('=C1*$C$1+E$1');
  const far = copy(after, { worksheet: 'w1', block: block('A1') });
  const over = done(after, paste(after, { clipboard: far, worksheet: 'w1', ...placeOf('BK1') }));
  expect(contentAt(over, 'BK1')).toBe('=BL1*$C$1+#REF!');
});

test('a block is filled up and to the left as it is down and to the right: units stay, references shift the other way', () => {
  const before = sample({ C4: '=B4*$A$1+C$2+D5', A4: '2.5 mm', B1: '1', B4: '0.1 mm' });
  const up = done(before, fill(before, { worksheet: 'w1', block: block('A2:C4'), direction: 'up' }));
  expect(contentAt(up, 'C2')).toBe('=B2*$A$1+C$2+D3');
  expect(contentAt(up, 'A3')).toBe('2.5 mm');
  expect(contentAt(up, 'C4')).toBe('=B4*$A$1+C$2+D5');
  expect(contentAt(up, 'B1')).toBe('1');
  const left = done(before, fill(before, { worksheet: 'w1', block: block('B4:C4'), direction: 'left' }));
  expect(contentAt(left, 'B4')).toBe('=A4*$A$1+B$2+C5');
  // Beyond the edge of the page there is no cell that the formula could mean.
  const out = done(before, fill(before, { worksheet: 'w1', block: block('A4:C4'), direction: 'left' }));
  expect(contentAt(out, 'A4')).toBe('=#REF!*$A$1+A$2+B5');
});

test('F1a a plain number filled into a cell with a unit takes it', () => {
  const before = sample({ A1: '2', A2: '1 mm' });
  const after = done(before, fill(before, { worksheet: 'w1', block: block('A1:A2'), direction: 'down' }));
  expect(contentAt(after, 'A2')).toBe('2 mm');
});

test('a copied cell leaves its name with the original, a cut one takes it along', () => {
  const before = named(two({ A1: '0.1 mm', B1: '=A1+fz' }, { A1: '=Feeds.A1+Feeds.fz' }), 'fz', 'A1');
  const copied = copy(before, { worksheet: 'w1', block: block('A1') });
  const pasted = done(before, paste(before, { clipboard: copied, worksheet: 'w1', ...placeOf('D4') }));
  expect(namesOn(worksheetOf(pasted, 'w1')).get('fz')?.target).toEqual(block('A1'));
  expect(contentAt(pasted, 'B1')).toBe('=A1+fz');

  const taken = cut(before, { worksheet: 'w1', block: block('A1') });
  const moved = done(before, paste(before, { clipboard: taken, worksheet: 'w1', ...placeOf('D4') }));
  expect(namesOn(worksheetOf(moved, 'w1')).get('fz')?.target).toEqual(block('D4'));
  expect(contentAt(moved, 'B1')).toBe('=D4+fz');
  expect(contentAt(moved, 'A1', 'w2')).toBe('=Feeds.D4+Feeds.fz');
});

test('a block cut to another worksheet keeps what it meant, and others find it there', () => {
  const before = named(
    two({ A1: '0.1 mm', A2: '=A1*B2', B1: '=A2+fz', B2: '3' }, { A1: '=Feeds.A1' }),
    'fz',
    'A1',
  );
  const taken = cut(before, { worksheet: 'w1', block: block('A1:A2') });
  const moved = done(before, paste(before, { clipboard: taken, worksheet: 'w2', ...placeOf('C1') }));
  expect(contentAt(moved, 'C2', 'w2')).toBe('=C1*Feeds.B2');
  expect(contentAt(moved, 'B1')).toBe("='Tool trial'.C2+'Tool trial'.fz");
  expect(contentAt(moved, 'A1', 'w2')).toBe("='Tool trial'.C1");
  expect(contentAt(moved, 'A1')).toBe('');
});

test('a copied block fills a selection that is a multiple of it', () => {
  const before = sample({ A1: '1', B1: '2' });
  const copied = copy(before, { worksheet: 'w1', block: block('A1:B1') });
  const after = done(
    before,
    paste(before, { clipboard: copied, worksheet: 'w1', ...placeOf('C3'), rows: 2, columns: 4 }),
  );
  expect(['C3', 'D3', 'E4', 'F4'].map((at) => contentAt(after, at))).toEqual(['1', '2', '1', '2']);
});

test('a range that would grow over 20 000 cells by an insert is refused and nothing changes', () => {
  const before = sample({ A1: '=SUM(B1:K2000)', L5: '1' });
  const answer = insertLines(before, { worksheet: 'w1', axis: 'column', at: 5, count: 1 });
  expect(refusalOf(answer)).toContain('22000 cells; 20000 is the most');
});

test('rows that would leave the worksheet are refused', () => {
  const before = sample({ A2000: '1' });
  const answer = insertLines(before, { worksheet: 'w1', axis: 'row', at: 0, count: 1 });
  expect(refusalOf(answer)).toContain('2001 rows; 2000 is the most');
});

test('F6a a new name, or a mark taken off, changes no value in silence: what was meant is qualified', () => {
  const start = named(two({ A1: '600 MPa' }, { A1: '=Rm*2' }), 'Rm', 'A1');
  const common = done(start, setCommon(start, { worksheet: 'w1', common: true }));
  const answer = defineName(common, { worksheet: 'w2', name: 'Rm', target: block('B1') });
  expect(answer).toMatchObject({ notice: 'A1 still read Rm of Feeds, now written Feeds.Rm.' });
  expect(contentAt(done(common, answer), 'A1', 'w2')).toBe('=Feeds.Rm*2');
  const off = done(common, setCommon(common, { worksheet: 'w1', common: false }));
  expect(contentAt(off, 'A1', 'w2')).toBe('=Feeds.Rm*2');
});

test('a renamed name never comes to mean another of the same text', () => {
  const start = named(two({ A1: '1' }, { A1: '2', B1: '=x', C1: '=a' }), 'x', 'A1');
  const common = done(start, setCommon(start, { worksheet: 'w1', common: true }));
  const before = named(common, 'a', 'A1', 'w2');
  const after = done(before, renameName(before, { worksheet: 'w2', name: 'a', to: 'x' }));
  expect(contentAt(after, 'B1', 'w2')).toBe('=Feeds.x');
  expect(contentAt(after, 'C1', 'w2')).toBe('=x');
});
