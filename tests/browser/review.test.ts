/** Looking through a notebook formula by formula: one key to the next, one more to tick; a tick falls with the formula or its unit. */

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { activeAddress, desksOfTests, enter, focusGrid, goTo, newNotebook, saved } from './desk.ts';

const desks = desksOfTests();

async function begun(): Promise<Page> {
  const desk = await desks.open();
  await desk.page.evaluate(() => localStorage.setItem('who', '["MK"]'));
  await newNotebook(desk.page);
  return desk.page;
}

async function review(page: Page): Promise<void> {
  await page.getByRole('tab', { name: /^Review/ }).click();
  await page.locator('review-walk .walk').focus();
}

const reviewed = (page: Page): Promise<string> => page.locator('review-walk .so b').first().innerText();

test('sixty formulas are looked through in sixty seconds, with at most two presses a cell', async () => {
  const page = await begun();
  // A value in A1 and sixty formulas below it, pasted at once.
  await enter(page, 'A1', '2 mm');
  await goTo(page, 'B1');
  const lines = Array.from({ length: 60 }, (_, k) => `=A1*${k + 1}`).join('\n');
  await page.evaluate((text) => {
    const data = new DataTransfer();
    data.setData('text/plain', text);
    let place: Element | null = document.activeElement;
    while (place?.shadowRoot?.activeElement) place = place.shadowRoot.activeElement;
    place?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData: data, bubbles: true, composed: true, cancelable: true }),
    );
  }, lines);
  await review(page);
  await page.locator('review-walk', { hasText: 'of 60 formulas reviewed' }).waitFor();
  await page.waitForTimeout(500);
  const start = Date.now();
  let presses = 0;
  for (let k = 0; k < 60; k += 1) {
    await page.keyboard.press('n');
    await page.keyboard.press('t');
    presses += 2;
  }
  await page.locator('review-walk .so b', { hasText: /^60$/ }).waitFor({ timeout: 60_000 });
  expect(Date.now() - start).toBeLessThan(60_000);
  expect(presses).toBeLessThanOrEqual(2 * 60);
  await saved(page);
  await page.reload();
  await review(page);
  await page.locator('review-walk .so b', { hasText: /^60$/ }).waitFor();
  expect(desks.current.troubles).toEqual([]);
});

test('one press ticks and goes on; each tick carries initials, and the page follows', async () => {
  const page = await begun();
  await enter(page, 'A1', '2 mm');
  await enter(page, 'A2', '=A1*2');
  await enter(page, 'C5', '=A2*3');
  await review(page);
  await page.keyboard.press('n');
  expect(await activeAddress(page)).toBe('A2');
  await page.locator('review-walk .result', { hasText: '4 mm' }).waitFor();
  await page.keyboard.press('Enter');
  expect(await activeAddress(page)).toBe('C5');
  expect(await page.locator('review-walk .formula').innerText()).toBe('=A2*3');
  await page.keyboard.press('Enter');
  await page.locator('review-walk', { hasText: '2 of 2 formulas reviewed' }).waitFor();
  await page.locator('review-walk span.ticked', { hasText: 'MK' }).waitFor();
});

test('a tick falls when the formula or its unit changes, not when rows are inserted above it', async () => {
  const page = await begun();
  await enter(page, 'A1', '2 mm');
  await enter(page, 'A2', '=A1*2');
  await enter(page, 'A3', '=A1*3');
  await review(page);
  for (let k = 0; k < 2; k += 1) {
    await page.keyboard.press('n');
    await page.keyboard.press('t');
  }
  await page.locator('review-walk .so b', { hasText: /^2$/ }).waitFor();
  await goTo(page, 'A1');
  await page.getByRole('button', { name: 'More…' }).click();
  await page.locator('actions-menu').getByRole('menuitem', { name: 'Insert row above' }).click();
  await focusGrid(page);
  await page.locator('review-walk .so b', { hasText: /^2$/ }).waitFor();
  await enter(page, 'A3', '=A2*2.5');
  await page.locator('review-walk', { hasText: '1 changed since' }).waitFor();
  expect(await reviewed(page)).toBe('1');
  await goTo(page, 'A3');
  await page.locator('review-walk .caution', { hasText: 'Ticked by MK' }).waitFor();
  // The same formulas in another unit: both are to be looked at again.
  await enter(page, 'A2', '2 s');
  await page.locator('review-walk .so b', { hasText: /^0$/ }).waitFor();
  expect(desks.current.troubles).toEqual([]);
});

test('an error can not be ticked', async () => {
  const page = await begun();
  await enter(page, 'A1', '2 mm');
  await enter(page, 'A2', '=A1+1 s');
  await review(page);
  await page.keyboard.press('n');
  await page.keyboard.press('t');
  expect(await reviewed(page)).toBe('0');
});
