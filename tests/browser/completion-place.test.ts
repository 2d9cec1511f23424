/** What is offered while a formula is typed never covers the row it is typed in, nor the line it stands on. */

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { desksOfTests, drawn, goTo, newNotebook } from './desk.ts';

const desks = desksOfTests({ untroubled: true });

const SIZES = [
  { width: 410, height: 590 },
  { width: 683, height: 384 },
  { width: 390, height: 844 },
  { width: 820, height: 1180 },
  { width: 1366, height: 768 },
];
const ROWS = [0, 3, 17];

interface Edges {
  readonly top: number;
  readonly bottom: number;
}

/** What the list covers, in words; and how high it is. */
async function covered(page: Page): Promise<{ readonly high: number; readonly over: readonly string[] }> {
  const edges = (what: string): Promise<Edges> =>
    page.locator(what).evaluate((each) => {
      const { top, bottom } = each.getBoundingClientRect();
      return { top, bottom };
    });
  const list = await edges('entry-line .choices');
  const meets = ({ top, bottom }: Edges): boolean => top < list.bottom - 0.5 && bottom > list.top + 0.5;
  const over = [
    ...(meets(await edges('page-grid tr:has(.editor)')) ? ['the row'] : []),
    ...(meets(await edges('entry-line')) ? ['the entry line'] : []),
    ...(list.top < 0 ? ['out of the window'] : []),
  ];
  return { high: list.bottom - list.top, over };
}

for (const hasTouch of [true, false])
  test(`the completion list stands beside the row being typed in, ${hasTouch ? 'with' : 'without'} the keypad`, async () => {
    const { page } = await desks.open({ visitor: { hasTouch } });
    await newNotebook(page);
    const found: string[] = [];
    for (const size of SIZES) {
      await page.setViewportSize(size);
      for (const row of ROWS) {
        await goTo(page, `B${row + 1}`);
        await page.keyboard.type('=MILL');
        await page.locator('entry-line .choices').waitFor();
        if (hasTouch) await page.locator('desk-keypad').waitFor();
        await drawn(page);
        const { high, over } = await covered(page);
        const where = `row ${row + 1} at ${size.width} x ${size.height}`;
        found.push(...over.map((each) => `${where}: ${each}`));
        if (high < 44) found.push(`${where}: only ${high} px high`);
        // The last one offered can be reached and seen.
        await page.keyboard.press('ArrowUp');
        await drawn(page);
        const seen = await page.locator('entry-line .choices [aria-selected=true]').evaluate((option) => {
          const list = option.parentElement?.getBoundingClientRect();
          const { top, bottom } = option.getBoundingClientRect();
          return list !== undefined && top >= list.top - 0.5 && bottom <= list.bottom + 0.5;
        });
        if (!seen) found.push(`${where}: the last one is not in sight`);
        await page.keyboard.press('Escape');
        await page.keyboard.press('Escape');
      }
    }
    expect(found).toEqual([]);
  });
