/**
 * What the page costs in a real browser: an edit up to the frame that shows it, a reload without network, the script before
 * the first paint, scrolling. Headless and drawn in software; figures of one computer, so nothing here is asserted about time.
 */

import { readFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, afterEach, expect, test } from 'vitest';
import { emptyNotebook, enter, apply, insertLines, isRefusal } from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import { writeNotebook } from '../../src/exchange/index.ts';
import { chromiumVersion } from '../browser/chromium.ts';
import {
  DIST,
  closeBrowser,
  goTo,
  openDesk,
  readyWithoutNetwork,
  saved,
  type Desk,
} from '../browser/desk.ts';
import { processorTimes, quantile, slow, watchEdits, watchFirstValue, watchFrames } from './page-meter.ts';

const DEPENDENTS = 50;
const EDITS = 40;
const RELOADS = 12;

let desk: Desk | undefined;
afterEach(async () => {
  await desk?.close();
  desk = undefined;
});
afterAll(closeBrowser);

const report = (what: string, words: string): void =>
  console.log(`${what}: ${words} (load ${loadavg()[0]?.toFixed(1)} on ${cpus().length} processors)`);
const ms = (value: number): string => `${value.toFixed(1)} ms`;

/** A notebook with one worksheet of these texts. */
function notebookOf(title: string, typed: readonly (readonly string[])[]): string {
  let notebook: Notebook = emptyNotebook({ id: 'bench', title, reading: 'metric' });
  const worksheet = notebook.worksheets[0];
  if (!worksheet) throw new Error('no worksheet');
  const take = (answer: ReturnType<typeof enter>): void => {
    if (isRefusal(answer)) throw new Error(answer.message);
    notebook = apply(notebook, answer.changes);
  };
  const more = typed.length - worksheet.rowCount;
  if (more > 0)
    take(
      insertLines(notebook, { worksheet: worksheet.id, axis: 'row', at: worksheet.rowCount, count: more }),
    );
  take(enter(notebook, { worksheet: worksheet.id, row: 0, column: 0, typed }));
  return writeNotebook(notebook);
}

/** 300 rows of 20 filled cells: a given, formulas that depend on it, formulas and values that do not, texts. */
const edited = notebookOf(
  'Edited',
  Array.from({ length: 300 }, (_, row) =>
    Array.from({ length: 20 }, (__, column) => {
      if (row === 0 && column === 0) return '50 mm';
      if (column === 1 && row < DEPENDENTS) return `=A$1*${row + 1}`;
      if (column === 0) return `row ${row + 1}`;
      if (column % 4 === 3) return `=S${row + 1}*${column}`;
      return `${(row + 1) * column} mm`;
    }),
  ),
);
const long = notebookOf(
  'Long',
  Array.from({ length: 2000 }, (_, row) =>
    Array.from({ length: 12 }, (__, column) => (column === 0 ? `row ${row + 1}` : `${row + column}.5 mm`)),
  ),
);

