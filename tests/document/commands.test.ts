import { expect, test } from 'vitest';
import {
  addWorksheet,
  cellAt,
  clear,
  copy,
  copyWorksheetFrom,
  checkName,
  defineName,
  emptyNotebook,
  enter,
  isRefusal,
  labelOf,
  LIMITS,
  namesOn,
  paste,
  removeUnit,
  renameWorksheet,
  resolveName,
  roleOf,
  acknowledge,
  insertLines,
  setChoices,
  setCommon,
  setLimits,
  setMachinePlace,
  setRole,
  setUnit,
  sort,
  worksheetOf,
} from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import { block, contentAt, done, placeOf, refusalOf, sample, typed } from './sample.ts';

const at = (notebook: Notebook, address: string) => {
  const { row, column } = placeOf(address);
  return cellAt(worksheetOf(notebook, 'w1'), row, column);
};

test('a formula typed into a given cell makes it worked, and says so', () => {
  const start = sample({ A1: '0.1 mm' });
  const given = done(start, setRole(start, { worksheet: 'w1', block: block('A1'), role: 'given' }));
  const answer = enter(given, { worksheet: 'w1', ...placeOf('A1'), typed: '=B1' });
  expect(answer).toMatchObject({ notice: 'A1 is worked now.' });
  const cell = at(done(given, answer), 'A1');
  expect(cell && roleOf(cell)).toBe('worked');
});

test('roles are guessed from the content', () => {
  const notebook = sample({ A1: 'feed', B1: '0.1 mm', C1: '=B1' });
  expect(['A1', 'B1', 'C1'].map((address) => roleOf(at(notebook, address) ?? { content: '' }))).toEqual([
    'note',
    'given',
    'worked',
  ]);
});

test('a label is its own, else the nearest text to the left, else above', () => {
  const sheet = worksheetOf(sample({ A1: 'D', B1: '63 mm', C1: '5', D1: 'Feed', D3: '1', E9: '2' }), 'w1');
  expect(labelOf(sheet, 0, 1)).toBe('D');
  expect(labelOf(sheet, 0, 2)).toBe('D');
  expect(labelOf(sheet, 2, 3)).toBe('Feed');
  expect(labelOf(sheet, 8, 4)).toBe('');
});

test('F6a a name that is an address is refused with a suggestion', () => {
  expect(checkName('D1')).toMatchObject({ suggestion: 'D_1' });
  expect(checkName('h3')).toMatchObject({ suggestion: 'h_3' });
  expect(checkName('feed rate')).toMatchObject({ suggestion: 'feed_rate' });
  for (const name of ['kc11', 'kc1.1', 'f', 'F', 'κ', 'a_e', 'D_1']) expect(checkName(name)).toBeUndefined();
  for (const name of ['', '1a', 'kc.1', 'a.b', 'TRUE', '_a'])
    expect(checkName(name)).toHaveProperty('message');
});

test('F6a names are looked for on the own worksheet, then on those marked common', () => {
  const start = sample({ A1: '1', A2: '2' });
  const added = done(start, addWorksheet(start, { title: 'Trial' }));
  const defined = done(added, defineName(added, { worksheet: 'w1', name: 'Rm', target: block('A1') }));
  expect(resolveName(defined, 'w2', 'Rm')).toBeUndefined();
  const common = done(defined, setCommon(defined, { worksheet: 'w1', common: true }));
  expect(resolveName(common, 'w2', 'Rm')?.worksheet.id).toBe('w1');
  const own = done(common, defineName(common, { worksheet: 'w2', name: 'Rm', target: block('B1') }));
  expect(resolveName(own, 'w2', 'Rm')?.worksheet.id).toBe('w2');
  expect(resolveName(own, 'w2', 'rm')).toBeUndefined();
});

test('"__proto__" is just a title, and constructor just a name', () => {
  const start = sample({ A1: '1' });
  const titled = done(start, renameWorksheet(start, { worksheet: 'w1', title: '__proto__' }));
  const named = done(
    titled,
    defineName(titled, { worksheet: 'w1', name: 'constructor', target: block('A1') }),
  );
  expect(named.worksheets[0]?.title).toBe('__proto__');
  expect(namesOn(worksheetOf(named, 'w1')).get('constructor')?.target).toEqual(block('A1'));
  expect(resolveName(named, 'w1', 'toString')).toBeUndefined();
});

