/** Undo outlives the page: after a reload, after a killed browser, and with steps on the disk that make no sense. */

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { cellText, desksOfTests, drawn, enter, goTo, newNotebook, saved, shows } from './desk.ts';
import { LENGTHS, filled, left, reopened } from './loss.ts';
import { mortalBrowsers } from './mortal-browser.ts';

const mortals = mortalBrowsers();
const desks = desksOfTests();

const button = (page: Page, name: 'Undo' | 'Redo') => page.getByRole('button', { name, exact: true });

/** Presses Undo until nothing is left to take back; gives how often. */
async function undoAll(page: Page): Promise<number> {
  let count = 0;
  while (await button(page, 'Undo').isEnabled()) {
    await button(page, 'Undo').click();
    count += 1;
    await drawn(page);
  }
  return count;
}

test(
  '7 after a reload undo goes back to the beginning, and redo to the end again',
  { retry: 0 },
  async () => {
    const desk = await desks.open();
    const { page } = desk;
    await newNotebook(page);
    await enter(page, 'A1', '5 mm');
    await enter(page, 'A2', '6 mm');
    await enter(page, 'A3', '=A1+A2');
    await shows(page, 'A3', '11 mm');
    await button(page, 'Undo').click();
    await saved(page);
    await page.reload();
    await shows(page, 'A2', '6 mm');
    expect(await cellText(page, 'A3')).toBe('');
    await button(page, 'Redo').click();
    await shows(page, 'A3', '11 mm');
    expect(await undoAll(page)).toBe(3);
    for (const place of ['A1', 'A2', 'A3']) expect(await cellText(page, place)).toBe('');
    await saved(page);
    await page.reload();
    await page.locator('page-grid td.active .editor').waitFor();
    for (let k = 0; k < 3; k += 1) await button(page, 'Redo').click();
    await shows(page, 'A3', '11 mm');
    expect(desk.troubles).toEqual([]);
  },
);

test('7 after the browser was killed undo goes back to the beginning', { retry: 0 }, async () => {
  const mortal = mortals.born();
  let page = await mortal.start();
  await page.goto(mortals.address);
  const notebook = await filled(page);
  await mortal.kill();
  page = await mortal.start();
  await reopened(page, notebook);
  await shows(page, 'A5', '15 mm');
  expect(await undoAll(page)).toBe(5);
  expect(await cellText(page, 'A1')).toBe('');
  await saved(page);
  await mortal.kill();
  page = await mortal.start();
  await reopened(page, notebook);
  await button(page, 'Redo').click();
  await shows(page, 'A1', '11 mm');
});

test(
  '7 steps on the disk that make no sense are not offered, and the notebook opens',
  { retry: 0 },
  async () => {
    const desk = await desks.open();
    const { page } = desk;
    const notebook = await filled(page, LENGTHS.slice(0, 4));
    await left(page);
    await page.evaluate(async () => {
      const open = indexedDB.open('swarfbook');
      await new Promise((resolve) => open.addEventListener('success', resolve));
      const write = open.result.transaction('values', 'readwrite');
      const values = write.objectStore('values');
      const cursor = values.openCursor();
      cursor.addEventListener('success', () => {
        const at = cursor.result;
        if (!at) return;
        if (/\/j\/0+3$/.test(String(at.key))) at.update({ seq: 3, body: { changes: 'none' } });
        at.continue();
      });
      await new Promise((resolve) => write.addEventListener('complete', resolve));
      open.result.close();
      const cache = await caches.open('swarfbook-notebooks');
      for (const { url } of await cache.keys())
        if (/\/j\/0+3$/.test(decodeURIComponent(url))) await cache.put(url, new Response('{"seq":3}'));
    });
    await page.goto(notebook);
    await shows(page, 'A4', '14 mm');
    expect(await undoAll(page)).toBe(2);
    await shows(page, 'A2', '12 mm');
    expect(await page.locator('.band').count()).toBe(0);
    expect(desk.troubles).toEqual([]);
  },
);

test(
  '7 a text that was being typed when the page was taken away is open again, and can be finished',
  { retry: 0 },
  async () => {
    const desk = await desks.open();
    const { page } = desk;
    await newNotebook(page);
    await enter(page, 'A1', '5 mm');
    await goTo(page, 'B2');
    await page.keyboard.type('=A1*2');
    await page.reload();
    await page.locator('page-grid td.active .editor').waitFor();
    expect(await page.locator('entry-line .field input').inputValue()).toBe('=A1*2');
    await page.locator('page-grid td.active .editor').focus();
    await page.keyboard.type('+1 mm');
    await page.keyboard.press('Enter');
    await shows(page, 'B2', '11 mm');
    await saved(page);
    await page.reload();
    await shows(page, 'B2', '11 mm');
    await page.evaluate(() => sessionStorage.setItem('being typed', '{"notebook":5}'));
    await page.reload();
    await shows(page, 'B2', '11 mm');
    expect(desk.troubles).toEqual([]);
  },
);
