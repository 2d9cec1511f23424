/** Pointing into another worksheet while a formula is typed: by mouse, and by keys alone. */

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { axeFindings } from './axe.ts';
import { activeAddress, desksOfTests, drawn, enter, focusGrid, goTo, newNotebook, shows } from './desk.ts';
import { cell, line } from './hands.ts';

const desks = desksOfTests({ untroubled: true });

const sheet = (page: Page, title: string): ReturnType<Page['locator']> =>
  page.locator('contents-rail .sheet button', { hasText: title });
async function inSight(page: Page): Promise<string | null> {
  await drawn(page);
  return page.locator('page-grid table').getAttribute('aria-label');
}

async function middle(target: ReturnType<Page['locator']>): Promise<{ x: number; y: number }> {
  const box = await target.boundingBox();
  if (!box) throw new Error('not in sight');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Worksheet 1 with 3 mm in A1 in sight, and Tool trial with 10, 20 and 30 mm in A1 to A3. */
async function begin(): Promise<Page> {
  const { page } = await desks.open();
  await newNotebook(page);
  await enter(page, 'A1', '3 mm');
  await page.locator('contents-rail').getByRole('button', { name: 'add' }).click();
  await page.locator('dialog input').fill('Tool trial');
  await page.locator('dialog .primary').click();
  await focusGrid(page);
  for (const text of ['10 mm', '20 mm', '30 mm']) {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  }
  await sheet(page, 'Worksheet 1').click();
  return page;
}

test('another worksheet is shown, clicked and dragged on, and Enter takes the formula where it began', async () => {
  const page = await begin();
  await goTo(page, 'B2');
  await page.keyboard.type('=A1+SUM(');
  await sheet(page, 'Tool trial').click();
  await expect.poll(() => inSight(page)).toBe('Tool trial');
  expect(await page.locator('page-grid td.chosen').count()).toBe(0);
  expect(await activeAddress(page)).toBe("'Worksheet 1'.B2");
  const [from, to] = [await middle(cell(page, 'A1')), await middle(cell(page, 'A3'))];
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 5 });
  await page.mouse.up();
  expect(await line(page)).toBe("=A1+SUM('Tool trial'.A1:A3");
  expect(await page.locator('page-grid td.ref').count()).toBe(3);
  expect(await axeFindings(page)).toEqual([]);
  await page.keyboard.type(')');
  await page.locator('entry-line .gives', { hasText: '63 mm' }).waitFor();
  await page.keyboard.press('Enter');
  expect(await inSight(page)).toBe('Worksheet 1');
  await shows(page, 'B2', '63 mm');
  expect(await activeAddress(page)).toBe('B3');
  await page.keyboard.press('Control+z');
  await shows(page, 'B2', '');
});

test('by keys alone: another worksheet, arrows there, back; Escape leaves it and a reload keeps it where it began', async () => {
  const page = await begin();
  await goTo(page, 'B2');
  await page.keyboard.type('=');
  for (const key of ['Alt+PageDown', 'ArrowDown', 'ArrowDown', 'Shift+ArrowDown'])
    await page.keyboard.press(key);
  expect(await line(page)).toBe("='Tool trial'.A2:A3");
  await page.keyboard.type('*');
  await page.keyboard.press('Alt+PageUp');
  await page.keyboard.press('ArrowUp');
  expect(await line(page)).toBe("='Tool trial'.A2:A3*B1");
  expect(await inSight(page)).toBe('Worksheet 1');
  await page.keyboard.press('Alt+PageDown');
  await page.keyboard.press('Escape');
  expect(await inSight(page)).toBe('Worksheet 1');
  expect(await activeAddress(page)).toBe('B2');
  await shows(page, 'B2', '');
  // The page goes while the other worksheet is in sight.
  await page.keyboard.type('=2*');
  await page.keyboard.press('Alt+PageDown');
  await page.keyboard.press('ArrowDown');
  page.once('dialog', (dialog) => void dialog.accept());
  await page.reload();
  await page.locator('page-grid .editor.open').waitFor();
  expect(await line(page)).toBe("=2*'Tool trial'.A1");
  expect(await activeAddress(page)).toBe('B2');
  await page.keyboard.press('Enter');
  await shows(page, 'B2', '20 mm');
  // Without a formula the same keys go to the worksheet.
  await page.keyboard.press('Alt+PageDown');
  expect(await inSight(page)).toBe('Tool trial');
  expect(await activeAddress(page)).toBe('A1');
});

test('going to a place puts it into the formula that is open, by name, address or range, from another worksheet too; where none may stand it says so', async () => {
  const page = await begin();
  await goTo(page, 'B2');
  const go = async (text: string): Promise<void> => {
    await page.keyboard.press('Control+g');
    await page.locator('go-bar input:focus').waitFor();
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  };
  await page.keyboard.type('=');
  await go('A1');
  await page.locator('page-grid .editor:focus').waitFor();
  expect(await line(page)).toBe('=A1');
  await page.keyboard.type('+SUM(');
  await go("'Tool trial'.A1:A3");
  expect(await inSight(page)).toBe('Tool trial');
  expect(await line(page)).toBe("=A1+SUM('Tool trial'.A1:A3");
  await page.keyboard.type(')');
  // No cell can stand behind a bracket that closes: nothing is changed, and the bar stays.
  await go('A1');
  await page.locator('go-bar', { hasText: 'no cell can stand at this place of the formula' }).waitFor();
  expect(await line(page)).toBe("=A1+SUM('Tool trial'.A1:A3)");
  await page.keyboard.press('Escape');
  await page.locator('page-grid .editor:focus').waitFor();
  await page.keyboard.type('*');
  // The worksheet itself is only shown.
  await go('Worksheet 1');
  expect(await inSight(page)).toBe('Worksheet 1');
  expect(await line(page)).toBe("=A1+SUM('Tool trial'.A1:A3)*");
  await page.keyboard.type('2');
  await page.keyboard.press('Enter');
  // 3 mm and twice 10, 20 and 30 mm.
  await shows(page, 'B2', '123 mm');
  expect(await activeAddress(page)).toBe('B3');
  // With no formula open one goes there; a text that is open is taken first.
  await page.keyboard.type('words');
  await go('A1');
  await shows(page, 'B3', 'words');
  await expect.poll(() => activeAddress(page)).toBe('A1');
});
