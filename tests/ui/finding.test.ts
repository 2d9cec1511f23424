/** Finding, replacing and going: over contents as they are stored, one step, nothing broken in silence. */

import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  apply,
  cellAt,
  defineName,
  emptyNotebook,
  enter,
  findWorksheet,
  isRefusal,
  setChoices,
} from '../../src/document/index.ts';
import type { Notebook, Refusal, Transaction } from '../../src/document/index.ts';
import { addressText, parse } from '../../src/expression/index.ts';
import { destinations } from '../../src/ui/destinations.ts';
import { find, nextOf, replace, type Query } from '../../src/ui/finding.ts';
import { setDecimalMark } from '../../src/ui/number-locale.ts';
import { takenAnew } from '../../src/ui/taking-table.ts';

function after(notebook: Notebook, answer: Transaction | Refusal): Notebook {
  if (isRefusal(answer)) throw new Error(answer.message);
  return apply(notebook, answer.changes);
}

function filled(rows: readonly (readonly string[])[], more: readonly (readonly string[])[] = []): Notebook {
  const start = emptyNotebook({ id: 'n', worksheetTitle: 'Feeds' });
  const first = after(start, enter(start, { worksheet: 'w1', row: 0, column: 0, typed: rows }));
  return more.length > 0 ? after(first, takenAnew(first, 'Tool trial', more)) : first;
}

const content = (notebook: Notebook, row: number, column: number, worksheet = 'w1'): string | undefined => {
  const found = findWorksheet(notebook, worksheet);
  return found && cellAt(found, row, column)?.content;
};
const query = (text: string, more: Partial<Query> = {}): Query => ({
  text,
  matchCase: false,
  whole: false,
  formulas: true,
  ...more,
});
const found = (notebook: Notebook, asked: Query): string[] =>
  find(notebook, asked).map(({ worksheet, row, column }) => `${worksheet} ${addressText(column, row)}`);

test('contents are found in the order of worksheets, rows and columns, by case, whole, with and without formulas', () => {
  const notebook = filled(
    [
      ['Feed', '0.1 mm'],
      ['=B1*2', 'feed per tooth'],
    ],
    [['feed']],
  );
  expect(found(notebook, query('feed'))).toEqual(['w1 A1', 'w1 B2', 'w2 A1']);
  expect(found(notebook, query('feed', { matchCase: true }))).toEqual(['w1 B2', 'w2 A1']);
  expect(found(notebook, query('feed', { whole: true }))).toEqual(['w1 A1', 'w2 A1']);
  expect(found(notebook, query('feed', { worksheet: 'w2' }))).toEqual(['w2 A1']);
  expect(found(notebook, query('B1'))).toEqual(['w1 A2']);
  expect(found(notebook, query('B1', { formulas: false }))).toEqual([]);
  expect(found(notebook, query(''))).toEqual([]);
});

test('letters that mean something in patterns are letters', () => {
  const notebook = filled([['a.b', 'axb', '(x) [y] $& ^|\\']]);
  expect(found(notebook, query('a.b'))).toEqual(['w1 A1']);
  const { transaction } = replace(notebook, query('(x) [y] $& ^|\\'), '$1 $&', find(notebook, query('(x)')));
  expect(content(after(notebook, transaction), 0, 2)).toBe('$1 $&');
});

test('a replacement is one step over all worksheets, and what would break is left and named', () => {
  const notebook = filled([['12 mm', '=SUM(A1)', "'12", '2026-03-09', '12 in']], [['=Feeds.A1+12 mm']]);
  const all = find(notebook, query('12'));
  const { transaction, left } = replace(notebook, query('12'), '15', all);
  const changed = after(notebook, transaction);
  expect([content(changed, 0, 0), content(changed, 0, 2), content(changed, 0, 4)]).toEqual([
    '15 mm',
    "'15",
    '15 in',
  ]);
  expect(content(changed, 0, 0, 'w2')).toBe('=Feeds.A1+15 mm');
  expect(left).toEqual([]);
  const bracket = replace(notebook, query(')'), '', find(notebook, query(')')));
  expect(bracket.left).toHaveLength(1);
  expect(bracket.left[0]?.why).toContain('could not be read');
  const unit = replace(notebook, query('mm'), 'mmm', find(notebook, query('mm', { formulas: false })));
  expect(unit.left[0]?.why).toContain('unit');
  const date = replace(notebook, query('-03-'), '-13-', find(notebook, query('2026')));
  expect(date.left[0]?.why).toContain('text');
  const formula = replace(notebook, query('='), '', find(notebook, query('=SUM')));
  expect(formula.left[0]?.why).toContain('formula no more');
});

