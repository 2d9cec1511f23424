/** Finds Chromium on this computer; where there is none, installs it by the platform's own means, else says what to do. */

import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';
import { chromium, type Browser } from 'playwright-core';

const COMMANDS = [
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge',
  'chrome',
];

const places = (): string[] => {
  const { env } = process;
  if (process.platform === 'darwin')
    return ['/Applications', join(homedir(), 'Applications')].flatMap((folder) => [
      join(folder, 'Chromium.app/Contents/MacOS/Chromium'),
      join(folder, 'Google Chrome.app/Contents/MacOS/Google Chrome'),
      join(folder, 'Microsoft Edge.app/Contents/MacOS/Microsoft Edge'),
    ]);
  if (process.platform === 'win32')
    return [env['PROGRAMFILES'], env['PROGRAMFILES(X86)'], env['LOCALAPPDATA']]
      .filter((folder) => folder !== undefined)
      .flatMap((folder) => [
        join(folder, 'Chromium/Application/chrome.exe'),
        join(folder, 'Google/Chrome/Application/chrome.exe'),
        join(folder, 'Microsoft/Edge/Application/msedge.exe'),
      ]);
  return ['/usr/lib/chromium/chromium', '/snap/bin/chromium', '/opt/google/chrome/chrome'];
};

const onPath = (command: string): string | undefined =>
  (process.env['PATH'] ?? '')
    .split(delimiter)
    .map((folder) => join(folder, process.platform === 'win32' ? `${command}.exe` : command))
    .find((path) => existsSync(path));

/** Path of a Chromium that is already there. */
export function findChromium(): string | undefined {
  const wanted = process.env['CHROMIUM_PATH'];
  if (wanted !== undefined && wanted !== '') {
    if (!existsSync(wanted)) throw new Error(`CHROMIUM_PATH is ${wanted}, which does not exist`);
    return wanted;
  }
  for (const command of COMMANDS) {
    const found = onPath(command);
    if (found) return found;
  }
  return places().find((path) => existsSync(path));
}

const run = (command: string, ...args: string[]): boolean =>
  spawnSync(command, args, { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } })
    .status === 0;

function install(): void {
  if (process.platform === 'darwin') run('brew', 'install', '--cask', 'chromium');
  else if (process.platform === 'win32')
    run(
      'winget',
      'install',
      '--exact',
      '--silent',
      '--accept-package-agreements',
      '--accept-source-agreements',
      '--id',
      'Hibbiki.Chromium',
    );
  else if (process.getuid?.() === 0 && onPath('apt-get'))
    void (
      run('apt-get', 'install', '-y', 'chromium') ||
      (run('apt-get', 'update') && run('apt-get', 'install', '-y', 'chromium'))
    );
}

/** Installs it if need be. */
export function chromiumPath(): string {
  const found = findChromium();
  if (found) return found;
  install();
  const installed = findChromium();
  if (installed) return installed;
  throw new Error(
    'The tests of the page need Chromium and found none. Install it (Debian: apt-get install chromium; macOS: brew ' +
      'install --cask chromium; Windows: winget install Hibbiki.Chromium), or set CHROMIUM_PATH to any Chromium-based browser.',
  );
}

/** A name that is neither https nor this computer to the browser, and yet leads to it. */
export const SHOP_HOST = 'shop.test';

export const FLAGS = [
  `--host-resolver-rules=MAP ${SHOP_HOST} 127.0.0.1`,
  '--no-first-run',
  '--disable-gpu',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A headless Chromium; without its sandbox only where the user is root, because it refuses to start otherwise. */
export function launch(): Promise<Browser> {
  const args = process.getuid?.() === 0 ? [...FLAGS, '--no-sandbox'] : FLAGS;
  return chromium.launch({ executablePath: chromiumPath(), args });
}

/** Version line of the browser, for the record. */
export const chromiumVersion = (): string =>
  execFileSync(chromiumPath(), ['--version'], { encoding: 'utf8' }).trim();
