/** The program itself on this device: service worker, readiness without network, waiting versions. */

export type Readiness = 'insecure' | 'unsupported' | 'loading' | 'ready';

const HOUR = 3_600_000;

/** Settles when a worker is installed, or is given up. */
const settled = (worker: ServiceWorker | null | undefined): Promise<void> =>
  new Promise((resolve) => {
    const look = (): void => {
      if (worker?.state !== 'installing') resolve();
    };
    worker?.addEventListener('statechange', look);
    look();
  });

export class ProgramOnDevice {
  readiness: Readiness = 'loading';
  updateWaiting = false;
  /** Whether the browser has promised to keep what is stored; undefined while it has not been asked. */
  persisted: boolean | undefined;
  #registration: ServiceWorkerRegistration | undefined;
  #accepting: (() => Promise<void>) | undefined;
  readonly #listeners = new Set<() => void>();

  onChange(changed: () => void): void {
    this.#listeners.add(changed);
  }

  /** `url` is already trusted where the browser asks for it. */
  async start(url: string): Promise<void> {
    if (!isSecureContext) return this.#set('insecure');
    if (!('serviceWorker' in navigator)) return this.#set('unsupported');
    try {
      const registration = await navigator.serviceWorker.register(url);
      this.#registration = registration;
      registration.addEventListener('updatefound', () => this.#watch(registration.installing));
      this.#watch(registration.installing);
      if (registration.waiting && registration.active) this.#waiting();
      navigator.serviceWorker.addEventListener('controllerchange', () => void this.#changedHands());
      document.addEventListener('visibilitychange', () => {
        if (document.visibilityState === 'visible') void this.checkForUpdate();
      });
      setInterval(() => void this.checkForUpdate(), HOUR);
      await navigator.serviceWorker.ready;
      await this.#lookForReadiness();
    } catch {
      this.#set('unsupported');
    }
  }

  /** Asks the browser to keep what is stored even when space is short; from a gesture of the user. */
  async askToKeep(): Promise<void> {
    if (!isSecureContext) return;
    const { storage } = navigator;
    this.persisted = (await storage?.persisted?.()) || (await storage?.persist?.()) || false;
    this.#tell();
  }

  /** Settles when a newer version, if there is one, lies ready; false where the place it comes from gave no answer. */
  async checkForUpdate(): Promise<boolean> {
    const registration = this.#registration;
    const asked = navigator.onLine
      ? await registration?.update().then(
          () => true,
          () => false,
        )
      : false;
    await settled(registration?.installing);
    await this.#lookForReadiness();
    return asked ?? false;
  }

  /** `finished` settles when the open edit is written; then the page starts again with the new version. */
  async acceptUpdate(finished: () => Promise<void>): Promise<void> {
    this.#accepting = finished;
    this.#registration?.waiting?.postMessage({ type: 'SKIP_WAITING' });
  }

  async #changedHands(): Promise<void> {
    const finished = this.#accepting;
    if (!finished) return;
    await finished();
    location.reload();
  }

  #watch(worker: ServiceWorker | null | undefined): void {
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' && this.#registration?.active && this.#registration.active !== worker)
        this.#waiting();
      if (worker.state === 'activated') void this.#lookForReadiness();
    });
  }

  #waiting(): void {
    this.updateWaiting = true;
    this.#tell();
  }

  /** Ready when a worker is active and everything this page has loaded lies in its cache. */
  async #lookForReadiness(): Promise<void> {
    const base = new URL('.', location.href).href;
    const loaded = performance
      .getEntriesByType('resource')
      .map((each) => each.name.replace(/[?#].*$/, ''))
      .filter(
        (name) => name.startsWith(base) && /\.(?:js|css|woff2|svg)$/.test(name) && !name.endsWith('/sw.js'),
      );
    const wanted = [new URL('index.html', base).href, ...new Set(loaded)];
    const kept = await Promise.all(wanted.map((each) => caches.match(each, { ignoreSearch: true })));
    this.#set(this.#registration?.active && kept.every(Boolean) ? 'ready' : 'loading');
  }

  #set(readiness: Readiness): void {
    this.readiness = readiness;
    this.#tell();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}
