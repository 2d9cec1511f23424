/** Scripted editing sessions that are cut off, and what has to be there afterwards. */

import { setTimeout as pause } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { enter, focusGrid, newNotebook, saved, shows } from './desk.ts';
import type { MortalBrowser } from './mortal-browser.ts';

/** Texts of the first column; where they are read all at once, without the spaces. */
export type Column = readonly string[];

/** Rows the session goes round. */
const ROWS = 12;

/** Seeded (a 32-bit mixing counter), so that a failure can be repeated. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** What the user sees at one moment: the words of the head line and the first column. */
export function sight(page: Page): Promise<{ readonly status: string; readonly column: Column }> {
  return page.evaluate((rows) => {
    const inside = (root: ParentNode | null | undefined, selector: string): Element | null =>
      root?.querySelector(selector) ?? null;
    const app = inside(document, 'swarf-book')?.shadowRoot;
    const head = inside(app, 'desk-head')?.shadowRoot;
    const grid = inside(app, 'page-grid')?.shadowRoot;
    const column = Array.from({ length: rows }, (_, row) =>
      (inside(grid, `tr[data-row="${row}"] td[data-column="0"] .face`)?.textContent ?? '').replaceAll(
        /\s/g,
        '',
      ),
    );
    return { status: inside(head, '.status')?.textContent?.trim() ?? '', column };
  }, ROWS);
}

export const same = (a: Column, b: Column): boolean =>
  a.length === b.length && a.every((text, k) => text === b[k]);

const isSaved = (status: string): boolean => /^saved \d\d:\d\d on this device/.test(status);

export interface CutSession {
  /** The column before the first edit and after each one that may have reached the program. */
  readonly states: readonly Column[];
  /** The last of the states that the page called saved. */
  readonly confirmed: number;
}

/** Edits one cell after the other until the browser dies, `after` milliseconds from now. */
export async function editUntilKilled(
  browser: MortalBrowser,
  page: Page,
  random: () => number,
  after: number,
): Promise<CutSession> {
  await focusGrid(page);
  const start = (await sight(page)).column;
  const states: Column[] = [start];
  let confirmed = 0;
  const end = { reached: false };
  const patient = random() < 0.5;
  const killed = pause(after).then(() => {
    end.reached = true;
    return browser.kill();
  });
  const look = async (): Promise<boolean> => {
    const { status, column } = await sight(page);
    if (end.reached || !isSaved(status) || !same(column, states.at(-1) ?? [])) return false;
    confirmed = states.length - 1;
    return true;
  };
  const edit = async (): Promise<void> => {
    const row = (states.length - 1) % ROWS;
    if (row === 0) await page.keyboard.press('Control+Home');
    const text = random() < 0.1 ? '' : `${1 + Math.floor(random() * 9998)}mm`;
    states.push((states.at(-1) ?? []).map((old, k) => (k === row ? text : old)));
    if (text === '') {
      await page.keyboard.press('Delete');
      await page.keyboard.press('ArrowDown');
    } else {
      await page.keyboard.insertText(text.replace('mm', ' mm'));
      await page.keyboard.press('Enter');
    }
    if (!patient) await look();
    else while (!(await look()) && !end.reached);
  };
  try {
    while (!end.reached) await edit();
  } catch (reason) {
    if (!end.reached) throw reason;
  }
  await killed;
  return { states, confirmed };
}

/** Which of the states the notebook is in; waits, because a page that is opening shows nothing yet. */
export async function stateShown(page: Page, { states, confirmed }: CutSession): Promise<number> {
  const until = Date.now() + 20_000;
  let { column } = await sight(page);
  for (;;) {
    for (let k = states.length - 1; k >= confirmed; k -= 1) {
      const state = states[k];
      if (state && same(column, state)) return k;
    }
    if (Date.now() > until) break;
    await pause(30);
    ({ column } = await sight(page));
  }
  throw new Error(
    `confirmed were ${JSON.stringify(states.slice(confirmed))}, but the page shows ${JSON.stringify(column)}`,
  );
}

/** Words of the bands across the top of the page. */
export const bandsOf = (page: Page): Promise<readonly string[]> =>
  page.locator('swarf-book .band').allInnerTexts();

/** Opens the notebook again and waits until its page can be typed into. */
export async function reopened(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.locator('page-grid td.active .editor').waitFor();
}

/** A new notebook with this length in A1, saved. */
export async function oneLength(page: Page, text = '5 mm'): Promise<void> {
  await newNotebook(page);
  await enter(page, 'A1', text);
  await saved(page);
}

/** What a notebook that is to be lost holds in A1 to A5. */
export const LENGTHS: Column = ['11 mm', '12 mm', '13 mm', '14 mm', '15 mm'];

/** A new notebook with these lengths in the first column, typed one after the other and saved; gives its address. */
export async function filled(page: Page, texts: Column = LENGTHS): Promise<string> {
  await newNotebook(page);
  for (const text of texts) {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  }
  await shows(page, `A${texts.length}`, texts.at(-1) ?? '');
  await saved(page);
  return page.url();
}

/** Waits until the first column shows these. */
export async function allThere(page: Page, texts: Column = LENGTHS): Promise<void> {
  for (const [k, text] of texts.entries()) await shows(page, `A${k + 1}`, text);
}

/** Leaves the notebook: that writes a snapshot, and its entries are needed for undo alone from then on. */
export async function left(page: Page): Promise<void> {
  await page.evaluate(() => {
    location.hash = '';
  });
  await page.locator('start-view .open', { hasText: 'New notebook' }).waitFor();
}
