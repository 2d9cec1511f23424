/** The built page in a real browser, for the tests: opening it, typing into it, reading it. */

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, expect } from 'vitest';
import { serve, type Serving } from '../../src/serve.mjs';
import { launch } from './chromium.ts';

export const DIST = process.env['SWARFBOOK_DIST'] ?? join(import.meta.dirname, '../../dist');

/** Everything a test needs; close() ends it. */
export interface Desk {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly address: string;
  /** Errors of the page and violations of its policy so far. */
  readonly troubles: string[];
  /** An empty page in a profile of its own: nothing that the first one keeps is known there. Its troubles count too; it ends with the desk. */
  anotherProfile(visitor: BrowserContextOptions): Promise<Page>;
  stopServer(): Promise<void>;
  startServer(): Promise<void>;
  close(): Promise<void>;
}

let browser: Browser | undefined;

interface DeskOptions {
  readonly width?: number;
  readonly height?: number;
  readonly path?: string;
  readonly host?: string;
  readonly folder?: string;
  /** Language, touch, colours, zoom of the visitor's browser. */
  readonly visitor?: BrowserContextOptions;
  /** The program is installed for use without network: it takes seconds, so only where the test is about it. */
  readonly installs?: true;
  /** Runs in every page before the program. */
  readonly before?: () => void;
}

/** The desks of a file's tests: what a test has opened is closed after it, and the browser after the last one. */
export interface Desks {
  open(options?: DeskOptions): Promise<Desk>;
  /** The one that was opened last. */
  readonly current: Desk;
  /** Closes them before the test is over. */
  close(): Promise<void>;
}

/** To be called once in a file, after hooks of its own. `untroubled`: a test fails where one of its pages was in trouble. */
export function desksOfTests(options: { readonly untroubled?: true } = {}): Desks {
  const opened: Desk[] = [];
  const close = async (): Promise<void> => {
    for (const desk of opened.splice(0)) await desk.close();
  };
  afterEach(async () => {
    const troubles = opened.flatMap((desk) => desk.troubles);
    await close();
    if (options.untroubled) expect(troubles).toEqual([]);
  });
  afterAll(closeBrowser);
  return {
    async open(each) {
      const desk = await openDesk(each);
      opened.push(desk);
      return desk;
    },
    get current() {
      const desk = opened.at(-1);
      if (!desk) throw new Error('no desk is open');
      return desk;
    },
    close,
  };
}

export async function openDesk(options: DeskOptions = {}): Promise<Desk> {
  const folder = options.folder ?? DIST;
  if (!existsSync(join(folder, 'index.html')))
    throw new Error(`no built page in ${folder}: run npm run build first`);
  browser ??= await launch();
  let server: Serving | undefined = await serve({ folder, host: options.host ?? 'localhost' });
  const { port } = server;
  const context = await browser.newContext({
    viewport: { width: options.width ?? 1366, height: options.height ?? 768 },
    acceptDownloads: true,
    ...options.visitor,
  });
  if (!options.installs) await context.addInitScript(neverInstall);
  if (options.before) await context.addInitScript(options.before);
  const troubles: string[] = [];
  const pageIn = async (profile: BrowserContext): Promise<Page> => {
    const page = await profile.newPage();
    page.on('pageerror', (error) => troubles.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error' && !/net::|Failed to load resource/.test(message.text()))
        troubles.push(message.text());
    });
    return page;
  };
  const page = await pageIn(context);
  const others: BrowserContext[] = [];
  const address = `http://${options.host ?? 'localhost'}:${port}/`;
  await page.goto(address + (options.path ?? ''));
  return {
    page,
    context,
    address,
    troubles,
    async anotherProfile(visitor) {
      if (!browser) throw new Error('no browser');
      const profile = await browser.newContext(visitor);
      others.push(profile);
      return pageIn(profile);
    },
    async stopServer() {
      await server?.close();
      server = undefined;
    },
    async startServer() {
      server ??= await serve({ folder, port });
    },
    async close() {
      for (const profile of [...others, context]) await profile.close();
      await server?.close();
    },
  };
}

