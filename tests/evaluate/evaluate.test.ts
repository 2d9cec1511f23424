/** The command line as it is typed: what it prints, when it fails, what it costs. */

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeNotebook } from '../../src/exchange/index.ts';
import { notebookOf } from '../engine/notebook.ts';

const folder = mkdtempSync(join(tmpdir(), 'evaluate-'));
const file = join(folder, 'chip.json');

function run(...args: string[]) {
  const { stdout, stderr, status } = spawnSync(process.execPath, ['src/evaluate.mjs', ...args], {
    encoding: 'utf8',
  });
  return { stdout, stderr: stderr.trim(), status };
}

const lines = (text: string): unknown[] =>
  text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as unknown);

beforeAll(() => {
  const notebook = notebookOf([
    {
      title: 'Feeds',
      cells: {
        A1: 'cutter',
        B1: '20 mm',
        A2: 'feed per tooth',
        B2: '0.1 mm',
        A3: 'engagement',
        B3: '2 mm',
        A4: 'largest chip',
        B4: '=MILL.CHIP_MAX(Dc; fz; ae)',
        B5: '=MILL.CHIP_MAX(20;0.1;2)',
        B6: "'a note",
        B7: '5 %',
      },
      names: { Dc: 'B1', fz: 'B2', ae: 'B3', hmax: 'B4' },
    },
    { title: 'Tool trial', cells: { B1: '=Feeds.hmax*2', C1: '=TRANSPOSE({1;2})' } },
  ]);
  writeFileSync(file, writeNotebook(notebook));
  // Builds the bundle where a source is newer, so that the tests below measure the program alone.
  run('--formula', '=1');
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true }));

test('a notebook is listed cell by cell without its notes', () => {
  const { stdout, status } = run(file, '--format', 'json');
  const cells: unknown = JSON.parse(stdout);
  expect(status).toBe(0);
  expect(cells).toMatchObject([
    {
      worksheet: 'Feeds',
      cell: 'B1',
      name: 'Dc',
      label: 'cutter',
      value: 20,
      unit: 'mm',
      si: 0.02,
      kind: 'length',
      error: null,
      cautions: [],
    },
    { cell: 'B2', name: 'fz', value: 0.1 },
    { cell: 'B3', name: 'ae' },
    { cell: 'B4', name: 'hmax', label: 'largest chip', value: 0.06, unit: 'mm', kind: 'length' },
    { cell: 'B5', value: 0.06, cautions: ['20 read as 20 mm', '0.1 read as 0.1 mm', '2 read as 2 mm'] },
    { cell: 'B7', value: 5, unit: '%', si: 0.05 },
    { worksheet: 'Tool trial', cell: 'B1', value: 0.12, unit: 'mm' },
    { cell: 'C1', value: 1 },
    { cell: 'C2', value: 2 },
  ]);
});

test('the table and the list for other programs carry the same columns', () => {
  const heads = ['worksheet', 'cell', 'name', 'label', 'value', 'unit', 'si', 'kind', 'error', 'cautions'];
  const table = run(file).stdout.split('\n');
  expect(table[0]?.split(/\s+/)).toEqual(heads);
  expect(table[4]).toMatch(/^Feeds +B4 +hmax +largest chip +0\.06 +mm /);
  const csv = run(file, '--format', 'csv').stdout.split('\r\n');
  expect(csv[0]).toBe(heads.join(','));
  expect(csv[1]).toBe('Feeds,B1,Dc,cutter,20,mm,0.02,length,,');
});

test('F1a --set types into a given by name or address; a plain number takes the unit of its cell', () => {
  const value = (...sets: string[]): unknown => {
    const { stdout } = run(file, '--format', 'json', ...sets.flatMap((each) => ['--set', each]));
    return (JSON.parse(stdout) as { cell: string; value: unknown }[]).find(({ cell }) => cell === 'B4')
      ?.value;
  };
  expect(value('Feeds.fz=0.2 mm')).toBe(0.12);
  expect(value('Feeds.B2=0.2')).toBe(0.12);
  expect(value('fz=0.2', 'Dc=40 mm', 'ae=4 mm')).toBe(0.12);
});

test('--set on a formula, an unknown name, and files that can not be read end with status 2 and one line', () => {
  const broken = join(folder, 'broken.json');
  writeFileSync(broken, '{"format": 1');
  for (const args of [
    [file, '--set', 'Feeds.hmax=1 mm'],
    [file, '--set', 'Feeds.nothing=1 mm'],
    [file, '--set', 'Nowhere.B1=1 mm'],
    [join(folder, 'missing.json')],
    [broken],
    [file, '--format', 'xml'],
    ['--colour'],
  ]) {
    const { stderr, stdout, status } = run(...args);
    expect({ args, status, stdout, lines: stderr.split('\n').length }).toEqual({
      args,
      status: 2,
      stdout: '',
      lines: 1,
    });
  }
  expect(run(file, '--set', 'Feeds.hmax=1 mm').stderr).toMatch(/B4 holds a formula/);
});

test('a cell in error gives status 1', () => {
  const { stdout, status } = run(file, '--set', 'Feeds.ae=30 mm');
  expect(status).toBe(1);
  expect(stdout).toMatch(/#NUM! .*radial engagement/);
});

test('formulas alone: one line of JSON each, a list where there are several values', () => {
  const formulas = join(folder, 'formulas.txt');
  writeFileSync(formulas, '=80 money/h*2 h\n\n=3 mm + 2 min\n');
  const { stdout, status } = run(
    '--formula',
    '=MILL.CHIP_MAX(20,0.1,2)',
    '--formula',
    '=TRANSPOSE({1;2} mm)',
    '--formulas',
    formulas,
  );
  expect(status).toBe(1);
  expect(lines(stdout)).toMatchObject([
    { formula: '=MILL.CHIP_MAX(20,0.1,2)', value: 0.06, unit: 'mm', kind: 'length', error: null },
    { value: [1, 2], unit: 'mm', si: [0.001, 0.002] },
    { value: 160, unit: 'money', kind: 'money' },
    { value: null, error: expect.stringMatching(/^#UNIT! .*length.*time/) },
  ]);
});

test('formulas may use the names of a notebook', () => {
  expect(lines(run(file, '--formula', '=Dc/2').stdout)).toMatchObject([{ value: 10, unit: 'mm' }]);
});

test('--functions lists domain functions and built-in ones', () => {
  const { stdout, status } = run('--functions');
  const functions = JSON.parse(stdout) as {
    name: string;
    builtin: boolean;
    summary: string;
    parameters: unknown;
  }[];
  expect(status).toBe(0);
  expect(functions.find(({ name }) => name === 'MILL.CHIP_MAX')).toMatchObject({
    builtin: false,
    family: 'MILL',
  });
  expect(functions.find(({ name }) => name === 'ROUND')).toMatchObject({ builtin: true });
  expect(functions.every(({ summary, parameters }) => summary !== '' && parameters !== undefined)).toBe(true);
});

test('one formula costs less than a second of processor time', () => {
  const measured = `await import('./src/evaluate.mjs');
    const { user, system } = process.cpuUsage();
    console.error((user + system) / 1e6);`;
  const args = [
    '--input-type=module',
    '-e',
    measured,
    '--',
    'evaluate',
    '--formula',
    '=MILL.CHIP_MAX(20 mm; 0.1 mm; 2 mm)',
  ];
  spawnSync(process.execPath, args);
  const { stdout, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  expect(stdout).toMatch(/"value":0\.06/);
  expect(Number(stderr)).toBeLessThan(1);
});
