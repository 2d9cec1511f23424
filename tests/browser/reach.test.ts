/** The program without a mouse, with the system's own few colours, without motion, enlarged, and on a narrow screen. */

import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { desksOfTests, enter, newNotebook, saved, shows } from './desk.ts';

const desks = desksOfTests();

/** What has the focus, in the words that a screen reader would say. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    let active = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    const label = active?.getAttribute('aria-label') ?? active?.textContent ?? '';
    return label.replaceAll(/\s+/g, ' ').trim();
  });

/** Presses Tab until something with these words has the focus. */
async function tabTo(page: Page, words: RegExp, key = 'Tab'): Promise<void> {
  const passed: string[] = [];
  for (let k = 0; k < 80; k += 1) {
    const now = await focused(page);
    if (words.test(now)) return;
    passed.push(now.slice(0, 24));
    await page.keyboard.press(key);
  }
  throw new Error(`${String(words)} was not reached; passed: ${passed.join(' | ')}`);
}

test('by keyboard alone: a notebook is begun, filled, explained, renamed, saved and left', async () => {
  const { page, troubles } = await desks.open();
  const { keyboard } = page;
  await page.getByText('Worked examples').waitFor();
  await tabTo(page, /^Empty page, metric/);
  await keyboard.press('Enter');
  await page.locator('page-grid td.active .editor').waitFor();
  await page.waitForTimeout(500);
  // The focus is on the page at once: what is typed goes into the first cell.
  for (const text of ['cutter diameter', 'cutting speed']) {
    await keyboard.type(text);
    await keyboard.press('Enter');
  }
  await keyboard.press('Control+Home');
  await keyboard.press('ArrowRight');
  for (const text of ['50 mm', '260 m/min', '=CUT.SPINDLE_SPEED(B1; B2)']) {
    await keyboard.type(text);
    await keyboard.press('Enter');
  }
  await shows(page, 'B3', '1655.21 1/min');
  await keyboard.press('ArrowUp');
  await page.waitForTimeout(300);
  expect(await focused(page)).toMatch(
    /^B3, .*1655\.21 revolutions per minute, worked|^B3, .*1655\.21 .*worked/,
  );
  // To the margin, from tab to tab, and into the panel.
  await tabTo(page, /^Working/);
  await keyboard.press('ArrowRight');
  expect(await focused(page)).toBe('Functions');
  await page.locator('margin-functions').waitFor();
  await keyboard.press('ArrowLeft');
  await page.locator('margin-working math').first().waitFor();
  // The menu, a command in it, a question, and back to the cell.
  await tabTo(page, /^New notebook/, 'Shift+Tab');
  await keyboard.press('Enter');
  await page.locator('question-dialog dialog[open]').waitFor();
  await keyboard.type('Keys alone');
  await keyboard.press('Enter');
  await page.getByRole('button', { name: 'Keys alone' }).waitFor();
  await page.waitForTimeout(300);
  expect(await focused(page)).toMatch(/^B3/);
  await tabTo(page, /^Notebook$/, 'Shift+Tab');
  await keyboard.press('Enter');
  await tabTo(page, /^Save a file copy/);
  const [download] = await Promise.all([page.waitForEvent('download'), keyboard.press('Enter')]);
  expect(readFileSync(await download.path(), 'utf8')).toContain('Keys alone');
  await saved(page);
  await tabTo(page, /^Notebook$/, 'Shift+Tab');
  await keyboard.press('Enter');
  await tabTo(page, /^All notebooks/);
  await keyboard.press('Enter');
  await page.getByText('Worked examples').waitFor();
  await tabTo(page, /^Keys alone/);
  await keyboard.press('Enter');
  await shows(page, 'B3', '1655.21 1/min');
  expect(troubles).toEqual([]);
});

test('a cell is named in words: what it is, its symbol, its value with the unit spoken, its role', async () => {
  const { page } = await desks.open();
  await newNotebook(page);
  await enter(page, 'A1', 'feed per tooth');
  await enter(page, 'B1', '0.12 mm');
  await page.keyboard.press('ArrowUp');
  await page.locator('entry-line .name').click();
  await page.keyboard.type('fz');
  await page.keyboard.press('Enter');
  await page.waitForTimeout(400);
  expect(await focused(page)).toBe('B1, feed per tooth, fz, 0.12 millimetres, given');
});

