/** Finding and replacing, and going to a cell, a name, a worksheet: by keys. */

import { expect, test } from 'vitest';
import { activeAddress, desksOfTests, focusGrid, goTo, shows } from './desk.ts';
import { begun, press } from './hands.ts';

const desks = desksOfTests({ untroubled: true });

test('find goes from one place to the next by key, and replace is one step that names what it left', async () => {
  const page = await begun(desks, {
    A1: 'feed',
    B1: '12 mm',
    B2: '=B1*12',
    B3: '=SUM(B1:B2)',
    A2: 'old feed',
  });
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
  const page = await begun(desks, { B7: '0.12 mm' });
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
