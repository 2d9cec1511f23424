/** Results in a file carry the version of the program that computed them; results alone and what the program kept itself are read within their own limits. */

import { expect, test } from 'vitest';
import { apply, emptyNotebook, enter, isRefusal, type Notebook } from '../../src/document/index.ts';
import {
  FILE_LIMITS,
  readNotebook,
  readResults,
  writeNotebook,
  writeResults,
} from '../../src/exchange/index.ts';
import type { StoredResults } from '../../src/exchange/index.ts';

function formulas(): Notebook {
  const before = emptyNotebook({ id: 'n1', title: 'Trial' });
  const answer = enter(before, { worksheet: 'w1', row: 0, column: 0, typed: '=2 mm*3' });
  if (isRefusal(answer)) throw new Error(answer.message);
  return apply(before, answer.changes);
}

const results: StoredResults = new Map([
  ['w1', new Map([['A1', { value: 0.006, kind: 'length', unit: 'mm' }]])],
]);

test('2 the version that computed the results is read and written back; without results it is left out', () => {
  const notebook = formulas();
  const text = writeNotebook(notebook, results, '1.2.3+abc');
  const read = readNotebook(text);
  if (isRefusal(read)) throw new Error(read.message);
  expect(read.program).toBe('1.2.3+abc');
  expect(read.notebook.kept).toBeUndefined();
  expect(writeNotebook(read.notebook, read.results, read.program)).toBe(text);
  expect(writeNotebook(notebook, new Map(), '1.2.3+abc')).toBe(writeNotebook(notebook));
});

test('3 results alone come back as they went; damaged or foreign text gives none', () => {
  const notebook = formulas();
  const text = [...writeResults(notebook, results)].join('');
  expect(readResults(text, notebook)).toEqual(results);
  for (const other of [
    '',
    '[]',
    text.slice(0, -5),
    '{"w1":{"A1":5}}',
    '{"w1":{"A0":{"value":1,"kind":"","unit":""}}}',
  ])
    expect(readResults(other, notebook).size).toBe(0);
  expect(readResults('{"w9":{"A1":{"value":1,"kind":"","unit":""}}}', notebook).size).toBe(0);
});

test('3 a text that is larger than a file is read where the program kept it itself, and only there', () => {
  const notebook: Notebook = {
    ...formulas(),
    kept: Object.fromEntries(
      Array.from({ length: Math.ceil(FILE_LIMITS.file / 90_000) }, (_, k) => [
        `later${k}`,
        'x'.repeat(90_000),
      ]),
    ),
  };
  const text = writeNotebook(notebook);
  expect(text.length).toBeGreaterThan(FILE_LIMITS.file);
  expect(readNotebook(text)).toMatchObject({
    message: expect.stringContaining('the most that is read') as string,
  });
  expect(readNotebook(text, 'own')).toMatchObject({ notebook: { id: 'n1' } });
});

test('3 a photograph may be 170 kB of text, any other text 100 kB', () => {
  const of = (size: number, key: string): string => JSON.stringify({ format: 1, [key]: 'A'.repeat(size) });
  const tooLong = (text: string): boolean => {
    const read = readNotebook(text);
    return 'message' in read && /longer than/.test(read.message);
  };
  expect(tooLong(of(150_000, 'data'))).toBe(false);
  expect(tooLong(of(175_000, 'data'))).toBe(true);
  expect(tooLong(of(110_000, 'note'))).toBe(true);
});
