/** A log of 200 000 rows becomes a recording without the page standing still, is read in a formula, renamed, and is there after a reload. */

import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { axeFindings } from './axe.ts';
import { desksOfTests } from './desk.ts';

const desks = desksOfTests();

const ROWS = 200_000;
/** As it is shown: thousands parted by a narrow space. */
const SHOWN = '200\u202f000';

function logFile(): string {
  const lines = Array.from(
    { length: ROWS },
    (_, k) => `${(k / 100).toFixed(2)};${((k % 1000) / 10).toFixed(1)};08:00`,
  );
  const path = join(mkdtempSync(join(tmpdir(), 'log-')), 'Spindle log 7.csv');
  writeFileSync(path, `Time [s];Force [N];Stamp\n${lines.join('\n')}\n`);
  return path;
}

test(
  'a log of 200 000 rows is read in, used, renamed, and there after a reload',
  { timeout: 240_000 },
  async () => {
    const { page, troubles } = await desks.open();
    await page.locator('section[aria-label=templates] button', { hasText: /pump/i }).click();
    await page.getByRole('button', { name: 'Notebook', exact: true }).click();
    await page.getByRole('button', { name: /Recordings/ }).click();
    const leaf = page.locator('recordings-leaf');
    const chooser = page.waitForEvent('filechooser');
    await leaf.getByRole('button', { name: 'Read a log…' }).click();
    await (await chooser).setFiles(logFile());
    await leaf.getByRole('button', { name: 'Read it in' }).waitFor();
    expect(await leaf.locator('section input').first().inputValue()).toBe('Spindle_log_7');
    // The longest time in which the page did not answer, by its own clock.
    await page.evaluate(() => {
      const seen = { last: performance.now(), longest: 0 };
      Object.assign(window, { seen });
      const tick = (): void => {
        const now = performance.now();
        seen.longest = Math.max(seen.longest, now - seen.last);
        seen.last = now;
        setTimeout(tick);
      };
      tick();
    });
    if (process.env['SWARFBOOK_PICTURES'])
      await page.screenshot({ path: `${process.env['SWARFBOOK_PICTURES']}/log.png` });
    await leaf.getByRole('button', { name: 'Read it in' }).click();
    await leaf
      .getByText(`Spindle_log_7: ${SHOWN} rows, 2 columns. Stamp held no numbers and stayed outside.`)
      .waitFor({ timeout: 120_000 });
    const longest = await page.evaluate(
      () => (window as unknown as { seen: { longest: number } }).seen.longest,
    );
    // A piece takes about 20 ms and the journal's entry some 50 ms on a quiet computer (measured); the bound only catches a page that stands still for the whole file.
    expect(longest).toBeLessThan(10_000);
    expect(await axeFindings(page)).toEqual([]);
    if (process.env['SWARFBOOK_PICTURES'])
      await page.screenshot({ path: `${process.env['SWARFBOOK_PICTURES']}/recordings.png` });
    await page.locator('leaf-dialog').getByRole('button', { name: 'Close' }).click();

    await page.keyboard.press('Control+Home');
    await page.locator('page-grid [aria-colindex="8"]').nth(30).click();
    await page.keyboard.type('=MAX(Spindle_log_7.Force)');
    await page.keyboard.press('Enter');
    await page.getByText('99.9', { exact: false }).first().waitFor();

    await page.getByRole('button', { name: 'Notebook', exact: true }).click();
    await page.getByRole('button', { name: /Recordings/ }).click();
    await leaf.getByLabel('title').fill('Cut');
    await leaf.getByLabel('title').press('Enter');
    await leaf.getByText('Cut.Force', { exact: true }).waitFor();
    expect(await leaf.getByText('read in 1 cell').count()).toBe(1);
    await page.locator('leaf-dialog').getByRole('button', { name: 'Close' }).click();
    await page
      .locator('header', { hasText: /saved \d\d:\d\d/ })
      .first()
      .waitFor({ timeout: 60_000 });

    await page.reload();
    await page.getByRole('button', { name: 'Notebook', exact: true }).click();
    await page.getByRole('button', { name: /Recordings/ }).click();
    await leaf.getByText(`${SHOWN} rows, from Spindle log 7.csv; read in 1 cell`).waitFor();
    expect(troubles).toEqual([]);
  },
);