async function openFile({ page }: Desk, name: string, text: string): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open a file' }).click(),
  ]);
  await chooser.setFiles({ name: `${name}.json`, mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.locator('page-grid td.number').first().waitFor();
  await page.waitForTimeout(1500);
}

test('an edit with 50 dependents on a page of 300 x 20 filled cells', async () => {
  desk = await openDesk({ installs: true });
  const { page } = desk;
  console.log(chromiumVersion());
  await openFile(desk, 'edited', edited);
  await page.evaluate(watchEdits, [11, 1] as const);
  for (const [rate, aim] of [
    [1, 8],
    [4, 30],
  ] as const) {
    await slow(page, rate);
    await page.evaluate(() => (window.edits = []));
    const times = await processorTimes(page);
    for (let k = 0; k < EDITS; k += 1) {
      await goTo(page, 'A1');
      await page.keyboard.type(`${60 + k * rate} mm`);
      await page.waitForTimeout(150);
      await page.keyboard.press('Enter');
      await page.waitForFunction((count) => (window.edits?.length ?? 0) > count, k);
      await page.waitForTimeout(60);
    }
    const spent = await times();
    const edits = (await page.evaluate(() => window.edits)) ?? [];
    const work = edits.map((each) => each.work);
    const later = edits.filter(({ frames }) => frames > 1).length;
    report(
      `edit, processor slowed ${rate} times`,
      `p50 ${ms(quantile(work, 0.5))}, p95 ${ms(quantile(work, 0.95))} (aim ${aim}); processor time of the main thread p50 ${ms(quantile(spent, 0.5))}, p95 ${ms(quantile(spent, 0.95))}; shown by the first frame ${edits.length - later} of ${edits.length} times, at most ${Math.max(...edits.map(({ frames }) => frames))} frames`,
    );
    expect(edits).toHaveLength(EDITS);
  }
});

test('a reload without network, to painted values', async () => {
  desk = await openDesk({ installs: true });
  const { page } = desk;
  await page.addInitScript(watchFirstValue);
  await page.locator('section[aria-label=templates] button', { hasText: 'Pump cover' }).click();
  await saved(page);
  await readyWithoutNetwork(page);
  await desk.stopServer();
  for (const [rate, aim] of [
    [1, 300],
    [4, 1000],
  ] as const) {
    await slow(page, rate);
    const times: number[] = [];
    for (let k = 0; k < RELOADS; k += 1) {
      await page.reload();
      await page.waitForFunction(() => window.paintedAt !== undefined);
      times.push((await page.evaluate(() => window.paintedAt)) ?? Number.NaN);
      await page.waitForTimeout(500);
    }
    report(
      `offline reload to painted values, processor slowed ${rate} times`,
      `p50 ${ms(quantile(times, 0.5))}, p95 ${ms(quantile(times, 0.95))} (aim ${aim})`,
    );
    expect(times).toHaveLength(RELOADS);
  }
});

test('script before the first paint', async () => {
  desk = await openDesk({ installs: true });
  const { page, address } = desk;
  await page.locator('section[aria-label=templates] button', { hasText: 'Pump cover' }).click();
  await saved(page);
  const worksheet = page.url();
  for (const [what, url] of [
    ['first page', address],
    ['worksheet', worksheet],
  ] as const) {
    await page.goto('about:blank');
    await page.goto(url);
    await page.waitForFunction(() => performance.getEntriesByName('first-contentful-paint').length > 0);
    await page.waitForTimeout(1500);
    const names = await page.evaluate(() => {
      const paint = performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0;
      return performance
        .getEntriesByType('resource')
        .filter((each) => each.startTime < paint && /\/assets\/(?!.*worker).*\.js$/.test(each.name))
        .map((each) => each.name.split('/').at(-1) ?? '');
    });
    const sizes = [...new Set(names)].map((name) => ({
      name,
      size: gzipSync(readFileSync(join(DIST, 'assets', name)), { level: 9 }).length,
    }));
    const total = sizes.reduce((sum, { size }) => sum + size, 0);
    const parts = sizes
      .toSorted((a, b) => b.size - a.size)
      .slice(0, 8)
      .map(({ name, size }) => `${name.replace(/-[^-]*\.js$/, '')} ${(size / 1000).toFixed(1)}`);
    report(
      `script asked for before the first paint of the ${what}, gzipped, without the worker`,
      `${(total / 1000).toFixed(1)} kB (aim 120): ${parts.join(', ')}`,
    );
    expect(total).toBeGreaterThan(0);
  }
});

test('scrolling a worksheet of 2 000 rows', async () => {
  desk = await openDesk({ installs: true });
  const { page } = desk;
  await openFile(desk, 'long', long);
  const box = await page.locator('page-grid .scroller').boundingBox();
  if (!box) throw new Error('no page');
  await page.mouse.move(box.x + 300, box.y + 300);
  const frames = page.evaluate(watchFrames, 4000);
  for (let k = 0; k < 120; k += 1) {
    await page.mouse.wheel(0, 160);
    await page.waitForTimeout(25);
  }
  const times = await frames;
  const dropped = times.reduce((sum, time) => sum + Math.max(0, Math.round(time / (1000 / 60)) - 1), 0);
  report(
    'scrolling 2 000 rows',
    `p50 ${ms(quantile(times, 0.5))}, p99 ${ms(quantile(times, 0.99))}, ${dropped} frames dropped of ${times.length + dropped}`,
  );
  expect(times.length).toBeGreaterThan(10);
});
