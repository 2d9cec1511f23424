/** A notebook goes to another person and comes back: by file, by report, by link; compared and merged, nobody's text lost. */

import { readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { cellText, desksOfTests, enter, newNotebook, saved, shows } from './desk.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'swarfbook-handed-'));
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});
const desks = desksOfTests();

/** A window with a profile of its own: nothing that the first one keeps is known there. */
async function secondProfile(path = ''): Promise<Page> {
  const { anotherProfile, address } = desks.current;
  const page = await anotherProfile({ viewport: { width: 1366, height: 768 }, acceptDownloads: true });
  await page.goto(address + path);
  return page;
}

async function leaf(page: Page, words: RegExp): Promise<void> {
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: words }).click();
}

const closeLeaf = (page: Page): Promise<void> =>
  page.locator('leaf-dialog').getByRole('button', { name: 'Close' }).click();

/** Saves what a button hands out; gives its path. */
async function handedOut(page: Page, button: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  const path = join(folder, `${Date.now()}-${download.suggestedFilename()}`);
  await download.saveAs(path);
  return path;
}

async function opened(page: Page, button: string, path: string): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: button }).click(),
  ]);
  await chooser.setFiles(path);
}

/** Diameter, speed, spindle speed, a note; the spindle speed is 1 000 * 200 / (pi * 50) = 1 273.24 1/min, worked by hand. */
async function turning(page: Page): Promise<void> {
  await newNotebook(page);
  await enter(page, 'A1', 'cutter diameter');
  await enter(page, 'B1', '50 mm');
  await enter(page, 'A2', 'cutting speed');
  await enter(page, 'B2', '200 m/min');
  await enter(page, 'A3', 'spindle speed');
  await enter(page, 'B3', '=CUT.SPINDLE_SPEED(B1; B2)');
  await enter(page, 'A4', 'feed a tooth');
  await enter(page, 'B4', '0.1 mm');
  await shows(page, 'B3', '1273.24 1/min');
}

const row = (page: Page, where: RegExp): ReturnType<Page['locator']> =>
  page.locator('compare-view tbody tr', { hasText: where });
const cells = (page: Page, where: RegExp): Promise<string[]> =>
  row(page, where)
    .locator('td')
    .evaluateAll((all) => all.slice(0, 3).map((each) => each.textContent.replaceAll(/\s+/g, ' ').trim()));

test('a file goes to a second profile, three cells are changed there, and it is compared and merged back', async () => {
  const desk = await desks.open();
  const { page } = desk;
  await turning(page);
  await leaf(page, /^Hand over/);
  const sent = await handedOut(page, 'Save or share the file');
  await closeLeaf(page);

  const there = await secondProfile();
  await opened(there, 'Open a file…', sent);
  await shows(there, 'B3', '1273.24 1/min');
  await enter(there, 'B1', '40 mm');
  await enter(there, 'B4', '0.12 mm');
  await enter(there, 'C4', 'as tried by Mara');
  await shows(there, 'B3', '1591.55 1/min');
  await saved(there);
  await leaf(there, /^Hand over/);
  const back = await handedOut(there, 'Save or share the file');

  // Meanwhile: one cell of one's own, and one that both have changed.
  await enter(page, 'C2', 'our note');
  await enter(page, 'B4', '0.15 mm');
  await saved(page);
  await leaf(page, /^Compare with/);
  await opened(page, 'Choose the received file…', back);
  await row(page, /B1 · cutter diameter/).waitFor();
  await page.locator('compare-view', { hasText: 'changed there' }).waitFor();
  expect(await cells(page, /B1 · cutter diameter/)).toEqual([
    expect.stringContaining('changed there'),
    '50 mm',
    '40 mm',
  ]);
  expect(await cells(page, /B4 · feed a tooth/)).toEqual([
    expect.stringContaining('changed on both sides'),
    '0.15 mm',
    '0.12 mm',
  ]);
  expect((await cells(page, /C2/))[0]).toContain('changed here');
  // The formula is the same on both sides; its result is not, and follows what is taken.
  expect(await cells(page, /B3 · spindle speed/)).toEqual([
    expect.stringContaining('B3'),
    '1273.24 1/min',
    '1591.55 1/min',
  ]);
  await page.getByRole('button', { name: 'Take what only they changed (2)' }).click();
  await page
    .locator('compare-view', { hasText: 'Formulas that stand on both sides alike give the same results' })
    .waitFor();
  expect(await row(page, /B1 · cutter diameter/).count()).toBe(0);
  // What both changed is still there, with both texts: it is decided by hand.
  expect((await cells(page, /B4 · feed a tooth/)).slice(1)).toEqual(['0.15 mm', '0.12 mm']);
  await row(page, /B4 · feed a tooth/)
    .getByRole('button', { name: /^Keep, this one/ })
    .click();
  await closeLeaf(page);
  await shows(page, 'B3', '1591.55 1/min');
  await shows(page, 'C4', 'as tried by Mara');
  expect(await cellText(page, 'B4')).toBe('0.15 mm');
  expect(await cellText(page, 'C2')).toBe('our note');
  await saved(page);
  await page.reload();
  await shows(page, 'B1', '40 mm');
  expect(await cellText(page, 'C2')).toBe('our note');
  expect(desk.troubles).toEqual([]);
});

