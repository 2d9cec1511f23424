/** Damaged files: each is answered with one sentence or with a sound notebook; nothing throws, hangs or reaches beyond. */

import { readdirSync, readFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { expect, test } from 'vitest';
import { isRefusal } from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import { createEngine } from '../../src/engine/index.ts';
import { readNotebook, writeNotebook } from '../../src/exchange/index.ts';
import { functionTable } from '../../src/catalogue.ts';
import { damaged, Dice } from './mutations.ts';

const SHEETS = new URL('../../sheets/', import.meta.url);
const SOURCES = [
  readFileSync(new URL('./fixtures/format-1.json.txt', import.meta.url), 'utf8'),
  readFileSync(new URL('./fixtures/format-1-lists.json.txt', import.meta.url), 'utf8'),
  ...readdirSync(SHEETS)
    .filter((file) => file.endsWith('.json'))
    .map((file) => readFileSync(new URL(file, SHEETS), 'utf8')),
];
const FILES = 20_000;
/** The fixtures are small, so most of the files are made of them. */
const sourceOf = (number: number): string =>
  SOURCES[number % 4 === 3 ? 2 + ((number >> 2) % (SOURCES.length - 2)) : number % 2] ?? '';
const fileOf = (number: number) => damaged(sourceOf(number), new Dice(number));

const timeOf = (text: string): number => {
  const started = performance.now();
  readNotebook(text);
  return performance.now() - started;
};

function isFrozenThrough(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return true;
  return Object.isFrozen(value) && Object.values(value).every(isFrozenThrough);
}

/** What is wrong with the sentence; undefined where it is one clear sentence. */
function wrongSentence(message: string): string | undefined {
  if (!/^[A-Z].{10,398}\.$/u.test(message))
    return 'no line of 12 to 400 characters from a capital to a point';
  if (/\p{Cc}|\p{Cs}|\p{Zl}|\p{Zp}|\[object|undefined|Invalid|\.\.$/u.test(message))
    return "a programmer's words, or not to be shown";
  return undefined;
}

/** What is wrong with the notebook that was read; undefined where it is sound. */
function wrongNotebook(
  read: Exclude<ReturnType<typeof readNotebook>, { message: string }>,
): string | undefined {
  if (!isFrozenThrough(read.notebook)) return 'not frozen';
  const written = writeNotebook(read.notebook, read.results);
  const again = readNotebook(written);
  if (isRefusal(again)) return `refused when read back: ${again.message}`;
  if (!isDeepStrictEqual(again.notebook, read.notebook)) return 'read back as another notebook';
  if (writeNotebook(again.notebook, again.results) !== written) return 'written differently the second time';
  return undefined;
}

test(
  '20 000 damaged files give one clear sentence each, or a frozen notebook that comes back the same',
  { timeout: 600_000 },
  () => {
    const natures = () =>
      JSON.stringify(
        [Object, Array, String, Function].map((each) => Reflect.ownKeys(each.prototype).map(String)),
      );
    const before = natures();
    const wrong: string[] = [];
    const slow: { readonly time: number; readonly number: number }[] = [];
    let opened = 0;
    for (let number = 0; number < FILES; number++) {
      const { done, text } = fileOf(number);
      const started = performance.now();
      let read: ReturnType<typeof readNotebook>;
      try {
        read = readNotebook(text);
      } catch (error) {
        wrong.push(`${number} (${done}) throws ${String(error)}`);
        continue;
      }
      slow.push({ time: (performance.now() - started) / Math.max(text.length, 1000), number });
      const reason = isRefusal(read) ? wrongSentence(read.message) : wrongNotebook(read);
      if (!isRefusal(read)) opened++;
      if (reason !== undefined)
        wrong.push(
          `${number} (${done}): ${reason}${isRefusal(read) ? `: ${read.message.slice(0, 300)}` : ''}`,
        );
    }
    expect(wrong.slice(0, 20)).toEqual([]);
    expect(natures()).toBe(before);
    expect(Reflect.get({}, 'polluted')).toBeUndefined();
    // Both answers have to be met often, or the damage is of the wrong sort.
    expect(opened).toBeGreaterThan(FILES / 5);
    expect(FILES - opened).toBeGreaterThan(FILES / 5);

    // The slowest for their length, read again to leave pauses of the machine out.
    slow.sort((a, b) => b.time - a.time);
    const best = (text: string): number => Math.min(...Array.from({ length: 5 }, () => timeOf(text)));
    const clean = Math.max(...SOURCES.map((text) => best(text) / text.length));
    for (const { number } of slow.slice(0, 40)) {
      const { done, text } = fileOf(number);
      const times = best(text) / Math.max(text.length, 1000) / clean;
      expect(
        times,
        `${number} (${done}) takes ${times.toFixed(1)} times as long as a clean file`,
      ).toBeLessThan(20);
    }
  },
);

test(
  'hundreds of the notebooks that open out of damaged files compute without a throw',
  { timeout: 600_000 },
  () => {
    const functions = functionTable();
    const wrong: string[] = [];
    let engine = createEngine({ functions });
    let opened = 0;
    for (let number = 0; opened < 300; number += 7) {
      const { done, text } = fileOf(number);
      const read = readNotebook(text);
      if (isRefusal(read)) continue;
      opened++;
      try {
        engine.open(read.notebook);
        for (const address of filledPlaces(read.notebook)) engine.result(address);
      } catch (error) {
        wrong.push(`${number} (${done}): ${String(error)}`);
        engine = createEngine({ functions });
      }
    }
    expect(wrong).toEqual([]);
  },
);

const filledPlaces = ({ worksheets }: Notebook) =>
  worksheets.flatMap(({ id, rows }) =>
    rows.flatMap((cells, row) =>
      (cells ?? []).flatMap((cell, column) => (cell ? [{ worksheet: id, row, column }] : [])),
    ),
  );
