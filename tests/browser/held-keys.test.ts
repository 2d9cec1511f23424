/** What is typed while a bar or a menu is still on its way never lands in the cell: it goes where it was meant. */

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { activeAddress, cellText, desksOfTests, enter, newNotebook, shows } from './desk.ts';

const desks = desksOfTests({ untroubled: true });

/** The desk whose bars and menus do not come before they are let through, or are refused then. */
async function held(refused = false): Promise<{ readonly page: Page; let: () => void }> {
  const desk = await desks.open();
  let go = (): void => undefined;
  const gate = new Promise<void>((done) => (go = done));
  await desk.context.route(/assets\/(?:go-bar|find-bar|find-next|actions-menu)-/, async (route) => {
    await gate;
    await (refused ? route.abort() : route.continue()).catch(() => undefined);
  });
  await desk.page.reload();
  await newNotebook(desk.page);
  return { page: desk.page, let: go };
}

test('what follows Ctrl+G and its Enter is where one goes, however long the bar takes', async () => {
  const { page, let: letThrough } = await held();
  await page.keyboard.press('Control+g');
  await page.keyboard.type('D55');
  await page.keyboard.press('Backspace');
  await page.keyboard.press('Enter');
  await page.keyboard.type('9');
  expect(await activeAddress(page)).toBe('A1');
  letThrough();
  await expect.poll(() => activeAddress(page)).toBe('D5');
  expect(await cellText(page, 'A1')).toBe('');
  expect(await page.locator('page-grid .editor.open').count()).toBe(0);
  // From now on it is there; what is typed at once goes into it, too.
  await page.keyboard.press('Control+g');
  await page.keyboard.type('B2');
  await page.locator('go-bar input:focus').waitFor();
  expect(await page.locator('go-bar input').inputValue()).toBe('B2');
  await page.keyboard.press('Escape');
  await page.keyboard.type('7');
  await page.keyboard.press('Enter');
  await shows(page, 'D5', '7');
});

test('what follows Ctrl+F is looked for, and what follows the key of the menu is nothing for the cell', async () => {
  const { page, let: letThrough } = await held();
  await enter(page, 'B3', 'feed');
  await page.keyboard.press('Control+f');
  await page.keyboard.type('fee');
  expect(await page.locator('page-grid .editor.open').count()).toBe(0);
  await page.keyboard.press('Escape');
  // Left before it came: it does not come afterwards.
  await page.keyboard.press('Shift+F10');
  await page.keyboard.type('xy');
  letThrough();
  await page.locator('actions-menu [role=menuitem]:focus').waitFor();
  expect(await page.locator('find-bar').count()).toBe(0);
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+f');
  await page.keyboard.type('fee');
  await page.keyboard.press('Enter');
  await expect.poll(() => activeAddress(page)).toBe('B3');
  await page.locator('find-bar input[aria-label=find]').press('Escape');
  await page.keyboard.type('ok');
  await page.keyboard.press('Enter');
  await shows(page, 'B3', 'ok');
  expect(await cellText(page, 'B4')).toBe('');
});

test('a bar that can not come is said so, and the cell has the keys again', async () => {
  const { page, let: letThrough } = await held(true);
  await page.keyboard.press('Control+g');
  await page.keyboard.type('D5');
  letThrough();
  await page.locator('entry-line .refused', { hasText: 'could not be fetched' }).waitFor();
  await page.keyboard.type('7');
  await page.keyboard.press('Enter');
  await shows(page, 'A1', '7');
});