test('the received one can be taken cell by cell and taken back, and a state in common is not needed', async () => {
  const desk = await desks.open();
  const { page } = desk;
  await turning(page);
  const there = await secondProfile();
  await turning(there);
  await enter(there, 'B2', '220 m/min');
  await saved(there);
  await leaf(there, /^Hand over/);
  const back = await handedOut(there, 'Save or share the file');
  await leaf(page, /^Compare with/);
  await opened(page, 'Choose the received file…', back);
  await page.locator('compare-view', { hasText: 'who changed what can not be told' }).waitFor();
  await row(page, /B2 · cutting speed/)
    .getByRole('button', { name: /^take the received one/ })
    .click();
  await row(page, /B2 · cutting speed/).waitFor({ state: 'detached' });
  await page.locator('compare-view').getByRole('button', { name: 'Undo' }).click();
  expect((await cells(page, /B2 · cutting speed/)).slice(1)).toEqual(['200 m/min', '220 m/min']);
  expect(desk.troubles).toEqual([]);
});

test('a report opens in a browser without a script, and in the program as the notebook it was', async () => {
  const desk = await desks.open();
  const { page } = desk;
  await turning(page);
  await leaf(page, /^Hand over/);
  const report = await handedOut(page, 'Save or share the report');
  const text = readFileSync(report, 'utf8');
  expect(text).not.toMatch(/<script|<link|https?:\/\/(?!www\.w3\.org)/i);
  const bare = await secondProfile();
  await bare.goto('about:blank');
  const seen: string[] = [];
  bare.on('console', (message) => seen.push(message.text()));
  bare.on('request', (request) => {
    if (!request.url().startsWith('file:')) seen.push(request.url());
  });
  await bare.goto(`file://${report}`);
  expect(await bare.locator('body').innerText()).toContain('1273.24 1/min');
  expect(seen).toEqual([]);

  const there = await secondProfile();
  await opened(there, 'Open a file…', report);
  await shows(there, 'B3', '1273.24 1/min');
  await enter(there, 'B1', '40 mm');
  await shows(there, 'B3', '1591.55 1/min');
  expect(desk.troubles).toEqual([]);
});

test('a link carries the notebook behind its #, and a small one has a QR code', async () => {
  const desk = await desks.open();
  const { page } = desk;
  await turning(page);
  await leaf(page, /^Hand over/);
  const link = await page.getByLabel('link', { exact: true }).inputValue();
  expect(new URL(link).hash.length).toBeGreaterThan(20);
  await page.locator('hand-over svg.qr path').waitFor();
  const there = await secondProfile(link.slice(desk.address.length));
  await shows(there, 'B3', '1273.24 1/min');
  // The address names the notebook now, no longer carries it.
  expect(there.url().length).toBeLessThan(200);
  expect(desk.troubles).toEqual([]);
});
