/** Numbers as three countries write them: shown and typed that way, and the same file behind all of them. */

import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { desksOfTests, enter, goTo, newNotebook, saved, shows } from './desk.ts';

const desks = desksOfTests();

interface Place {
  readonly locale: string;
  /** Decimal mark as the Unicode CLDR has it for the locale. */
  readonly mark: '.' | ',';
}
const PLACES: readonly Place[] = [
  { locale: 'en-US', mark: '.' },
  { locale: 'de-DE', mark: ',' },
  { locale: 'fr-FR', mark: ',' },
];

const lineText = (page: Page): Promise<string> => page.locator('entry-line .field input').inputValue();

async function savedFile(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save a file copy' }).click(),
  ]);
  return readFileSync(await download.path(), 'utf8');
}

const files = new Map<string, string>();

for (const { locale, mark } of PLACES)
  test(`F2 in ${locale} numbers are shown and typed with "${mark}" and the file has the point`, async () => {
    const { page, troubles } = await desks.open({ visitor: { locale } });
    const here = (text: string): string => text.replaceAll('.', mark);
    await newNotebook(page);
    await enter(page, 'A1', 'diameter');
    await enter(page, 'B1', here('12.5 mm'));
    await shows(page, 'B1', here('12.5 mm'));
    await enter(page, 'B2', here('12500.5 1/min'));
    await shows(page, 'B2', here('12 500.5 1/min'));
    // 1.25 * 12.5 mm + 0.5 mm = 16.125 mm, by hand.
    await enter(page, 'B3', here('=B1*1.25+0.5 mm'));
    await shows(page, 'B3', here('16.125 mm'));
    await goTo(page, 'B3');
    expect(await lineText(page)).toBe(here('=B1*1.25+0.5 mm'));
    // Opened and left without a change, the cell stays what it was; the preview reads the same text.
    await page.keyboard.press('F2');
    await page.keyboard.type('+0');
    await page.locator('entry-line .gives', { hasText: here('16.125 mm') }).waitFor();
    await page.keyboard.press('Escape');
    await page
      .locator('margin-working mn', { hasText: here('1.25') })
      .first()
      .waitFor();
    expect(await page.locator('page-grid .editor').getAttribute('aria-label')).toContain(
      here('16.125 millimetres'),
    );
    await enter(page, 'B4', '=MILL.THINNING(B1; 1)');
    await saved(page);
    const file = await savedFile(page);
    const notebook = JSON.parse(file) as { readonly id: string };
    files.set(locale, file.replaceAll(notebook.id, 'ID'));
    expect(troubles).toEqual([]);
  });

test('the same entries make the same file, byte for byte, in all three', () => {
  const [first, ...others] = PLACES.map(({ locale }) => files.get(locale));
  expect(first).toContain('12.5 mm');
  expect(first).toContain('12500.5 1/min');
  expect(first).toContain('=B1*1.25+0.5 mm');
  for (const other of others) expect(other).toBe(first);
});

test('F2 in fr-FR a number copied with its narrow no-break space is that number', async () => {
  const { page } = await desks.open({ visitor: { locale: 'fr-FR' } });
  await newNotebook(page);
  await page.keyboard.insertText('12\u202f500,5 1/min');
  await page.keyboard.press('Enter');
  await enter(page, 'A2', '=A1*2');
  await shows(page, 'A2', '25 001 1/min');
});

test('F2 in de-DE a number with two readings is refused with both, and the one that is meant is taken', async () => {
  const { page } = await desks.open({ visitor: { locale: 'de-DE' } });
  await newNotebook(page);
  await page.keyboard.type('1.234 mm');
  await page.keyboard.press('Enter');
  await page.getByText('1.234 mm can be read in two ways: 1,234 mm or 1234 mm').first().waitFor();
  expect(await lineText(page)).toBe('1.234 mm');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('1,234 mm');
  await page.keyboard.press('Enter');
  await shows(page, 'A1', '1,234 mm');
});

test('the mark is changed in the menu and stays on this device', async () => {
  const { page } = await desks.open({ visitor: { locale: 'de-DE' } });
  await newNotebook(page);
  await enter(page, 'A1', '2,5 mm');
  await shows(page, 'A1', '2,5 mm');
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: 'Numbers with a decimal point' }).click();
  await shows(page, 'A1', '2.5 mm');
  await saved(page);
  await page.reload();
  await shows(page, 'A1', '2.5 mm');
});

test('the keypad at the machine has the mark of the place, and what is typed there is the value meant', async () => {
  const { page } = await desks.open({
    width: 820,
    height: 1180,
    visitor: { locale: 'de-DE', hasTouch: true },
  });
  await newNotebook(page);
  await enter(page, 'A1', 'feed');
  await enter(page, 'B1', '0,25 mm');
  await goTo(page, 'B1');
  await page.getByRole('button', { name: 'Margin' }).click();
  await page.getByRole('combobox', { name: 'at the machine' }).selectOption('changed');
  await page.keyboard.press('Escape');
  await page.locator('.shade').click({ position: { x: 20, y: 400 } });
  await page.getByRole('button', { name: 'At the machine' }).click();
  const field = page.locator('machine-page [data-field="B1"]');
  expect(await field.inputValue()).toBe('0,25');
  await field.tap();
  await page.getByRole('button', { name: 'decimal comma' }).waitFor();
  for (const name of ['clear the field', '0', 'decimal comma', '3', '5'])
    await page.getByRole('button', { name, exact: true }).tap();
  expect(await page.locator('.typing output').innerText()).toBe('0,35');
});
