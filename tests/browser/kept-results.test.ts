/** Results that were computed before: painted at once and marked, then confirmed; what differs is listed. */

import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { cellText, desksOfTests, enter, goTo, newNotebook, saved, shows } from './desk.ts';

const desks = desksOfTests();

const home = async (page: Page): Promise<void> => {
  await page.evaluate(() => {
    location.hash = '';
  });
  await page.locator('start-view').waitFor();
};

/** A notebook with a computed 10 mm in A2; gives its address, with the start screen shown. */
async function computed(page: Page): Promise<string> {
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await enter(page, 'A2', '=A1*2');
  await shows(page, 'A2', '10 mm');
  await saved(page);
  const notebook = page.url();
  await home(page);
  await page.locator('start-view .open', { hasText: 'New notebook' }).waitFor();
  return notebook;
}

test('8 the values of the last time are painted before anything is computed, marked, and then confirmed', async () => {
  const { page, context } = await desks.open();
  const notebook = await computed(page);
  const later = await context.newPage();
  // The calculator answers when it is told to.
  await later.addInitScript(() => {
    const post = Worker.prototype.postMessage;
    const held: (() => void)[] = [];
    Worker.prototype.postMessage = function wait(this: Worker, ...given: unknown[]) {
      held.push(() => Reflect.apply(post, this, given));
    };
    window.addEventListener('compute now', () => {
      for (const act of held.splice(0)) act();
      Worker.prototype.postMessage = post;
    });
  });
  await later.goto(notebook);
  await shows(later, 'A2', '10 mm');
  await later.getByText('values from last time').waitFor();
  await goTo(later, 'A2');
  const label = later.locator('page-grid td.active .editor');
  expect(await label.getAttribute('aria-label')).toContain('from last time');
  expect(await later.locator('page-grid td.stale').count()).toBeGreaterThan(0);
  await later.evaluate(() => window.dispatchEvent(new Event('compute now')));
  await later.getByText('values from last time').waitFor({ state: 'detached' });
  expect(await cellText(later, 'A2')).toBe('10 mm');
  await goTo(later, 'A1');
  await goTo(later, 'A2');
  expect(await label.getAttribute('aria-label')).not.toContain('from last time');
  expect(await later.locator('page-grid td.stale').count()).toBe(0);
  expect(await later.locator('.band').count()).toBe(0);
});

test('8 results of a file that are computed otherwise now are listed with both values and both versions', async () => {
  const desk = await desks.open();
  const { page } = desk;
  const notebook = await computed(page);
  await page.goto(notebook);
  await enter(page, 'A3', '=A1*3');
  await enter(page, 'A4', '=A1*4');
  await shows(page, 'A4', '20 mm');
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save a file copy' }).click(),
  ]);
  const text = readFileSync(await download.path(), 'utf8');
  const file = JSON.parse(text) as {
    program: string;
    results: Record<string, Record<string, { value: number }>>;
  };
  expect(file.program).toMatch(/^\d+\.\d+\.\d+/);
  const [[worksheet = '', results] = []] = Object.entries(file.results);
  expect(results?.['A2']?.value).toBe(0.01);
  file.program = '0.0.1+older';
  file.results[worksheet] = {
    ...results,
    A2: { ...results?.['A2'], value: 0.01 * (1 + 1e-12) },
    A3: { ...results?.['A3'], value: 0.014 },
  };
  await home(page);
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open a file' }).click(),
  ]);
  await chooser.setFiles({
    name: 'older.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(file)),
  });
  const band = page.locator('.band', { hasText: 'One result is computed otherwise than stored' });
  await band.waitFor();
  await shows(page, 'A3', '15 mm');
  await band.getByRole('button', { name: 'Show them' }).click();
  const rows = page.locator('differences-leaf tbody tr');
  await rows.first().waitFor();
  expect(await rows.count()).toBe(1);
  const row = await rows.first().innerText();
  expect(row).toContain('A3');
  expect(row).toMatch(/14\s+mm/);
  expect(row).toMatch(/15\s+mm/);
  expect(await page.locator('differences-leaf p').first().innerText()).toContain('0.0.1+older');
  await rows.first().getByRole('button').click();
  expect(await page.locator('entry-line .place').innerText()).toBe('A3');
  await page.waitForTimeout(2500);
  await page.reload();
  await band.getByRole('button', { name: 'Understood' }).click();
  await band.waitFor({ state: 'detached' });
  await page.waitForTimeout(2500);
  await page.reload();
  await shows(page, 'A3', '15 mm');
  await page.getByText('values from last time').waitFor({ state: 'detached' });
  expect(await page.locator('.band').count()).toBe(0);
  expect(desk.troubles).toEqual([]);
});

test('8 the shipped examples hold the results that are computed', async () => {
  const { page } = await desks.open();
  const list = page.locator('section[aria-label="templates"] .open');
  await list.first().waitFor();
  const titles = await list.allInnerTexts();
  expect(titles.length).toBeGreaterThan(5);
  for (const title of titles) {
    await page.getByRole('button', { name: title, exact: true }).first().click();
    await page.locator('page-grid td.active .editor').waitFor();
    await page.locator('page-grid td.stale').first().waitFor({ state: 'detached' });
    await page.waitForTimeout(200);
    expect(await page.locator('.band').allInnerTexts()).toEqual([]);
    await home(page);
  }
});
