/** The first leg: IndexedDB, written through to the disk. The one file that knows the key-value library. */

import { promisifyRequest, type UseStore } from 'idb-keyval';
import { Overtaken, type Leg, type Write } from './leg.ts';

const STORE = 'values';
const RETRIES = 2;

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
  const isDead = (reason: unknown): boolean =>
    reason instanceof DOMException && (reason.name === 'InvalidStateError' || reason.name === 'UnknownError');
  return async (mode, callback) => {
    for (let attempt = 0; ; attempt += 1) {
      try {
        const database = await opened();
        return await callback(database.transaction(STORE, mode, { durability: 'strict' }).objectStore(STORE));
      } catch (reason) {
        opening = undefined;
        if (attempt >= RETRIES || !isDead(reason)) throw reason;
      }
    }
  };
}

export function databaseLeg(databaseName: string): Leg {
  const store = strictStore(databaseName);
  return {
    name: 'database',
    read: (prefix) =>
      store('readonly', async (values) => {
        const range = IDBKeyRange.bound(prefix, `${prefix}\uffff`);
        const [keys, found] = await Promise.all([
          promisifyRequest(values.getAllKeys(range)),
          promisifyRequest(values.getAll(range)),
        ]);
        return new Map(keys.map((key, k): [string, unknown] => [String(key), found[k]]));
      }),
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
          let overtaken = false;
          request.addEventListener('success', () => {
            overtaken = JSON.stringify(request.result) !== JSON.stringify(guard.value);
            if (overtaken) values.transaction.abort();
            else carryOut();
          });
          done.then(
            () => resolve(),
            (reason: unknown) =>
              reject(overtaken ? new Overtaken() : (reason ?? new Error('the write was aborted'))),
          );
        });
      }),
  };
}
