/** What hands do at the desk: press keys, click and drag on the page, take an action; and what they look at meanwhile. */

import type { Locator, Page } from 'playwright-core';
import { enter, newNotebook, type Desks } from './desk.ts';

/** A new notebook with these texts typed into its cells. */
export async function begun(desks: Desks, cells: Readonly<Record<string, string>> = {}): Promise<Page> {
  const { page } = await desks.open();
  await newNotebook(page);
  for (const [address, text] of Object.entries(cells)) await enter(page, address, text);
  return page;
}

export const press = async (page: Page, ...keys: string[]): Promise<void> => {
  for (const key of keys) await page.keyboard.press(key);
};

/** A cell of the worksheet in sight. */
export const cell = (page: Page, address: string): Locator =>
  page.locator(
    `page-grid tr[data-row="${Number(address.slice(1)) - 1}"] td[data-column="${address.charCodeAt(0) - 65}"]`,
  );

/** What stands in the entry line. */
export const line = (page: Page): Promise<string> => page.locator('entry-line .field input').inputValue();

/** Drags on the page from one cell to another. */
export async function drag(page: Page, from: string, to: string): Promise<void> {
  const [a, b] = [await cell(page, from).boundingBox(), await cell(page, to).boundingBox()];
  if (!a || !b) throw new Error('no such cell in sight');
  await page.mouse.move(a.x + 20, a.y + 10);
  await page.mouse.down();
  await page.mouse.move(b.x + 20, b.y + 12, { steps: 6 });
  await page.mouse.up();
}

/** Drags the handle at the corner of the selection to a cell. */
export async function dragHandle(page: Page, to: string): Promise<void> {
  const handle = await page.locator('page-grid .handle.fill').boundingBox();
  const target = await cell(page, to).boundingBox();
  if (!handle || !target) throw new Error('no handle');
  await page.mouse.move(handle.x + 5, handle.y + 5);
  await page.mouse.down();
  await page.mouse.move(target.x + 30, target.y + 12, { steps: 6 });
  await page.mouse.up();
}

/** Opens the actions for the selection by key and takes one by its words. */
export async function act(page: Page, words: string): Promise<void> {
  await press(page, 'Shift+F10');
  await page.locator('actions-menu').getByRole('menuitem', { name: words }).click();
}
