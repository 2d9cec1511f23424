/** Starts the page: the one place where screen, storage, calculator and catalogue meet. */

import './ui/page.css';
import { EXAMPLES } from 'virtual:examples';
import type { FromEngine, FromStudy, ToEngine, ToStudy } from './calculation/index.ts';
import workerUrl from './engine.worker.ts?worker&url';
import studyUrl from './study.worker.ts?worker&url';
import {
  DeviceShelf,
  HandedStates,
  ProgramOnDevice,
  cacheLeg,
  databaseLeg,
  onLaunch,
  onReceived,
  pickFile,
  readFile,
  saveFile,
} from './storage/index.ts';
import { AppView, afterFrame, type Catalogue, type Template, type World } from './ui/index.ts';

interface Policy {
  createScriptURL(url: string): string;
  createHTML(text: string): string;
}
interface TrustedTypes {
  createPolicy(name: string, rules: Policy): Policy;
}

/** Marks our own addresses and markup as trusted; only what this program made itself goes through it. */
const rules: Policy = { createScriptURL: (url) => url, createHTML: (text) => text };
const { trustedTypes } = globalThis as { readonly trustedTypes?: TrustedTypes };
const policy = trustedTypes ? trustedTypes.createPolicy('swarfbook', rules) : rules;

const base = new URL('.', location.href).href;
const second = cacheLeg('swarfbook-notebooks', base);
const { locks } = navigator as { readonly locks?: LockManager };
const version: string = import.meta.env['VITE_VERSION'] ?? import.meta.env.MODE;
const build: string = import.meta.env['VITE_BUILD'] ?? import.meta.env.MODE;
const shelf = new DeviceShelf({
  legs: [databaseLeg('swarfbook'), ...(second ? [second] : [])],
  now: Date.now,
  program: build,
  quiet: () => painted().then(() => new Promise((resolve) => setTimeout(resolve, 1000))),
  // Out of sight the page may end at any moment, and nobody waits for it.
  pause: () => new Promise((resolve) => (document.hidden ? resolve() : setTimeout(resolve))),
  locks,
  channel: 'BroadcastChannel' in globalThis ? new BroadcastChannel(`swarfbook ${base}`) : undefined,
});
const installation = new ProgramOnDevice();

const sheets = import.meta.glob<string>('/sheets/*.json', { query: '?raw', import: 'default' });
const templates: Template[] = EXAMPLES.flatMap(({ path, title, question }) => {
  const load = sheets[path];
  return load ? [{ key: path, title, question, load }] : [];
});

/** Settles when the page has been painted once more, or after a while where nothing is painted (a tab in the background). */
const painted = (): Promise<void> => new Promise(afterFrame);

/** The texts of the functions are long: values are painted before they are read. */
async function loadCatalogue(): Promise<Catalogue> {
  await painted();
  const [{ BUILTINS, DEFINITIONS }, { MATERIALS, SOURCES }] = await Promise.all([
    import('./catalogue.ts'),
    import('./functions/index.ts'),
  ]);
  return {
    domain: DEFINITIONS,
    builtins: BUILTINS,
    sources: new Map([...SOURCES].map(([key, source]) => [key, source.text])),
    materials: MATERIALS.flatMap(({ group, names }) => (group === undefined ? [] : (names[0] ?? []))),
  };
}

function startWorker<To, From>(
  url: string,
  receive: (message: From) => void,
  failed: (words: string) => void,
): { post(message: To): void; terminate(): void } {
  const worker = new Worker(policy.createScriptURL(url), { type: 'module' });
  worker.addEventListener('message', (event: MessageEvent<From>) => receive(event.data));
  worker.addEventListener('error', (event) => failed(event.message || 'it could not be started'));
  return { post: (message) => worker.postMessage(message), terminate: () => worker.terminate() };
}

const world: World = {
  shelf,
  installation,
  version,
  build,
  templates,
  files: { save: saveFile, pick: pickFile, read: readFile, onLaunch, onReceived },
  clock: {
    now: Date.now,
    newId: () =>
      crypto
        .getRandomValues(new Uint32Array(4))
        .reduce((id, part) => id + part.toString(36).padStart(7, '0'), 'n'),
  },
  handed: new HandedStates(base),
  loadCatalogue,
  trustedMarkup: (text) => policy.createHTML(text),
  startCalculator: (receive, failed) => startWorker<ToEngine, FromEngine>(workerUrl, receive, failed),
  startStudy: (receive, failed) => startWorker<ToStudy, FromStudy>(studyUrl, receive, failed),
};

try {
  const theme = localStorage.getItem('theme');
  if (theme === 'dark') document.documentElement.dataset['theme'] = theme;
} catch {
  // A window without storage begins with the light page.
}

const app = document.querySelector('swarf-book');
if (app instanceof AppView) app.world = world;
if (import.meta.env.PROD) void installation.start(policy.createScriptURL('./sw.js'));
