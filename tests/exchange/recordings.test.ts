import { expect, test } from 'vitest';
import { addRecording, freeRecordingTitle, isRefusal, partsOf } from '../../src/document/index.ts';
import type { Refusal } from '../../src/document/index.ts';
import {
  inPieces,
  readNotebook,
  readRecording,
  writeNotebook,
  writeRecordingCsv,
} from '../../src/exchange/index.ts';
import type { ReadRecording, RecordingOptions } from '../../src/exchange/index.ts';
import { done, sample } from '../document/sample.ts';

function answer(text: string, options: RecordingOptions = {}): ReadRecording | Refusal {
  const work = readRecording(text, options);
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

function read(text: string, options: RecordingOptions = {}): ReadRecording {
  const given = answer(text, options);
  if (isRefusal(given)) throw new Error(given.message);
  return given;
}

const words = (text: string, options: RecordingOptions = {}): string => {
  const given = answer(text, options);
  return isRefusal(given) ? given.message : 'read';
};

test('a log with units in its headers becomes columns with names and units', () => {
  const { columns, rows, leftOut, missing } = read(
    'Time [s];Force X (N);"Spindle load / %";Stamp\n0,00;12,5;40;08:00:01\n0,01;;41;08:00:02\n0,02;13,25;42;08:00:03\n',
  );
  expect(columns).toEqual([
    { name: 'Time', unit: 's', values: [0, 0.01, 0.02] },
    { name: 'Force_X', unit: 'N', values: [12.5, null, 13.25] },
    { name: 'Spindle_load', unit: '%', values: [40, 41, 42] },
  ]);
  expect([rows, leftOut, missing]).toEqual([3, ['Stamp'], 1]);
});

test('names that are none, or stand twice, are made such', () => {
  expect(read('F1,x,x,\n1,2,3,4\n5,6,7,8\n').columns.map(({ name }) => name)).toEqual([
    'F_1',
    'x',
    'x_2',
    'column_4',
  ]);
  expect(freeRecordingTitle(sample(), 'My log 3.csv')).toBe('My_log_3');
  const notebook = done(
    sample(),
    addRecording(sample(), { title: 'Log', columns: [{ name: 'a', values: [1] }] }),
  );
  expect(freeRecordingTitle(notebook, 'Log.csv')).toBe('Log_2');
  expect(freeRecordingTitle(notebook, '123')).toMatch(/^Recording/);
});

test('what has two readings or is not known is asked, and what is no log is refused', () => {
  expect(words('a\n1,234\n5,678\n', { delimiter: ';' })).toMatch(/two ways/);
  expect(read('a\n1,234\n5,678\n', { delimiter: ';', decimalMark: ',' }).columns[0]?.values).toEqual([
    1.234, 5.678,
  ]);
  expect(words('a [furlongs]\n1\n2\n')).toMatch(/unit furlongs of the column a/);
  expect(read('a [furlongs]\n1\n2\n', { units: new Map([[0, 'mm']]) }).columns[0]?.unit).toBe('mm');
  expect(words('')).toMatch(/empty/);
  expect(words('a;b\nx;y\nz;w\n')).toMatch(/no column of numbers/);
});

test('quotation marks over several lines, Windows and old line ends, and a mark in front are read', () => {
  expect(read('\ufeffa,note\r\n1,"two\r\nlines"\r\n2,x\r\n3,"say ""so"""\r\n').columns[0]?.values).toEqual([
    1, 2, 3,
  ]);
});

test(
  '200 000 rows of three columns are read in pieces, kept in the file, and written again',
  { timeout: 120_000 },
  async () => {
    const n = 200_000;
    const lines = Array.from(
      { length: n },
      (_, k) => `${(k / 1000).toFixed(3)},${(100 + 10 * Math.sin(k)).toFixed(2)},${k % 97}`,
    );
    const text = `t [s],force [N],load [%]\n${lines.join('\n')}\n`;
    let pauses = 0;
    let longest = 0;
    let last = performance.now();
    const started = last;
    const given = await inPieces(readRecording(text), async () => {
      pauses += 1;
      longest = Math.max(longest, performance.now() - last);
      await Promise.resolve();
      last = performance.now();
    });
    const spent = performance.now() - started;
    if (isRefusal(given)) throw new Error(given.message);
    expect(given.rows).toBe(n);
    expect(pauses).toBeGreaterThan(30);
    expect(given.columns[0]?.values[199_999]).toBe(199.999);
    const notebook = done(sample(), addRecording(sample(), { title: 'Log', columns: given.columns }));
    const file = writeNotebook(notebook);
    const again = readNotebook(file);
    expect(isRefusal(again) ? again.message : again.notebook).toEqual(notebook);
    const [recording] = partsOf(notebook, 'recordings');
    if (!recording) throw new Error('no recording');
    expect(read(writeRecordingCsv(recording)).columns).toEqual(given.columns);
    // Measured: 3.3 MB in the file, 0.2 s of processor time to write and as much to read it; the bounds only catch a square.
    expect(spent).toBeLessThan(60_000);
    expect(longest).toBeLessThan(5000);
    expect(file.length).toBeLessThan(6_000_000);
    expect(words(`a\n${'1\n'.repeat(n + 1)}`)).toMatch(/more than 200000 rows/);
    expect(
      read(`a\n${'1\n2\n'.repeat(n)}`, { every: 2 }).columns[0]?.values.every((value) => value === 1),
    ).toBe(true);
  },
);