test('with a decimal comma numbers are found and replaced as they are read, and stored as everywhere', () => {
  const notebook = filled([['1.5 mm', '=SUM(A1;2.5 mm)', 'M8x1.25']]);
  setDecimalMark(',');
  try {
    expect(found(notebook, query('1,5'))).toEqual(['w1 A1']);
    const all = replace(notebook, query(',5'), ',75', find(notebook, query(',5')));
    const changed = after(notebook, all.transaction);
    expect([content(changed, 0, 0), content(changed, 0, 1), content(changed, 0, 2)]).toEqual([
      '1.75 mm',
      '=SUM(A1;2.75 mm)',
      'M8x1.25',
    ]);
  } finally {
    setDecimalMark('.');
  }
});

test('a choice cell takes only its choices from a replacement too', () => {
  const start = filled([['C45']]);
  const block = { row: 0, column: 0, rows: 1, columns: 1 };
  const notebook = after(start, setChoices(start, { worksheet: 'w1', block, choices: ['C45', 'C60'] }));
  const good = replace(notebook, query('45'), '60', find(notebook, query('45')));
  expect(content(after(notebook, good.transaction), 0, 0)).toBe('C60');
  expect(replace(notebook, query('45'), '70', find(notebook, query('45'))).left).toHaveLength(1);
});

test('whatever is replaced, every formula that could be read can be read afterwards', () => {
  const formula = fc.constantFrom(
    '=A1*2',
    '=SUM(A1:B2)',
    '=IF(A1>2;"a";"b")',
    '=12 mm + 3/8 in',
    "='Tool trial'.A1",
    '5 mm',
    'text',
  );
  const part = fc.oneof(
    fc.constantFrom('A', '(', ')', '"', ';', 'mm', '1', '=', ':', '2', ' '),
    fc.string({ maxLength: 3 }),
  );
  fc.assert(
    fc.property(fc.array(formula, { minLength: 1, maxLength: 6 }), part, part, (cells, text, by) => {
      const notebook = filled([cells]);
      const { transaction, left } = replace(notebook, query(text), by, find(notebook, query(text)));
      if (isRefusal(transaction)) return;
      const changed = apply(notebook, transaction.changes);
      cells.forEach((was, column) => {
        const is = content(changed, 0, column) ?? '';
        if (was.startsWith('=')) expect(is === '' || parse(is).problem === undefined).toBe(true);
      });
      expect(left.every(({ why }) => why.length > 5)).toBe(true);
    }),
    { seed: 3, numRuns: 1500 },
  );
});

test('the next place is found round the end, forwards and backwards', () => {
  const notebook = filled(
    [
      ['x', ''],
      ['', 'x'],
    ],
    [['x']],
  );
  const places = find(notebook, query('x'));
  const at = (
    row: number,
    column: number,
    worksheet = 'w1',
  ): { worksheet: string; row: number; column: number } => ({ worksheet, row, column });
  expect(nextOf(notebook, places, at(0, 0), 1)).toBe(1);
  expect(nextOf(notebook, places, at(1, 1), 1)).toBe(2);
  expect(nextOf(notebook, places, at(0, 0, 'w2'), 1)).toBe(0);
  expect(nextOf(notebook, places, at(0, 0), -1)).toBe(2);
  expect(nextOf(notebook, [], at(0, 0), 1)).toBe(-1);
});

test('one goes to addresses, ranges, names and worksheets by typing what formulas say', () => {
  const start = filled([['0.1 mm']], [['1']]);
  const target = { row: 4, column: 1, rows: 1, columns: 1 };
  const named = after(start, defineName(start, { worksheet: 'w1', name: 'fz', target }));
  const first = (text: string, here = 'w1'): string => {
    const [place] = destinations(named, here, text);
    if (!place) return 'nowhere';
    const { row, column, rows, columns } = place.block;
    return `${place.worksheet} ${addressText(column, row)} ${rows}x${columns}`;
  };
  expect(first('b7')).toBe('w1 B7 1x1');
  expect(first('C9:B2')).toBe('w1 B2 8x2');
  expect(first('fz')).toBe('w1 B5 1x1');
  expect(first('fz', 'w2')).toBe('w1 B5 1x1');
  expect(first('Feeds.fz', 'w2')).toBe('w1 B5 1x1');
  expect(first("'Tool trial'.A1")).toBe('w2 A1 1x1');
  expect(first('tool')).toBe('w2 A1 1x1');
  expect(first('ZZ9')).toBe('nowhere');
  expect(first('A1999')).toBe('nowhere');
  expect(destinations(named, 'w1', '').map(({ label }) => label)).toEqual(['Feeds', 'fz', 'Tool trial']);
});
