/** The walk: a worksheet at the machine, its keypad, its questions and its record. */

import { fullNotebook } from './walk-notebook.ts';
import { give, type Walk } from './walk-steps.ts';

export async function walkMachine(walk: Walk): Promise<void> {
  const { page, look } = walk;
  await page.getByText('Worked examples').waitFor();
  const open = page.getByRole('button', { name: 'Open a file…' });
  await give(page, () => open.click(), 'walk.json', fullNotebook());
  await page.locator('.band').getByRole('button', { name: 'Understood' }).click();
  await page.getByRole('button', { name: 'At the machine', exact: true }).click();
  const field = page.locator('machine-page [data-field="B8"]');
  await field.waitFor();
  await look('at the machine');
  await field.click();
  if ((await page.locator('on-screen-keypad').count()) === 0) {
    await page.getByRole('button', { name: /^Keypad/ }).click();
    await field.click();
  }
  await page.locator('on-screen-keypad').waitFor();
  await page.keyboard.type('9');
  await page.locator('on-screen-keypad .passed').waitFor();
  await look('keypad, with a limit that would be passed');
  await page.keyboard.press('Enter');
  await page.locator('machine-ask dialog[open]').waitFor();
  await look('question at the machine');
  await page.locator('machine-ask').getByRole('button', { name: 'Leave it' }).first().click();
  await page.keyboard.press('Escape');
  const record = page.getByRole('button', { name: /^Record pass/ });
  await record.scrollIntoViewIfNeeded();
  await look('record at the machine');
  await record.click();
  await page.locator('pass-form dialog[open]').waitFor();
  await look('a pass being recorded');
}
