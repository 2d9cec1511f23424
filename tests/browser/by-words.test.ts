/** Everything is found by the words on the screen: no address of an element, no shortcut, at most twelve actions. */

import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { desksOfTests } from './desk.ts';

const desks = desksOfTests();

const MOST = 12;

/** A person who sees words and taps on them or beside them; every tap is an action. */
class Reader {
  actions = 0;
  constructor(private readonly page: Page) {}

  #words(text: string | RegExp): Locator {
    return this.page.getByText(text).filter({ visible: true }).first();
  }

  /** Taps the words; where whole words of that kind stand somewhere, those. */
  async tap(text: string | RegExp): Promise<void> {
    this.actions += 1;
    const whole = this.page.getByText(text, { exact: true }).filter({ visible: true }).last();
    await ((await whole.count()) > 0 ? whole : this.#words(text)).tap();
  }

  /** Taps what stands in the row of some words, below or above other words. */
  async tapBeside(text: string | RegExp, below: string | RegExp): Promise<void> {
    this.actions += 1;
    await this.reads(text);
    await this.reads(below);
    // Not while the page is still being filled.
    await this.page.waitForTimeout(500);
    const row = await this.#words(text).boundingBox();
    const column = await this.#words(below).boundingBox();
    if (!row || !column) throw new Error(`${String(text)} or ${String(below)} is not in sight`);
    await this.page.touchscreen.tap(column.x + column.width / 2, row.y + row.height / 2);
  }

  /** Reading is no action. */
  async reads(text: string | RegExp): Promise<void> {
    await this.#words(text).waitFor();
  }
}

test('a tablet: the chip-thinning notebook is opened, its radial engagement changed, the reason of the new feed read, a file saved and opened elsewhere', async () => {
  const desk = await desks.open({ width: 820, height: 1180, visitor: { hasTouch: true } });
  const { page, address, troubles } = desk;
  const reader = new Reader(page);
  await reader.tap(/chip getting too thin/);
  await reader.reads('radial engagement');
  await reader.reads('feed rate of the centre');
  // The first tap selects, the second one edits, the first key replaces the value; its unit stays. Before: 1.5 mm, and a feed of 0.2836 mm a tooth.
  await reader.reads('0.2836');
  await reader.tapBeside('radial engagement', '260');
  await reader.tapBeside('radial engagement', '260');
  await reader.reads('Done');
  await reader.tap('3');
  await reader.tap('Done');
  await page.getByText('0.2836').filter({ visible: true }).first().waitFor({ state: 'detached' });
  await reader.tapBeside('feed per tooth of the centre', '260');
  await reader.tap('Margin');
  // Why: the equation with the values that stand in it, and where they come from.
  await reader.reads('Comes from');
  await reader.reads(/engagement/);
  await reader.reads('Source:');
  await reader.tap('Notebook');
  const [download] = await Promise.all([page.waitForEvent('download'), reader.tap('Save a file copy')]);
  const file = await download.path();

  const second = await desk.anotherProfile({ viewport: { width: 820, height: 1180 }, hasTouch: true });
  await second.goto(address);
  const elsewhere = new Reader(second);
  const [chooser] = await Promise.all([second.waitForEvent('filechooser'), elsewhere.tap('Open a file')]);
  await chooser.setFiles(file);
  await elsewhere.reads('radial engagement');
  await elsewhere.reads('3');
  const line = second.getByText('3', { exact: true }).filter({ visible: true });
  await line.first().waitFor();

  // Starting the program twice counts as well; the window in which the file is chosen belongs to the system.
  expect(reader.actions + elsewhere.actions + 2).toBeLessThanOrEqual(MOST);
  expect(troubles).toEqual([]);
});