function neverInstall(): void {
  const { serviceWorker } = navigator as { readonly serviceWorker?: ServiceWorkerContainer };
  if (serviceWorker) serviceWorker.register = () => new Promise(() => {});
}

export async function closeBrowser(): Promise<void> {
  await browser?.close();
  browser = undefined;
}

/** An empty metric notebook with the focus in A1. */
export async function newNotebook(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Empty page, metric' }).click();
  await page.locator('page-grid td.active .editor').waitFor();
  await focusGrid(page);
}

export async function focusGrid(page: Page): Promise<void> {
  await page.locator('page-grid td.active .editor').focus();
}

/** Moves to a cell by its place and types into it. */
export async function enter(page: Page, address: string, text: string): Promise<void> {
  await goTo(page, address);
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

export async function goTo(page: Page, address: string): Promise<void> {
  const { row, column } = place(address);
  await focusGrid(page);
  await page.keyboard.press('Control+Home');
  for (let k = 0; k < row; k += 1) await page.keyboard.press('ArrowDown');
  for (let k = 0; k < column; k += 1) await page.keyboard.press('ArrowRight');
}

const place = (address: string): { readonly row: number; readonly column: number } => ({
  column: address.charCodeAt(0) - 65,
  row: Number(address.slice(1)) - 1,
});

/** A paste as the browser tells it, into whatever has the focus. */
export async function pasteText(page: Page, text: string): Promise<void> {
  await page.evaluate((words) => {
    let active = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    const data = new DataTransfer();
    data.setData('text/plain', words);
    active?.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true }));
  }, text);
}

/** An edit is held back a moment for its results: who reads at once reads what was before. */
export const drawn = (page: Page): Promise<unknown> =>
  page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 30)));

/** What a cell shows: number and unit, text, or error code. */
export async function cellText(page: Page, address: string): Promise<string> {
  const { row, column } = place(address);
  await drawn(page);
  return page
    .locator(`page-grid tr[data-row="${row}"] td[data-column="${column}"] .face`)
    .innerText()
    .then((text) => text.replaceAll(/\s+/g, ' ').trim());
}

/** Address of the active cell as the entry line shows it. */
export async function activeAddress(page: Page): Promise<string> {
  await drawn(page);
  return page.locator('entry-line .place').innerText();
}

/** Waits until a cell shows this. */
export async function shows(page: Page, address: string, text: string): Promise<void> {
  const until = Date.now() + 15_000;
  let seen = '';
  while (Date.now() < until) {
    seen = await cellText(page, address).catch(() => '');
    if (seen === text) return;
    await page.waitForTimeout(50);
  }
  throw new Error(`${address} shows "${seen}", not "${text}"`);
}

/** Waits until everything typed is on the disk. */
export async function saved(page: Page): Promise<void> {
  await drawn(page);
  await page.locator('swarf-book .status', { hasText: /^saved \d\d:\d\d on this device/ }).waitFor();
}

/** Waits until the program works without network. */
export async function readyWithoutNetwork(page: Page): Promise<void> {
  await page.getByText('ready without network', { exact: false }).first().waitFor({ timeout: 30_000 });
}

/**
 * Waits until the browser asks for newer versions: just started, it does not before its first visible page is at rest, and
 * where that page goes out of sight first only 3 minutes later (Chromium: "delays BEST_EFFORT tasks during startup").
 */
export async function asksForVersions(page: Page): Promise<void> {
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
}

/** The page loses its notebook without a question, as when another tab takes it while this one's computer sleeps; nobody has it then. */
export const losesNotebook = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const id = decodeURIComponent(location.hash.slice(1));
    void navigator.locks
      .request(`swarfbook ${id}`, { steal: true }, () => Promise.resolve())
      .catch(() => undefined);
  });
