/** Two tabs with one notebook: the second follows what the first does, takes over without a loss, and survives removal. */

import type { Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import {
  cellText,
  closeBrowser,
  enter,
  focusGrid,
  goTo,
  losesNotebook,
  newNotebook,
  openDesk,
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

const band = (page: Page, words: string) => page.locator('swarf-book .band', { hasText: words });

async function twoTabs(): Promise<{ first: Page; second: Page }> {
  desk = await openDesk();
  const { page: first, context } = desk;
  await newNotebook(first);
  await enter(first, 'A1', '5 mm');
  await saved(first);
  const second = await context.newPage();
  await second.goto(first.url());
  await band(second, 'read only').waitFor();
  await shows(second, 'A1', '5 mm');
  return { first, second };
}

test('5 the second tab shows every edit of the first as it is made, computed', async () => {
  const { first, second } = await twoTabs();
  await enter(first, 'A2', '=A1*2');
  await shows(second, 'A2', '10 mm');
  await enter(first, 'A1', '7 mm');
  await shows(second, 'A2', '14 mm');
  await first.getByRole('button', { name: 'Undo', exact: true }).click();
  await shows(second, 'A2', '10 mm');
  expect(desk?.troubles).toEqual([]);
});

test('5 taken over in both directions, what was being typed goes with it, and undo too', async () => {
  const { first, second } = await twoTabs();
  await goTo(first, 'A2');
  await first.keyboard.type('6 mm');
  await second.getByRole('button', { name: 'Take over' }).click();
  await shows(second, 'A2', '6 mm');
  await band(first, 'read only').waitFor();
  await band(second, 'read only').waitFor({ state: 'detached' });
  await enter(second, 'A3', '=A1+A2');
  await shows(first, 'A3', '11 mm');
  await saved(second);
  await first.getByRole('button', { name: 'Take over' }).click();
  await band(second, 'read only').waitFor();
  await band(first, 'read only').waitFor({ state: 'detached' });
  await focusGrid(second);
  await second.keyboard.type('9 mm');
  await second.keyboard.press('Enter');
  const undo = first.getByRole('button', { name: 'Undo', exact: true });
  for (let k = 0; k < 3; k += 1) await undo.click();
  for (const place of ['A1', 'A2', 'A3']) await shows(second, place, '');
  await saved(first);
  await first.reload();
  await first.locator('page-grid td.active .editor').waitFor();
  for (const place of ['A1', 'A2', 'A3']) expect(await cellText(first, place)).toBe('');
});

/** The second tab takes the notebook while the first can not answer, as when its computer sleeps: nothing is asked of it. */
async function takenUnasked({ first, second }: { first: Page; second: Page }): Promise<void> {
  await second.evaluate(() => {
    const id = decodeURIComponent(location.hash.slice(1));
    void navigator.locks
      .request(`swarfbook ${id}`, { steal: true }, () => new Promise(() => {}))
      .catch(() => undefined);
  });
  await band(first, 'read only').waitFor();
}

const hint = (page: Page) => page.locator('entry-line .hint');
const editor = (page: Page) => page.locator('page-grid td.active .editor');

test('5 an entry that can not be taken because another tab took over stays open, says so, and is taken after the way back', async () => {
  const { first, second } = await twoTabs();
  await goTo(first, 'A2');
  await first.keyboard.type('typed with care');
  await takenUnasked({ first, second });
  const stays = async (): Promise<void> => {
    await hint(first).getByText('Not taken: another tab or device holds this notebook').waitFor();
    await hint(first).getByText('What you typed stays open here').waitFor();
    expect(await editor(first).inputValue()).toBe('typed with care');
    await first.keyboard.press('F2');
    await first.keyboard.press('F2');
  };
  for (const key of ['Enter', 'Tab', 'Shift+Enter', 'ArrowDown', 'Control+f', 'Control+z']) {
    await first.keyboard.press(key);
    await stays();
  }
  await first.locator('page-grid tr[data-row="4"] td[data-column="2"]').click();
  await stays();
  await first.evaluate(() => {
    location.hash = '';
  });
  await stays();
  // A reload takes nothing away either, and keeps it where it can be read.
  first.on('dialog', (dialog) => void dialog.accept());
  await first.reload();
  await editor(first).waitFor();
  expect(await editor(first).inputValue()).toBe('typed with care');
  await first.getByRole('button', { name: 'Take over' }).click();
  await band(first, 'read only').waitFor({ state: 'detached' });
  expect(await editor(first).inputValue()).toBe('typed with care');
  await first.keyboard.press('Enter');
  await shows(first, 'A2', 'typed with care');
  await saved(first);
  expect(desk?.troubles).toEqual([]);
});

test('5 an entry over a cell that the other tab has changed meanwhile is taken with a second Enter only, and undo knows both', async () => {
  const { first, second } = await twoTabs();
  await goTo(first, 'A2');
  await first.keyboard.type('7 mm');
  await losesNotebook(first);
  await band(first, 'read only').waitFor();
  await second.getByRole('button', { name: 'Take over' }).click();
  await band(second, 'read only').waitFor({ state: 'detached' });
  await enter(second, 'A2', '6 mm');
  await saved(second);
  await first.getByRole('button', { name: 'Take over' }).click();
  await band(first, 'read only').waitFor({ state: 'detached' });
  await first.keyboard.press('Enter');
  await hint(first).getByText('This cell was changed while you typed').waitFor();
  expect(await editor(first).inputValue()).toBe('7 mm');
  await first.keyboard.press('Enter');
  await shows(first, 'A2', '7 mm');
  await first.getByRole('button', { name: 'Undo', exact: true }).click();
  await shows(first, 'A2', '6 mm');
});

test('5 an entry whose worksheet the other tab has deleted stays open and says that its cell is gone', async () => {
  const { first, second } = await twoTabs();
  await first.getByRole('button', { name: 'add', exact: true }).click();
  await first.getByRole('button', { name: 'Take it' }).click();
  await first.locator('contents-rail').getByRole('button', { name: 'Worksheet 2' }).click();
  await enter(first, 'A2', '4 mm');
  await saved(first);
  await focusGrid(first);
  await first.keyboard.type('typed with care');
  await losesNotebook(first);
  await band(first, 'read only').waitFor();
  await second.getByRole('button', { name: 'Take over' }).click();
  await band(second, 'read only').waitFor({ state: 'detached' });
  await second.locator('contents-rail').getByRole('button', { name: 'Worksheet 2' }).click();
  await second.locator('contents-rail').getByRole('button', { name: 'delete', exact: true }).last().click();
  await second.getByRole('button', { name: 'Delete', exact: true }).click();
  await hint(first).getByText('The cell in which this was being typed is gone').waitFor();
  expect(await editor(first).inputValue()).toBe('typed with care');
});

test('5 a message that is no edit of this notebook changes nothing', async () => {
  const { first, second } = await twoTabs();
  await first.evaluate(() => {
    const channel = new BroadcastChannel(`swarfbook ${new URL('.', location.href).href}`);
    const id = decodeURIComponent(location.hash.slice(1));
    for (const message of [
      null,
      'x',
      { type: 'edits', id, entries: [{ seq: 3, before: '', hash: '', body: '{}' }] },
    ])
      channel.postMessage(message);
    channel.close();
  });
  await enter(first, 'A2', '6 mm');
  await shows(second, 'A2', '6 mm');
  await shows(second, 'A1', '5 mm');
  expect(desk?.troubles).toEqual([]);
});

test('9 removed in one tab while open in another: the other says so, and its next edit brings it back', async () => {
  const { first, second } = await twoTabs();
  await second.evaluate(() => {
    location.hash = '';
  });
  await second.getByRole('button', { name: 'remove New notebook' }).click();
  await second.getByText('Removed (1)').waitFor();
  await band(first, 'was removed from this device and is kept aside').waitFor();
  await enter(first, 'A2', '6 mm');
  await saved(first);
  await second.reload();
  await second.locator('start-view .open', { hasText: 'New notebook' }).click();
  await shows(second, 'A2', '6 mm');
  expect(desk?.troubles).toEqual([]);
});

test('9 duplicate, new title, removal and the way back on the start screen', async () => {
  const { first, second } = await twoTabs();
  const home = (page: Page): Promise<void> =>
    page.evaluate(() => {
      location.hash = '';
    });
  await home(second);
  await second.getByRole('button', { name: 'rename New notebook' }).click();
  await second.locator('question-dialog input').fill('Trial cover');
  await second.getByRole('button', { name: 'Take it' }).click();
  await second.getByText('It is open in another tab').waitFor();
  await home(first);
  await second.getByRole('button', { name: 'rename New notebook' }).click();
  await second.locator('question-dialog input').fill('Trial cover');
  await second.getByRole('button', { name: 'Take it' }).click();
  await first.locator('start-view .open', { hasText: 'Trial cover' }).waitFor();
  await second.getByRole('button', { name: 'duplicate Trial cover' }).click();
  await second.locator('start-view .open', { hasText: 'Trial cover, copy' }).waitFor();
  await second.getByRole('button', { name: 'remove Trial cover', exact: true }).click();
  await second.getByText('Removed (1)').click();
  await second.getByRole('button', { name: 'bring back Trial cover', exact: true }).click();
  await second.getByText('Removed (1)').waitFor({ state: 'detached' });
  await second.getByRole('button', { name: 'remove Trial cover, copy', exact: true }).click();
  await second.getByText('Removed (1)').click();
  await second.getByRole('button', { name: 'erase Trial cover, copy' }).click();
  await second.getByRole('button', { name: 'Erase', exact: true }).click();
  await second.getByText('Removed (1)').waitFor({ state: 'detached' });
  await second.getByRole('button', { name: 'Trial cover', exact: true }).click();
  await shows(second, 'A1', '5 mm');
  expect(await second.locator('desk-head h1').innerText()).toBe('Trial cover');
});
