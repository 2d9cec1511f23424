/** Runs inside the page: spoils the newest record of one sort, by cutting off its end, as a torn write would, or by another digit in a length, which only its hash tells. */

export interface Spoiling {
  /** "snap" for snapshots, "j" for entries of the journal. */
  readonly part: 'snap' | 'j';
  readonly places: readonly ('database' | 'cache')[];
  readonly how: 'cut' | 'other digit';
}

/** Gives for each place how many records of that sort it has. Stands alone, because its text is sent to the page. */
export async function spoil({ part, places, how }: Spoiling): Promise<number[]> {
  interface Kept {
    readonly body: string;
  }
  const spoilt = (record: Kept): Kept => {
    const body = how === 'cut' ? record.body.slice(0, -5) : record.body.replace(/\d(?= mm)/, '7');
    if (body === record.body) throw new Error('nothing was spoiled');
    return { ...record, body };
  };
  const answer = <Value>(request: IDBRequest<Value>): Promise<Value> =>
    new Promise((resolve, reject) => {
      request.addEventListener('success', () => resolve(request.result));
      request.addEventListener('error', () => reject(request.error ?? new Error('the database refused')));
    });
  const counts: number[] = [];
  for (const place of places) {
    if (place === 'database') {
      const database = await answer(indexedDB.open('swarfbook'));
      const values = database
        .transaction('values', 'readwrite', { durability: 'strict' })
        .objectStore('values');
      const keys = (await answer(values.getAllKeys())).map(String).filter((key) => key.includes(`/${part}/`));
      const newest = keys.sort().at(-1) ?? '';
      await answer(values.put(spoilt((await answer(values.get(newest))) as Kept), newest));
      database.close();
      counts.push(keys.length);
    } else {
      const cache = await caches.open('swarfbook-notebooks');
      const urls = (await cache.keys()).map(({ url }) => url).filter((url) => url.includes(`/${part}/`));
      const newest = urls.sort().at(-1) ?? '';
      const record = (await (await cache.match(newest))?.json()) as Kept;
      await cache.put(newest, new Response(JSON.stringify(spoilt(record))));
      counts.push(urls.length);
    }
  }
  return counts;
}
