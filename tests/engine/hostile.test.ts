/** Content that is made to break a program: each cell a clear error or the right value, while the rest computes. */

import { expect, test } from 'vitest';
import { addressText } from '../../src/expression/index.ts';
import { at, opened, openedPages, typed } from './notebook.ts';
import type { Cells } from './notebook.ts';

const BESIDE = { B1: '3', B2: '=B1*2' };

function beside(content: string): ReturnType<typeof opened> {
  const engine = opened({ A1: content, ...BESIDE });
  expect(engine.result(at('B2')).value).toBe(6);
  engine.apply([typed('B1', '4')]);
  expect(engine.result(at('B2')).value).toBe(8);
  return engine;
}

test.each([
  ['a range beyond the sheet', '=SUM(B1:ZZ40000)'],
  ['3 000 nested brackets', `=${'('.repeat(3000)}1${')'.repeat(3000)}`],
  ['1 000 nested brackets', `=${'('.repeat(1000)}1${')'.repeat(1000)}`],
  ['1 000 nested calls', `=${'ABS('.repeat(400)}1${')'.repeat(400)}`],
  ['a repetition of a thousand million letters', '=REPT("a";1e9)'],
  ['a range of more than 20 000 cells', '=SUM(C1:BL2000)'],
  ['a number that is too large', '=1e308*1e308'],
  ['an overlong formula', `=1${'+1'.repeat(5000)}`],
  ['a factorial that is too large', '=FACT(1e6)'],
])('%s is an error with words', (_what, content) => {
  const { value, error } = beside(content).result(at('A1'));
  expect(value).toBeNull();
  expect(error?.code).toMatch(/^#(?:LIMIT|NUM|NAME\?|VALUE|REF)/);
  expect(error?.message.length).toBeGreaterThan(10);
});

test('a pattern with 14 stars is searched for as plain text, at once', () => {
  const started = performance.now();
  const engine = opened({
    A1: `=COUNTIF(C1:C3;"${'a*'.repeat(14)}b")`,
    C1: 'a'.repeat(200),
    C2: `${'a*'.repeat(14)}b`,
    C3: 'b',
    ...BESIDE,
  });
  expect(engine.result(at('A1')).value).toBe(1);
  expect(engine.result(at('B2')).value).toBe(6);
  expect(performance.now() - started).toBeLessThan(1000);
});

test.each(['__proto__', 'constructor', 'toString', 'S1', "it's"])('a worksheet may be titled %s', (title) => {
  const quoted = `'${title.replaceAll("'", "''")}'`;
  const engine = openedPages([
    { title, cells: { A1: '21', B1: '=constructor*1' }, names: { constructor: 'A1' } },
    { title: 'Other', cells: { A1: `=${quoted}.A1*2`, A2: `=${quoted}.constructor` } },
  ]);
  expect(engine.result(at('A1', 'w2')).value).toBe(42);
  expect(engine.result(at('A2', 'w2')).value).toBe(21);
  expect(engine.result(at('B1')).value).toBe(21);
});

test('a chain of 2 000 cells written backwards computes', () => {
  const cells: Record<string, string> = { A2000: '1', ...BESIDE };
  for (let row = 1; row < 2000; row++) cells[`A${row}`] = `=A${row + 1}+1`;
  const engine = opened(cells);
  expect(engine.result(at('A1')).value).toBe(2000);
  engine.apply([typed('A2000', '11')]);
  expect(engine.result(at('A1')).value).toBe(2010);
  engine.apply([typed('A2000', '=A1')]);
  expect(engine.result(at('A1')).error?.code).toBe('#CIRCLE!');
  expect(engine.result(at('B2')).value).toBe(6);
});

test('2 000 running sums compute and follow an edit', () => {
  const cells: Record<string, string> = {};
  for (let row = 1; row <= 2000; row++) {
    cells[`A${row}`] = String(row);
    cells[`B${row}`] = `=SUM(A$1:A${row})`;
  }
  const engine = opened(cells);
  expect(engine.result(at('B2000')).value).toBe(2_001_000);
  engine.apply([typed('A1', '2')]);
  expect(engine.result(at('B2000')).value).toBe(2_001_001);
});

test('20 000 formulas entered one after another leave the engine right', () => {
  const engine = opened({ A1: '1' });
  for (let edit = 0; edit < 12_000; edit++) {
    engine.apply([typed(addressText(1 + (edit % 3), edit % 100), `=A1*${edit}`)]);
  }
  engine.apply([typed('A1', '2')]);
  expect(engine.result(at(addressText(1 + (11_999 % 3), 11_999 % 100))).value).toBe(2 * 11_999);
});

test('texts that look like formulas or numbers to other programs stay texts', () => {
  const texts: Cells = { A1: "'=1+1", A2: '+SUM', A3: '@x', A4: "'1000", A5: '10-32', A6: "''quoted" };
  const engine = opened({ ...texts, B1: '=A1', B4: '=A4&""', B5: '=A5' });
  expect(engine.result(at('A1')).value).toBe('=1+1');
  expect(engine.result(at('B1')).value).toBe('=1+1');
  expect(engine.result(at('A3')).value).toBe('@x');
  expect(engine.result(at('B4')).value).toBe('1000');
  expect(engine.result(at('B5')).value).toBe('10-32');
  expect(engine.result(at('A6')).value).toBe("'quoted");
});
