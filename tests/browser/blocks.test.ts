/** Blocks of cells: selected, pointed at while a formula is typed, filled; by mouse and by keys. */

import { expect, test } from 'vitest';
import { activeAddress, desksOfTests, enter, goTo, shows } from './desk.ts';
import { begun, cell, drag, dragHandle, line, press } from './hands.ts';

const desks = desksOfTests({ untroubled: true });

test('arrow keys and drags put references and ranges into a formula, outlined on the page', async () => {
  const page = await begun(desks, { A1: '1 mm', A2: '2 mm', A3: '3 mm', B1: '4' });
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
  const page = await begun(desks);
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
  const page = await begun(desks, { A1: '1 mm', A2: '2 mm', A3: '3 mm', B1: '=A1*2' });
  await goTo(page, 'B1');
  await dragHandle(page, 'B3');
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
  await dragHandle(page, 'C3');
  await shows(page, 'C3', '4 mm');
  expect(await activeAddress(page)).toBe('C3:C5');
  await press(page, 'Control+z');
  await shows(page, 'C3', '');
  await goTo(page, 'A5');
  await press(page, 'Shift+ArrowRight', 'Control+Shift+r');
  await shows(page, 'A5', '7 mm');
});
