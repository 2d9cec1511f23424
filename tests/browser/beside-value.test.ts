/** What stands in a cell beside its value: a choice, a note, a limit that is passed, its formula. */

import { expect, test } from 'vitest';
import { activeAddress, cellText, desksOfTests, enter, goTo, shows } from './desk.ts';
import { act, begun, cell, press } from './hands.ts';

const desks = desksOfTests({ untroubled: true });

test('a choice cell opens a list, is picked from by keys and by mouse, and takes nothing else', async () => {
  const page = await begun(desks, {
    A1: 'work material',
    B1: '42CrMo4',
    B2: '=MATERIAL.KC11(B1)',
    B3: '=MATERIAL.MC(B1)',
  });
  await goTo(page, 'B1');
  await act(page, 'Role, unit, digits, choices, note…');
  await page
    .locator('leaf-dialog')
    .getByRole('button', { name: /What may be picked/ })
    .click();
  await page.locator('choices-leaf textarea').fill('42CrMo4\nC45\nTi-6Al-4V');
  await page.locator('choices-leaf').getByRole('button', { name: 'Take them' }).click();
  await goTo(page, 'B1');
  await press(page, 'Enter');
  const list = page.locator('page-grid [role=listbox]');
  await list.waitFor();
  expect(await list.locator('[aria-selected=true]').innerText()).toBe('42CrMo4');
  expect(await page.locator('page-grid .editor').getAttribute('role')).toBe('combobox');
  const before = await cellText(page, 'B2');
  await press(page, 'ArrowDown', 'ArrowDown', 'Enter');
  await shows(page, 'B1', 'Ti-6Al-4V');
  // Every value that is worked out of the material follows.
  await expect.poll(() => cellText(page, 'B2')).not.toBe(before);
  await goTo(page, 'B1');
  await page.keyboard.type('c4');
  await list.locator('li', { hasText: 'C45' }).click();
  await shows(page, 'B1', 'C45');
  await goTo(page, 'B1');
  await page.keyboard.type('butter');
  await press(page, 'Enter');
  await page.locator('entry-line .refused', { hasText: 'none of the choices' }).waitFor();
  await press(page, 'Escape');
  await shows(page, 'B1', 'C45');
});

test('a note is shown as a tree of text, leads to a cell, and never becomes markup', async () => {
  const page = await begun(desks, { B2: '0.12 mm' });
  await goTo(page, 'B2');
  await act(page, 'Role, unit, digits, choices, note…');
  await page.locator('leaf-dialog').getByRole('button', { name: /^Note/ }).click();
  await page
    .locator('note-leaf textarea')
    .fill(
      'Take *care*: **edge radius** in [this cell](#C5)\n\n- `h` <img src=x onerror=alert(1)>\n- [x](javascript:alert(1))',
    );
  await page.locator('note-leaf').getByRole('button', { name: 'Take it' }).click();
  const note = page.locator('margin-working .note');
  await note.locator('strong', { hasText: 'edge radius' }).waitFor();
  expect(await note.locator('li').count()).toBe(2);
  expect(await note.locator('img, a').count()).toBe(0);
  await shows(page, 'B2', '0.12 mm');
  expect(await cell(page, 'B2').getAttribute('class')).toContain('noted');
  await note.getByRole('button', { name: 'this cell' }).click();
  expect(await activeAddress(page)).toBe('C5');
  await enter(page, 'A8', 'Never *above* the speed **marked** on the holder, D*L*W and a_e stay');
  await cell(page, 'A8').locator('strong', { hasText: 'marked' }).waitFor();
  expect(await cellText(page, 'A8')).toBe('Never above the speed marked on the holder, D*L*W and a_e stay');
  // A link within a text can be followed by key and by finger from the margin.
  await enter(page, 'A9', 'the feed is [here](#B2)');
  await goTo(page, 'A9');
  await note.getByRole('button', { name: 'here' }).click();
  expect(await activeAddress(page)).toBe('B2');
});

test('a limit that is passed is marked in the cell by more than colour, with its reason', async () => {
  const page = await begun(desks, { A1: 'spindle speed', B1: '9000 1/min' });
  await goTo(page, 'B1');
  await page
    .locator('margin-working')
    .getByRole('button', { name: /Highest allowed value/ })
    .click();
  await page.locator('dialog input').fill('8000 1/min (marked on the holder)');
  await page.locator('dialog .primary').click();
  const sign = cell(page, 'B1').locator('.sign.breach');
  await sign.waitFor();
  expect(await sign.innerText()).toBe('◆');
  expect(await sign.getAttribute('aria-label')).toBe('limit passed');
  await page.locator('margin-working .error', { hasText: 'marked on the holder' }).waitFor();
  await enter(page, 'B1', '7500');
  await shows(page, 'B1', '7500 1/min');
  expect(await sign.count()).toBe(0);
});

test('formulas in place of values are readable to their end, and go again', async () => {
  const page = await begun(desks, { A1: '50 mm', B1: '=CUT.SPINDLE_SPEED(A1; 260 m/min) * 1.05 + 12 1/min' });
  const before = (await cell(page, 'B1').boundingBox())?.width ?? 0;
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: 'Show formulas in place of values' }).click();
  await shows(page, 'B1', '=CUT.SPINDLE_SPEED(A1; 260 m/min) * 1.05 + 12 1/min');
  expect((await cell(page, 'B1').boundingBox())?.width ?? 0).toBeGreaterThan(before);
  const hidden = await cell(page, 'B1')
    .locator('.value')
    .evaluate((value) => value.scrollWidth > value.clientWidth + 1);
  expect(hidden).toBe(false);
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: 'Show values' }).click();
  await expect.poll(async () => (await cell(page, 'B1').boundingBox())?.width).toBe(before);
});
