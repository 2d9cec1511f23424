/** Connections that die under the open page: a database closed, thrown away or refusing is opened again, and nothing is lost. */

import { expect, test } from 'vitest';
import { desksOfTests, enter, saved, shows } from './desk.ts';
import { allThere, oneLength } from './loss.ts';

const desks = desksOfTests();

/** Holds back what one of the two places confirms, until it is let go; notes how transactions that write are asked for. */
function holdBack(): void {
  const page = window as Window & { held?: string; letGo?: () => void };
  let gate = Promise.resolve();
  let held = '';
  Object.assign(page, {
    hold(place: string) {
      held = place;
      gate = new Promise((resolve) => Object.assign(page, { letGo: resolve }));
    },
  });
  const { put } = Cache.prototype;
  Cache.prototype.put = async function late(this: Cache, ...given) {
    await put.apply(this, given);
    if (held === 'cache') await gate;
  };
  const complete = Object.getOwnPropertyDescriptor(IDBTransaction.prototype, 'oncomplete');
  Object.defineProperty(IDBTransaction.prototype, 'oncomplete', {
    set(this: IDBTransaction, told: (event: Event) => void) {
      complete?.set?.call(this, (event: Event) =>
        held === 'database' ? gate.then(() => told.call(this, event)) : told.call(this, event),
      );
    },
  });
  const { transaction } = IDBDatabase.prototype;
  IDBDatabase.prototype.transaction = function noting(this: IDBDatabase, ...given) {
    const { dataset } = document.documentElement;
    if (given[1] === 'readwrite')
      dataset['durability'] = `${dataset['durability'] ?? ''} ${given[2]?.durability}`;
    return transaction.apply(this, given);
  };
}

test(
  '1 saved is shown when both places have confirmed and not before, and the database is asked to write through to the disk',
  { retry: 0 },
  async () => {
    const { page } = await desks.open({ before: holdBack });
    await oneLength(page);
    const status = page.locator('swarf-book .status');
    for (const [place, at] of [
      ['database', 'A2'],
      ['cache', 'A3'],
    ] as const) {
      await page.evaluate(
        (each) => (window as Window & { hold?: (place: string) => void }).hold?.(each),
        place,
      );
      await enter(page, at, '6 mm');
      await shows(page, at, '6 mm');
      await page.waitForTimeout(500);
      expect(await status.innerText()).toMatch(/^saving/);
      await page.evaluate(() => (window as Window & { letGo?: () => void }).letGo?.());
      await saved(page);
    }
    expect(await page.evaluate(() => document.documentElement.dataset['durability'])).toMatch(
      /^(?: strict){3,}$/,
    );
  },
);

test(
  '1 a database that refuses twice as a dead connection does is opened again, and the edit is saved',
  { retry: 0 },
  async () => {
    const { page } = await desks.open();
    await oneLength(page);
    for (const [k, name] of ['InvalidStateError', 'UnknownError', 'AbortError'].entries()) {
      await page.evaluate((kind) => {
        const { transaction } = IDBDatabase.prototype;
        let left = 2;
        IDBDatabase.prototype.transaction = function refuse(this: IDBDatabase, ...given) {
          if (left === 0) return transaction.apply(this, given);
          left -= 1;
          throw new DOMException('the connection is dead', kind);
        };
      }, name);
      await enter(page, `A${k + 2}`, '6 mm');
      await saved(page);
    }
    await page.reload();
    await allThere(page, ['5 mm', '6 mm', '6 mm', '6 mm']);
    expect(await page.locator('.band').count()).toBe(0);
  },
);

test(
  '2 with everything thrown away under the open page the next edit writes it all anew',
  { retry: 0 },
  async () => {
    const desk = await desks.open();
    const { page, context } = desk;
    await oneLength(page);
    const devtools = await context.newCDPSession(page);
    await devtools.send('Storage.clearDataForOrigin', {
      origin: new URL(desk.address).origin,
      storageTypes: 'indexeddb,cache_storage',
    });
    await enter(page, 'A2', '6 mm');
    await saved(page);
    await page.reload();
    await allThere(page, ['5 mm', '6 mm']);
  },
);

test(
  '1 after sleep the connection is tried at once, and what another tab wrote meanwhile is shown',
  { retry: 0 },
  async () => {
    const { page, context } = await desks.open();
    await oneLength(page);
    const sleeper = await context.newPage();
    // A tab that sleeps hears nothing.
    await sleeper.addInitScript(() => {
      BroadcastChannel.prototype.addEventListener = () => undefined;
    });
    await sleeper.goto(page.url());
    await shows(sleeper, 'A1', '5 mm');
    await page.bringToFront();
    await enter(page, 'A2', '6 mm');
    await saved(page);
    await shows(sleeper, 'A2', '');
    await sleeper.evaluate(() =>
      window.dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true })),
    );
    await shows(sleeper, 'A2', '6 mm');
  },
);
