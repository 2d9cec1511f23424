/** Where rows and columns go when some are inserted, deleted or moved: intervals count from 0. */

/** First and last place, both included. */
export interface Interval {
  readonly first: number;
  readonly last: number;
}

export type Movement =
  | { readonly type: 'insert'; readonly at: number; readonly count: number }
  | { readonly type: 'delete'; readonly at: number; readonly count: number }
  /** `to` is the place before which they come to stand, counted before the move. */
  | { readonly type: 'move'; readonly at: number; readonly count: number; readonly to: number };

/** Where an interval goes; undefined where all of it is deleted. A range grows with what is put between its ends. */
export function movedInterval({ first, last }: Interval, movement: Movement): Interval | undefined {
  const { at, count } = movement;
  const end = at + count;
  if (movement.type === 'insert') {
    return { first: first >= at ? first + count : first, last: last >= at ? last + count : last };
  }
  if (movement.type === 'move') {
    const { to } = movement;
    if (to >= at && to <= end) return { first, last };
    if (first >= at && last < end) {
      const by = to > at ? to - end : to - at;
      return { first: first + by, last: last + by };
    }
    if (first <= at && last >= end - 1 && to >= first && to <= last + 1) return { first, last };
  }
  const before = (place: number): number => Math.min(count, Math.max(0, place - at));
  const left = first - before(first);
  const right = last - before(last + 1);
  if (left > right) return undefined;
  if (movement.type === 'delete') return { first: left, last: right };
  const to = movement.to > at ? movement.to - count : movement.to;
  return movedInterval({ first: left, last: right }, { type: 'insert', at: to, count });
}

/** A list of places after the movement: new ones undefined, deleted ones left out. */
export function movedList<T>(list: readonly (T | undefined)[], movement: Movement): (T | undefined)[] {
  const { at, count } = movement;
  const all: (T | undefined)[] = [...list];
  const reach = movement.type === 'move' ? Math.max(at + count, movement.to) : at;
  if (movement.type === 'insert' && all.length <= at) return all;
  while (all.length < reach) all.push(undefined);
  if (movement.type === 'insert') {
    return [...all.slice(0, at), ...Array.from({ length: count }, () => undefined), ...all.slice(at)];
  }
  const taken = all.slice(at, at + count);
  const left = [...all.slice(0, at), ...all.slice(at + count)];
  if (movement.type === 'delete') return left;
  const to = movement.to > at ? movement.to - count : movement.to;
  return [...left.slice(0, to), ...taken, ...left.slice(to)];
}
