/** The notebook on paper, read back from the PDF that the browser makes of it, on A4 and on Letter. */

import { inflateSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { desksOfTests, enter, goTo, newNotebook, shows, type Desk } from './desk.ts';

const desks = desksOfTests();

interface Sheets {
  readonly count: number;
  /** Width and height in points, as the PDF says. */
  readonly size: readonly [number, number];
  /** Largest amount of ink of any colour but black, white and grey. */
  readonly coloured: boolean;
}

/** Streams of a PDF, unpacked where they are deflated (ISO 32000-1, 7.3.8 and 7.4.4). */
function streams(pdf: Buffer): string[] {
  const text = pdf.toString('latin1');
  return [...text.matchAll(/stream\r?\n([\s\S]*?)\r?\nendstream/g)].map(([, body = '']) => {
    try {
      return inflateSync(Buffer.from(body, 'latin1')).toString('latin1');
    } catch {
      return '';
    }
  });
}

async function sheets(page: Page, format: 'A4' | 'Letter'): Promise<Sheets> {
  const pdf = await page.pdf({ format, printBackground: false });
  const text = pdf.toString('latin1');
  const [, width = '', height = ''] = /\/MediaBox ?\[0 0 ([\d.]+) ([\d.]+)\]/.exec(text) ?? [];
  // Fill and stroke colours of a page are set by "r g b rg" and "r g b RG".
  const colours = streams(pdf).flatMap((each) => [
    ...each.matchAll(/([\d.]+) ([\d.]+) ([\d.]+) (?:rg|RG)\b/g),
  ]);
  return {
    count: [...text.matchAll(/\/Type ?\/Page\b/g)].length,
    size: [Number(width), Number(height)],
    coloured: colours.some(
      ([, r, g, b]) =>
        Math.max(Number(r), Number(g), Number(b)) - Math.min(Number(r), Number(g), Number(b)) > 0.02,
    ),
  };
}

/** What stands on paper, as text: the browser is asked for print media, and told that it prints. */
async function paper(page: Page): Promise<string> {
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  await page.waitForTimeout(200);
  const text = await page
    .locator('print-view')
    .evaluate((view) =>
      [...(view.shadowRoot?.children ?? [])]
        .map((each) => (each instanceof HTMLElement ? each.innerText : ''))
        .join('\n'),
    );
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  await page.emulateMedia({ media: 'screen' });
  return text.replaceAll(/[\u202f\u00a0]/g, ' ');
}

async function job({ page }: Desk): Promise<void> {
  await newNotebook(page);
  await enter(page, 'A1', 'cutter diameter');
  await enter(page, 'B1', '50 mm');
  await enter(page, 'A2', 'cutting speed');
  await enter(page, 'B2', '260 m/min');
  await enter(page, 'A3', 'spindle speed');
  await enter(page, 'B3', '=CUT.SPINDLE_SPEED(B1; B2)');
  await enter(page, 'A4', 'thinning');
  await enter(page, 'B4', '=MILL.THINNING(B1; 0.2 mm)');
  await shows(page, 'B3', '1655.21 1/min');
  await goTo(page, 'B3');
  await page.getByRole('combobox', { name: 'at the machine' }).selectOption('shown');
  await page.getByRole('tab', { name: 'Cautions' }).click();
  await page
    .locator('margin-cautions li.caution')
    .getByRole('button', { name: 'acknowledge' })
    .first()
    .click();
  await page.locator('dialog input').fill('edge radius measured');
  await page.locator('dialog .primary').click();
  await page.locator('margin-cautions .done', { hasText: 'edge radius measured' }).first().waitFor();
  // The workings are fetched in a quiet moment.
  await page.waitForTimeout(5000);
}

test('on paper stand title, date, state, program, units, given values, worksheets, workings, acknowledgements and the usual cautions', async () => {
  const desk = await desks.open();
  const { page, troubles } = desk;
  await job(desk);
  const text = await paper(page);
  for (const words of [
    'New notebook',
    `Printed ${new Date().getFullYear()}-`,
    'Swarfbook ',
    'results in metric units, plain numbers read as metric, money in EUR',
    'Given values',
    'cutter diameter',
    '50 mm',
    'Workings of the marked results',
    '=CUT.SPINDLE_SPEED(B1; B2)',
    '= 1655.21 1/min',
    'Groover',
    'edge radius measured',
    'a qualified person decide',
    'guards closed',
  ])
    expect(text.replaceAll(/\s+/g, ' ')).toContain(words);
  // The equation with its values put in: 260 m/min over pi times 50 mm.
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  const equations = await page.locator('print-view math').allTextContents();
  expect(equations.join(' ')).toMatch(/260.*50/);
  expect(troubles).toEqual([]);
});

test('with formulas shown the formulas are printed in place of the values', async () => {
  const desk = await desks.open();
  const { page } = desk;
  await job(desk);
  expect(await paper(page)).not.toContain('Formulas in place of values');
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: 'Show formulas in place of values' }).click();
  const text = await paper(page);
  expect(text).toContain('Formulas in place of values');
  expect(text).toContain('=MILL.THINNING(B1; 0.2 mm)');
});

test('A4 and Letter come out in their size, black on white, from the dark page too', async () => {
  const desk = await desks.open({ visitor: { colorScheme: 'dark' } });
  const { page } = desk;
  await page.evaluate(() => localStorage.setItem('theme', 'dark'));
  await page.reload();
  await job(desk);
  // ISO 216: A4 is 210 mm x 297 mm; ANSI A (Letter) is 8.5 in x 11 in; a point is 1/72 in.
  const a4 = await sheets(page, 'A4');
  expect(a4.size[0]).toBeCloseTo((210 / 25.4) * 72, -1);
  expect(a4.size[1]).toBeCloseTo((297 / 25.4) * 72, -1);
  const letter = await sheets(page, 'Letter');
  expect(letter.size).toEqual([612, 792]);
  for (const { count, coloured } of [a4, letter]) {
    expect(count).toBeGreaterThanOrEqual(2);
    expect(count).toBeLessThanOrEqual(4);
    expect(coloured).toBe(false);
  }
});

test('a long worksheet repeats its column letters on every page', async () => {
  const { page } = await desks.open();
  await newNotebook(page);
  await page.evaluate(() => {
    const lines = Array.from({ length: 150 }, (_, k) => `row ${k + 1}\t${k + 1} mm`).join('\n');
    let active = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    const data = new DataTransfer();
    data.setData('text/plain', lines);
    active?.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true }));
  });
  await shows(page, 'B15', '15 mm');
  await page.waitForTimeout(2500);
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  const head = await page
    .locator('print-view .cells thead')
    .first()
    .evaluate((each) => getComputedStyle(each).display);
  expect(head).toBe('table-header-group');
  expect((await sheets(page, 'A4')).count).toBeGreaterThanOrEqual(6);
});
