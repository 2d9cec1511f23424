/** Figures as a user meets them: made, following the cells, in words and as a table, saved as files. */

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { desksOfTests, enter, goTo, newNotebook, readyWithoutNetwork, saved, shows } from './desk.ts';

const desks = desksOfTests();

const figures = async (page: Page): Promise<void> => {
  await page.getByRole('tab', { name: 'Figures' }).click();
  await page.locator('margin-figures select').waitFor();
};

/** Wear of two edges over time, invented. */
async function readings(page: Page): Promise<void> {
  await newNotebook(page);
  const rows = [
    ['time', 'edge 1', 'edge 2'],
    ['5 min', '0.05 mm', '0.04 mm'],
    ['10 min', '0.12 mm', '0.09 mm'],
    ['15 min', '0.22 mm', '0.15 mm'],
  ];
  for (const [r, row] of rows.entries())
    for (const [c, text] of row.entries()) await enter(page, `${String.fromCharCode(65 + c)}${r + 1}`, text);
  await enter(page, 'E1', '0.2 mm');
}

async function plotted(page: Page): Promise<void> {
  await readings(page);
  await goTo(page, 'A1');
  for (let k = 0; k < 3; k += 1) await page.keyboard.press('Shift+ArrowDown');
  for (let k = 0; k < 2; k += 1) await page.keyboard.press('Shift+ArrowRight');
  await figures(page);
  await page.getByRole('button', { name: 'Plot the selection' }).click();
  await page.getByRole('button', { name: 'Add the figure' }).click();
  await page.locator('margin-figures li notebook-figure svg.figure').waitFor();
}

const words = (page: Page): Promise<string | null> =>
  page.locator('margin-figures li notebook-figure .picture').first().getAttribute('aria-label');

test('a selection is plotted, follows its cells, and says in words what it shows', async () => {
  const { page, troubles } = await desks.open();
  await plotted(page);
  expect(await words(page)).toMatch(
    /Plot over time in min.*edge 1: 3 points from 5 min to 15 min.*most 0\.22 mm at 15 min/,
  );
  expect(await page.locator('margin-figures li svg .curve path').count()).toBe(2);
  const before = await page.locator('margin-figures li svg .curve path').first().getAttribute('d');
  await enter(page, 'B4', '0.40 mm');
  await page.waitForFunction((d) => {
    const figure = document
      .querySelector('swarf-book')
      ?.shadowRoot?.querySelector('margin-view')
      ?.shadowRoot?.querySelector('margin-figures')
      ?.shadowRoot?.querySelector('notebook-figure');
    const path = figure?.shadowRoot?.querySelector('svg .curve path');
    return path !== null && path !== undefined && path.getAttribute('d') !== d;
  }, before);
  expect(await words(page)).toMatch(/most 0\.4 mm at 15 min/);
  expect(troubles).toEqual([]);
});

test('a level is drawn in, the table has every number, and a removed figure comes back by undo', async () => {
  const { page, troubles } = await desks.open();
  await plotted(page);
  await page.getByRole('button', { name: 'change…' }).click();
  await page.getByRole('button', { name: 'add a level' }).click();
  const level = page.locator('figure-editor fieldset', { hasText: 'Level 1' });
  await level.getByRole('textbox', { name: 'Cell' }).fill('E1');
  await level.getByRole('textbox', { name: 'Words' }).fill('change the edge');
  await page.getByRole('button', { name: 'Keep the changes' }).click();
  await page.locator('margin-figures li svg .level line').waitFor({ state: 'attached' });
  // 0.12 mm at 10 min and 0.22 mm at 15 min: by a straight line 0.2 mm at 14 min.
  expect(await words(page)).toMatch(/passes change the edge \(0\.2 mm\) at about 14 min/);
  await page.locator('margin-figures summary').click();
  const table = (await page.locator('margin-figures li table').innerText()).replaceAll(/\s+/g, ' ');
  expect(table).toContain('time (min) edge 1 (mm) edge 2 (mm)');
  expect(table).toContain('15 0.22 0.15');
  await page.getByRole('button', { name: 'remove' }).click();
  await page.getByText('No figures yet', { exact: false }).waitFor();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.locator('margin-figures li svg .level line').waitFor({ state: 'attached' });
  expect(troubles).toEqual([]);
});

