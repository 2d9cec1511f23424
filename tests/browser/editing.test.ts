/** Editing as hands do it at the desk: finding and replacing, going, pointing, filling, moving, sorting, widths, what stays in sight, choices, notes, limits. */

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import {
  activeAddress,
  cellText,
  desksOfTests,
  drawn,
  enter,
  focusGrid,
  goTo,
  newNotebook,
  pasteText,
  shows,
} from './desk.ts';

const desks = desksOfTests({ untroubled: true });

async function begin(cells: Readonly<Record<string, string>> = {}): Promise<Page> {
  const { page } = await desks.open();
  await newNotebook(page);
  for (const [address, text] of Object.entries(cells)) await enter(page, address, text);
  return page;
}

const press = async (page: Page, ...keys: string[]): Promise<void> => {
  for (const key of keys) await page.keyboard.press(key);
};
const cell = (page: Page, address: string): ReturnType<Page['locator']> =>
  page.locator(
    `page-grid tr[data-row="${Number(address.slice(1)) - 1}"] td[data-column="${address.charCodeAt(0) - 65}"]`,
  );
const line = (page: Page): Promise<string> => page.locator('entry-line .field input').inputValue();

async function drag(page: Page, from: string, to: string): Promise<void> {
  const [a, b] = [await cell(page, from).boundingBox(), await cell(page, to).boundingBox()];
  if (!a || !b) throw new Error('no such cell in sight');
  await page.mouse.move(a.x + 20, a.y + 10);
  await page.mouse.down();
  await page.mouse.move(b.x + 20, b.y + 12, { steps: 6 });
  await page.mouse.up();
}

/** Opens the actions for the selection by key and takes one by its words. */
async function act(page: Page, words: string): Promise<void> {
  await press(page, 'Shift+F10');
  await page.locator('actions-menu').getByRole('menuitem', { name: words }).click();
}

test('find goes from one place to the next by key, and replace is one step that names what it left', async () => {
  const page = await begin({ A1: 'feed', B1: '12 mm', B2: '=B1*12', B3: '=SUM(B1:B2)', A2: 'old feed' });
  await goTo(page, 'A1');
  await press(page, 'Control+f');
  const find = page.locator('find-bar input[aria-label=find]');
  await find.fill('FEED');
  await page.locator('find-bar .count', { hasText: '1 of 2' }).waitFor();
  await press(page, 'Enter');
  expect(await activeAddress(page)).toBe('A2');
  await press(page, 'F3');
  expect(await activeAddress(page)).toBe('A1');
  await press(page, 'Shift+F3');
  expect(await activeAddress(page)).toBe('A2');
  await find.fill('12');
  await page.locator('find-bar input[aria-label="replace by"]').fill('15');
  await page.locator('find-bar').getByRole('button', { name: 'Replace all' }).click();
  await shows(page, 'B1', '15 mm');
  await shows(page, 'B2', '225 mm');
  // A bracket that goes would leave a formula that nobody can read: it is left, and said.
  await find.fill(')');
  await page.locator('find-bar input[aria-label="replace by"]').fill('');
  await page.locator('find-bar').getByRole('button', { name: 'Replace all' }).click();
  await page.locator('find-bar .left', { hasText: 'B3' }).waitFor();
  await shows(page, 'B3', '240 mm');
  await find.press('Escape');
  await press(page, 'Control+z');
  await shows(page, 'B1', '12 mm');
  await shows(page, 'B2', '144 mm');
});

