import { readdirSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { expect, test } from 'vitest';
import { FOLDERS } from './folder-table.ts';
import { offences, type SourceFile } from './offences.ts';

const root = join(import.meta.dirname, '../../src');
const onDisk = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((path) =>
  path.endsWith('.ts'),
);
const files: SourceFile[] = onDisk.map((path) => ({
  path: path.split(sep).join('/'),
  text: readFileSync(join(root, path), 'utf8'),
}));

const planted = (path: string, text: string, ...others: SourceFile[]): string[] =>
  offences([{ path, text }, ...others], FOLDERS);

test('every file keeps to the table of folders and packages', () => {
  // Counted a second time by other means: a walk that misses a folder would find nothing wrong in it.
  expect(files.length).toBe(Object.keys(import.meta.glob('../../src/**/*.ts')).length);
  expect(files.length).toBeGreaterThan(100);
  expect(offences(files, FOLDERS)).toEqual([]);
});

test('a folder that imports one it may not is caught', () => {
  expect(planted('functions/a.ts', "import { x } from '../document/index.ts';")).toEqual([
    'functions/a.ts: functions may not import document',
  ]);
});

test('importing the page is caught everywhere', () => {
  expect(planted('engine/a.ts', "import { x } from '../ui/index.ts';")).toEqual(['engine/a.ts: imports ui']);
});

test('a package in the wrong folder or file is caught', () => {
  expect(planted('quantity/a.ts', "import 'lit';")).toEqual([
    'quantity/a.ts: package lit is not for quantity',
  ]);
  expect(planted('engine/a.ts', "import { HyperFormula } from 'hyperformula';")).toEqual([
    'engine/a.ts: package hyperformula is not for engine',
  ]);
  expect(planted('ui/plot-picture.ts', "import('@observablehq/plot');")).toEqual([
    'ui/plot-picture.ts: package @observablehq/plot is not for ui',
  ]);
});

test('reaching past the index of a folder is caught', () => {
  expect(planted('document/a.ts', "import { x } from '../quantity/unit.ts';")).toEqual([
    'document/a.ts: reaches past the index of quantity',
  ]);
});

test('a cycle of files is caught and named', () => {
  expect(
    planted('quantity/a.ts', "export * from './b.ts';", {
      path: 'quantity/b.ts',
      text: "import { x } from './a.ts'; export const y = x;",
    }),
  ).toEqual(['cycle: quantity/a.ts -> quantity/b.ts -> quantity/a.ts']);
});

test('a file that is too long is caught', () => {
  expect(planted('quantity/a.ts', '\n'.repeat(401))).toEqual(['quantity/a.ts: longer than 400 lines']);
});

test('the clock and chance are caught outside the folders that own them', () => {
  expect(planted('document/a.ts', 'export const now = Date.now();')).toEqual([
    'document/a.ts: reads the clock or chance itself',
  ]);
});
