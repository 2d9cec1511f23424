/** The desk under fingers: taps, handles, scrolling, the actions without a long press, the keypad with its units, 44 px everywhere. */

import type { CDPSession, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { cellText, desksOfTests, shows } from './desk.ts';
import { cell, line } from './hands.ts';

const desks = desksOfTests({ untroubled: true });

/** The shipped pump cover on a tablet that is touched. */
async function onTablet(size = { width: 820, height: 1180 }): Promise<Page> {
  const desk = await desks.open();
  const page = await desk.anotherProfile({ viewport: size, hasTouch: true });
  await page.goto(desk.address);
  await page.locator('section[aria-label=templates] button', { hasText: /pump/i }).first().tap();
  await shows(page, 'B17', '1655 1/min');
  // The head says so until then, on a line more: the page below it moves up when that goes.
  await page.getByText('values from last time').waitFor({ state: 'detached' });
  return page;
}

const place = (page: Page): Promise<string> => page.locator('entry-line .place').innerText();
const key = (page: Page, name: string): Promise<void> =>
  page.locator('desk-keypad').getByRole('button', { name, exact: true }).tap();
const DONE = 'Done: take it and put the keypad away';

interface Point {
  readonly x: number;
  readonly y: number;
}

/** A finger put down, moved and lifted, as the system reports it. */
async function swipe(page: Page, from: Point, to: Point): Promise<void> {
  const client: CDPSession = await page.context().newCDPSession(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: Point): Promise<unknown> =>
    client.send('Input.dispatchTouchEvent', { type, touchPoints: at ? [at] : [] });
  await send('touchStart', from);
  for (let step = 1; step <= 8; step += 1)
    await send('touchMove', {
      x: from.x + ((to.x - from.x) * step) / 8,
      y: from.y + ((to.y - from.y) * step) / 8,
    });
  await send('touchEnd');
  await client.detach();
}

async function middle(page: Page, selector: string): Promise<Point> {
  const box = await page.locator(selector).boundingBox();
  if (!box) throw new Error(`${selector} is not in sight`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}
const middleOf = async (page: Page, address: string): Promise<Point> => {
  const box = await cell(page, address).boundingBox();
  if (!box) throw new Error(`${address} is not in sight`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

test('a tap selects, the second one edits, a drag scrolls and selects nothing', async () => {
  const page = await onTablet();
  await cell(page, 'B8').tap();
  expect(await place(page)).toBe('B8');
  expect(await page.locator('page-grid .editor.open').count()).toBe(0);
  const top = (): Promise<number> => page.locator('page-grid .scroller').evaluate((each) => each.scrollTop);
  await swipe(page, await middleOf(page, 'B14'), await middleOf(page, 'B9'));
  await expect.poll(top).toBeGreaterThan(100);
  expect(await place(page)).toBe('B8');
  await cell(page, 'B12').tap();
  await cell(page, 'B12').tap();
  expect(await page.locator('page-grid .editor.open').count()).toBe(1);
  expect(await line(page)).toBe('0.08 mm');
});

test('the corner handles extend a selection both ways', async () => {
  const page = await onTablet();
  await cell(page, 'B9').tap();
  await swipe(page, await middle(page, 'page-grid .handle.end'), await middleOf(page, 'C12'));
  expect(await place(page)).toBe('B9:C12');
  await swipe(page, await middle(page, 'page-grid .handle.start'), await middleOf(page, 'B7'));
  expect(await page.locator('page-grid td[aria-selected=true]').count()).toBe(12);
  const box = await page.locator('page-grid .handle.end').boundingBox();
  expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
});

test('the actions for the selection are behind a button in sight: no long press is needed', async () => {
  const page = await onTablet();
  await cell(page, 'B6').tap();
  await page.getByRole('button', { name: 'More…' }).tap();
  const menu = page.locator('actions-menu');
  const heights = await menu
    .getByRole('menuitem')
    .evaluateAll((items) => items.map((item) => item.getBoundingClientRect().height));
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
  await menu.getByRole('menuitem', { name: 'Insert row above' }).tap();
  await shows(page, 'B7', '50 mm');
  await page.getByRole('button', { name: 'Undo' }).tap();
  await shows(page, 'B6', '50 mm');
  // A tap on a head selects the row.
  await page.locator('page-grid tr[data-row="5"] > th').tap();
  expect(await place(page)).toMatch(/^A6:/);
});

test('the keypad types values with the units of the cell, without the system keyboard', async () => {
  const page = await onTablet();
  await cell(page, 'B6').tap();
  await cell(page, 'B6').tap();
  await page.locator('desk-keypad').waitFor();
  expect(await page.locator('page-grid .editor').getAttribute('inputmode')).toBe('none');
  await key(page, 'clear the field');
  for (const each of ['2', '1', '/', '2']) {
    if (each === '/') await key(page, 'a/b, fraction bar');
    else await key(page, each);
    if (each === '2' && (await line(page)) === '2')
      await key(page, 'space, between a whole number and its fraction');
  }
  await key(page, 'in, inches');
  expect(await line(page)).toBe('2 1/2 in');
  await key(page, DONE);
  // 2 1/2 in is 63.5 mm; 260 m/min over pi * 63.5 mm is 1303.3 1/min, worked by hand.
  await shows(page, 'B17', '1303 1/min');
});

test('the keypad goes from one given value to the next', async () => {
  const page = await onTablet();
  await cell(page, 'B7').tap();
  await cell(page, 'B7').tap();
  await key(page, 'clear the field');
  await key(page, '4');
  await key(page, 'take it and go to the next field');
  expect(await place(page)).toBe('B8');
  expect(await line(page)).toBe('100 mm');
  // All of it is marked: the next digit takes its place.
  await key(page, '9');
  expect(await line(page)).toBe('9');
  await key(page, 'Leave it: the value stays as it was');
  await shows(page, 'B8', '100 mm');
  await shows(page, 'B7', '4 teeth');
});

test('a formula is tapped together: keys, cells on the page, functions from the list', async () => {
  const page = await onTablet();
  await cell(page, 'B9').tap();
  await cell(page, 'B9').tap();
  await key(page, 'clear the field');
  await key(page, 'equals');
  await cell(page, 'B8').tap();
  await key(page, 'times');
  await key(page, '2');
  expect(await line(page)).toBe('=Dm*2');
  expect(await page.locator('page-grid td.ref').count()).toBe(1);
  await page.locator('entry-line .gives', { hasText: '200 mm' }).waitFor();
  await key(page, 'Leave it: the value stays as it was');
  await cell(page, 'B9').tap();
  await cell(page, 'B9').tap();
  await page.locator('entry-line').getByRole('button', { name: 'letters' }).tap();
  expect(await page.locator('page-grid .editor').getAttribute('inputmode')).toBe('text');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('=spindle_sp');
  await page.locator('entry-line .choices li', { hasText: 'CUT.SPINDLE_SPEED' }).tap();
  expect(await line(page)).toBe('=CUT.SPINDLE_SPEED(');
  await page.locator('entry-line .hint .here', { hasText: 'diameter' }).waitFor();
  await cell(page, 'B6').tap();
  await page.keyboard.type('; 100 m/min)');
  await page.locator('entry-line .gives', { hasText: '636.62' }).waitFor();
  await page.getByRole('button', { name: 'keypad', exact: true }).tap();
  await key(page, 'Leave it: the value stays as it was');
});

test('a finger points into another worksheet, and makes a range of the cell by its handle', async () => {
  const page = await onTablet();
  await cell(page, 'B9').tap();
  await cell(page, 'B9').tap();
  await key(page, 'clear the field');
  await key(page, 'equals');
  await cell(page, 'B7').tap();
  expect(await line(page)).toBe('=z');
  await key(page, 'clear the field');
  await key(page, 'equals');
  await page.getByRole('button', { name: 'Contents' }).tap();
  await page.locator('contents-rail .sheet button', { hasText: 'Machine' }).tap();
  expect(await place(page)).toMatch(/^'Boss path'\.B9/);
  await cell(page, 'C4').tap();
  expect(await line(page)).toBe('=Machine.C4');
  await swipe(page, await middle(page, 'page-grid .handle.end'), await middleOf(page, 'D6'));
  expect(await line(page)).toBe('=Machine.C4:D6');
  await swipe(page, await middle(page, 'page-grid .handle.start'), await middleOf(page, 'C3'));
  expect(await line(page)).toBe('=Machine.C3:D6');
  await page.keyboard.press('Escape');
  await expect.poll(() => place(page)).toBe('B9');
});

test('a choice is picked by touch in the cell', async () => {
  const page = await onTablet();
  await cell(page, 'B14').tap();
  await cell(page, 'B14').tap();
  const options = page.locator('page-grid [role=option]');
  await options.first().waitFor();
  const heights = await options.evaluateAll((all) => all.map((each) => each.getBoundingClientRect().height));
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
  await options.nth(2).tap();
  expect(await cellText(page, 'B14')).toBe('EN-GJS-400-15');
});

for (const size of [
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
])
  test(`every button and field of the desk is 44 px high at ${size.width} px, with the keypad open too`, async () => {
    const page = await onTablet(size);
    const low = (): Promise<string[]> =>
      page.evaluate(() => {
        const found: string[] = [];
        const look = (root: ParentNode): void => {
          for (const each of root.querySelectorAll<HTMLElement>('*')) {
            if (each.shadowRoot) look(each.shadowRoot);
            if (!each.matches('button, input, select')) continue;
            const { width, height } = each.getBoundingClientRect();
            const isInline = each.matches('.link, .editor, .value');
            if (width > 0 && height > 0 && height < 43.5 && !isInline && each.checkVisibility())
              found.push(
                `${each.localName} ${each.getAttribute('aria-label') ?? each.textContent?.trim()} ${height}`,
              );
          }
        };
        look(document);
        return found;
      });
    expect(await low()).toEqual([]);
    await cell(page, 'B6').tap();
    await cell(page, 'B6').tap();
    await page.locator('desk-keypad').waitFor();
    expect(await low()).toEqual([]);
    // The cell being typed into is still in sight.
    const box = await cell(page, 'B6').boundingBox();
    const scroller = await page.locator('page-grid .scroller').boundingBox();
    expect(box && scroller && box.y >= scroller.y && box.y + 30 <= scroller.y + scroller.height).toBe(true);
  });
