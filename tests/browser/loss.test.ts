/** Nothing that the page has called saved is ever missing: after kills, damage on the disk, a full disk, without the server, beside another tab. */

import { closeSync, openSync, readFileSync, readdirSync, rmSync, statSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import {
  cellText,
  desksOfTests,
  enter,
  focusGrid,
  newNotebook,
  readyWithoutNetwork,
  saved,
  shows,
} from './desk.ts';
import { killAgainAndAgain } from './kills.ts';
import { LENGTHS, allThere, filled, left, oneLength, reopened } from './loss.ts';
import { mortalBrowsers, type MortalBrowser } from './mortal-browser.ts';
import { unlike } from './places.ts';
import { spoil } from './spoil.ts';

const mortals = mortalBrowsers();
const desks = desksOfTests();

const KILLS = 60;
const SEED = 20_261_125;

test(
  `1 after each of ${KILLS} kills at random moments every edit that the page had called saved is there`,
  { retry: 0, timeout: 60_000 + KILLS * 10_000 },
  async () => {
    const toll = await killAgainAndAgain(mortals.address, KILLS, SEED);
    expect(toll.kills).toBe(KILLS);
    // Else the sessions would have been too short to say anything.
    expect(toll.confirmed).toBeGreaterThan(KILLS);
  },
);

/** A notebook with five confirmed lengths in A1 to A5, the browser killed; gives the notebook's address. */
async function cutOff(mortal: MortalBrowser): Promise<string> {
  const page = await mortal.start();
  await page.goto(mortals.address);
  const notebook = await filled(page);
  await mortal.kill();
  return notebook;
}

const band = (page: Page, words: string): Promise<void> =>
  page.locator('swarf-book .band', { hasText: words }).waitFor();

/** Every record lies in both places alike. */
const alike = (page: Page): Promise<void> =>
  expect.poll(() => page.evaluate(unlike).catch(String), { timeout: 15_000 }).toEqual([]);

/** Still able to keep edits, and after another start there is nothing left to say. */
async function heals(mortal: MortalBrowser, page: Page, notebook: string): Promise<void> {
  await enter(page, 'B1', '7 mm');
  await saved(page);
  await alike(page);
  await mortal.kill();
  const again = await mortal.start();
  await reopened(again, notebook);
  await allThere(again);
  await shows(again, 'B1', '7 mm');
  await alike(again);
  expect(await again.locator('swarf-book .band', { hasText: 'restored' }).count()).toBe(0);
}

const databaseFolder = (mortal: MortalBrowser): string => {
  const folder = mortal.inProfile('IndexedDB');
  const name = readdirSync(folder).find((each) => each.endsWith('.indexeddb.leveldb'));
  if (!name) throw new Error('the profile has no database');
  return join(folder, name);
};

test(
  '2 the folder of the database deleted between kill and start: the notebook is listed, complete, and the page says so',
  { retry: 0 },
  async () => {
    const browser = mortals.born();
    const notebook = await cutOff(browser);
    rmSync(databaseFolder(browser), { recursive: true });
    const page = await browser.start();
    await page.goto(mortals.address);
    await page.locator('start-view .open', { hasText: 'New notebook' }).click();
    await allThere(page);
    await band(page, 'was empty: it was restored from the other');
    await heals(browser, page, notebook);
  },
);

test(
  '2 the log of the database overwritten between kill and start: nothing is missing, and the page says so',
  { retry: 0 },
  async () => {
    const browser = mortals.born();
    const notebook = await cutOff(browser);
    const folder = databaseFolder(browser);
    const logs = readdirSync(folder).filter((name) => name.endsWith('.log'));
    expect(logs.length).toBeGreaterThan(0);
    for (const name of logs) {
      const path = join(folder, name);
      const size = statSync(path).size;
      const file = openSync(path, 'r+');
      writeSync(file, Buffer.alloc(Math.ceil(size * 0.7), 0xa5), 0, undefined, Math.floor(size * 0.3));
      closeSync(file);
    }
    const page = await browser.start();
    await reopened(page, notebook);
    await allThere(page);
    await band(page, 'it was restored from the other');
    await heals(browser, page, notebook);
  },
);

test(
  '2 Cache Storage emptied between kill and start: nothing is missing, and the page says so',
  { retry: 0 },
  async () => {
    const browser = mortals.born();
    const notebook = await cutOff(browser);
    rmSync(browser.inProfile('Service Worker', 'CacheStorage'), { recursive: true });
    const page = await browser.start();
    await reopened(page, notebook);
    await allThere(page);
    await band(page, 'was empty: it was restored from the other');
    await heals(browser, page, notebook);
  },
);

test(
  '1 killed and started again without the server: everything is there, edits are kept, a reload loses nothing',
  { retry: 0 },
  async () => {
    const browser = mortals.born();
    let page = await browser.start();
    await page.goto(mortals.address);
    await oneLength(page, '12 mm');
    await readyWithoutNetwork(page);
    const notebook = page.url();
    await mortals.stopServer();
    await browser.kill();
    page = await browser.start();
    await reopened(page, notebook);
    await shows(page, 'A1', '12 mm');
    await enter(page, 'A2', '=A1*2');
    await shows(page, 'A2', '24 mm');
    await saved(page);
    await page.reload();
    await shows(page, 'A1', '12 mm');
    await shows(page, 'A2', '24 mm');
  },
);

test(
  '5 a tab that only reads changes nothing; taking over shows what the other had written meanwhile',
  { retry: 0 },
  async () => {
    const { page, context } = await desks.open();
    await oneLength(page);
    const second = await context.newPage();
    await second.goto(page.url());
    await band(second, 'read only');
    await shows(second, 'A1', '5 mm');
    await focusGrid(second);
    await second.keyboard.type('9 mm');
    await second.keyboard.press('Enter');
    expect(await cellText(second, 'A1')).toBe('5 mm');
    await enter(page, 'A2', '6 mm');
    await saved(page);
    await second.getByRole('button', { name: 'Take over' }).click();
    await shows(second, 'A2', '6 mm');
    await band(page, 'read only');
    await enter(second, 'A3', '7 mm');
    await saved(second);
    await focusGrid(page);
    await page.keyboard.type('9 mm');
    await page.keyboard.press('Enter');
    await second.reload();
    await allThere(second, ['5 mm', '6 mm', '7 mm']);
  },
);

test(
  '1 with the storage full an edit stays, the page says that it is not saved, and trying again or the next edit saves it',
  { retry: 0 },
  async () => {
    const desk = await desks.open();
    const { page, context } = desk;
    const origin = new URL(desk.address).origin;
    await oneLength(page);
    const devtools = await context.newCDPSession(page);
    await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    await enter(page, 'A2', '6 mm');
    await band(page, 'Not saved on this device');
    expect(await page.locator('swarf-book .status').innerText()).toMatch(/^NOT saved/);
    await shows(page, 'A2', '6 mm');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.locator('.band').getByRole('button', { name: 'Save a file copy' }).click(),
    ]);
    expect(readFileSync(await download.path(), 'utf8')).toContain('6 mm');
    const again = page.locator('.band').getByRole('button', { name: 'Try again' });
    await again.click();
    // There is still no room: it has failed again before there is some.
    await page.waitForTimeout(1000);
    await band(page, 'Not saved on this device');
    await devtools.send('Storage.overrideQuotaForOrigin', { origin });
    await again.click();
    await saved(page);
    await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    await enter(page, 'A3', '7 mm');
    await band(page, 'Not saved on this device');
    await devtools.send('Storage.overrideQuotaForOrigin', { origin });
    await enter(page, 'A4', '8 mm');
    await saved(page);
    await page.reload();
    await allThere(page, ['5 mm', '6 mm', '7 mm', '8 mm']);
  },
);

