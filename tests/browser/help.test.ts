/** What the help claims, tried; the way to it; and what About promises, kept with the server gone. */

import { gunzipSync } from 'node:zlib';
import { readFileSync } from 'node:fs';
import { afterAll, afterEach, expect, test } from 'vitest';
import { HELP_ENTRIES } from '../../src/ui/help-words.ts';
import {
  cellText,
  closeBrowser,
  enter,
  newNotebook,
  openDesk,
  readyWithoutNetwork,
  saved,
  shows,
  type Desk,
} from './desk.ts';

let desk: Desk | undefined;
afterEach(async () => {
  await desk?.close();
  desk = undefined;
});
afterAll(closeBrowser);

test('every entry that the help names gives what the help says', async () => {
  desk = await openDesk();
  const { page } = desk;
  await newNotebook(page);
  await enter(page, 'B1', '50 mm');
  await enter(page, 'B2', '260 m/min');
  let row = 4;
  for (const { typed, gives } of HELP_ENTRIES) {
    await enter(page, `C${row}`, typed);
    await shows(page, `C${row}`, gives);
    row += 1;
  }
  // 260 m/min over pi * 50 mm is 1655.2 1/min, by hand.
  expect(await cellText(page, 'C9')).toBe('1655.21 1/min');
});

test('help fits on one page of the desk, opens with F1 and from the first page, and leads to keys and About', async () => {
  desk = await openDesk();
  const { page, troubles } = desk;
  await page.getByText('Worked examples').waitFor();
  await page.getByRole('button', { name: 'Help', exact: true }).click();
  const help = page.getByRole('dialog', { name: 'Help' });
  await help.waitFor();
  const cut = await help
    .locator('.body')
    .evaluate((body) => [body.scrollHeight - body.clientHeight, body.scrollWidth - body.clientWidth]);
  expect(cut).toEqual([0, 0]);
  await page.getByRole('button', { name: 'All keys' }).click();
  await page.getByRole('dialog', { name: 'Keys' }).getByText('one cell on').waitFor();
  await page.keyboard.press('F1');
  await help.waitFor();
  await page.getByRole('button', { name: 'About this program' }).click();
  await page.getByRole('dialog', { name: 'About Swarfbook' }).getByText('version 3 only').waitFor();
  await page.keyboard.press('Escape');
  await newNotebook(page);
  await page.keyboard.press('F1');
  await help.waitFor();
  await page.keyboard.press('Escape');
  await help.waitFor({ state: 'detached' });
  // The focus is back on the page: what is typed next goes into the cell.
  await page.keyboard.type('7 mm');
  await page.keyboard.press('Enter');
  await shows(page, 'A1', '7 mm');
  expect(troubles).toEqual([]);
});

test('with the server stopped licence, notices and source can be read, and a newer version is not claimed to be absent', async () => {
  desk = await openDesk({ installs: true });
  const { page } = desk;
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await saved(page);
  await readyWithoutNetwork(page);
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: 'About' }).click();
  await page.getByRole('button', { name: 'Look for a newer version' }).click();
  await page.getByText('there is no newer version ready').waitFor();
  await desk.stopServer();
  await page.getByRole('button', { name: 'Look for a newer version' }).click();
  await page.getByText('could not be reached').waitFor();
  await page.getByText('This device can open it without network').waitFor();
  const [notices] = await Promise.all([
    page.waitForEvent('popup'),
    page.getByRole('link', { name: 'The licence, and the notices of every part' }).click(),
  ]);
  await notices.waitForLoadState();
  expect(await notices.locator('body').innerText()).toContain('GNU GENERAL PUBLIC LICENSE');
  await notices.close();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'The complete source of this version' }).click(),
  ]);
  const archive = gunzipSync(readFileSync(await download.path()));
  // A file's header begins with its path (POSIX ustar).
  expect(archive.includes('swarfbook/src/main.ts\0')).toBe(true);
});

/** The browser's answer comes when the page's "answer" event does; the page's 20 seconds of patience are shortened. */
function answersLate(): void {
  const { setTimeout } = window;
  window.setTimeout = ((task: TimerHandler, wait?: number, ...rest: unknown[]) =>
    setTimeout(task, wait === 20_000 ? 100 : wait, ...rest)) as typeof window.setTimeout;
  ServiceWorkerRegistration.prototype.update = function late() {
    return new Promise((resolve) => window.addEventListener('answer', () => resolve(this), { once: true }));
  };
}

test('a browser that takes its time to ask is said to do so, and its late answer is told', async () => {
  desk = await openDesk({ installs: true, before: answersLate });
  const { page } = desk;
  await page.getByRole('button', { name: 'About', exact: true }).click();
  await readyWithoutNetwork(page);
  await page.getByRole('button', { name: 'Look for a newer version' }).click();
  await page.getByText('No answer yet').waitFor();
  await page.evaluate(() => window.dispatchEvent(new Event('answer')));
  await page.getByText('there is no newer version ready').waitFor();
});
