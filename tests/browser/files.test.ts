/** Files come in by every way a browser has and go out by the first that works; what is too large or foreign is refused in words. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { DIST, desksOfTests, enter, newNotebook, readyWithoutNetwork, saved, shows } from './desk.ts';

const desks = desksOfTests();

const sheet = (name: string): string =>
  readFileSync(join(import.meta.dirname, `../../sheets/${name}.json`), 'utf8');
const titleOf = (text: string): string => (JSON.parse(text) as { title: string }).title;
const pump = sheet('pump-cover-boss');
const hinge = sheet('hinge-fitting-stock');
const title = titleOf(pump);

/** Drops a file of this text, or of so many megabytes, on the page. */
const drop = (page: Page, text: string, megabytes = 0): Promise<void> =>
  page.evaluate(
    ([content, size]) => {
      const data = new DataTransfer();
      const body = size > 0 ? 'x'.repeat(size * 1_000_000) : content;
      data.items.add(new File([body], 'dropped.json', { type: 'application/json' }));
      const place = document.querySelector('swarf-book');
      place?.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    },
    [text, megabytes] as const,
  );

test('11 a file dropped on the start screen or on an open notebook is opened', async () => {
  const { page } = await desks.open();
  await drop(page, pump);
  await page.locator('desk-head h1', { hasText: title }).waitFor();
  await drop(page, hinge);
  await page.locator('desk-head h1', { hasText: titleOf(hinge) }).waitFor();
});

test('11 a file that is too large or no notebook is refused in words, and the open notebook stays', async () => {
  const { page } = await desks.open();
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await drop(page, '', 42);
  await page.getByText('at most 40 MB are read').first().waitFor();
  await drop(page, '{"format":1}');
  await page.getByText('The file is not opened').first().waitFor();
  await shows(page, 'A1', '5 mm');
});

test('11 a file by which the system starts the program is opened', async () => {
  const { page, context } = await desks.open();
  const manifest = JSON.parse(readFileSync(join(DIST, 'swarfbook.webmanifest'), 'utf8')) as Record<
    string,
    unknown
  >;
  expect(manifest['file_handlers']).toEqual([{ action: '.', accept: { 'application/json': ['.json'] } }]);
  await context.addInitScript((text) => {
    const file = { getFile: () => Promise.resolve(new File([text], 'started.json')) };
    const launchQueue = {
      setConsumer: (consume: (launch: unknown) => void) =>
        void setTimeout(() => consume({ files: [file] }), 50),
    };
    Object.defineProperty(window, 'launchQueue', { value: launchQueue });
  }, pump);
  await page.reload();
  await page.locator('desk-head h1', { hasText: title }).waitFor();
});

/** Sends a form as the system's share sheet does, from a place of the same server without the page's policy. */
const share = (page: Page, action: string, name: string, text: string): Promise<void> =>
  page.evaluate(
    ([place, fileTitle, content]) => {
      const form = document.createElement('form');
      Object.assign(form, { method: 'POST', action: place, enctype: 'multipart/form-data' });
      const input = document.createElement('input');
      Object.assign(input, { type: 'file', name: 'file' });
      const data = new DataTransfer();
      data.items.add(new File([content], fileTitle, { type: 'application/json' }));
      input.files = data.files;
      form.append(input);
      document.body.append(form);
      form.submit();
    },
    [action, name, text] as const,
  );

test('11 a file that another program shares with the installed one is opened after a question, without network; refused, it is forgotten', async () => {
  const desk = await desks.open({ installs: true });
  const { page, address } = desk;
  const manifest = JSON.parse(readFileSync(join(DIST, 'swarfbook.webmanifest'), 'utf8')) as Record<
    string,
    unknown
  >;
  expect(manifest['share_target']).toMatchObject({
    action: 'share',
    method: 'POST',
    enctype: 'multipart/form-data',
    params: { files: [{ name: 'file' }] },
  });
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await saved(page);
  await readyWithoutNetwork(page);
  await page.goto(`${address}notices.txt`);
  await desk.stopServer();
  await share(page, `${address}share`, 'pump cover, ø 40.json', pump);
  await page.getByText('Open pump cover, ø 40.json?').waitFor();
  expect(page.url()).toBe(address);
  await page.getByRole('button', { name: 'Open it' }).click();
  await page.locator('desk-head h1', { hasText: title }).waitFor();
  await page.goto(`${address}notices.txt`);
  await share(page, `${address}share`, 'hinge.json', hinge);
  await page.getByText('Open hinge.json?').waitFor();
  await page.getByRole('button', { name: 'Leave it' }).click();
  await page.reload();
  await page.locator('start-view .open', { hasText: 'New notebook' }).waitFor();
  expect(await page.getByText('Open hinge.json?').count()).toBe(0);
  expect(await page.getByLabel('notebooks on this device').getByText(titleOf(hinge)).count()).toBe(0);
  await page.goto(`${address}notices.txt`);
  await share(page, `${address}share`, 'no notebook.json', '{"format":1}');
  await page.getByRole('button', { name: 'Open it' }).click();
  await page.getByText('The file is not opened').first().waitFor();
  expect(desk.troubles).toEqual([]);
});

async function copyOut(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: 'Save a file copy' }).click();
}

test('11 where the share sheet takes files it comes first, within the gesture; given up, no copy is claimed', async () => {
  const { page, context } = await desks.open();
  await context.addInitScript(() => {
    const { matchMedia } = window;
    window.matchMedia = (query) =>
      query === '(pointer: coarse)' ? ({ matches: true } as MediaQueryList) : matchMedia.call(window, query);
    navigator.canShare = () => true;
    let give = false;
    navigator.share = async (data) => {
      const [file] = data?.files ?? [];
      document.documentElement.dataset['shared'] =
        `${file?.name} ${String(navigator.userActivation.isActive)} ${(await file?.text())?.includes('5 mm')}`;
      if (!give) {
        give = true;
        throw new DOMException('given up', 'AbortError');
      }
    };
  });
  await page.reload();
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await saved(page);
  await copyOut(page);
  const shared = (): Promise<string | undefined> =>
    page.evaluate(() => document.documentElement.dataset['shared']);
  await expect.poll(shared).toBe('New notebook.json true true');
  expect(await page.locator('swarf-book .status').innerText()).toContain('no file copy yet');
  await copyOut(page);
  await page.locator('swarf-book .status', { hasText: 'file copy at' }).waitFor();
});

test('11 where the browser can neither share nor download the text is shown to be copied', async () => {
  const { page, context } = await desks.open();
  await context.addInitScript(() => {
    Reflect.deleteProperty(HTMLAnchorElement.prototype, 'download');
  });
  await page.reload();
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await copyOut(page);
  const text = page.getByRole('textbox', { name: 'text of New notebook.json' });
  await text.waitFor();
  expect(await text.inputValue()).toContain('5 mm');
  expect(await page.locator('swarf-book .status').innerText()).toContain('no file copy yet');
});