/** A notebook with two snapshots and edits since the older one; gives its address, with no page on it. */
async function twoSnapshots(page: Page, home: string): Promise<string> {
  await newNotebook(page);
  const notebook = page.url();
  for (const [k, text] of LENGTHS.entries()) {
    await enter(page, `A${k + 1}`, text);
    await saved(page);
    if (k === 1 || k === 3) {
      await left(page);
      await page.goto(notebook);
      await page.locator('page-grid td.active .editor').waitFor();
      await shows(page, `A${k + 1}`, text);
    }
  }
  await page.goto(`${home}icon.svg`);
  return notebook;
}

test(
  '3 with the newest snapshot spoiled in both places the older one and the edits since give the whole notebook, and that is said',
  { retry: 0 },
  async () => {
    const desk = await desks.open();
    const { page } = desk;
    const notebook = await twoSnapshots(page, desk.address);
    const records = await page.evaluate(spoil, {
      part: 'snap' as const,
      places: ['database' as const, 'cache' as const],
      how: 'cut' as const,
    });
    expect(Math.min(...records)).toBeGreaterThan(1);
    await page.goto(notebook);
    await allThere(page);
    await band(page, 'damaged: the notebook was restored to the last edit that could be read');
    await page.reload();
    await allThere(page);
    expect(await page.locator('.band').count()).toBe(0);
  },
);

test(
  '3 with the last entry spoiled in both places everything before it is there, and that is said',
  { retry: 0 },
  async () => {
    const desk = await desks.open();
    const { page } = desk;
    const notebook = await twoSnapshots(page, desk.address);
    await page.evaluate(spoil, {
      part: 'j' as const,
      places: ['database' as const, 'cache' as const],
      how: 'cut' as const,
    });
    await page.goto(notebook);
    await allThere(page, LENGTHS.slice(0, -1));
    await band(page, 'damaged: the notebook was restored to the last edit that could be read');
    expect(await cellText(page, 'A5')).toBe('');
  },
);

for (const part of ['snap', 'j'] as const)
  for (const place of ['database', 'cache'] as const)
    test(
      `2 with another digit in the newest record "${part}" of the ${place} alone nothing is missing, and that is said`,
      { retry: 0 },
      async () => {
        const desk = await desks.open();
        const { page } = desk;
        const notebook = await twoSnapshots(page, desk.address);
        await page.evaluate(spoil, { part, places: [place], how: 'other digit' as const });
        await page.goto(notebook);
        await allThere(page);
        await band(page, 'was damaged: it was restored from the other');
        await alike(page);
        await page.reload();
        await allThere(page);
        expect(await page.locator('.band').count()).toBe(0);
      },
    );
