/**
 * What is said where a browser may not keep things: private windows, tablets, refused promises; and where it may be trusted.
 * The windows of these tests are private ones as Chromium makes them (a context of its own, off the record).
 */

import type { BrowserContextOptions, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { desksOfTests, enter, newNotebook, saved, shows } from './desk.ts';

const desks = desksOfTests();

/** A page in whose browser this was done before it was loaded. */
async function pageAfter(before: () => void, visitor: BrowserContextOptions = {}): Promise<Page> {
  const desk = await desks.open({ visitor });
  await desk.context.addInitScript(before);
  await desk.page.reload();
  await desk.page.getByRole('button', { name: 'Empty page, metric' }).waitFor();
  return desk.page;
}

const home = (page: Page): Promise<void> =>
  page.evaluate(() => {
    location.hash = '';
  });

test('10 with hardly any room offered, as private windows of earlier browsers do, the page says that this window forgets the notebook', async () => {
  const page = await pageAfter(() => {
    navigator.storage.estimate = () => Promise.resolve({ quota: 300_000_000, usage: 0 });
  });
  await page.locator('start-view .risk', { hasText: 'private window' }).waitFor();
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await page
    .locator('swarf-book .status', { hasText: 'no file copy yet: this browser may not keep' })
    .waitFor();
});

test('10 without service workers, as in private windows of Firefox, the page says that this window forgets the notebook', async () => {
  const page = await pageAfter(() => {
    delete (Navigator.prototype as { serviceWorker?: unknown }).serviceWorker;
  });
  await page.locator('start-view .risk', { hasText: 'looks like a private window' }).waitFor();
});

test('10 a private window of Chromium offers what every window offers: nothing is said before it was asked, and its refusal is shown with what that may mean', async () => {
  const page = await pageAfter(() => undefined);
  const { quota = 0 } = await page.evaluate(() => navigator.storage.estimate());
  // Since Chromium 138; an earlier one is told by its quota.
  expect(quota).toBeGreaterThan(1_000_000_000);
  expect(await page.locator('start-view .risk').count()).toBe(0);
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await saved(page);
  await enter(page, 'A2', '6 mm');
  await page.locator('swarf-book .status', { hasText: 'this browser may not keep this one' }).waitFor();
  await home(page);
  await page
    .locator('start-view .risk', { hasText: 'a private window, which a page can not always tell' })
    .waitFor();
});

/** Counts the requests for the promise over reloads, refuses them until told otherwise, and lets days pass. */
function refusing(): void {
  const count = (key: string): number => Number(sessionStorage.getItem(key) ?? '0');
  const now = Date.now.bind(Date);
  Date.now = () => now() + count('days later') * 86_400_000;
  navigator.storage.persist = () => {
    sessionStorage.setItem('asked', String(count('asked') + 1));
    return Promise.resolve(count('promises') > 0);
  };
}
const asked = (page: Page): Promise<string | null> => page.evaluate(() => sessionStorage.getItem('asked'));

/** Loaded again, with an edit that is kept and a gesture after it. */
async function editAnew(page: Page, place: string): Promise<void> {
  await page.reload();
  await page.locator('page-grid td.active .editor').waitFor();
  await enter(page, place, '7 mm');
  await saved(page);
  await page.keyboard.press('ArrowDown');
}

test('10 the browser is asked for its promise once, after the first edit was kept; where it asks the user a refusal holds over reloads for 30 days and is shown at once', async () => {
  const userAgent = 'Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0';
  const page = await pageAfter(refusing, { userAgent });
  await newNotebook(page);
  expect(await asked(page)).toBeNull();
  await enter(page, 'A1', '5 mm');
  await saved(page);
  await enter(page, 'A2', '6 mm');
  await enter(page, 'A3', '7 mm');
  expect(await asked(page)).toBe('1');
  await page.locator('swarf-book .status', { hasText: 'this browser may not keep this one' }).waitFor();
  await page.reload();
  await page.locator('swarf-book .status', { hasText: 'this browser may not keep this one' }).waitFor();
  await editAnew(page, 'A4');
  await editAnew(page, 'A5');
  expect(await asked(page)).toBe('1');
  await home(page);
  await page.locator('start-view .risk', { hasText: 'has not promised' }).waitFor();
  await page.goBack();
  await page.evaluate(() => {
    sessionStorage.setItem('days later', '31');
    sessionStorage.setItem('promises', '1');
  });
  await editAnew(page, 'A6');
  await expect.poll(() => asked(page)).toBe('2');
  await home(page);
  await page.getByText('This browser has promised to keep what is stored here').waitFor();
});

test('10 a browser that answers by itself is asked at every start, because its answer changes with use; until then the last one is shown', async () => {
  const page = await pageAfter(refusing);
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await saved(page);
  await page.keyboard.press('ArrowDown');
  await expect.poll(() => asked(page)).toBe('1');
  await page.reload();
  await page.locator('swarf-book .status', { hasText: 'this browser may not keep this one' }).waitFor();
  await page.evaluate(() => sessionStorage.setItem('promises', '1'));
  await editAnew(page, 'A2');
  await expect.poll(() => asked(page)).toBe('2');
  await home(page);
  await page.getByText('This browser has promised to keep what is stored here').waitFor();
});

test('10 a promise is shown too', async () => {
  const page = await pageAfter(() => {
    navigator.storage.persisted = () => Promise.resolve(true);
  });
  await page.getByText('This browser has promised to keep what is stored here').waitFor();
  expect(await page.locator('start-view .risk').count()).toBe(0);
});

test('10 on a tablet that forgets pages after 7 days the page says so until it is on the home screen', async () => {
  const page = await pageAfter(() => {
    Object.defineProperty(navigator, 'userAgent', {
      value: 'Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15',
    });
    Object.defineProperty(navigator, 'maxTouchPoints', { value: 5 });
  });
  await page.locator('start-view .risk', { hasText: '7 days without use' }).waitFor();
});

test('10 a file copy that is more than 7 days old is mentioned once the notebook has changed since, and can be put off', async () => {
  const page = await pageAfter(() => {
    const days = Number(sessionStorage.getItem('days later') ?? '0');
    const now = Date.now.bind(Date);
    Date.now = () => now() + days * 86_400_000;
  });
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await saved(page);
  expect(await page.locator('.band.calm').count()).toBe(0);
  await page.evaluate(() => sessionStorage.setItem('days later', '8'));
  await page.reload();
  const band = page.locator('.band.calm', { hasText: 'is 8 days old and has no file copy yet' });
  await band.waitFor();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    band.getByRole('button', { name: 'Save a file copy' }).click(),
  ]);
  await download.path();
  await band.waitFor({ state: 'detached' });
  await page.evaluate(() => sessionStorage.setItem('days later', '20'));
  await page.reload();
  await shows(page, 'A1', '5 mm');
  expect(await page.locator('.band.calm').count()).toBe(0);
  await enter(page, 'A2', '6 mm');
  const old = page.locator('.band.calm', { hasText: 'The last file copy is 12 days old' });
  await old.getByRole('button', { name: 'Later' }).click();
  await old.waitFor({ state: 'detached' });
  await home(page);
  await page.getByText(/file copy .*20\d\d/).waitFor();
});

test('10 leaving a notebook that is not saved is asked first, and closing the window too', async () => {
  const desk = await desks.open();
  const { page, context } = desk;
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await saved(page);
  const devtools = await context.newCDPSession(page);
  const origin = new URL(desk.address).origin;
  await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
  await enter(page, 'A2', '6 mm');
  await page.locator('.band', { hasText: 'Not saved on this device' }).waitFor();
  const address = page.url();
  await home(page);
  await page.getByText('Leave this notebook although it is not saved?').waitFor();
  await page.getByRole('button', { name: 'Leave it', exact: true }).click();
  expect(page.url()).toBe(address);
  await shows(page, 'A2', '6 mm');
  const dialogs: string[] = [];
  page.on('dialog', (dialog) => {
    dialogs.push(dialog.type());
    void dialog.dismiss();
  });
  await page.evaluate(() => void setTimeout(() => location.reload(), 0));
  await expect.poll(() => dialogs).toEqual(['beforeunload']);
  await shows(page, 'A2', '6 mm');
  await home(page);
  await page.getByRole('button', { name: 'Leave and lose it' }).click();
  await page.locator('start-view .open', { hasText: 'New notebook' }).waitFor();
});