test('at 200 percent and at 320 pixels nothing but the page of cells is wider than the window, and the head can be reached', async () => {
  for (const [width, height] of [
    [683, 384],
    [320, 640],
  ] as const) {
    const { page } = await desks.open({ width, height });
    await page.getByText('Worked examples').waitFor();
    const wide = (): Promise<number> =>
      page.evaluate(() => (document.scrollingElement?.scrollWidth ?? 0) - innerWidth);
    expect(await wide(), `first page at ${width}`).toBeLessThanOrEqual(0);
    await newNotebook(page);
    await enter(page, 'A1', '12 mm');
    expect(await wide(), `worksheet at ${width}`).toBeLessThanOrEqual(0);
    for (const name of ['Contents', 'Margin', 'Notebook', 'At the machine', 'Undo']) {
      const button = page.getByRole('button', { name, exact: true });
      await button.scrollIntoViewIfNeeded();
      const box = await button.boundingBox();
      expect(
        box && box.x >= 0 && box.x + box.width <= width && box.y >= 0 && box.y + box.height <= height,
        `${name} at ${width}`,
      ).toBe(true);
    }
    // The line on which the cell is edited stands below the page, not over anything.
    const line = page.locator('entry-line .field input');
    await line.scrollIntoViewIfNeeded();
    await line.click({ trial: true });
    await page.getByRole('button', { name: 'Margin', exact: true }).click();
    await page.locator('margin-working').waitFor();
    expect(await wide(), `margin at ${width}`).toBeLessThanOrEqual(0);
    await desks.close();
  }
});

test('with the system colours in force the chosen cells, the tab and the worksheet in sight differ from the others', async () => {
  const { page } = await desks.open({ visitor: { forcedColors: 'active' } });
  await newNotebook(page);
  await enter(page, 'A1', '12 mm');
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Shift+ArrowDown');
  const look = (selector: string): Promise<string> =>
    page
      .locator(selector)
      .first()
      .evaluate((each) => {
        const { outlineStyle, outlineWidth, backgroundColor, color } = getComputedStyle(each);
        return [outlineStyle, outlineStyle === 'none' ? '' : outlineWidth, backgroundColor, color].join(' ');
      });
  const plain = await look('page-grid tr[data-row="5"] td[data-column="3"]');
  const chosen = await look('page-grid tr[data-row="1"] td[data-column="0"]');
  const active = await look('page-grid td.active');
  expect(new Set([plain, chosen, active]).size).toBe(3);
  expect(await look('margin-view [role=tab][aria-selected=true]')).not.toBe(
    await look('margin-view [role=tab][aria-selected=false]'),
  );
  expect(await look('desk-head [aria-pressed=true]')).not.toBe(await look('desk-head [aria-pressed=false]'));
});

test('with the system colours in force pictures are drawn in them, and pressed keys and questions differ from the others', async () => {
  const { page } = await desks.open({ visitor: { forcedColors: 'active', colorScheme: 'dark' } });
  const look = (where: Locator): Promise<string> =>
    where.first().evaluate((each) => {
      const { backgroundColor, color } = getComputedStyle(each);
      return `${backgroundColor} ${color}`;
    });
  await page.getByRole('button', { name: /^Pump cover/ }).click();
  await page.getByRole('tab', { name: 'Figures' }).click();
  const outline = page.locator('margin-figures svg.figure .outline').first();
  await outline.waitFor({ state: 'attached' });
  const ink = await page.evaluate(() => {
    const probe = document.body.appendChild(document.createElement('i'));
    probe.className = 'probe';
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('.probe { color: CanvasText; }');
    document.adoptedStyleSheets = [sheet];
    const { color } = getComputedStyle(probe);
    probe.remove();
    return color;
  });
  expect(await outline.evaluate((line) => getComputedStyle(line).stroke)).toBe(ink);
  await page.getByRole('tab', { name: 'What-if' }).click();
  const sections = page.getByRole('group', { name: 'kind of question' });
  await sections.waitFor();
  expect(await look(sections.locator('[aria-pressed=true]'))).not.toBe(
    await look(sections.locator('[aria-pressed=false]')),
  );
  await page.getByRole('button', { name: 'At the machine', exact: true }).click();
  await page.getByRole('button', { name: /^Keypad/ }).click();
  const bar = page.locator('machine-page .bar');
  expect(await look(bar.locator('[aria-pressed=true]'))).not.toBe(
    await look(bar.locator('button:not([aria-pressed=true]):not(:disabled)')),
  );
  await page.locator('machine-page [data-field=B9]').click();
  const keys = page.locator('on-screen-keypad');
  await keys.waitFor();
  // The main key is told by its frame: its words stand on the system's own colour.
  const done = await look(keys.getByRole('button', { name: /^Done/ }));
  expect(done).toBe(await look(keys.getByRole('button', { name: /^Leave it/ })));
  expect(await look(keys.locator('[aria-pressed=true]'))).not.toBe(
    await look(keys.locator('[aria-pressed=false]')),
  );
  expect(
    await page
      .locator('machine-page .result')
      .first()
      .evaluate((each) => getComputedStyle(each).borderTopStyle),
  ).toBe('solid');
});

