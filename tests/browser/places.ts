/** Runs inside the page: the two places where a notebook is kept, held against each other. */

/** Keys of records of notebooks that one place has otherwise than the other or not at all; last results are in the first alone. Stands alone, because its text is sent to the page. */
export async function unlike(): Promise<string[]> {
  const answer = <Value>(request: IDBRequest<Value>): Promise<Value> =>
    new Promise((resolve, reject) => {
      request.addEventListener('success', () => resolve(request.result));
      request.addEventListener('error', () => reject(request.error ?? new Error('the database refused')));
    });
  // The same order of the properties in both.
  const plain = (record: unknown): string =>
    JSON.stringify(Object.entries(record ?? {}).sort(([a], [b]) => (a < b ? -1 : 1)));
  const database = await answer(indexedDB.open('swarfbook'));
  const values = database.transaction('values').objectStore('values');
  const [keys, records] = await Promise.all([answer(values.getAllKeys()), answer(values.getAll())]);
  database.close();
  const first = new Map(keys.map((key, k) => [String(key), plain(records[k])]));
  const cache = await caches.open('swarfbook-notebooks');
  const second = new Map<string, string>();
  for (const { url } of await cache.keys()) {
    const key = decodeURIComponent(url.slice(url.indexOf('/kept/') + '/kept/'.length));
    second.set(key, plain(await (await cache.match(url))?.json()));
  }
  return [...new Set([...first.keys(), ...second.keys()])].filter(
    (key) => !key.endsWith('/results') && first.get(key) !== second.get(key),
  );
}
