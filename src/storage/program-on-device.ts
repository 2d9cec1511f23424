/** The program itself on this device: service worker, readiness without network, waiting versions, the browser's promise to keep things. */

import { askForPromise, mayBeAsked, promisedBefore } from './keeping-promise.ts';
import { isUninstalledTablet, riskWords } from './storage-signs.ts';

export type Readiness = 'insecure' | 'unsupported' | 'loading' | 'ready';

const HOUR = 3_600_000;
/** The build's list of its own files, one of them. */
const LIST = 'kept-files.json';

export class ProgramOnDevice {
  readiness: Readiness = 'loading';
  updateWaiting = false;
  /** Whether the browser has promised to keep what is stored, now or at an earlier start; undefined while it has not been asked. */
  persisted: boolean | undefined;
  risk: string | undefined;
  #registration: ServiceWorkerRegistration | undefined;
  #reloading = false;
  #asked = false;
  #finished: (waiting: boolean) => Promise<boolean> = () => Promise.resolve(true);
  readonly #listeners = new Set<() => void>();

  onChange(changed: () => void): void {
    this.#listeners.add(changed);
  }

  beforeReload(finished: (waiting: boolean) => Promise<boolean>): void {
    this.#finished = finished;
  }

  /** `url` is already trusted where the browser asks for it. */
  async start(url: string): Promise<void> {
    void this.#lookForRisk();
    if (!isSecureContext) return this.#set('insecure');
    if (!('serviceWorker' in navigator)) return this.#set('unsupported');
    try {
      // Where nothing was in charge before, the first worker takes over without a new version.
      let before = navigator.serviceWorker.controller;
      navigator.serviceWorker.addEventListener('controllerchange', () => {
        if (before) void this.#reload(true);
        before = navigator.serviceWorker.controller;
      });
      const registration = await navigator.serviceWorker.register(url);
      this.#registration = registration;
      registration.addEventListener('updatefound', () => this.#watch(registration.installing));
      this.#watch(registration.installing);
      document.addEventListener('visibilitychange', () => {
        if (document.visibilityState === 'visible') void this.checkForUpdate();
      });
      setInterval(() => void this.checkForUpdate(), HOUR);
      await navigator.serviceWorker.ready;
      // A newer version is not asked for here: after every start the browser does so by itself.
      await this.#lookForReadiness();
    } catch {
      this.#set('unsupported');
    }
  }

  /** Asks the browser to keep what is stored even when space is short, once a start at most; from a gesture of the user. */
  async askToKeep(): Promise<void> {
    if (!isSecureContext || this.#asked || this.persisted || !mayBeAsked()) return;
    this.#asked = true;
    this.persisted = false;
    this.persisted = await askForPromise();
    await this.#lookForRisk();
  }

  async checkForUpdate(): Promise<boolean> {
    const registration = this.#registration;
    if (!registration) return false;
    const answered = await registration.update().then(
      () => true,
      () => false,
    );
    this.#watch(registration.installing);
    await installed(registration.installing);
    await this.#lookForReadiness();
    return answered;
  }

  /** The open edit is written first; then the waiting version takes over and the page starts again with it. */
  async acceptUpdate(): Promise<void> {
    if (!(await this.#finished(false))) return;
    const waiting = this.#registration?.waiting;
    if (waiting) waiting.postMessage({ type: 'SKIP_WAITING' });
    else await this.#reload(false);
  }

  /** Another version is in charge now, accepted here or in another tab: the page follows when its own edit is written. */
  async #reload(wait: boolean): Promise<void> {
    if (this.#reloading) return;
    this.#reloading = true;
    if (await this.#finished(wait)) location.reload();
    this.#reloading = false;
  }

  /** On a slow device the worker may be further on than the event that tells of it. */
  #watch(worker: ServiceWorker | null | undefined): void {
    const look = (): void => {
      const { active, waiting } = this.#registration ?? {};
      if (active && waiting) this.#waiting();
      if (worker?.state === 'activated') void this.#lookForReadiness();
    };
    worker?.addEventListener('statechange', look);
    look();
  }

  #waiting(): void {
    this.updateWaiting = true;
    this.#tell();
  }

  async #lookForRisk(): Promise<void> {
    if (isSecureContext) this.persisted = (await promisedBefore()) ?? this.persisted;
    const quota = (await navigator.storage?.estimate?.().catch(() => undefined))?.quota;
    this.risk = riskWords({
      quota,
      hasWorkers: !isSecureContext || 'serviceWorker' in navigator,
      onTablet: isUninstalledTablet(),
      persisted: this.persisted,
    });
    this.#tell();
  }

  /** Ready when a worker is active and every file of the build lies in its cache. */
  async #lookForReadiness(): Promise<void> {
    const complete = await isComplete(new URL('.', location.href).href).catch(() => false);
    this.#set(this.#registration?.active && complete ? 'ready' : 'loading');
  }

  #set(readiness: Readiness): void {
    this.readiness = readiness;
    this.#tell();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

/** Settles when the worker has everything it keeps, or could not get it. */
function installed(worker: ServiceWorker | null): Promise<void> {
  if (worker?.state !== 'installing') return Promise.resolve();
  return new Promise((resolve) => worker.addEventListener('statechange', () => resolve(), { once: true }));
}

async function isComplete(base: string): Promise<boolean> {
  const response = await caches.match(base + LIST, { ignoreSearch: true });
  const wanted: unknown = await response?.json();
  if (!Array.isArray(wanted) || wanted.length === 0) return false;
  const kept = new Set<string>();
  // Only where the worker keeps the program: looking over the notebooks too takes its time.
  for (const name of (await caches.keys()).filter((each) => each.includes('precache')))
    for (const { url } of await (await caches.open(name)).keys()) kept.add(url.replace(/[?#].*$/, ''));
  return wanted.every((file) => kept.has(base + String(file)));
}
