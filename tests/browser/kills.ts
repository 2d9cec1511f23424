/** A profile in which a notebook is edited and the browser killed, again and again. */

import { newNotebook, saved } from './desk.ts';
import { bandsOf, editUntilKilled, randomFrom, reopened, stateShown } from './loss.ts';
import { MortalBrowser } from './mortal-browser.ts';

export interface Toll {
  kills: number;
  /** Edits that the page had called saved, and that were all there again. */
  confirmed: number;
  /** Edits cut off before they were confirmed that were there nonetheless. */
  beyond: number;
  /** How often the page said that it had restored something. */
  restored: number;
}

/** Milliseconds until the browser is killed, at most; more where this computer is so slow that hardly an edit is confirmed by then. */
const LONGEST_SESSION = 1200;
const SLOWEST_SESSION = 9600;

/** Kills the browser `kills` times; throws where something confirmed is missing afterwards, naming the seed. */
export async function killAgainAndAgain(address: string, kills: number, seed: number): Promise<Toll> {
  const browser = new MortalBrowser();
  const random = randomFrom(seed);
  const toll: Toll = { kills: 0, confirmed: 0, beyond: 0, restored: 0 };
  let longest = LONGEST_SESSION;
  try {
    let page = await browser.start();
    await page.goto(address);
    await newNotebook(page);
    await saved(page);
    const notebook = page.url();
    while (toll.kills < kills) {
      const session = await editUntilKilled(browser, page, random, random() * longest);
      page = await browser.start();
      await reopened(page, notebook);
      const shown = await stateShown(page, session);
      toll.kills += 1;
      toll.confirmed += session.confirmed;
      if (toll.confirmed < 2 * toll.kills) longest = Math.min(1.2 * longest, SLOWEST_SESSION);
      toll.beyond += shown - session.confirmed;
      if ((await bandsOf(page)).some((words) => words.includes('restored'))) toll.restored += 1;
    }
    return toll;
  } catch (reason) {
    throw new Error(`seed ${seed}, after ${toll.kills} kills: ${String(reason)}`, { cause: reason });
  } finally {
    await browser.end();
  }
}
