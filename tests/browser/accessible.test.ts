/** What a screen reader, a finger, a keyboard and a weak eye need: looked over in every state by an independent rule set (axe-core), measured, and tried. */

import { afterAll, afterEach, expect, test } from 'vitest';
import { axeFindings, contrastFindings } from './axe.ts';
import { closeBrowser, openDesk, type Desk } from './desk.ts';
import { smallTargets } from './targets.ts';
import { CHAPTERS, EXPECTED } from './walk.ts';

let desk: Desk | undefined;
afterEach(async () => {
  await desk?.close();
  desk = undefined;
});
afterAll(closeBrowser);

const SCREENS = [
  { name: 'desk', width: 1366, height: 768, touch: false },
  { name: 'tablet', width: 820, height: 1180, touch: true },
] as const;

for (const { name, width, height, touch } of SCREENS) {
  const seen = new Set<string>();
  for (const [chapter, walk] of CHAPTERS)
    test(`${name}, ${chapter}: no finding in any state, light or dark${touch ? ', and every target is 44 pixels wide and high' : ''}`, async () => {
      desk = await openDesk({ width, height, visitor: { hasTouch: touch, reducedMotion: 'reduce' } });
      const { page } = desk;
      const found: string[] = [];
      const note = (state: string, list: readonly string[]): void => {
        found.push(...list.map((each) => `${state}: ${each}`));
      };
      const turn = (theme: string): Promise<void> =>
        page.evaluate((look) => {
          document.documentElement.dataset['theme'] = look;
        }, theme);
      await walk({
        desk,
        page,
        narrow: width < 1100,
        async look(state) {
          seen.add(state);
          note(state, await axeFindings(page));
          await turn('dark');
          note(`${state}, dark`, await contrastFindings(page));
          await turn('light');
          if (touch) note(`${state}, small`, await smallTargets(page));
        },
      });
      expect(found).toEqual([]);
      expect(desk.troubles).toEqual([]);
    }, 300_000);
  test(`${name}: every leaf and every panel was looked at`, () => {
    expect(EXPECTED.filter((each) => !seen.has(each))).toEqual([]);
  });
}
