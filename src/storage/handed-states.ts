/** States of notebooks that left this device or came to it: what both sides had in common when one comes back. */

/** So many states of one notebook are remembered. */
const MOST = 5;

export interface HandedState {
  /** Milliseconds since 1970. */
  readonly at: number;
  /** The notebook's file. */
  readonly text: string;
}

/** Kept beside the notebooks; a browser without this cache remembers nothing and says so by an empty list. */
export class HandedStates {
  readonly #folder: string;

  constructor(base: string) {
    this.#folder = new URL('handed-over/', base).href;
  }

  async #cache(): Promise<Cache | undefined> {
    const { caches } = globalThis as { readonly caches?: CacheStorage };
    return caches?.open('swarfbook-handed-over').catch(() => undefined);
  }

  #home(notebook: string): string {
    return `${this.#folder}${encodeURIComponent(notebook)}/`;
  }

  async #places(cache: Cache, notebook: string): Promise<readonly string[]> {
    const home = this.#home(notebook);
    const keys = await cache.keys();
    return keys
      .map(({ url }) => url)
      .filter((url) => url.startsWith(home))
      .sort((a, b) => Number(a.slice(home.length)) - Number(b.slice(home.length)));
  }

  /** Never rejects: a state that could not be kept only makes the next comparison poorer. */
  async remember(notebook: string, { at, text }: HandedState): Promise<void> {
    try {
      const cache = await this.#cache();
      if (!cache) return;
      const places = await this.#places(cache, notebook);
      for (const place of places) {
        const kept = await cache.match(place);
        if ((await kept?.text()) === text) await cache.delete(place);
      }
      await cache.put(`${this.#home(notebook)}${at}`, new Response(text));
      const now = await this.#places(cache, notebook);
      for (const place of now.slice(0, -MOST)) await cache.delete(place);
    } catch {
      // Full or refused: nothing is remembered.
    }
  }

  /** The last one first. */
  async of(notebook: string): Promise<readonly HandedState[]> {
    try {
      const cache = await this.#cache();
      if (!cache) return [];
      const states: HandedState[] = [];
      for (const place of await this.#places(cache, notebook)) {
        const kept = await cache.match(place);
        if (kept)
          states.unshift({ at: Number(place.slice(place.lastIndexOf('/') + 1)), text: await kept.text() });
      }
      return states;
    } catch {
      return [];
    }
  }
}