const args = (unit: string) => ({ worksheet: 'w1', block: block('A1'), unit });

test('F1a the unit key gives a plain number its unit, shows a quantity in another, and refuses a clash', () => {
  const plain = sample({ A1: '1.80' });
  const inMm = done(plain, setUnit(plain, args('mm')));
  expect(at(inMm, 'A1')).toEqual({ content: '1.80 mm' });
  const inInch = done(inMm, setUnit(inMm, args('in')));
  expect(at(inInch, 'A1')).toEqual({ content: '1.80 mm', unit: 'in' });
  expect(refusalOf(setUnit(inMm, args('min')))).toContain('can not be shown in min');
  expect(refusalOf(setUnit(inMm, args('mmm')))).toContain('Unknown unit mmm');
  const bare = done(inInch, removeUnit(inInch, { worksheet: 'w1', block: block('A1') }));
  expect(at(bare, 'A1')).toEqual({ content: '1.80' });
  const retyped = typed(inInch, { A1: '2 1' });
  expect(at(retyped, 'A1')).toEqual({ content: '2' });
});

test('clearing the content keeps what the place is for', () => {
  const start = sample({ A1: '1.8 mm' });
  const limits = { high: '3 mm' };
  const limited = done(start, setLimits(start, { worksheet: 'w1', block: block('A1'), limits }));
  const cleared = done(limited, clear(limited, { worksheet: 'w1', block: block('A1') }));
  expect(at(cleared, 'A1')).toEqual({ content: '', limits });
  const gone = done(cleared, clear(cleared, { worksheet: 'w1', block: block('A1'), what: 'all' }));
  expect(worksheetOf(gone, 'w1').rows).toEqual([]);
});

test('limits of different dimensions, or low above high, are refused', () => {
  const start = sample({ A1: '1 mm' });
  const set = (low: string, high: string) =>
    setLimits(start, { worksheet: 'w1', block: block('A1'), limits: { low, high } });
  expect(refusalOf(set('1 mm', '3 min'))).toContain('differ');
  expect(refusalOf(set('5 mm', '3 mm'))).toContain('above');
  expect(refusalOf(set('soon', '3 mm'))).toContain('"soon"');
});

test('a formula can be shown at the machine, not changed', () => {
  const start = sample({ A1: '=B1' });
  const set = (place: 'changed' | 'shown') =>
    setMachinePlace(start, { worksheet: 'w1', block: block('A1'), machine: { place } });
  expect(refusalOf(set('changed'))).toContain('A1 holds a formula');
  expect(isRefusal(set('shown'))).toBe(false);
});

test('a pasted block is one step, and one text with two readings stops it with the cell named', () => {
  const start = emptyNotebook({ id: 'n' });
  const typedBlock = [
    ['D', '63 mm'],
    ['fz', '1.234'],
  ];
  const answer = enter(start, { worksheet: 'w1', row: 0, column: 0, typed: typedBlock, decimalMark: ',' });
  expect(refusalOf(answer)).toMatch(/^B2: 1\.234 can be read in two ways/);
});

test('what is typed beyond the last row makes the worksheet grow', () => {
  const notebook = sample({ A100: '1' });
  expect(worksheetOf(notebook, 'w1').rowCount).toBe(100);
});

test('the limits of a notebook are refused in clear words', () => {
  const start = emptyNotebook({ id: 'n' });
  const rows = Array.from({ length: 1000 }, () => Array.from({ length: 51 }, () => '1'));
  expect(refusalOf(enter(start, { worksheet: 'w1', row: 0, column: 0, typed: rows }))).toContain(
    `51000 filled cells; ${LIMITS.filledCells} is the most`,
  );
  expect(refusalOf(enter(start, { worksheet: 'w1', row: 1999, column: 0, typed: [['1'], ['2']] }))).toContain(
    'beyond row 2000',
  );
});

