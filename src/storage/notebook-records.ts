/** The records of one notebook on one leg: their keys, what was found, and what can be made of it. */

import { isRecord, longestChain } from './chain.ts';
import type { Chain, Entry, Snapshot } from './chain.ts';
import type { Leg } from './leg.ts';

const padded = (seq: number): string => String(seq).padStart(9, '0');

export const recordKey = {
  all: (id: string) => `doc/${id}/`,
  meta: (id: string) => `meta/${id}`,
  head: (id: string) => `doc/${id}/head`,
  results: (id: string) => `doc/${id}/results`,
  entries: (id: string) => `doc/${id}/j/`,
  entry: (id: string, seq: number) => `doc/${id}/j/${padded(seq)}`,
  snapshots: (id: string) => `doc/${id}/snap/`,
  snapshot: (id: string, seq: number) => `doc/${id}/snap/${padded(seq)}`,
};

export interface Head {
  readonly seq: number;
  readonly hash: string;
}

/** What one leg holds of a notebook. */
export interface Found {
  readonly snapshots: readonly Snapshot[];
  readonly entries: readonly Entry[];
  readonly head: Head | undefined;
  readonly results: unknown;
  /** Numbers of all its records, read or not. */
  readonly snapshotNumbers: readonly number[];
  readonly entryNumbers: readonly number[];
}

const NOTHING: Found = {
  snapshots: [],
  entries: [],
  head: undefined,
  results: undefined,
  snapshotNumbers: [],
  entryNumbers: [],
};

const numbersIn = (keys: readonly string[], prefix: string): number[] =>
  keys
    .filter((key) => key.startsWith(prefix))
    .map((key) => Number(key.slice(prefix.length)))
    .filter(Number.isInteger);

/** An entry under its number; what is no such record becomes a torn one, so that it is missed only where it is needed. */
function entryIn(key: string, value: unknown): Entry {
  const seq = Number(key.slice(key.lastIndexOf('/') + 1));
  return isRecord(value) && value.seq === seq ? (value as Entry) : { seq, before: '', hash: '', body: '' };
}

/** Nothing where the leg can not be read. Entries before the oldest snapshot are read only if all are wanted. */
export async function findRecords(leg: Leg, id: string, all: boolean): Promise<Found> {
  try {
    const ofEntries = recordKey.entries(id);
    let snapshotNumbers: readonly number[] = [];
    let entryNumbers: readonly number[] = [];
    const values = await leg.read(recordKey.all(id), (keys) => {
      snapshotNumbers = numbersIn(keys, recordKey.snapshots(id));
      entryNumbers = numbersIn(keys, ofEntries);
      const first = recordKey.entry(id, all ? 0 : Math.min(...snapshotNumbers, Number.MAX_SAFE_INTEGER));
      return keys.filter((key) => !key.startsWith(ofEntries) || snapshotNumbers.length === 0 || key >= first);
    });
    const under = (prefix: string): unknown[] =>
      [...values].filter(([key]) => key.startsWith(prefix)).map(([, value]) => value);
    return {
      snapshots: under(recordKey.snapshots(id)) as Snapshot[],
      entries: [...values]
        .filter(([key]) => key.startsWith(ofEntries))
        .map(([key, value]) => entryIn(key, value)),
      head: values.get(recordKey.head(id)) as Head | undefined,
      results: values.get(recordKey.results(id)),
      snapshotNumbers,
      entryNumbers,
    };
  } catch {
    return NOTHING;
  }
}

/** The longest chain of a leg without the snapshots that could not be read as notebooks. */
export const chainOf = ({ snapshots, entries }: Found, refused: ReadonlySet<string>): Chain | undefined =>
  longestChain(
    snapshots.filter((each) => !refused.has(each?.check)),
    entries,
  );
