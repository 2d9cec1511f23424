/** The page as a user meets it: typing, keys, keeping, offline, errors, cautions. */

import { expect, test } from 'vitest';
import { SHOP_HOST } from './chromium.ts';
import {
  activeAddress,
  cellText,
  desksOfTests,
  enter,
  focusGrid,
  goTo,
  newNotebook,
  readyWithoutNetwork,
  saved,
  shows,
} from './desk.ts';

const desks = desksOfTests();

test('1 an edit and everything before it is back after a reload', async () => {
  const { page, troubles } = await desks.open();
  await newNotebook(page);
  await enter(page, 'A1', 'cutter diameter');
  await enter(page, 'B1', '50 mm');
  await enter(page, 'B2', '260 m/min');
  // 260 m/min over a circumference of pi * 50 mm is 1655.2 1/min, worked by hand.
  await enter(page, 'B3', '=CUT.SPINDLE_SPEED(B1; B2)');
  await shows(page, 'B3', '1655.21 1/min');
  await saved(page);
  await page.reload();
  await shows(page, 'A1', 'cutter diameter');
  await shows(page, 'B1', '50 mm');
  await shows(page, 'B3', '1655.21 1/min');
  expect(troubles).toEqual([]);
});

test('1 with the server stopped a reload, an edit and another reload lose nothing', async () => {
  const desk = await desks.open({ installs: true });
  const { page } = desk;
  await newNotebook(page);
  await enter(page, 'B1', '12 mm');
  await saved(page);
  await readyWithoutNetwork(page);
  await desk.stopServer();
  await page.reload();
  await shows(page, 'B1', '12 mm');
  await enter(page, 'B2', '=B1*2');
  await shows(page, 'B2', '24 mm');
  await saved(page);
  await page.reload();
  await shows(page, 'B1', '12 mm');
  await shows(page, 'B2', '24 mm');
});

test('2 the keys of the grid pattern move, extend, edit and leave', async () => {
  const { page } = await desks.open();
  await newNotebook(page);
  const press = async (...keys: string[]): Promise<void> => {
    for (const key of keys) await page.keyboard.press(key);
  };
  await press('ArrowDown', 'ArrowRight');
  expect(await activeAddress(page)).toBe('B2');
  await press('End');
  expect(await activeAddress(page)).toBe('L2');
  await press('Home');
  expect(await activeAddress(page)).toBe('A2');
  await press('PageDown');
  expect(await activeAddress(page)).toBe('A22');
  await press('PageUp');
  expect(await activeAddress(page)).toBe('A2');
  await press('Control+End');
  expect(await activeAddress(page)).toBe('L60');
  await press('Control+Home');
  expect(await activeAddress(page)).toBe('A1');
  await press('Shift+ArrowDown', 'Shift+ArrowRight');
  expect(await activeAddress(page)).toBe('A1:B2');
  expect(await page.locator('page-grid td[aria-selected=true]').count()).toBe(4);
  await press('Control+Home');
  await page.keyboard.type('first');
  expect(await page.locator('page-grid .editor').inputValue()).toBe('first');
  await press('Escape');
  expect(await cellText(page, 'A1')).toBe('');
  await page.keyboard.type('7 mm');
  await press('Enter');
  await shows(page, 'A1', '7 mm');
  expect(await activeAddress(page)).toBe('A2');
  await press('ArrowUp', 'F2');
  await press('Home', 'Delete');
  await page.keyboard.type('8');
  await press('Tab');
  await shows(page, 'A1', '8 mm');
  expect(await activeAddress(page)).toBe('B1');
  await press('ArrowLeft', 'Delete');
  await shows(page, 'A1', '');
  await press('Control+z');
  await shows(page, 'A1', '8 mm');
  await press('Control+z');
  await shows(page, 'A1', '7 mm');
  await press('Control+y');
  await shows(page, 'A1', '8 mm');
});

test('2 the page has one tab stop and the focus stays inside the active cell', async () => {
  const { page } = await desks.open();
  await newNotebook(page);
  const stops = page.locator('page-grid').locator('[tabindex="0"], input, button, a[href]');
  expect(await stops.count()).toBe(1);
  await page.keyboard.press('ArrowDown');
  const inside = await page.evaluate(() => {
    let active = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    return active?.closest('td')?.classList.contains('active');
  });
  expect(inside).toBe(true);
});

test('3 two thousand rows: the last one is reached, edited and counted, and few rows are in the document', async () => {
  const { page } = await desks.open();
  await newNotebook(page);
  await page.evaluate(() => {
    const lines = Array.from({ length: 2000 }, (_, k) => `${k + 1} mm`).join('\n');
    let active = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    const data = new DataTransfer();
    data.setData('text/plain', lines);
    active?.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true }));
  });
  await shows(page, 'A3', '3 mm');
  // The sum of 1 to 2000 is 2000 * 2001 / 2.
  await enter(page, 'B1', '=SUM(A1:A2000)');
  await shows(page, 'B1', '2\u202f001\u202f000 mm'.replaceAll('\u202f', ' '));
  await focusGrid(page);
  await page.keyboard.press('Control+End');
  await page.keyboard.press('Home');
  expect(await activeAddress(page)).toBe('A2000');
  await shows(page, 'A2000', '2000 mm');
  const rows = await page.locator('page-grid tbody tr[aria-rowindex]').count();
  expect(rows).toBeLessThan(120);
  expect(await page.locator('page-grid table').getAttribute('aria-rowcount')).toBe('2001');
  await page.keyboard.type('2001 mm');
  await page.keyboard.press('Enter');
  await shows(page, 'A2000', '2001 mm');
});

