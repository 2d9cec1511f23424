/** A walk through every screen and state of the program, for whoever looks at each of them. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { enter, goTo, newNotebook, pasteText, shows, type Desk } from './desk.ts';

/** Called in every state, with its name. */
export type Look = (state: string) => Promise<void>;

const leavesFile = readFileSync(join(import.meta.dirname, '../../src/ui/leaves.ts'), 'utf8');
/** Keys of all leaves, as they stand in the program. */
const LEAVES = [...leavesFile.matchAll(/^ {4}key: '([a-z-]+)'/gm)].map(([, key = '']) => key);
/** Leaves that say something only about what is handed to them. */
const WITH_DETAIL = new Set(['table', 'report', 'differences', 'came-back', 'import']);

const openLeaf = (page: Page, key: string): Promise<void> =>
  page.evaluate((wanted) => {
    document
      .querySelector('swarf-book')
      ?.dispatchEvent(new CustomEvent('open-leaf', { detail: { key: wanted, detail: undefined } }));
  }, key);

async function leaf(page: Page, key: string, look: Look): Promise<void> {
  await openLeaf(page, key);
  await page.locator('leaf-dialog dialog[open]').waitFor();
  await page.waitForTimeout(250);
  await look(`leaf ${key}`);
  await page.locator('leaf-dialog .head').getByRole('button', { name: 'Close' }).click();
  await page.locator('leaf-dialog dialog[open]').waitFor({ state: 'detached' });
}

/** A notebook with a given, a result, a text, a caution, a passed limit and an error. */
async function fill(page: Page): Promise<void> {
  await newNotebook(page);
  await enter(page, 'A1', 'cutter diameter');
  await enter(page, 'B1', '50 mm');
  await enter(page, 'A2', 'chip thinning');
  await enter(page, 'B2', '=MILL.THINNING(B1; 0.2 mm)');
  await enter(page, 'A3', 'what does not add');
  await enter(page, 'B3', '=B1+1 min');
  await shows(page, 'B3', '#UNIT!');
}

async function margin(page: Page, narrow: boolean, look: Look): Promise<void> {
  if (narrow) await page.getByRole('button', { name: 'Margin', exact: true }).click();
  const tabs = page.locator('margin-view [role=tab]');
  for (let k = 0; k < (await tabs.count()); k += 1) {
    await tabs.nth(k).click();
    await page.waitForTimeout(300);
    await look(`margin ${(await tabs.nth(k).innerText()).replaceAll(/\s+/g, ' ')}`);
  }
  await tabs.nth(1).click();
  await page.getByRole('searchbox').fill('spindle speed');
  await page.locator('margin-functions li button').first().click();
  await page.locator('margin-functions h2').waitFor();
  await look('page of a function');
  await tabs.nth(0).click();
  if (narrow) await page.locator('.shade').click({ position: { x: 8, y: 300 } });
}

async function mark(page: Page, narrow: boolean, address: string, place: 'changed' | 'shown'): Promise<void> {
  await goTo(page, address);
  if (narrow) await page.getByRole('button', { name: 'Margin', exact: true }).click();
  await page.getByRole('combobox', { name: 'at the machine' }).selectOption(place);
  if (narrow) await page.locator('.shade').click({ position: { x: 8, y: 300 } });
}

const press = async (page: Page, ...keys: string[]): Promise<void> => {
  for (const key of keys) await page.keyboard.press(key);
};

/** `narrow`: contents and margin slide over the page. */
export async function walk({ page }: Desk, narrow: boolean, look: Look): Promise<void> {
  await page.getByText('Worked examples').waitFor();
  await look('first page');
  for (const key of ['help', 'keys', 'about']) await leaf(page, key, look);
  await fill(page);
  await goTo(page, 'B2');
  await page.waitForTimeout(400);
  await look('worksheet');
  await margin(page, narrow, look);
  if (narrow) {
    await page.getByRole('button', { name: 'Contents', exact: true }).click();
    await look('contents over the page');
    await page.locator('.shade').click({ position: { x: 380, y: 300 } });
  }
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await look('menu');
  await page.keyboard.press('Escape');
  await page.locator('desk-head h1 button').click();
  await page.locator('question-dialog dialog[open]').waitFor();
  await look('question');
  await page.keyboard.press('Escape');
  await goTo(page, 'B5');
  await page.keyboard.type('=spindle_sp');
  await page.locator('entry-line .choices li').first().waitFor();
  await look('formula with choices');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  for (const key of ['f', 'g']) {
    await goTo(page, 'B2');
    await page.keyboard.press(`Control+${key}`);
    await page.waitForTimeout(300);
    await look(`bar of Ctrl ${key.toUpperCase()}`);
    await page.keyboard.press('Escape');
  }
  await press(page, 'Control+Home', 'Shift+ArrowDown', 'Shift+F10');
  await page.locator('actions-menu [role=menuitem]').first().waitFor();
  await look('actions for the selection');
  await page.keyboard.press('Escape');
  await goTo(page, 'D5');
  await pasteText(page, 't [min]\tVB [mym]\n1.234\t80\n5.678\t95');
  await page.locator('table-leaf').waitFor();
  await look('a table with two readings and an unknown unit');
  await page.keyboard.press('Escape');
  for (const key of LEAVES)
    if (!WITH_DETAIL.has(key) && !['help', 'keys', 'about'].includes(key)) await leaf(page, key, look);
  await mark(page, narrow, 'B1', 'changed');
  await mark(page, narrow, 'B2', 'shown');
  await page.getByRole('button', { name: 'At the machine', exact: true }).click();
  await page.locator('machine-page [data-field="B1"]').waitFor();
  await look('at the machine');
  await page.locator('machine-page [data-field="B1"]').click();
  if ((await page.locator('on-screen-keypad').count()) === 0) {
    await page.getByRole('button', { name: /^Keypad/ }).click();
    await page.locator('machine-page [data-field="B1"]').click();
  }
  await page.locator('on-screen-keypad').waitFor();
  await look('keypad');
}
