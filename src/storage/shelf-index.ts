/** Which notebooks are on this device: one small record each, on every leg; removed ones are kept aside. */

import type { Leg } from './leg.ts';
import { recordKey } from './notebook-records.ts';

const DAY = 86_400_000;

/** How long what was removed can be brought back, at least. */
export const KEPT_ASIDE = 30 * DAY;

export interface KeptItem {
  readonly id: string;
  readonly title: string;
  /** Milliseconds since 1970, like the others. */
  readonly changedAt: number;
  readonly madeAt?: number;
  /** Of the last file copy. */
  readonly copiedAt?: number;
  readonly removedAt?: number;
}

const isTime = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

/** The record as far as it is one: a foreign or torn one is as good as none. */
function readItem(key: string, value: unknown): KeptItem | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const { id, title, changedAt, madeAt, copiedAt, removedAt } = value as Record<string, unknown>;
  if (typeof id !== 'string' || key !== recordKey.meta(id) || typeof title !== 'string') return undefined;
  return {
    id,
    title,
    changedAt: isTime(changedAt) ? changedAt : 0,
    ...(isTime(madeAt) && { madeAt }),
    ...(isTime(copiedAt) && { copiedAt }),
    ...(isTime(removedAt) && { removedAt }),
  };
}

/** Latest of the times in it. */
const touchedAt = ({ changedAt, copiedAt = 0, removedAt = 0 }: KeptItem): number =>
  Math.max(changedAt, copiedAt, removedAt);

/** Every notebook that one of the legs knows; one whose own record is lost is listed without its title. */
export async function listItems(legs: readonly Leg[]): Promise<readonly KeptItem[]> {
  const found = new Map<string, KeptItem>();
  const heads = new Set<string>();
  let readable = 0;
  let trouble: unknown;
  for (const leg of legs) {
    try {
      // The keys are looked over once: a place with thousands of them takes its time.
      const items = await leg.read('', (keys) => {
        for (const key of keys)
          if (key.startsWith('doc/') && key.endsWith('/head'))
            heads.add(key.slice('doc/'.length, -'/head'.length));
        return keys.filter((key) => key.startsWith('meta/'));
      });
      for (const [key, value] of items) {
        const item = readItem(key, value);
        const known = item && found.get(item.id);
        if (item && (!known || touchedAt(known) < touchedAt(item))) found.set(item.id, item);
      }
      readable += 1;
    } catch (reason) {
      trouble = reason;
    }
  }
  if (readable === 0 && legs.length > 0) throw trouble;
  for (const id of heads)
    if (!found.has(id)) found.set(id, { id, title: 'Notebook whose title was lost', changedAt: 0 });
  return [...found.values()];
}

/** The record of one notebook: the latest that a leg has. */
export async function findItem(legs: readonly Leg[], id: string): Promise<KeptItem | undefined> {
  const key = recordKey.meta(id);
  const values = await Promise.all(legs.map((leg) => leg.get(key).catch(() => undefined)));
  return values
    .map((value) => readItem(key, value))
    .reduce((a, b) => (b && (!a || touchedAt(a) < touchedAt(b)) ? b : a), undefined);
}

/** Writes a notebook's record to every leg. */
export async function writeItem(legs: readonly Leg[], item: KeptItem): Promise<void> {
  for (const leg of legs) await leg.write({ put: new Map([[recordKey.meta(item.id), item]]) });
}

/** Removes a notebook with everything it has, for good. */
export async function eraseRecords(legs: readonly Leg[], id: string): Promise<void> {
  for (const leg of legs) {
    const remove = [...(await leg.keys(recordKey.all(id))), recordKey.meta(id)];
    await leg.write({ put: new Map(), remove });
  }
}
