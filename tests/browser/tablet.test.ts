/** A tablet's way in: the built page on an https server with a certificate of the shop's own, installed in a profile of its own, and the server gone. */

import { execFileSync } from 'node:child_process';
import { X509Certificate, createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type BrowserContext } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { serve, type Serving } from '../../src/serve.mjs';
import { FLAGS, SHOP_HOST, chromiumPath } from './chromium.ts';
import { DIST, enter, newNotebook, readyWithoutNetwork, saved, shows } from './desk.ts';

const home = mkdtempSync(join(tmpdir(), 'swarfbook-tablet-'));
let server: Serving | undefined;
let tablet: BrowserContext | undefined;
afterEach(async () => {
  await tablet?.close();
  await server?.close();
  rmSync(home, { recursive: true, force: true });
});

/** A certificate for the shop's own name, signed by itself. */
function certificate(): { cert: Buffer; key: Buffer } {
  const [cert, key] = [join(home, 'shop.crt'), join(home, 'shop.key')];
  const subject = ['-subj', `/CN=${SHOP_HOST}`, '-addext', `subjectAltName=DNS:${SHOP_HOST}`];
  const files = ['-keyout', key, '-out', cert];
  execFileSync(
    'openssl',
    ['req', '-x509', '-newkey', 'rsa:2048', '-nodes', '-days', '2', ...subject, ...files],
    { stdio: 'ignore' },
  );
  return { cert: readFileSync(cert), key: readFileSync(key) };
}

/** A touch screen with the same profile every time, which trusts the shop's certificate and no other. */
async function startTablet(cert: Buffer): Promise<BrowserContext> {
  const own = new X509Certificate(cert).publicKey.export({ type: 'spki', format: 'der' });
  const trusted = createHash('sha256').update(own).digest('base64');
  const root = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  tablet = await chromium.launchPersistentContext(join(home, 'profile'), {
    executablePath: chromiumPath(),
    args: [...FLAGS, ...root, `--ignore-certificate-errors-spki-list=${trusted}`],
    viewport: { width: 820, height: 1180 },
    hasTouch: true,
    isMobile: true,
  });
  return tablet;
}

test('a tablet opens the page by the shop address over https, installs it, and works with the server gone', async () => {
  const { cert, key } = certificate();
  server = await serve({ folder: DIST, host: '127.0.0.1', tls: { cert, key } });
  const address = `https://${SHOP_HOST}:${server.port}/`;
  let context = await startTablet(cert);
  let page = await context.newPage();
  await page.goto(address);
  expect(await page.evaluate(() => isSecureContext)).toBe(true);
  await newNotebook(page);
  await enter(page, 'A1', '5 mm');
  await enter(page, 'A2', '=A1*2');
  await shows(page, 'A2', '10 mm');
  await saved(page);
  await readyWithoutNetwork(page);
  const notebook = page.url();
  let devtools = await context.newCDPSession(page);
  expect(await devtools.send('Page.getInstallabilityErrors')).toEqual({ installabilityErrors: [] });
  const program = { manifestId: address };
  await devtools.send('PWA.install', { ...program, installUrlOrBundleUrl: address });
  await server.close();
  server = undefined;
  await context.close();
  context = await startTablet(cert);
  page = await context.newPage();
  await page.goto(notebook);
  await shows(page, 'A2', '10 mm');
  await enter(page, 'A1', '7 mm');
  await shows(page, 'A2', '14 mm');
  await saved(page);
  devtools = await context.newCDPSession(page);
  const [started] = await Promise.all([context.waitForEvent('page'), devtools.send('PWA.launch', program)]);
  await started.getByText('Ready without network.').waitFor();
  await started.locator('start-view .open', { hasText: 'New notebook' }).waitFor();
});
