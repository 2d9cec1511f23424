/** Values put into a formula: single ones, short ranges, texts, powers and quotients, on whichever worksheet the cell stands. */

import { expect, test } from 'vitest';
import { apply, cellAt, emptyNotebook, enter, isRefusal } from '../../src/document/index.ts';
import type { Cell } from '../../src/document/index.ts';
import { beforeRest, operandWords, putIn } from '../../src/ui/put-in.ts';
import type { KnownResult } from '../../src/ui/results.ts';
import type { Session } from '../../src/ui/session.ts';

const VALUES = new Map<string, Partial<KnownResult>>([
  ['w1 0 0', { value: 0.05, unit: 'mm', kind: 'length' }],
  ['w1 1 0', { value: -0.004, unit: 'mm', kind: 'length' }],
  ['w1 2 0', { value: 'deep', unit: '', kind: 'text' }],
  ['w1 3 0', { value: null, unit: '', kind: 'error', error: { code: '#UNIT!', message: 'x' } }],
  ['w1 4 0', { value: 3, unit: '', kind: 'number' }],
]);

/** A session of which only what is read here exists. */
function session(formula: string): { readonly session: Session; readonly cell: Cell } {
  const start = emptyNotebook({ id: 'n', worksheetTitle: 'Feeds' });
  const answer = enter(start, {
    worksheet: 'w1',
    row: 0,
    column: 0,
    typed: [['50 mm', formula], ['-4 mm'], ['deep'], ['=A1+1 s'], ['3']],
  });
  if (isRefusal(answer)) throw new Error(answer.message);
  const notebook = apply(start, answer.changes);
  const [worksheet] = notebook.worksheets;
  const cell = worksheet && cellAt(worksheet, 0, 1);
  if (!cell) throw new Error('no formula');
  const results = {
    at: (id: string, row: number, column: number) => VALUES.get(`${id} ${row} ${column}`),
  };
  return { session: { notebook, worksheet, results } as unknown as Session, cell };
}
const put = (formula: string): string | undefined => {
  const made = session(formula);
  return putIn(made.session, made.cell);
};

test('a value stands with its unit where its reference stood, a negative one in brackets', () => {
  expect(put('=A1*2')).toBe('=50 mm *2');
  expect(put('=2 * A2')).toBe('=2 * (-4 mm)');
  expect(put('=Feeds.A1 + A5')).toBe('=50 mm + 3');
  expect(put('="is " & A3')).toBe('="is " & "deep"');
});

test('a power takes the whole of the value, and a quotient divides by it', () => {
  expect(put('=A1^2')).toBe('=(50 mm)^2');
  expect(put('=A2^2')).toBe('=(-4 mm)^2');
  expect(put('=A1/A5')).toBe('=50 mm /3');
  expect(beforeRest('4 mm', '^2')).toBe('(4 mm)');
  expect(beforeRest('4 mm', ' + 1')).toBe('4 mm');
});

test('a short range of one unit is a list; with a text or an error in it, or a long one, it stays a range', () => {
  expect(put('=SUM(A1:A2)')).toBe('=SUM({50|-4} mm)');
  expect(put('=COUNT(A1:A3)')).toBeUndefined();
  expect(put('=SUM(A1:A200)+A5')).toBe('=SUM(A1:A200)+3');
});

test('what is not known or an error keeps its name', () => {
  expect(put('=A4*2')).toBeUndefined();
  expect(put('=D9*A5')).toBe('=D9*3');
  expect(put('=2+2')).toBeUndefined();
});

test('a list says the first values of a range and how many there are', () => {
  const made = session('=SUM(A1:A5)');
  expect(operandWords(made.session, made.cell, 'A1:A2')).toBe('50 mm; −4 mm');
  expect(operandWords(made.session, made.cell, 'A1:A40')).toMatch(
    /^50 mm; −4 mm; deep; #UNIT! x; 3; empty … 40 cells$/,
  );
});
