import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { isRefusal, worksheetOf } from '../../src/document/index.ts';
import type { Cell, Notebook } from '../../src/document/index.ts';
import { setSparse, tidyCell, tidyRow, trimmed } from '../../src/document/index.ts';
import { readNotebook, writeNotebook } from '../../src/exchange/index.ts';
import type { ReadNotebook, StoredResults } from '../../src/exchange/index.ts';

const fixture = readFileSync(new URL('./fixtures/format-1.json.txt', import.meta.url), 'utf8');

function opened(text: string): ReadNotebook {
  const read = readNotebook(text);
  if (isRefusal(read)) throw new Error(read.message);
  return read;
}

function refused(text: string): string {
  const read = readNotebook(text);
  if (!isRefusal(read)) throw new Error('opened');
  return read.message;
}

const edited = (change: (file: Record<string, unknown>) => void): string => {
  const file = JSON.parse(fixture) as Record<string, unknown>;
  change(file);
  return JSON.stringify(file);
};

test('the fixture of format 1 is read and written again byte for byte', () => {
  const { notebook, results, newer } = opened(fixture);
  expect(newer).toBeUndefined();
  expect(notebook.title).toBe('Face milling trial (invented shop)');
  const feeds = worksheetOf(notebook, 'w1');
  expect(feeds.names.map(({ name, symbol }) => [name, symbol])).toEqual([
    ['D', undefined],
    ['kappa_r', 'kappa_r'],
  ]);
  expect(feeds.rows[0]?.[1]).toEqual({ content: '63.0 mm', role: 'given', source: 'drawing' });
  expect(feeds.widths).toEqual([undefined, 140]);
  expect(results.get('w1')?.get('B4')).toMatchObject({ value: 0.063, unit: 'mm' });
  expect(writeNotebook(notebook, results)).toBe(fixture);
});

test('unknown keys of each level are kept unread and written back in their places', () => {
  const { notebook } = opened(fixture);
  expect(notebook.kept).toEqual({ recordings: [{ a: 1 }] });
  expect(notebook.worksheets[1]?.kept).toEqual({ tint: 'blue' });
  expect(notebook.worksheets[1]?.rows[0]?.[0]?.kept).toEqual({ zoom: { x: [1, 2] } });
});

test('one cell stands on one line, and results stand apart from the contents', () => {
  expect(fixture).toContain('\n    "B4": {"content":"=B1","unit":"mm"},\n');
  expect(fixture.indexOf('"results"')).toBeLessThan(fixture.indexOf('"worksheets"'));
  const contents = writeNotebook(opened(fixture).notebook);
  expect(contents).not.toContain('0.063');
});

test('a title __proto__ is just a title; as a key it is refused at any depth', () => {
  const { notebook } = opened(fixture);
  expect(notebook.worksheets.map(({ title }) => title)).toEqual(['Feeds', '__proto__']);
  for (const key of ['__proto__', 'constructor', 'prototype']) {
    expect(refused(fixture.replace('"tint"', `"${key}"`))).toContain(`the key ${key}`);
    expect(refused(fixture.replace('"zoom"', `"${key}"`))).toContain(`the key ${key}`);
  }
});

test('a file cut anywhere is refused with one clear sentence', () => {
  for (let length = 2; length < fixture.length - 2; length += 7) {
    expect(refused(fixture.slice(0, length))).toMatch(
      /^The file ends too early, in line \d+: a part is missing/,
    );
  }
});

test('what is no notebook, or damaged inside, is said so', () => {
  expect(refused('')).toContain('not a notebook');
  expect(refused('a;b\n1;2')).toContain('not a notebook');
  expect(refused('{"a": 1}')).toContain('names no format');
  expect(refused(fixture.replace('"format": 1,', '"format" 1,'))).toContain('damaged');
});

test('limits: 40 MB, texts of 100 kB, depth 20, filled cells, addresses, lengths', () => {
  expect(refused(`{"a":"${'x'.repeat(40 * 1024 * 1024)}"}`)).toContain('40 MB');
  expect(refused(edited((file) => Object.assign(file, { more: 'x'.repeat(102_401) })))).toContain('100 kB');
  expect(refused(edited((file) => Object.assign(file, { more: 'µ'.repeat(60_000) })))).toContain('100 kB');
  const deep = `${'['.repeat(25)}${']'.repeat(25)}`;
  expect(refused(fixture.replace('"tint": "blue"', `"tint": ${deep}`))).toContain('20 deep');
  expect(refused(fixture.replace('"B4": {"content"', '"BM4": {"content"'))).toContain('"BM4" is no cell');
  expect(refused(fixture.replace('"content":"=B1"', `"content":"=${'1+'.repeat(2000)}1"`))).toContain(
    'B4, content',
  );
  expect(refused(fixture.replace('"id": "w2"', '"id": "w1"'))).toContain('w1 stands twice');
  expect(refused(fixture.replace('"title": "__proto__"', '"title": "Feeds"'))).toContain(
    'Feeds stands twice',
  );
  expect(refused(fixture.replace('"name":"D"', '"name":"D1"'))).toContain('D1 is the address');
});