test('a block is sorted by quantities whatever their units; blanks come last', () => {
  const start = sample({ A1: '2 in', A2: '10 mm', A4: '0.02 m', B1: 'x', B2: 'y', B3: 'blank', B4: 'z' });
  const keys = [{ column: 0 }];
  const sorted = done(start, sort(start, { worksheet: 'w1', block: block('A1:B4'), keys }));
  expect(['B1', 'B2', 'B3', 'B4'].map((each) => contentAt(sorted, each))).toEqual(['y', 'z', 'x', 'blank']);
});

test('sorting takes formulas of their own row along, and refuses others with the cell named', () => {
  const start = sample({ A1: '3', A2: '1', B1: '=A1*$D$1', B2: '=A2*$D$1', D1: '2' });
  const keys = [{ column: 0 }];
  const sorted = done(start, sort(start, { worksheet: 'w1', block: block('A1:B2'), keys }));
  expect([contentAt(sorted, 'B1'), contentAt(sorted, 'B2')]).toEqual(['=A1*$D$1', '=A2*$D$1']);
  expect(contentAt(sorted, 'A1')).toBe('1');
  const crossing = typed(start, { B2: '=A1+A2' });
  expect(refusalOf(sort(crossing, { worksheet: 'w1', block: block('A1:B2'), keys }))).toContain('B2 refers');
});

test('a worksheet of another notebook comes with words about what reads otherwise here', () => {
  const inch = emptyNotebook({ id: 'other', reading: 'inch', worksheetTitle: 'Feeds', currency: 'USD' });
  const other = typed(inch, { A1: '80 USD/h', A2: '=Feeds.A1*Costs.B1' });
  const here = sample();
  const answer = copyWorksheetFrom(here, { from: other, worksheet: 'w1' });
  const after = done(here, answer);
  expect(after.worksheets.map(({ id, title }) => [id, title])).toEqual([
    ['w1', 'Feeds'],
    ['w2', 'Feeds 2'],
  ]);
  expect(contentAt(after, 'A2', 'w2')).toBe("='Feeds 2'.A1*Costs.B1");
  expect(answer).toHaveProperty('notice', expect.stringMatching(/inch.*USD.*Costs/));
});

test('a block of another notebook is pasted like a copy', () => {
  const other = typed(emptyNotebook({ id: 'other' }), { A1: '=B1', B1: '5 mm' });
  const here = sample();
  const clipboard = copy(other, { worksheet: 'w1', block: block('A1:B1') });
  const after = done(here, paste(here, { clipboard, worksheet: 'w1', ...placeOf('C3') }));
  expect([contentAt(after, 'C3'), contentAt(after, 'D3')]).toEqual(['=D3', '5 mm']);
});

test('F23 an acknowledgement stays when rows are inserted above, and falls when the formula is changed', () => {
  const start = sample({ A2: '=B2+B3' });
  const caution = { key: 'empty B3', text: 'B3 is empty, counted as 0', reason: 'measured tomorrow' };
  const seen = done(start, acknowledge(start, { worksheet: 'w1', ...placeOf('A2'), ...caution }));
  const moved = done(seen, insertLines(seen, { worksheet: 'w1', axis: 'row', at: 0, count: 1 }));
  expect(at(moved, 'A3')?.acknowledged).toEqual([{ ...caution, content: '=B3+B4' }]);
  expect(at(typed(moved, { A3: '=B3' }), 'A3')?.acknowledged).toBeUndefined();
});

test('a choice takes one of its texts, and names them when it gets another', () => {
  const start = sample({ A1: 'down' });
  const choices = ['down', 'up'];
  const chosen = done(start, setChoices(start, { worksheet: 'w1', block: block('A1'), choices }));
  const enterText = (text: string) => enter(chosen, { worksheet: 'w1', ...placeOf('A1'), typed: text });
  expect(contentAt(done(chosen, enterText('up')), 'A1')).toBe('up');
  expect(refusalOf(enterText('across'))).toBe('A1: "across" is none of the choices: down, up.');
  expect(at(done(chosen, enterText('=B1')), 'A1')).toEqual({ content: '=B1' });
});