test('by keyboard alone: every panel is opened and worked in, a leaf is left with Escape, and the focus goes back to the page', async () => {
  const { page, troubles } = await desks.open();
  const { keyboard } = page;
  await page.getByText('Worked examples').waitFor();
  await tabTo(page, /^Crank line: pins/);
  await keyboard.press('Enter');
  await page.locator('page-grid td.active .editor').waitFor();
  await shows(page, 'C8', '48 inserts');
  await tabTo(page, /^Working/);
  const turn = async (name: RegExp, inside: string): Promise<void> => {
    await keyboard.press('ArrowRight');
    expect(await focused(page)).toMatch(name);
    await page.locator(inside).first().waitFor();
  };
  await turn(/^Functions/, 'margin-functions summary');
  await tabTo(page, /^search functions/);
  await keyboard.type('spindle speed');
  await page.locator('margin-functions li button').first().waitFor();
  await tabTo(page, /^CUT.SPINDLE_SPEED/);
  await keyboard.press('Enter');
  await page.locator('margin-functions h2').waitFor();
  await tabTo(page, /^Functions/, 'Shift+Tab');
  await turn(/^Figures/, 'margin-figures svg.figure');
  await tabTo(page, /^larger/);
  await keyboard.press('Enter');
  await page.locator('figure-leaf svg.figure').waitFor();
  await keyboard.press('Escape');
  await page.locator('leaf-dialog dialog[open]').waitFor({ state: 'detached' });
  expect(await focused(page)).toMatch(/^A1/);
  await tabTo(page, /^Figures/);
  await turn(/^What-if/, 'margin-what-if .sections');
  await tabTo(page, /^Solve/);
  await keyboard.press('Enter');
  await tabTo(page, /^inserts on the ring for the rate/);
  await keyboard.press('Enter');
  await tabTo(page, /^Solve$/, 'Shift+Tab');
  await keyboard.press('Enter');
  await page.getByText('can not be reached exactly').waitFor();
  await tabTo(page, /^What-if/, 'Shift+Tab');
  await turn(/^Cautions/, 'margin-cautions section');
  await turn(/^Review/, 'review-walk .walk');
  await tabTo(page, /^\d+ of \d+ formulas|^review/);
  await keyboard.press('n');
  await page.locator('review-walk .formula').waitFor();
  expect(troubles).toEqual([]);
});

test('by keyboard alone: a value is stepped and typed at the machine, undone, and the page left', async () => {
  const { page, troubles } = await desks.open();
  const { keyboard } = page;
  await page.evaluate(() => localStorage.setItem('who', '["JK"]'));
  await page.getByText('Worked examples').waitFor();
  await tabTo(page, /^Pump cover/);
  await keyboard.press('Enter');
  await page.locator('page-grid td.active .editor').waitFor();
  await tabTo(page, /^At the machine/, 'Shift+Tab');
  await keyboard.press('Enter');
  const field = page.locator('machine-page [data-field=B11]');
  await field.waitFor();
  await tabTo(page, /^cutting speed, B11/);
  await keyboard.press('ArrowUp');
  await expect.poll(() => field.inputValue()).toBe('270');
  await keyboard.press('ArrowUp');
  await expect.poll(() => field.inputValue()).toBe('280');
  await keyboard.press('ArrowDown');
  await expect.poll(() => field.inputValue()).toBe('270');
  // All of it is marked: what is typed takes its place.
  await keyboard.type('280');
  await keyboard.press('Enter');
  // 280 m/min over a circumference of pi * 50 mm is 1782.5 1/min, worked by hand.
  await page.locator('machine-page .result[data-cell=B17]', { hasText: /1.?783/ }).waitFor();
  await tabTo(page, /^Undo/);
  await keyboard.press('Enter');
  await expect.poll(() => field.inputValue()).toBe('270');
  await tabTo(page, /^open cautions/, 'Shift+Tab');
  await tabTo(page, /^Back to the desk/, 'Shift+Tab');
  await keyboard.press('Enter');
  await shows(page, 'B11', '270 m/min');
  expect(troubles).toEqual([]);
});
