/** The notebook's lists of records: one change carried out, and the changes from one state to another. */

import type { PartChange } from './change.ts';
import { isSame } from './is-same.ts';
import { PART_NAMES } from './parts.ts';
import type { AnyPart, PartName, Parts } from './parts.ts';

/** The lists with one of them replaced; empty ones are left out, undefined where none is left. */
export function withPartList(
  parts: Parts | undefined,
  part: PartName,
  list: readonly AnyPart[],
): Parts | undefined {
  const entries = PART_NAMES.flatMap((name): [string, readonly AnyPart[]][] => {
    const records = name === part ? list : (parts?.[name] ?? []);
    return records.length === 0
      ? []
      : [[name, Object.isFrozen(records) ? records : Object.freeze([...records])]];
  });
  return partsFrom(entries, parts?.kept);
}

/** Lists by name with what is kept beside them; undefined where there is nothing. */
export function partsFrom(
  lists: readonly (readonly [string, readonly AnyPart[]])[],
  kept: Parts['kept'],
): Parts | undefined {
  if (lists.length === 0 && !kept) return undefined;
  return Object.freeze({ ...Object.fromEntries(lists), ...(kept && { kept }) });
}

const lengths = new WeakMap<AnyPart, number>();

/** About how many characters the lists take in a file; each record is measured once. */
export function partsLength(parts: Parts | undefined): number {
  let sum = 0;
  for (const name of PART_NAMES) {
    for (const record of parts?.[name] ?? []) {
      let length = lengths.get(record);
      if (length === undefined) {
        length = JSON.stringify(record).length;
        lengths.set(record, length);
      }
      sum += length;
    }
  }
  return sum;
}

/** The lists after one change. Throws where the record to replace or remove is not there. */
export function withPartChange(parts: Parts | undefined, change: PartChange): Parts | undefined {
  const { part, index, from, to } = change;
  const list: readonly AnyPart[] = parts?.[part] ?? [];
  if (!from) return to ? withPartList(parts, part, list.toSpliced(index, 0, to)) : parts;
  const at = list.findIndex(({ id }) => id === from.id);
  if (at < 0) throw new RangeError(`a change names ${from.id} in ${part}, which is not there`);
  return withPartList(parts, part, to ? list.with(at, to) : list.toSpliced(at, 1));
}

/** The changes from one state of the lists to another; records keep the order in which they were made. */
export function partChanges(before: Parts | undefined, after: Parts | undefined): readonly PartChange[] {
  if (before === after) return [];
  const changes: PartChange[] = [];
  for (const part of PART_NAMES) {
    const was: readonly AnyPart[] = before?.[part] ?? [];
    const is: readonly AnyPart[] = after?.[part] ?? [];
    if (was === is) continue;
    const wanted = new Map(is.map((record, index) => [record.id, { record, index }]));
    const stay: string[] = [];
    for (const record of was) {
      const next = wanted.get(record.id);
      if (!next) changes.push({ type: 'part', part, index: stay.length, from: record });
      else stay.push(record.id);
    }
    const order = is.filter(({ id }) => stay.includes(id)).map(({ id }) => id);
    const moved = new Set(stay.filter((id, place) => order[place] !== id));
    const old = new Map(was.map((record) => [record.id, record]));
    for (const id of moved) {
      const record = old.get(id);
      if (record) changes.push({ type: 'part', part, index: stay.indexOf(id), from: record });
      stay.splice(stay.indexOf(id), 1);
    }
    for (const [index, record] of is.entries()) {
      const from = moved.has(record.id) ? undefined : old.get(record.id);
      if (!from) changes.push({ type: 'part', part, index, to: record });
      else if (from !== record && !isSame(from, record)) {
        changes.push({ type: 'part', part, index, from, to: record });
      }
    }
  }
  return changes;
}
