/** A browser with a profile of its own on the disk, which dies when it is told to and comes back with the same profile. */

import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterEach, beforeEach } from 'vitest';
import { serve, type Serving } from '../../src/serve.mjs';
import { FLAGS, chromiumPath } from './chromium.ts';
import { DIST } from './desk.ts';

const PATIENCE = 30_000;

export class MortalBrowser {
  readonly profile = mkdtempSync(join(tmpdir(), 'swarfbook-profile-'));
  #process: ChildProcess | undefined;
  #browser: Browser | undefined;

  /** Starts it with the profile as it was left; gives its first page. */
  async start(): Promise<Page> {
    const portFile = join(this.profile, 'DevToolsActivePort');
    rmSync(portFile, { force: true });
    const root = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
    this.#process = spawn(
      chromiumPath(),
      [
        ...FLAGS,
        ...root,
        '--headless=new',
        '--hide-crash-restore-bubble',
        '--window-size=1366,768',
        '--remote-debugging-port=0',
        `--user-data-dir=${this.profile}`,
        'about:blank',
      ],
      { stdio: 'ignore', detached: process.platform !== 'win32' },
    );
    const until = Date.now() + PATIENCE;
    let line: string | undefined;
    while (!line) {
      if (Date.now() > until) throw new Error('the browser did not start');
      await pause(20);
      const lines = existsSync(portFile) ? readFileSync(portFile, 'utf8').split('\n') : [];
      line = lines[1] && `ws://127.0.0.1:${lines[0]}${lines[1]}`;
    }
    this.#browser = await chromium.connectOverCDP(line);
    const context = this.#browser.contexts()[0];
    if (!context) throw new Error('a browser without a window');
    return context.pages()[0] ?? (await context.newPage());
  }

  /** Ends the browser and everything it has started, at once and without a word to them (SIGKILL). */
  async kill(): Promise<void> {
    const dying = this.#process;
    this.#process = undefined;
    if (!dying?.pid) return;
    const dead = new Promise<void>((resolve) => {
      if (dying.exitCode !== null || dying.signalCode !== null) resolve();
      else dying.once('exit', () => resolve());
    });
    if (process.platform === 'win32') dying.kill('SIGKILL');
    else process.kill(-dying.pid, 'SIGKILL');
    await dead;
    await this.#browser?.close().catch(() => undefined);
    for (const name of readdirSync(this.profile))
      if (name.startsWith('Singleton')) rmSync(join(this.profile, name), { force: true });
  }

  /** A folder or file inside the profile. */
  inProfile(...path: string[]): string {
    return join(this.profile, 'Default', ...path);
  }

  async end(): Promise<void> {
    await this.kill();
    rmSync(this.profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 });
  }
}

/** What the tests of a file have at hand whose browsers die: a server of its own for each test, which ends with it as the browsers do. */
export interface Mortals {
  readonly address: string;
  /** A browser with a new profile, not started yet. */
  born(): MortalBrowser;
  stopServer(): Promise<void>;
}

/** To be called once in a file. */
export function mortalBrowsers(): Mortals {
  let server: Serving | undefined;
  let address = '';
  const alive: MortalBrowser[] = [];
  const stopServer = async (): Promise<void> => {
    await server?.close();
    server = undefined;
  };
  beforeEach(async () => {
    server = await serve({ folder: DIST, host: 'localhost' });
    address = `http://localhost:${server.port}/`;
  });
  afterEach(async () => {
    for (const each of alive.splice(0)) await each.end();
    await stopServer();
  });
  return {
    get address() {
      return address;
    },
    born() {
      const browser = new MortalBrowser();
      alive.push(browser);
      return browser;
    },
    stopServer,
  };
}