test('a clash of units is an error with words and a way to it', async () => {
  const { page } = await desks.open();
  await newNotebook(page);
  await enter(page, 'A1', '50 mm');
  await enter(page, 'A2', '3 min');
  await enter(page, 'A3', '=A1+A2');
  await shows(page, 'A3', '#UNIT!');
  await goTo(page, 'A3');
  await page.locator('margin-working .error', { hasText: 'length' }).waitFor();
  await page.getByRole('tab', { name: 'Cautions' }).click();
  await page.locator('margin-cautions li.error button', { hasText: 'A3' }).click();
  expect(await activeAddress(page)).toBe('A3');
});

test('a caution stands at the value, is listed, and can be acknowledged with a reason', async () => {
  const { page } = await desks.open();
  await newNotebook(page);
  await enter(page, 'A1', '50 mm');
  // 0.2 mm of engagement on 50 mm: thinning 2 sqrt(0.004 * 0.996) = 0.126, below 0.3, where the function warns.
  await enter(page, 'A2', '=MILL.THINNING(A1; 0.2 mm)');
  const sign = page.locator('page-grid tr[data-row="1"] td[data-column="0"] .sign');
  await sign.waitFor();
  expect(await sign.innerText()).toBe('▲');
  await page.getByRole('tab', { name: 'Cautions' }).click();
  await page
    .locator('margin-cautions li.caution')
    .getByRole('button', { name: 'acknowledge' })
    .first()
    .click();
  await page.locator('dialog input').fill('edge radius measured');
  await page.locator('dialog .primary').click();
  await page.locator('margin-cautions .done', { hasText: 'edge radius measured' }).first().waitFor();
});

test('F7a one press writes the fraction of an inch that was meant', async () => {
  const { page } = await desks.open();
  await newNotebook(page);
  await enter(page, 'A1', '=3/8 in');
  await goTo(page, 'A1');
  await page.getByRole('button', { name: 'write 0.375 in instead' }).first().click();
  // 3/8 in = 0.375 in = 9.525 mm, exactly.
  await shows(page, 'A1', '9.525 mm');
  expect(
    await page
      .locator('entry-line input, entry-line [contenteditable], entry-line textarea')
      .first()
      .inputValue(),
  ).toBe('=0.375 in');
});

test('the usual caution is in sight on the first page and beside every worksheet', async () => {
  const { page } = await desks.open();
  const words = page.getByText('a qualified person decide', { exact: false }).first();
  expect(await words.isVisible()).toBe(true);
  await newNotebook(page);
  expect(await page.locator('footer').isVisible()).toBe(true);
  expect(await page.locator('footer').innerText()).toContain('qualified person');
});

test('typing a function offers it, names its arguments and shows the result before it is taken', async () => {
  const { page } = await desks.open();
  await newNotebook(page);
  await page.keyboard.type('=spindle_sp');
  await page.locator('entry-line .choices li', { hasText: 'CUT.SPINDLE_SPEED' }).waitFor();
  await page.keyboard.press('Tab');
  await page.locator('entry-line .hint .here', { hasText: 'diameter' }).waitFor();
  await page.keyboard.type('50; ');
  await page.locator('entry-line .hint .here', { hasText: 'cutting speed' }).waitFor();
  await page.keyboard.type('260)');
  await page.locator('entry-line .gives', { hasText: '1655.21' }).waitFor();
  await page.keyboard.press('Enter');
  await shows(page, 'A1', '1655.21 1/min');
});

test('switching to inch changes what is shown and nothing that was typed', async () => {
  const { page } = await desks.open();
  await newNotebook(page);
  await enter(page, 'A1', '50.8 mm');
  await enter(page, 'A2', '=A1*2');
  await shows(page, 'A2', '101.6 mm');
  await page.getByRole('button', { name: 'inch', exact: true }).click();
  await shows(page, 'A2', '4 in');
  await goTo(page, 'A1');
  expect(await page.locator('entry-line .field input').inputValue()).toBe('50.8 mm');
});

test('an address that is neither https nor this computer says at once that nothing is kept safely', async () => {
  const desk = await desks.open({ host: '127.0.0.1' });
  const { page } = desk;
  expect(await page.locator('.band').count()).toBe(0);
  await page.goto(desk.address.replace('127.0.0.1', SHOP_HOST));
  await page.locator('.band', { hasText: 'nothing works here without network' }).waitFor();
  // It still works, and what was typed is back after a reload.
  await newNotebook(page);
  await enter(page, 'A1', '12 mm');
  await saved(page);
  await page.reload();
  await shows(page, 'A1', '12 mm');
  expect(await page.locator('.band').count()).toBe(1);
});

test('a worked example opens from the first page and computes without an error', async () => {
  const { page, troubles } = await desks.open();
  await page.locator('section[aria-label=templates] button').first().click();
  await page.locator('page-grid td.number').first().waitFor();
  await page.waitForTimeout(1500);
  expect(await page.locator('page-grid td.error').count()).toBe(0);
  expect(troubles).toEqual([]);
});

test('no violation of the content security policy on the way through every part of the page', async () => {
  const { page, troubles } = await desks.open();
  await page.evaluate(() => {
    document.addEventListener('securitypolicyviolation', (event) =>
      console.error(`policy: ${event.violatedDirective}`),
    );
  });
  await newNotebook(page);
  await enter(page, 'A1', '=MILL.CHIP_MAX(50 mm; 0.2 mm; 5 mm)');
  await goTo(page, 'A1');
  await page.locator('margin-working math').first().waitFor();
  await page.getByRole('tab', { name: 'Functions' }).click();
  await page.getByRole('searchbox').fill('tool life');
  await page.locator('margin-functions li button').first().click();
  await page.locator('margin-functions h2').waitFor();
  await page.getByRole('tab', { name: 'Cautions' }).click();
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: 'Dark page' }).click();
  expect(troubles).toEqual([]);
});