test('go to leads to a cell, a name and a worksheet, and offers what begins alike', async () => {
  const page = await begin({ B7: '0.12 mm' });
  await goTo(page, 'B7');
  await page.locator('entry-line .name').click();
  await page.locator('dialog input').fill('fz');
  await page.locator('dialog .primary').click();
  await focusGrid(page);
  await press(page, 'Control+g');
  await page.locator('go-bar input:focus').waitFor();
  await page.keyboard.type('D5');
  await press(page, 'Enter');
  expect(await activeAddress(page)).toBe('D5');
  await press(page, 'Control+g');
  await page.locator('go-bar input:focus').waitFor();
  await page.keyboard.type('f');
  await page.locator('go-bar [role=option]', { hasText: 'fz' }).waitFor();
  await press(page, 'Enter');
  expect(await activeAddress(page)).toBe('B7');
  await press(page, 'Control+g');
  await page.locator('go-bar input:focus').waitFor();
  await page.keyboard.type('B2:C4');
  await press(page, 'Enter');
  expect(await activeAddress(page)).toBe('B2:C4');
  await press(page, 'Control+g');
  await page.locator('go-bar input:focus').waitFor();
  await page.keyboard.type('ZZ99');
  await page.getByText('no such cell, name or worksheet').waitFor();
  await press(page, 'Escape');
  expect(await page.locator('page-grid .editor').evaluate((editor) => editor.matches(':focus'))).toBe(true);
});

test('arrow keys and drags put references and ranges into a formula, outlined on the page', async () => {
  const page = await begin({ A1: '1 mm', A2: '2 mm', A3: '3 mm', B1: '4' });
  await goTo(page, 'C4');
  await page.keyboard.type('=SUM(');
  await press(
    page,
    'ArrowLeft',
    'ArrowLeft',
    'ArrowUp',
    'ArrowUp',
    'ArrowUp',
    'Shift+ArrowDown',
    'Shift+ArrowDown',
  );
  expect(await line(page)).toBe('=SUM(A1:A3');
  expect(await page.locator('page-grid td.ref').count()).toBe(3);
  await page.keyboard.type(')*');
  await cell(page, 'B1').click();
  expect(await line(page)).toBe('=SUM(A1:A3)*B1');
  expect(await page.locator('page-grid td[data-ref="1"]').count()).toBe(1);
  await press(page, 'Enter');
  await shows(page, 'C4', '24 mm');
  expect(await page.locator('page-grid td.ref').count()).toBe(0);
  await goTo(page, 'C5');
  await page.keyboard.type('=SUM(');
  await drag(page, 'A1', 'B2');
  expect(await line(page)).toBe('=SUM(A1:B2');
  await press(page, 'Escape', 'Escape');
  // Opened with F2 the arrows belong to the caret, until F2 is pressed once more.
  await goTo(page, 'C4');
  await press(page, 'F2', 'ArrowLeft');
  expect(await line(page)).toBe('=SUM(A1:A3)*B1');
  await press(page, 'Escape');
});

test('a drag selects a block, Shift reaches on, heads select rows and columns, by keys too', async () => {
  const page = await begin();
  await drag(page, 'A2', 'B5');
  expect(await activeAddress(page)).toBe('A2:B5');
  await cell(page, 'C7').click({ modifiers: ['Shift'] });
  expect(await activeAddress(page)).toBe('A2:C7');
  await page.locator('page-grid tbody tr[data-row="3"] > th').click();
  await page.locator('page-grid tbody tr[data-row="5"] > th').click({ modifiers: ['Shift'] });
  expect(await activeAddress(page)).toBe('A4:L6');
  await page.locator('page-grid thead th[data-column="1"]').click({ position: { x: 20, y: 8 } });
  expect(await activeAddress(page)).toBe('B1:B60');
  await goTo(page, 'C3');
  await press(page, 'Shift+Space');
  expect(await activeAddress(page)).toBe('A3:L3');
  await goTo(page, 'C3');
  await press(page, 'Control+Space');
  expect(await activeAddress(page)).toBe('C1:C60');
});

