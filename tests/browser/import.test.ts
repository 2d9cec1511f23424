/** Tables of other programs: pasted, opened and dropped; what has two readings or an unknown unit is asked; what leaves comes back. */

import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { desksOfTests, enter, goTo, newNotebook, pasteText, shows } from './desk.ts';

const desks = desksOfTests({ untroubled: true });

async function begin(): Promise<Page> {
  const desk = await desks.open();
  await newNotebook(desk.page);
  return desk.page;
}

const leaf = (page: Page): ReturnType<Page['locator']> => page.locator('table-leaf');
const take = (page: Page): ReturnType<Page['locator']> =>
  leaf(page).getByRole('button', { name: 'Put it in' });

test('a plain table is pasted at once in one step, blank lines and formulas in their places', async () => {
  const page = await begin();
  await goTo(page, 'B2');
  await pasteText(page, 'tool\tlife\r\n\r\nA\t30 min\r\nB\t=C4*2\r\n');
  await shows(page, 'B2', 'tool');
  await shows(page, 'C4', '30 min');
  await shows(page, 'C5', '60 min');
  await shows(page, 'B3', '');
  expect(await leaf(page).count()).toBe(0);
  await page.keyboard.press('Control+z');
  await shows(page, 'C4', '');
});

test('units in headers are shown before they are taken, and stand behind every number then', async () => {
  const page = await begin();
  await goTo(page, 'A1');
  await pasteText(page, 't [min]\tVB [um]\tnote\n5\t80\tfine\n10\t120.5\tchipped');
  await leaf(page).locator('td.number', { hasText: '120.5 um' }).waitFor();
  await take(page).click();
  await shows(page, 'A1', 't');
  await shows(page, 'B3', '120.5 µm');
  await shows(page, 'C3', 'chipped');
});

test('"1.234" is asked with both readings, in a block and alone under a comma', async () => {
  const page = await begin();
  await goTo(page, 'A1');
  await pasteText(page, 'a\tb\n1.234\tx\n5.678\ty');
  expect(await take(page).isDisabled()).toBe(true);
  await leaf(page).getByLabel('comma: 1.234 is 1234').check();
  await take(page).click();
  await shows(page, 'A2', '1234');
  await goTo(page, 'D1');
  await pasteText(page, '1,234\t2');
  await leaf(page).getByLabel('comma: 1,234 is 1.234').check();
  await take(page).click();
  await shows(page, 'D1', '1.234');
});

test('an unknown unit is asked: a near one is pressed, or another typed', async () => {
  const page = await begin();
  await goTo(page, 'A1');
  await pasteText(page, 'F [kNn]\tT [foo]\n5.5\t8.25');
  expect(await take(page).isDisabled()).toBe(true);
  await leaf(page).getByRole('button', { name: 'kN', exact: true }).click();
  expect(await take(page).isDisabled()).toBe(true);
  await leaf(page).getByLabel('unit of T').fill('Nm');
  await leaf(page).getByLabel('unit of T').press('Tab');
  await take(page).click();
  await shows(page, 'A2', '5.5 kN');
  await shows(page, 'B2', '8.25 N·m');
});

test('a table that is no table is said so, and changes nothing', async () => {
  const page = await begin();
  await goTo(page, 'A1');
  await pasteText(page, Array.from({ length: 2001 }, () => '1\t2').join('\n'));
  await page.locator('entry-line .refused', { hasText: '2001 lines' }).waitFor();
  await shows(page, 'A1', '');
});

test('a file is taken onto a worksheet of its own, formulas in it as text, its size said', async () => {
  const page = await begin();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: 'Take a table in (CSV)…' }).click();
  await (
    await chooser
  ).setFiles({
    name: 'wear.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('Zeit;VB;Bemerkung\nmin;um;\n1,5;80;"a; b"\n10;120,25;=1+1\n'),
  });
  await leaf(page).getByText('From wear.csv: 3 lines, 3 columns.').waitFor();
  await take(page).click();
  await page.locator('contents-rail [aria-current=page]', { hasText: 'wear' }).waitFor();
  await shows(page, 'A2', '1.5 min');
  await shows(page, 'B3', '120.25 µm');
  await shows(page, 'C2', 'a; b');
  await shows(page, 'C3', '=1+1');
});

