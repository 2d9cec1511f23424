/** The walk: the first page and a worksheet that is typed, with what can stand over, under and beside it. */

import { enter, goTo, newNotebook, pasteText, saved, shows } from './desk.ts';
import { press } from './hands.ts';
import { closeMargin, leaf, openPanel, pick, type Walk } from './walk-steps.ts';

/** Cells of the worksheet in a list that comes back, one with a unit that nobody knows. */
const LIST = [
  'worksheet,cell,name,symbol,label,value,unit,UCUM code,role,formula',
  'Worksheet 1,B1,,,cutter diameter,63,mm,mm,given,',
  'Worksheet 1,B4,,,feed,0.2,kNn,,given,',
].join('\n');

export async function walkWorksheet(walk: Walk): Promise<void> {
  const { desk, page, narrow, look } = walk;
  await page.getByText('Worked examples').waitFor();
  await look('first page');
  await leaf(walk, 'help', 'help-leaf h3');
  await leaf(walk, 'keys', 'keys-leaf kbd');
  await leaf(walk, 'about', 'about-leaf p');
  await page.evaluate(() => {
    location.hash = 'none';
  });
  await page.getByText('This device has no such notebook.').waitFor();
  await look('first page with a problem');

  await newNotebook(page);
  for (const [address, text] of [
    ['A1', 'cutter diameter'],
    ['B1', '50 mm'],
    ['A2', 'chip thinning'],
    ['B2', '=MILL.THINNING(B1; 0.2 mm)'],
    ['A3', 'what does not add'],
    ['B3', '=B1+1 min'],
  ] as const)
    await enter(page, address, text);
  await shows(page, 'B3', '#UNIT!');
  await pick(page, 'B3');
  await openPanel(walk, 'Working');
  await page.locator('margin-working .error').first().waitFor();
  await look('working of an error');
  await closeMargin(walk);
  await look('an error selected');
  await pick(page, 'B2');
  await openPanel(walk, 'Working');
  await page.locator('margin-working math').first().waitFor();
  await look('panel working');
  await openPanel(walk, 'Functions');
  await page.locator('margin-functions summary').first().waitFor();
  await look('panel functions');
  await page.getByRole('searchbox').fill('spindle speed');
  await page.locator('margin-functions li button').first().click();
  await page.locator('margin-functions h2').waitFor();
  await look('page of a function');
  await openPanel(walk, 'Figures');
  await page.locator('margin-figures select').waitFor();
  await look('no figures yet');
  await openPanel(walk, /^Cautions/);
  await page.locator('margin-cautions button').first().waitFor();
  await look('panel cautions');
  await openPanel(walk, 'Working');
  await closeMargin(walk);
  await look('a caution selected');
  if (narrow) {
    await page.getByRole('button', { name: 'Contents', exact: true }).click();
    await look('contents over the page');
    await page.locator('.shade').click({ position: { x: page.viewportSize()!.width - 8, y: 300 } });
  }
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await look('menu');
  await press(page, 'Escape');
  await page.locator('desk-head h1 button').click();
  await page.locator('question-dialog dialog[open]').waitFor();
  await look('question');
  await press(page, 'Escape');

  await goTo(page, 'B5');
  await page.keyboard.type('=spindle_sp');
  await page.locator('entry-line .choices li').first().waitFor();
  await look('open draft with the list of completion');
  await press(page, 'Escape', 'Escape');
  await page.keyboard.type('=CUT.SPINDLE_SPEED(B1; 260 m/min)');
  await page.locator('entry-line .gives').waitFor();
  await look('open draft with its result');
  await press(page, 'Escape', 'Escape');
  for (const key of ['f', 'g']) {
    await pick(page, 'B2');
    await press(page, `Control+${key}`);
    await page.locator('find-bar, go-bar').locator('input').first().waitFor();
    await look(`bar of Ctrl ${key.toUpperCase()}`);
    await press(page, 'Escape');
  }
  await goTo(page, 'A1');
  await press(page, 'Shift+ArrowRight', 'Shift+ArrowDown', 'Shift+F10');
  await page.locator('actions-menu [role=menuitem]').first().waitFor();
  await look('actions for the selection');
  await press(page, 'Escape');
  await leaf(walk, 'sort', 'sort-leaf select');

  await goTo(page, 'D5');
  await pasteText(page, 't [min]\tVB [mym]\n1.234\t80\n5.678\t95');
  await page.locator('table-leaf').waitFor();
  await look('leaf table');
  await press(page, 'Escape');
  await leaf(walk, 'list', 'list-leaf tbody tr', { text: LIST, from: 'list.csv', copied: false });
  await leaf(walk, 'text', 'text-leaf textarea', { name: 'notebook.json', text: '{\n  "title": "…"\n}' });

  await leaf(walk, 'hand-over', 'svg.qr path');
  await saved(page);
  const second = await desk.context.newPage();
  await second.goto(page.url());
  await second.locator('.band', { hasText: 'read only' }).waitFor();
  await second.getByRole('button', { name: 'Take over' }).click();
  await page.locator('.band', { hasText: 'read only' }).waitFor();
  await look('read only');
  await page.getByRole('button', { name: 'Take over' }).click();
  await second.locator('.band', { hasText: 'read only' }).waitFor();
  await second.close();
  const devtools = await desk.context.newCDPSession(page);
  const { origin } = new URL(desk.address);
  await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
  await enter(page, 'A6', 'no room for this');
  await page.locator('.band', { hasText: 'Not saved on this device' }).waitFor();
  await look('storage full');
  await devtools.send('Storage.overrideQuotaForOrigin', { origin });
}