test('a call in the selected cell proposes its sketch with its cells, and the sketch is kept and follows', async () => {
  const { page, troubles } = await desks.open();
  await newNotebook(page);
  await enter(page, 'A1', '20 mm');
  await enter(page, 'A2', '0.1 mm');
  await enter(page, 'A3', '2 mm');
  await enter(page, 'A4', '=MILL.CHIP_MAX(A1; A2; A3)');
  // 0.1 mm times 2 sqrt(0.1 * 0.9) is 0.06 mm.
  await shows(page, 'A4', '0.06 mm');
  await goTo(page, 'A4');
  await page.locator('function-sketch svg.figure').waitFor();
  await figures(page);
  await page
    .locator('margin-figures select')
    .selectOption({ label: 'Cutter engagement, down (climb) (from the selected cell)' });
  await page.locator('figure-editor svg.figure').waitFor();
  await page.getByRole('button', { name: 'Add the figure' }).click();
  await page.locator('margin-figures li svg.figure').waitFor();
  // cos(phi) = 1 - 2 * 2/20: 36.87 degrees.
  expect(await words(page)).toMatch(
    /engaged over 2 mm in down \(climb\) milling: each tooth is in the cut over 36\.87°/,
  );
  await enter(page, 'A3', '5 mm');
  await page.locator('margin-figures li .picture[aria-label*="60°"]').waitFor();
  await enter(page, 'A3', '5 kg');
  await page.locator('margin-figures li', { hasText: 'a length is needed' }).waitFor();
  await enter(page, 'A3', '2 mm');
  await saved(page);
  await page.reload();
  await page.locator('contents-rail nav[aria-label="figures"] button').click();
  await page.locator('figure-leaf svg.figure').waitFor();
  expect(troubles).toEqual([]);
});

/** The file a link gives. */
async function file(page: Page, link: string): Promise<{ readonly name: string; readonly bytes: Buffer }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: link }).click(),
  ]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

test('a figure is saved as SVG that any reader of XML opens, and as PNG', async () => {
  const desk = await desks.open();
  const { page, troubles } = desk;
  await plotted(page);
  const svg = await file(page, 'save as SVG');
  expect(svg.name).toMatch(/\.svg$/);
  const text = svg.bytes.toString('utf8');
  const reader = await desk.context.newPage();
  const read = await reader.evaluate((source) => {
    const parsed = new DOMParser().parseFromString(source, 'image/svg+xml');
    return {
      wrong: parsed.querySelector('parsererror') !== null,
      title: parsed.querySelector('title')?.textContent,
      words: parsed.querySelector('desc')?.textContent,
      rules: parsed.querySelector('style')?.textContent?.length ?? 0,
      curves: parsed.querySelectorAll('.curve path').length,
    };
  }, text);
  expect(read).toMatchObject({ wrong: false, curves: 2 });
  expect(read.title).toMatch(/edge 1/);
  expect(read.words).toMatch(/Plot over time/);
  // Its rules and faces are inside: nothing is fetched from elsewhere.
  expect(read.rules).toBeGreaterThan(10_000);
  expect(text.replaceAll(/xmlns(:\w+)?="[^"]*"/g, '')).not.toMatch(/https?:/);
  const png = await file(page, 'save as PNG');
  expect(png.name).toMatch(/\.png$/);
  expect([...png.bytes.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  // Width in the header: three pixels for one of the page.
  expect(png.bytes.readUInt32BE(16)).toBeGreaterThan(800);
  expect(troubles).toEqual([]);
});

test('a figure is drawn when it comes into sight, not before', async () => {
  const { page, troubles } = await desks.open();
  await page.locator('start-view button.open', { hasText: 'Pump cover' }).click();
  await figures(page);
  const each = page.locator('margin-figures li notebook-figure');
  await each.first().locator('svg.figure').waitFor();
  expect(await each.count()).toBe(3);
  expect(await each.last().locator('svg.figure').count()).toBe(0);
  await each.last().scrollIntoViewIfNeeded();
  await each.last().locator('svg.figure').waitFor();
  expect(troubles).toEqual([]);
});

test('without network a plot is drawn for the first time, and undo and redo follow', async () => {
  const desk = await desks.open({ installs: true });
  const { page, troubles } = desk;
  await page.getByRole('button', { name: 'Empty page, metric' }).waitFor();
  await readyWithoutNetwork(page);
  await desk.stopServer();
  await page.reload();
  await plotted(page);
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByText('No figures yet', { exact: false }).waitFor();
  await page.getByRole('button', { name: 'Redo' }).click();
  await page.locator('margin-figures li svg.figure').waitFor();
  expect(troubles).toEqual([]);
});

test('figures go to paper with the notebook, in black on white', async () => {
  const { page, troubles } = await desks.open();
  await plotted(page);
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => globalThis.dispatchEvent(new Event('beforeprint')));
  const printed = page.locator('print-view notebook-figure svg.figure');
  await printed.waitFor();
  expect(await page.locator('print-view notebook-figure .files').isVisible()).toBe(false);
  const ink = await printed
    .locator('.curve path')
    .first()
    .evaluate((path) => getComputedStyle(path).stroke);
  expect(ink).toBe('rgb(0, 0, 0)');
  expect(troubles).toEqual([]);
});

test('a function’s help shows its sketch drawn from the numbers of its example', async () => {
  const { page, troubles } = await desks.open();
  await newNotebook(page);
  await page.getByRole('tab', { name: 'Functions' }).click();
  await page.getByRole('searchbox').fill('scallop');
  await page.getByRole('button', { name: 'MILL.SCALLOP' }).click();
  await page.locator('function-sketch svg.figure').waitFor();
  // 5 - sqrt(25 - 9) is 1 mm.
  expect(await page.locator('function-sketch figcaption').innerText()).toMatch(
    /Passes of a ball of 10 mm diameter, 6 mm apart.*1000 µm/,
  );
  expect(troubles).toEqual([]);
});