test('a block is filled by its handle and by keys, references shifted', async () => {
  const page = await begin({ A1: '1 mm', A2: '2 mm', A3: '3 mm', B1: '=A1*2' });
  await goTo(page, 'B1');
  const handle = await page.locator('page-grid .handle.fill').boundingBox();
  const target = await cell(page, 'B3').boundingBox();
  if (!handle || !target) throw new Error('no handle');
  await page.mouse.move(handle.x + 5, handle.y + 5);
  await page.mouse.down();
  await page.mouse.move(target.x + 30, target.y + 12, { steps: 6 });
  await page.mouse.up();
  await shows(page, 'B3', '6 mm');
  expect(await activeAddress(page)).toBe('B1:B3');
  await press(page, 'Control+z');
  await shows(page, 'B3', '');
  await goTo(page, 'B1');
  await press(page, 'Shift+ArrowDown', 'Control+d');
  await shows(page, 'B2', '4 mm');
  await goTo(page, 'A1');
  await press(page, 'Shift+ArrowRight', 'Shift+ArrowRight', 'Shift+ArrowRight', 'Control+r');
  await shows(page, 'D1', '1 mm');
  // Up and to the left, by the handle and by keys.
  await enter(page, 'C5', '=A5+1 mm');
  await enter(page, 'B5', '7 mm');
  await goTo(page, 'C5');
  const low = await page.locator('page-grid .handle.fill').boundingBox();
  const high = await cell(page, 'C3').boundingBox();
  if (!low || !high) throw new Error('no handle');
  await page.mouse.move(low.x + 5, low.y + 5);
  await page.mouse.down();
  await page.mouse.move(high.x + 30, high.y + 12, { steps: 6 });
  await page.mouse.up();
  await shows(page, 'C3', '4 mm');
  expect(await activeAddress(page)).toBe('C3:C5');
  await press(page, 'Control+z');
  await shows(page, 'C3', '');
  await goTo(page, 'A5');
  await press(page, 'Shift+ArrowRight', 'Control+Shift+r');
  await shows(page, 'A5', '7 mm');
});

test('rows are inserted, moved with their references and deleted after a warning that names who uses them', async () => {
  const page = await begin({ A1: '10 mm', A2: '20 mm', B5: '=A2*2' });
  await goTo(page, 'A2');
  await act(page, 'Insert row above');
  await shows(page, 'A3', '20 mm');
  await shows(page, 'B6', '40 mm');
  await goTo(page, 'A3');
  await press(page, 'Alt+Shift+ArrowUp');
  await shows(page, 'A2', '20 mm');
  expect(await activeAddress(page)).toBe('A2');
  await shows(page, 'B6', '40 mm');
  await act(page, 'Delete the selected row');
  await page.locator('question-dialog', { hasText: 'B6' }).getByRole('button', { name: 'Delete' }).click();
  await shows(page, 'B5', '#REF!');
  await press(page, 'Control+z');
  await shows(page, 'B6', '40 mm');
  await goTo(page, 'A1');
  await act(page, 'Move the column right');
  await shows(page, 'B1', '10 mm');
  await shows(page, 'A6', '40 mm');
});

test('rows are sorted by a column, either way, with the head kept', async () => {
  const page = await begin({
    A1: 'tool',
    B1: 'life',
    A2: 'a',
    B2: '30 min',
    A3: 'b',
    B3: '1 h',
    A4: 'c',
    B4: '90 s',
  });
  await goTo(page, 'B2');
  await act(page, 'Sort rows…');
  await page.locator('sort-leaf', { hasText: 'A1:B4' }).waitFor();
  expect(await page.locator('sort-leaf input[type=checkbox]').isChecked()).toBe(true);
  await page.locator('sort-leaf').getByRole('button', { name: 'Sort', exact: true }).click();
  // 90 s, 30 min, 1 h in order of time, whatever their units.
  await shows(page, 'A2', 'c');
  await shows(page, 'A4', 'b');
  await act(page, 'Sort rows…');
  await page.locator('sort-leaf select').nth(1).selectOption('down');
  await page.locator('sort-leaf').getByRole('button', { name: 'Sort', exact: true }).click();
  await shows(page, 'A2', 'b');
  await shows(page, 'A1', 'tool');
});

