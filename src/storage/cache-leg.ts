/** The second leg: Cache Storage, independent of the database; survives what makes a browser throw the database away. */

import type { Leg, Write } from './leg.ts';

const FOLDER = 'kept/';

/** Undefined where the browser offers no Cache Storage (an address that is neither https nor localhost). */
export function cacheLeg(cacheName: string, base: string): Leg | undefined {
  if (typeof caches === 'undefined') return undefined;
  const folder = new URL(FOLDER, base).href;
  const url = (key: string): string => folder + key.split('/').map(encodeURIComponent).join('/');
  const keyOf = (address: string): string =>
    address.slice(folder.length).split('/').map(decodeURIComponent).join('/');
  const keysIn = async (cache: Cache, prefix: string): Promise<string[]> =>
    (await cache.keys())
      .filter((request) => request.url.startsWith(folder))
      .map((request) => keyOf(request.url))
      .filter((key) => key.startsWith(prefix));
  const valueIn = async (cache: Cache, key: string): Promise<unknown> => {
    const response = await cache.match(url(key));
    try {
      return response && JSON.parse(await response.text());
    } catch {
      // A torn record is as good as none: the chain notices.
      return undefined;
    }
  };
  return {
    name: 'cache',
    get: async (key) => valueIn(await caches.open(cacheName), key),
    async read(prefix, choose = (keys) => keys) {
      const cache = await caches.open(cacheName);
      const found = new Map<string, unknown>();
      await Promise.all(
        choose(await keysIn(cache, prefix)).map(async (key) => {
          const value = await valueIn(cache, key);
          if (value !== undefined) found.set(key, value);
        }),
      );
      return found;
    },
    keys: async (prefix) => keysIn(await caches.open(cacheName), prefix),
    async write({ put, remove = [] }: Write) {
      const cache = await caches.open(cacheName);
      const headers = { 'content-type': 'application/json' };
      for (const [key, value] of put)
        await cache.put(url(key), new Response(JSON.stringify(value), { headers }));
      await Promise.all(remove.map((key) => cache.delete(url(key))));
    },
  };
}
