/** What a screen reader, a finger, a keyboard and a weak eye need: looked over in every state by an independent rule set (axe-core), measured, and tried. */

import type { Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import { axeFindings, contrastFindings } from './axe.ts';
import { closeBrowser, openDesk, type Desk } from './desk.ts';
import { movingThings, smallTargets, tooWide } from './measures.ts';
import { CHAPTERS, EXPECTED } from './walk.ts';

let desk: Desk | undefined;
afterEach(async () => {
  await desk?.close();
  desk = undefined;
});
afterAll(closeBrowser);

type Note = (what: string, list: readonly string[]) => void;

const turn = (page: Page, theme: string): Promise<void> =>
  page.evaluate((look) => {
    document.documentElement.dataset['theme'] = look;
  }, theme);

async function rules(page: Page, note: Note): Promise<void> {
  note('light', await axeFindings(page));
  await turn(page, 'dark');
  note('dark', await contrastFindings(page));
  await turn(page, 'light');
}
const fingers = async (page: Page, note: Note): Promise<void> => note('small', await smallTargets(page));
const stillness = async (page: Page, note: Note): Promise<void> => note('moves', await movingThings(page));
const width = async (page: Page, note: Note): Promise<void> => {
  const pixels = await tooWide(page);
  note('wide', pixels > 0 ? [`${pixels} px`] : []);
};

const SCREENS = [
  {
    name: 'desk: no finding, light or dark, and nothing moves',
    size: [1366, 768],
    looks: [rules, stillness],
  },
  {
    name: 'tablet: no finding, light or dark, and every target is 44 pixels wide and high',
    size: [820, 1180],
    looks: [rules, fingers, width],
  },
  {
    name: 'small screen: every target is 44 pixels wide and high, and nothing is wider than the window',
    size: [390, 844],
    looks: [fingers, width],
  },
] as const;

for (const { name, size, looks } of SCREENS) {
  const [wide, high] = size;
  const seen = new Set<string>();
  for (const [chapter, walk] of CHAPTERS)
    test(`${chapter}, ${name}`, async () => {
      const visitor = { hasTouch: wide < 1100, reducedMotion: 'reduce' } as const;
      desk = await openDesk({ width: wide, height: high, visitor });
      const { page } = desk;
      const found: string[] = [];
      await walk({
        desk,
        page,
        narrow: wide < 1100,
        async look(state) {
          seen.add(state);
          for (const each of looks)
            await each(page, (what, list) =>
              found.push(...list.map((words) => `${state}, ${what}: ${words}`)),
            );
        },
      });
      expect(found).toEqual([]);
      expect(desk.troubles).toEqual([]);
    }, 300_000);
  test(`every leaf and every panel was looked at, ${name}`, () => {
    expect(EXPECTED.filter((each) => !seen.has(each))).toEqual([]);
  });
}