test('what is wrong in a place is said in words that name it, short and on one line', () => {
  const changed = (from: string, to: string): string => {
    expect(fixture).toContain(from);
    return refused(fixture.replace(from, to));
  };
  const place = 'The file is not opened: worksheet Feeds, B2, ';
  expect(changed('"digits":1,', '')).toBe(`${place}format.digits: this entry is missing.`);
  expect(changed('"digits":1', '"digits":"1"')).toBe(`${place}format.digits: it is not a number.`);
  expect(changed('"digits":1', '"digits":16')).toBe(
    `${place}format.digits: the number is larger than 15, the most.`,
  );
  expect(changed('"digits":1', '"digits":0.5')).toBe(`${place}format.digits: it is no whole number.`);
  expect(changed('"digits":1', '"digits":1,"colour":1')).toBe(
    `${place}format.colour: this entry is not known.`,
  );
  expect(changed('"display": "inch"', `"display": "${'x'.repeat(5000)}"`)).toBe(
    'The file is not opened: notebook, display: it is none of metric, inch.',
  );
  expect(changed('"id": "w1"', '"id": "1"')).toContain('id: an id is w and a number.');
  expect(changed('"name":"D"', '"name":"D1"')).toMatch(/Try D_1\.$/);
  expect(changed('"title": "Feeds",', '"title": "two\\nlines", "rows": 0,')).not.toContain('\n');
});

test('a number that no file can give back is refused, and -0 comes back as it was', () => {
  expect(refused(fixture.replace('[{"a":1}]', '[{"a":1e400}]'))).toContain('larger than 1.7e308');
  const negative = fixture.replace('[{"a":1}]', '[{"a":-0}]');
  const { notebook, results } = opened(negative);
  expect(writeNotebook(notebook, results)).toBe(negative);
});

test('a cell has one address: B01 beside B1 is refused, not laid over it', () => {
  expect(refused(fixture.replace('"B2": {', '"B01": {'))).toContain('"B01" is no cell');
});

test('a newer format opens for reading with its stored results; one that can not be understood says what to do', () => {
  const newer = opened(fixture.replace('"format": 1', '"format": 2'));
  expect(newer.newer).toBe(true);
  expect(newer.results.get('w1')?.size).toBeGreaterThan(0);
  const strange = edited((file) => Object.assign(file, { format: 3, worksheets: { w1: {} } }));
  expect(refused(strange)).toContain('newer version of the program (format 3');
});

const text = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 12 }),
  fc.constantFrom('12.5 mm', '=A1*2', "'=x", '__proto__', '2026-03-09', '5 %', '"', '\u2028'),
);
const cells = fc.record(
  {
    content: text,
    unit: fc.constantFrom('mm', 'in', 'kW/(cm3/min)'),
    role: fc.constantFrom('given', 'worked', 'measured', 'choice', 'note'),
    format: fc.constantFrom(
      { type: 'significant' as const, digits: 3 },
      { type: 'decimals' as const, digits: 0 },
      { type: 'fraction' as const, denominator: 64 },
    ),
    choices: fc.array(text, { minLength: 1, maxLength: 3 }),
    limits: fc.record({ low: text, lowText: text, high: text, highText: text }, { requiredKeys: [] }),
    source: text,
    label: text,
    note: text,
    machine: fc.constantFrom({ place: 'shown' as const }, { place: 'changed' as const, step: '0.1 mm' }),
    acknowledged: fc.array(fc.record({ key: text, reason: text, text, content: text }), {
      minLength: 1,
      maxLength: 2,
    }),
  },
  { requiredKeys: ['content'] },
);
const filled = fc.array(fc.tuple(fc.nat(30), fc.nat(10), cells), { maxLength: 20 });
const title = fc.string({ minLength: 1, maxLength: 10 });

const notebooks: fc.Arbitrary<Notebook> = fc
  .record({
    title,
    reading: fc.constantFrom('metric' as const, 'inch' as const),
    sheets: fc.uniqueArray(fc.record({ title, filled, common: fc.boolean() }), {
      minLength: 1,
      maxLength: 3,
      selector: (sheet) => sheet.title,
    }),
  })
  .map(({ title: name, reading, sheets }) => ({
    id: 'random',
    title: name,
    reading,
    display: reading,
    currency: 'EUR',
    worksheets: sheets.map((sheet, index) => {
      const rows: (Cell | undefined)[][] = Array.from({ length: 31 }, () => []);
      for (const [row, column, cell] of sheet.filled) setSparse(rows[row] ?? [], column, tidyCell(cell));
      return {
        id: `w${index + 1}`,
        title: sheet.title,
        common: sheet.common,
        rowCount: 60,
        columnCount: 12,
        widths: trimmed([undefined, 80, undefined]),
        rows: trimmed(rows.map(tidyRow)),
        names: [{ name: 'f_z', target: { row: 1, column: 2, rows: 3, columns: 1 }, symbol: 'f_z' }],
      };
    }),
  }));

test('random notebooks come back equal, and the same bytes are written again', () => {
  fc.assert(
    fc.property(notebooks, (notebook) => {
      const results: StoredResults = new Map([
        ['w1', new Map([['L60', { value: 0.1 + 0.2, kind: 'length', unit: 'mm' }]])],
      ]);
      const written = writeNotebook(notebook, results);
      const read = opened(written);
      expect(read.notebook).toEqual(notebook);
      expect(read.results).toStrictEqual(results);
      expect(writeNotebook(read.notebook, read.results)).toBe(written);
    }),
    { seed: 31, numRuns: 300 },
  );
});

test('any text at all is answered with a notebook or one sentence, never thrown', () => {
  fc.assert(
    fc.property(fc.nat(fixture.length), fc.nat(fixture.length), fc.string({ maxLength: 5 }), (a, b, put) => {
      const read = readNotebook(fixture.slice(0, Math.min(a, b)) + put + fixture.slice(Math.max(a, b)));
      expect(isRefusal(read) ? read.message.length : read.notebook.worksheets.length).toBeGreaterThan(0);
    }),
    { seed: 8, numRuns: 1000 },
  );
});
