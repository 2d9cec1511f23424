/** Looks every state of the program over on one screen: by an independent rule set (axe-core), and measured. */

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { axeFindings, contrastFindings } from './axe.ts';
import { desksOfTests } from './desk.ts';
import { cutSelects, movingThings, smallTargets, tooWide } from './measures.ts';
import { CHAPTERS, EXPECTED } from './walk.ts';

type Note = (what: string, list: readonly string[]) => void;

const turn = (page: Page, theme: string): Promise<void> =>
  page.evaluate((look) => {
    document.documentElement.dataset['theme'] = look;
  }, theme);

/** The rules of accessibility, in the light and in the dark. */
export async function rules(page: Page, note: Note): Promise<void> {
  note('light', await axeFindings(page));
  await turn(page, 'dark');
  note('dark', await contrastFindings(page));
  await turn(page, 'light');
}
/** The same, in the light alone. */
export const rulesInTheLight = async (page: Page, note: Note): Promise<void> =>
  note('light', await axeFindings(page));
/** Of every list what is chosen can be read whole. */
export const wholes = async (page: Page, note: Note): Promise<void> => note('cut', await cutSelects(page));
/** Every target is 44 pixels wide and high. */
export const fingers = async (page: Page, note: Note): Promise<void> =>
  note('small', await smallTargets(page));
/** Nothing moves. */
export const stillness = async (page: Page, note: Note): Promise<void> =>
  note('moves', await movingThings(page));
/** Nothing is wider than the window. */
export const width = async (page: Page, note: Note): Promise<void> => {
  const pixels = await tooWide(page);
  note('wide', pixels > 0 ? [`${pixels} px`] : []);
};

type Screen = readonly [name: string, wide: number, high: number];

/** Tests of every chapter of the walk on this screen. */
export function lookOver(
  [name, wide, high]: Screen,
  ...looks: readonly ((page: Page, note: Note) => Promise<void>)[]
): void {
  const desks = desksOfTests();
  const seen = new Set<string>();
  for (const [chapter, walk] of CHAPTERS)
    test(`${chapter}, ${name}`, async () => {
      const visitor = { hasTouch: wide < 1100, reducedMotion: 'reduce' } as const;
      const desk = await desks.open({ width: wide, height: high, visitor });
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
