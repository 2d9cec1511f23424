/** The program on a device: everything is kept for use without network, a new version waits, two tabs do not disturb each other, files go out and in. */

import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, sep } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { DIST, desksOfTests, enter, goTo, newNotebook, readyWithoutNetwork, saved, shows } from './desk.ts';

const folders: string[] = [];
afterEach(async () => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});
const desks = desksOfTests();

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((path) => statSync(path).isFile())
    .map((path) => relative(folder, path).split(sep).join('/'));

test('every file of the build is kept for use without network', () => {
  const worker = readFileSync(join(DIST, 'sw.js'), 'utf8');
  const kept = new Set([...worker.matchAll(/url:\s*"([^"]+)"/g)].map((match) => match[1]));
  const missing = filesIn(DIST).filter((file) => file !== 'sw.js' && !kept.has(file));
  expect(missing).toEqual([]);
});

test('the page names no place outside itself and carries no inline style or script', () => {
  const page = readFileSync(join(DIST, 'index.html'), 'utf8');
  expect(page).toContain("default-src 'none'");
  expect(page).not.toMatch(/(?:src|href)="https?:/);
  expect(page).not.toMatch(/<style|style="|<script(?![^>]*src=)/);
});

test('serving beyond this computer without a certificate is refused with the way to do it', () => {
  const { status, stderr } = spawnSync(process.execPath, ['src/serve.mjs', '--lan', '--no-build'], {
    encoding: 'utf8',
  });
  expect(status).toBe(2);
  expect(stderr).toContain('--cert');
});

test('5 a second tab only reads; taken over, it edits and the first one only reads', async () => {
  const { page, context } = await desks.open();
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await saved(page);
  const second = await context.newPage();
  await second.goto(page.url());
  await second.locator('.band', { hasText: 'read only' }).waitFor();
  await shows(second, 'A1', '5 mm');
  await second.getByRole('button', { name: 'Take over' }).click();
  await page.locator('.band', { hasText: 'read only' }).waitFor();
  await second.locator('.band').waitFor({ state: 'detached' });
  await enter(second, 'A2', '6 mm');
  await saved(second);
  await second.reload();
  await shows(second, 'A2', '6 mm');
});

test('a new version waits until it is accepted, and nothing typed is lost by it', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'swarfbook-'));
  folders.push(folder);
  cpSync(DIST, folder, { recursive: true });
  const { page } = await desks.open({ folder, installs: true });
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await readyWithoutNetwork(page);
  const worker = join(folder, 'sw.js');
  writeFileSync(worker, `${readFileSync(worker, 'utf8')}\n// a later build\n`);
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: 'About, licence, newer version' }).click();
  await page.getByRole('button', { name: 'Look for a newer version' }).click();
  await page.getByText('A newer version is ready').waitFor();
  await page.getByRole('button', { name: 'Close' }).click();
  const accept = page.getByRole('button', { name: 'Change to it now' });
  await accept.waitFor();
  await enter(page, 'A2', '=A1*2');
  await shows(page, 'A2', '10 mm');
  await Promise.all([page.waitForEvent('load'), accept.click()]);
  await shows(page, 'A1', '5 mm');
  await shows(page, 'A2', '10 mm');
  expect(await page.getByRole('button', { name: 'Change to it now' }).count()).toBe(0);
});

test('2 with its database thrown away the notebook comes back from the second place, and that is said', async () => {
  const { page, address: home } = await desks.open();
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await saved(page);
  const address = page.url();
  await page.goto('about:blank');
  await page.goto(`${home}icon.svg`);
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const request = indexedDB.deleteDatabase('swarfbook');
        request.addEventListener('success', () => resolve());
        request.addEventListener('error', () => reject(request.error ?? new Error('not deleted')));
      }),
  );
  await page.goto(address);
  await shows(page, 'A1', '5 mm');
  await page.locator('.band', { hasText: 'restored from the other' }).waitFor();
});

test('a file copy goes out, comes back as another notebook and computes the same', async () => {
  const { page } = await desks.open();
  await newNotebook(page);
  await enter(page, 'A1', '50 mm');
  await enter(page, 'A2', '=A1/3');
  await shows(page, 'A2', '16.6667 mm');
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save a file copy' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('New notebook.json');
  const path = await download.path();
  expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ format: 1, title: 'New notebook' });
  await page.locator('.status', { hasText: 'file copy at' }).waitFor();
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open a file' }).click(),
  ]);
  const before = page.url();
  await chooser.setFiles(path);
  await page.getByRole('button', { name: 'Open it as a notebook of its own' }).click();
  await page.waitForURL((url) => url.href !== before);
  await shows(page, 'A2', '16.6667 mm');
});

test('pointing at a cell while a formula is typed puts its address there, and going elsewhere keeps what was typed', async () => {
  const { page } = await desks.open();
  await newNotebook(page);
  await enter(page, 'A1', '50 mm');
  await goTo(page, 'B3');
  await page.keyboard.type('=2*');
  await page.locator('page-grid tr[data-row="0"] td[data-column="0"]').click();
  expect(await page.locator('entry-line .field input').inputValue()).toBe('=2*A1');
  await page.keyboard.press('Enter');
  await shows(page, 'B3', '100 mm');
  await goTo(page, 'B5');
  await page.keyboard.type('7 mm');
  await page.locator('page-grid tr[data-row="8"] td[data-column="3"]').click();
  await shows(page, 'B5', '7 mm');
});
