/** A new version: it waits, it comes when everything typed is safe, other tabs finish their own edit first, and parts of different builds refuse each other. */

import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import {
  DIST,
  asksForVersions,
  closeBrowser,
  enter,
  goTo,
  newNotebook,
  openDesk,
  readyWithoutNetwork,
  saved,
  shows,
  type Desk,
} from './desk.ts';

const home = mkdtempSync(join(tmpdir(), 'swarfbook-update-'));
const next = join(home, 'next');
let desk: Desk | undefined;
let served = '';
let count = 0;

beforeAll(async () => {
  process.env['SWARFBOOK_BUILD'] = 'a later build';
  const root = join(import.meta.dirname, '../..');
  await build({
    root,
    configFile: join(root, 'vite.config.ts'),
    logLevel: 'error',
    build: { outDir: next, emptyOutDir: true },
  });
  delete process.env['SWARFBOOK_BUILD'];
});
afterEach(async () => {
  await desk?.close();
  desk = undefined;
});
afterAll(async () => {
  await closeBrowser();
  rmSync(home, { recursive: true, force: true });
});

/** A desk at a folder of its own, with this version in it. */
async function deskOfItsOwn(): Promise<Desk> {
  served = join(home, `served-${(count += 1)}`);
  cpSync(DIST, served, { recursive: true });
  desk = await openDesk({ folder: served, installs: true });
  return desk;
}

function serveNext(): void {
  rmSync(served, { recursive: true });
  cpSync(next, served, { recursive: true });
}

const script = (page: Page): Promise<string> =>
  page.evaluate(() => document.querySelector('script')?.src.split('/').at(-1) ?? '');
const scriptOf = (folder: string): string =>
  /src="\.\/assets\/(index-[^"]+\.js)"/.exec(readFileSync(join(folder, 'index.html'), 'utf8'))?.[1] ?? '';

async function lookForIt(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: 'About, licence, newer version' }).click();
  await page.getByRole('button', { name: 'Look for a newer version' }).click();
  await page.locator('about-leaf').getByRole('button', { name: 'Change to it now' }).waitFor();
  await page.getByRole('button', { name: 'Close' }).click();
  await page.getByRole('button', { name: 'Change to it now' }).waitFor();
}

test('6 accepted while editing, nothing is lost; the other tab finishes its edit and then follows', async () => {
  const { page, context } = await deskOfItsOwn();
  expect(scriptOf(next)).not.toBe(scriptOf(DIST));
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await saved(page);
  await readyWithoutNetwork(page);
  await asksForVersions(page);
  const other = await context.newPage();
  await other.goto(page.url().replace(/#.*/, ''));
  await newNotebook(other);
  await enter(other, 'A1', '70 mm');
  await saved(other);
  await goTo(other, 'A2');
  await other.keyboard.type('77 mm');
  serveNext();
  await page.bringToFront();
  await lookForIt(page);
  await goTo(page, 'A2');
  await page.keyboard.type('=A1*2');
  const reloaded = page.waitForEvent('load');
  await page.getByRole('button', { name: 'Change to it now' }).click();
  await reloaded;
  await shows(page, 'A1', '5 mm');
  await shows(page, 'A2', '10 mm');
  expect(await script(page)).toBe(scriptOf(next));
  expect(await page.getByRole('button', { name: 'Change to it now' }).count()).toBe(0);
  await other.bringToFront();
  await other.locator('.band', { hasText: 'follows when the open edit is finished' }).waitFor();
  expect(await script(other)).toBe(scriptOf(DIST));
  const followed = other.waitForEvent('load');
  await other.keyboard.press('Enter');
  await followed;
  await shows(other, 'A1', '70 mm');
  await shows(other, 'A2', '77 mm');
  expect(await script(other)).toBe(scriptOf(next));
  await other.getByRole('button', { name: 'Undo', exact: true }).click();
  await shows(other, 'A2', '');
  expect(desk?.troubles).toEqual([]);
});

test('6 with an entry that is refused (longer than a cell takes) the new version waits, and the entry stays open', async () => {
  const { page } = await deskOfItsOwn();
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await readyWithoutNetwork(page);
  await asksForVersions(page);
  serveNext();
  await lookForIt(page);
  await goTo(page, 'A2');
  await page.keyboard.type('7');
  await page.keyboard.insertText('x'.repeat(2048));
  await page.getByRole('button', { name: 'Change to it now' }).click();
  await page.waitForTimeout(1000);
  expect(await script(page)).toBe(scriptOf(DIST));
  expect(await page.locator('entry-line .field input').inputValue()).toHaveLength(2049);
});

test('6 a calculator of another build is refused in plain words, and loading the page again is offered', async () => {
  const { page } = await deskOfItsOwn();
  const assets = join(served, 'assets');
  const worker = readdirSync(assets).find((name) => name.startsWith('engine.worker'));
  if (!worker) throw new Error('no worker in the build');
  const text = readFileSync(join(assets, worker), 'utf8');
  const [, id] = /type:\s*[`'"]ready[`'"],\s*build:\s*[`'"]([^`'"]+)/.exec(text) ?? [];
  expect(id).toBeDefined();
  writeFileSync(join(assets, worker), text.replaceAll(id ?? '?', 'another build'));
  await newNotebook(page);
  await page.locator('.band', { hasText: 'page and calculator are of different versions' }).waitFor();
  await enter(page, 'A1', '5 mm');
  await saved(page);
  const reloaded = page.waitForEvent('load');
  writeFileSync(join(assets, worker), text);
  await page.getByRole('button', { name: 'Load the page again' }).click();
  await reloaded;
  await shows(page, 'A1', '5 mm');
});

test('6 the list of files that the page holds against its cache is the list of the build', () => {
  const listed = JSON.parse(readFileSync(join(DIST, 'kept-files.json'), 'utf8')) as string[];
  const built = readdirSync(DIST, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name !== 'sw.js')
    .map((entry) => join(entry.parentPath, entry.name).slice(DIST.length + 1));
  expect(listed.toSorted()).toEqual(built.toSorted());
});

test('6 with a file missing from the cache the page no longer says that it is ready without network', async () => {
  const { page } = await deskOfItsOwn();
  await newNotebook(page);
  await readyWithoutNetwork(page);
  await page.evaluate(async () => {
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const request of await cache.keys())
        if (request.url.includes('engine.worker')) await cache.delete(request);
    }
  });
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await page
    .locator('swarf-book .status', { hasText: 'ready without network' })
    .waitFor({ state: 'detached' });
});
