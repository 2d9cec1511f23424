/** Rows and columns: inserted, moved, deleted, sorted, made wider, kept in sight. */

import { expect, test } from 'vitest';
import { activeAddress, cellText, desksOfTests, drawn, focusGrid, goTo, pasteText, shows } from './desk.ts';
import { act, begun, cell, press } from './hands.ts';

const desks = desksOfTests({ untroubled: true });

test('rows are inserted, moved with their references and deleted after a warning that names who uses them', async () => {
  const page = await begun(desks, { A1: '10 mm', A2: '20 mm', B5: '=A2*2' });
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
  const page = await begun(desks, {
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
  const page = await begun(desks);
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
    const page = await begun(desks, { A1: 'what', B1: 'value', A2: 'feed' });
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