test('column widths change by drag, by key and by number', async () => {
  const page = await begin();
  const width = async (): Promise<number> => (await cell(page, 'B2').boundingBox())?.width ?? 0;
  const before = await width();
  await goTo(page, 'B2');
  await press(page, 'Alt+ArrowRight', 'Alt+ArrowRight');
  await expect.poll(width).toBe(before + 24);
  await press(page, 'Alt+ArrowLeft');
  await expect.poll(width).toBe(before + 12);
  await act(page, 'Column width…');
  await page.locator('dialog input').fill('200');
  await page.locator('dialog .primary').click();
  await expect.poll(width).toBe(200);
  const grip = await page.locator('page-grid thead .grip[data-column="1"]').boundingBox();
  if (!grip) throw new Error('no grip');
  await page.mouse.move(grip.x + 4, grip.y + 10);
  await page.mouse.down();
  await page.mouse.move(grip.x + 64, grip.y + 10, { steps: 4 });
  await page.mouse.up();
  await expect.poll(width).toBe(260);
});

for (const rows of [60, 900]) {
  test(`the first row and column stay in sight on a page of ${rows} rows`, async () => {
    const page = await begin({ A1: 'what', B1: 'value', A2: 'feed' });
    if (rows > 60) {
      await goTo(page, 'C1');
      await pasteText(page, Array.from({ length: rows }, (_, k) => `${k + 1}`).join('\n'));
      await shows(page, 'C3', '3');
    }
    for (const words of ['Keep the first row in sight', 'Keep the first column in sight']) {
      await page.getByRole('button', { name: 'Notebook', exact: true }).click();
      await page.getByRole('button', { name: words }).click();
    }
    await focusGrid(page);
    await press(page, 'Control+End');
    await page.waitForTimeout(300);
    const page1 = await page.locator('page-grid .scroller').boundingBox();
    const corner = await cell(page, 'A1').boundingBox();
    if (!page1 || !corner) throw new Error('the corner is not there');
    expect(corner.x - page1.x).toBeLessThan(60);
    expect(corner.y - page1.y).toBeLessThan(40);
    expect(await cellText(page, 'A1')).toBe('what');
    const head = await cell(page, 'B1').boundingBox();
    expect((head?.y ?? 0) - page1.y).toBeLessThan(40);
    // The active cell is not hidden behind what stays.
    await press(page, 'Control+Home', 'ArrowDown');
    const second = await cell(page, 'A2').boundingBox();
    expect(second?.y ?? 0).toBeGreaterThanOrEqual(corner.y + corner.height - 2);
    await press(page, 'Control+z', 'Control+z');
    await drawn(page);
    expect(await page.locator('page-grid .scroller.head-row').count()).toBe(0);
  });
}

test('a choice cell opens a list, is picked from by keys and by mouse, and takes nothing else', async () => {
  const page = await begin({
    A1: 'work material',
    B1: '42CrMo4',
    B2: '=MATERIAL.KC11(B1)',
    B3: '=MATERIAL.MC(B1)',
  });
  await goTo(page, 'B1');
  await act(page, 'Role, unit, digits, choices, note…');
  await page
    .locator('leaf-dialog')
    .getByRole('button', { name: /What may be picked/ })
    .click();
  await page.locator('choices-leaf textarea').fill('42CrMo4\nC45\nTi-6Al-4V');
  await page.locator('choices-leaf').getByRole('button', { name: 'Take them' }).click();
  await goTo(page, 'B1');
  await press(page, 'Enter');
  const list = page.locator('page-grid [role=listbox]');
  await list.waitFor();
  expect(await list.locator('[aria-selected=true]').innerText()).toBe('42CrMo4');
  expect(await page.locator('page-grid .editor').getAttribute('role')).toBe('combobox');
  const before = await cellText(page, 'B2');
  await press(page, 'ArrowDown', 'ArrowDown', 'Enter');
  await shows(page, 'B1', 'Ti-6Al-4V');
  // Every value that is worked out of the material follows.
  await expect.poll(() => cellText(page, 'B2')).not.toBe(before);
  await goTo(page, 'B1');
  await page.keyboard.type('c4');
  await list.locator('li', { hasText: 'C45' }).click();
  await shows(page, 'B1', 'C45');
  await goTo(page, 'B1');
  await page.keyboard.type('butter');
  await press(page, 'Enter');
  await page.locator('entry-line .refused', { hasText: 'none of the choices' }).waitFor();
  await press(page, 'Escape');
  await shows(page, 'B1', 'C45');
});

