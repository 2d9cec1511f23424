/** The first leg: IndexedDB, written through to the disk. The one file that knows the key-value library. */

import { promisifyRequest, type UseStore } from 'idb-keyval';
import { Overtaken, isExpected, type Leg, type Write } from './leg.ts';

const STORE = 'values';
const RETRIES = 2;
/** A connection that is closed, that fails inside the browser, or that was closed by it under the transaction. */
const DEAD = ['InvalidStateError', 'UnknownError', 'AbortError'];

/** A store whose writes are durable and whose dead connection is opened again. */
export function strictStore(databaseName: string): UseStore {
  let opening: Promise<IDBDatabase> | undefined;
  const opened = (): Promise<IDBDatabase> => {
    if (opening) return opening;
    const request = indexedDB.open(databaseName);
    request.addEventListener('upgradeneeded', () => request.result.createObjectStore(STORE));
    opening = promisifyRequest(request);
    opening.then(
      (database) => {
        database.addEventListener('close', () => (opening = undefined));
        database.addEventListener('versionchange', () => {
          database.close();
          opening = undefined;
        });
      },
      () => (opening = undefined),
    );
    return opening;
  };
  const isDead = (reason: unknown): boolean => reason instanceof DOMException && DEAD.includes(reason.name);
  return async (mode, callback) => {
    for (let attempt = 0; ; attempt += 1) {
      try {
        const database = await opened();
        return await callback(database.transaction(STORE, mode, { durability: 'strict' }).objectStore(STORE));
      } catch (reason) {
        if (!isDead(reason)) throw reason;
        opening = undefined;
        if (attempt >= RETRIES) throw reason;
      }
    }
  };
}

const under = (prefix: string): IDBKeyRange => IDBKeyRange.bound(prefix, `${prefix}\uffff`);

export function databaseLeg(databaseName: string): Leg {
  const store = strictStore(databaseName);
  return {
    name: 'database',
    get: (key) => store('readonly', (values) => promisifyRequest<unknown>(values.get(key))),
    read: (prefix, choose = (keys) => keys) =>
      store('readonly', async (values) => {
        const range = under(prefix);
        const names = (await promisifyRequest(values.getAllKeys(range))).map(String);
        const chosen = choose(names);
        const found =
          chosen.length === names.length
            ? await promisifyRequest<unknown[]>(values.getAll(range))
            : await Promise.all(chosen.map((key) => promisifyRequest<unknown>(values.get(key))));
        return new Map(chosen.map((key, k): [string, unknown] => [key, found[k]]));
      }),
    keys: (prefix) =>
      store('readonly', async (values) =>
        (await promisifyRequest(values.getAllKeys(under(prefix)))).map(String),
      ),
    write: ({ put, remove = [], guard }: Write) =>
      store('readwrite', (values) => {
        const done = promisifyRequest(values.transaction);
        const carryOut = (): void => {
          for (const [key, value] of put) values.put(value, key);
          for (const key of remove) values.delete(key);
        };
        if (!guard) {
          carryOut();
          return done;
        }
        return new Promise<void>((resolve, reject) => {
          const request = values.get(guard.key);
          let overtaken: Overtaken | undefined;
          request.addEventListener('success', () => {
            if (isExpected(request.result, guard.anyOf)) return carryOut();
            overtaken = new Overtaken(request.result);
            values.transaction.abort();
          });
          done.then(
            () => resolve(),
            (reason: unknown) => reject(overtaken ?? reason ?? new Error('the write was aborted')),
          );
        });
      }),
  };
}
