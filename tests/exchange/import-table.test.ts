import { expect, test } from 'vitest';
import { emptyNotebook, isRefusal } from '../../src/document/index.ts';
import { understandTable, writeCsvMetadata } from '../../src/exchange/index.ts';
import type { TableOptions, UnderstoodTable } from '../../src/exchange/index.ts';

function understood(text: string, options?: TableOptions): UnderstoodTable {
  const table = understandTable(text, options);
  if (isRefusal(table)) throw new Error(table.message);
  return table;
}

test('separator, decimal mark, headers and units in brackets are found', () => {
  const table = understood('t [min];VB [um];note\n1,5;80;fine\n10;120,25;"a; b"\n');
  expect(table).toMatchObject({ delimiter: ';', decimalMark: ',', asksDecimalMark: false, headerLines: 1 });
  expect(table.columns.map(({ header, unit }) => [header, unit])).toEqual([
    ['t', 'min'],
    ['VB', 'um'],
    ['note', ''],
  ]);
  expect(table.contents).toEqual([
    ['t', 'VB', 'note'],
    ['1.5 min', '80 um', 'fine'],
    ['10 min', '120.25 um', 'a; b'],
  ]);
});

test('a units line under or over the headers is understood', () => {
  const under = understood('n,F\n1/min,N\n100,5.5\n');
  const over = understood('1/min,N\nn,F\n100,5.5\n');
  expect(under.contents).toEqual([
    ['n', 'F'],
    ['100 1/min', '5.5 N'],
  ]);
  expect(over.contents).toEqual(under.contents);
});

test('"1.234" and "1,234" are not read without a choice', () => {
  const table = understood('a;b\n1.234;x\n5.678;y\n');
  expect(table.asksDecimalMark).toBe(true);
  expect(table.example).toEqual({ text: '1.234', readings: ['1.234', '1234'] });
  expect(understood('a;b\n1.234;x\n', { decimalMark: ',' }).contents[1]).toEqual(['1234', 'x']);
  expect(understood('a;b\n1.234;x\n', { decimalMark: '.' }).contents[1]).toEqual(['1.234', 'x']);
});

test('one number that tells the mark is enough for all', () => {
  expect(understood('a;b\n1.234;x\n0.5;y\n')).toMatchObject({ decimalMark: '.', asksDecimalMark: false });
  expect(understood('a;b\n1.234;x\n1.234,5;y\n').contents[1]?.[0]).toBe('1234');
  expect(understood('a\tb\n1,234,567\tx\n').contents[1]?.[0]).toBe('1234567');
  expect(understood('a;b\n12 500,5;x\n').contents[1]?.[0]).toBe('12500.5');
});

test('an unknown unit is asked for, with near ones', () => {
  const table = understood('VB [mym]\n80\n');
  expect(table.columns[0]).toMatchObject({ unit: 'mym', unknownUnit: true });
  const chosen = understood('VB [mym]\n80\n', { units: new Map([[0, 'um']]) });
  expect(chosen.columns[0]?.unknownUnit).toBe(false);
  expect(chosen.contents[1]).toEqual(['80 um']);
});

test('words in round brackets are no unit, and a formula in a table is text', () => {
  const table = understood('force (left),note\n5.5,=1+1\n');
  expect(table.columns[0]).toMatchObject({ header: 'force (left)', unit: '' });
  expect(table.contents[1]).toEqual(['5.5', "'=1+1"]);
});

test('a table without headers, too large or empty is said so', () => {
  expect(understood('1.5,2\n3,4\n').headerLines).toBe(0);
  expect(understandTable('')).toEqual({ message: 'The table is empty.' });
  expect(understandTable('1\n'.repeat(2001))).toHaveProperty(
    'message',
    expect.stringContaining('2001 lines'),
  );
});

test('the metadata of a list names its columns (W3C Metadata Vocabulary for Tabular Data, 2015, from memory)', () => {
  const metadata: unknown = JSON.parse(
    writeCsvMetadata(emptyNotebook({ id: 'n', title: 'Trial' }), 'trial.csv'),
  );
  expect(metadata).toMatchObject({
    '@context': 'http://www.w3.org/ns/csvw',
    url: 'trial.csv',
    tableSchema: { primaryKey: ['worksheet', 'cell'] },
  });
});