test('a note is shown as a tree of text, leads to a cell, and never becomes markup', async () => {
  const page = await begin({ B2: '0.12 mm' });
  await goTo(page, 'B2');
  await act(page, 'Role, unit, digits, choices, note…');
  await page.locator('leaf-dialog').getByRole('button', { name: /^Note/ }).click();
  await page
    .locator('note-leaf textarea')
    .fill(
      'Take *care*: **edge radius** in [this cell](#C5)\n\n- `h` <img src=x onerror=alert(1)>\n- [x](javascript:alert(1))',
    );
  await page.locator('note-leaf').getByRole('button', { name: 'Take it' }).click();
  const note = page.locator('margin-working .note');
  await note.locator('strong', { hasText: 'edge radius' }).waitFor();
  expect(await note.locator('li').count()).toBe(2);
  expect(await note.locator('img, a').count()).toBe(0);
  await shows(page, 'B2', '0.12 mm');
  expect(await cell(page, 'B2').getAttribute('class')).toContain('noted');
  await note.getByRole('button', { name: 'this cell' }).click();
  expect(await activeAddress(page)).toBe('C5');
  await enter(page, 'A8', 'Never *above* the speed **marked** on the holder, D*L*W and a_e stay');
  await cell(page, 'A8').locator('strong', { hasText: 'marked' }).waitFor();
  expect(await cellText(page, 'A8')).toBe('Never above the speed marked on the holder, D*L*W and a_e stay');
  // A link within a text can be followed by key and by finger from the margin.
  await enter(page, 'A9', 'the feed is [here](#B2)');
  await goTo(page, 'A9');
  await note.getByRole('button', { name: 'here' }).click();
  expect(await activeAddress(page)).toBe('B2');
});

test('a limit that is passed is marked in the cell by more than colour, with its reason', async () => {
  const page = await begin({ A1: 'spindle speed', B1: '9000 1/min' });
  await goTo(page, 'B1');
  await page
    .locator('margin-working')
    .getByRole('button', { name: /Highest allowed value/ })
    .click();
  await page.locator('dialog input').fill('8000 1/min (marked on the holder)');
  await page.locator('dialog .primary').click();
  const sign = cell(page, 'B1').locator('.sign.breach');
  await sign.waitFor();
  expect(await sign.innerText()).toBe('◆');
  expect(await sign.getAttribute('aria-label')).toBe('limit passed');
  await page.locator('margin-working .error', { hasText: 'marked on the holder' }).waitFor();
  await enter(page, 'B1', '7500');
  await shows(page, 'B1', '7500 1/min');
  expect(await sign.count()).toBe(0);
});

test('formulas in place of values are readable to their end, and go again', async () => {
  const page = await begin({ A1: '50 mm', B1: '=CUT.SPINDLE_SPEED(A1; 260 m/min) * 1.05 + 12 1/min' });
  const before = (await cell(page, 'B1').boundingBox())?.width ?? 0;
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: 'Show formulas in place of values' }).click();
  await shows(page, 'B1', '=CUT.SPINDLE_SPEED(A1; 260 m/min) * 1.05 + 12 1/min');
  expect((await cell(page, 'B1').boundingBox())?.width ?? 0).toBeGreaterThan(before);
  const hidden = await cell(page, 'B1')
    .locator('.value')
    .evaluate((value) => value.scrollWidth > value.clientWidth + 1);
  expect(hidden).toBe(false);
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: 'Show values' }).click();
  await expect.poll(async () => (await cell(page, 'B1').boundingBox())?.width).toBe(before);
});
