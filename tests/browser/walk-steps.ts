/** Steps that the chapters of the walk share. */

import type { Page } from 'playwright-core';
import type { Desk } from './desk.ts';

/** Called in every state, with its name. */
export type Look = (state: string) => Promise<void>;

export interface Walk {
  readonly desk: Desk;
  readonly page: Page;
  /** Contents and margin slide over the page. */
  readonly narrow: boolean;
  readonly look: Look;
}

/** Opens a leaf as the program's own commands do. */
export const openLeaf = async (page: Page, key: string, detail?: unknown): Promise<void> => {
  await page.evaluate(
    (wanted) => {
      document.querySelector('swarf-book')?.dispatchEvent(new CustomEvent('open-leaf', { detail: wanted }));
    },
    { key, detail },
  );
  await page.locator('leaf-dialog dialog[open]').waitFor();
};

export async function closeLeaf(page: Page): Promise<void> {
  await page.locator('leaf-dialog .head').getByRole('button', { name: 'Close' }).click();
  await page.locator('leaf-dialog dialog[open]').waitFor({ state: 'detached' });
}

/** A leaf with what has to be seen in it before it is looked at. */
export async function leaf(
  { page, look }: Walk,
  key: string,
  ready: string,
  detail?: unknown,
): Promise<void> {
  await openLeaf(page, key, detail);
  await page.locator('leaf-dialog').locator(ready).first().waitFor();
  await look(`leaf ${key}`);
  await closeLeaf(page);
}

/** Puts the selection on a cell by the pointer. */
export const pick = (page: Page, address: string): Promise<void> => {
  const column = address.charCodeAt(0) - 65;
  const row = Number(address.slice(1)) - 1;
  return page.locator(`page-grid tr[data-row="${row}"] td[data-column="${column}"]`).click();
};

/** Brings the margin in sight, at one of its panels. */
export async function openPanel({ page, narrow }: Walk, name: string | RegExp): Promise<void> {
  const tab = page.locator('margin-view').getByRole('tab', { name });
  if (narrow && !(await tab.isVisible()))
    await page.getByRole('button', { name: 'Margin', exact: true }).click();
  await tab.click();
}

export async function closeMargin({ page, narrow }: Walk): Promise<void> {
  if (narrow) await page.locator('.shade').click({ position: { x: 6, y: 300 } });
}

/** Gives a file to a button that asks for one. */
export async function give(
  page: Page,
  press: () => Promise<unknown>,
  name: string,
  text: string,
): Promise<void> {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press()]);
  await chooser.setFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
}