test('a file dropped on the page is shown first; a damaged one is refused in words', async () => {
  const page = await begin();
  const drop = (name: string, bytes: number[]): Promise<void> =>
    page.evaluate(
      ([file, content]) => {
        const data = new DataTransfer();
        data.items.add(new File([new Uint8Array(content)], file, { type: 'text/csv' }));
        const page1 = document.querySelector('swarf-book')?.shadowRoot?.querySelector('page-grid');
        page1?.dispatchEvent(
          new DragEvent('drop', { dataTransfer: data, bubbles: true, composed: true, cancelable: true }),
        );
      },
      [name, bytes] as const,
    );
  await drop('cut.csv', [...Buffer.from('v_c,f\n260,0.12\n')]);
  await leaf(page).getByText('From cut.csv').waitFor();
  await page.getByRole('button', { name: 'Close' }).click();
  await drop('damaged.csv', [...Buffer.from('a,"b\n1,2\n')]);
  await page.getByText('a quotation mark is not closed').waitFor();
  await page.getByRole('button', { name: 'Close' }).click();
  await drop('latin.csv', [...Buffer.from('Schneide,L'), 0xe4, ...Buffer.from('nge\n1,2.5\n')]);
  await leaf(page).getByText('not stored as UTF-8').waitFor();
});

test('the list and its metadata are saved under names that belong together', async () => {
  const page = await begin();
  await enter(page, 'A1', 'feed');
  await enter(page, 'B1', '0.12 mm');
  await enter(page, 'B2', '=B1*2');
  await shows(page, 'B2', '0.24 mm');
  const files = new Map<string, string>();
  page.on('download', (download) => {
    void download.path().then((path) => files.set(download.suggestedFilename(), readFileSync(path, 'utf8')));
  });
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: 'Save the list and its metadata (CSVW)' }).click();
  await expect.poll(() => files.size).toBe(2);
  const [list = '', metadata = ''] = [...files.keys()].sort();
  expect(metadata).toBe(`${list}-metadata.json`);
  expect(files.get(list)).toContain("B2,,,,0.24,mm,mm,worked,'=B1*2");
  expect(JSON.parse(files.get(metadata) ?? '')).toMatchObject({ url: encodeURIComponent(list) });
});

test('a list that was saved, changed and chosen again says what it would change, and changes that', async () => {
  const page = await begin();
  await enter(page, 'A1', 'feed');
  await enter(page, 'B1', '0.12 mm');
  await enter(page, 'B2', '=B1*2');
  const menu = async (words: string): Promise<void> => {
    await page.getByRole('button', { name: 'Notebook', exact: true }).click();
    await page.getByRole('button', { name: words }).click();
  };
  const saving = page.waitForEvent('download');
  await menu('Save all values as a list (CSV)');
  const saved = readFileSync(await (await saving).path(), 'utf8');
  const choose = async (text: string): Promise<void> => {
    const chooser = page.waitForEvent('filechooser');
    await menu('Take a list of values back in (CSV)…');
    await (await chooser).setFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  };
  const list = page.locator('list-leaf');
  const put = list.getByRole('button', { name: 'Put it in' });
  await choose(saved);
  await list.getByText('0 cells would change').waitFor();
  expect(await put.isDisabled()).toBe(true);
  await page.getByRole('button', { name: 'Close' }).click();
  // As a program with decimal commas would write it.
  const changed = saved.replaceAll(',', ';').replace('0.12;mm;mm', '0,15;kNn;').replace('0.24', '0,24');
  await choose(changed);
  await list.getByText('kNn is no unit').waitFor();
  expect(await put.isDisabled()).toBe(true);
  await list.getByLabel('instead of kNn').fill('mm');
  await list.getByLabel('instead of kNn').press('Tab');
  await list.locator('tr', { hasText: 'B1' }).getByText('0.15 mm').waitFor();
  await put.click();
  await shows(page, 'B1', '0.15 mm');
  await shows(page, 'B2', '0.3 mm');
  await page.keyboard.press('Control+z');
  await shows(page, 'B2', '0.24 mm');
});
