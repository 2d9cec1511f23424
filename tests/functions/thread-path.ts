/** Reads the blocks of a thread milling program and moves along them: an own reading of ISO 6983-1, in millimetres. */

export interface Place {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export interface Move {
  readonly rapid: boolean;
  /** 1 against the clock, -1 with it, 0 straight. */
  readonly turn: -1 | 0 | 1;
  readonly feed: number | undefined;
  /** From the first place to the last. */
  readonly places: readonly Place[];
}

export interface ReadProgram {
  readonly speed: number | undefined;
  readonly modes: readonly string[];
  readonly moves: readonly Move[];
}

const STEPS = 720;

const wordsOf = (block: string): Map<string, number[]> => {
  const words = new Map<string, number[]>();
  for (const [, letter = '', digits = ''] of block
    .replaceAll(/\([^)]*\)/g, '')
    .matchAll(/([A-Z])([-+]?\d*\.?\d+)/g))
    words.set(letter, [...(words.get(letter) ?? []), Number(digits)]);
  return words;
};

/** Places along an arc in the XY plane with Z running evenly; throws where the end does not lie on the circle. */
function arc(from: Place, to: Place, i: number, j: number, turn: -1 | 1): Place[] {
  const [cx, cy] = [from.x + i, from.y + j];
  const radius = Math.hypot(i, j);
  const endRadius = Math.hypot(to.x - cx, to.y - cy);
  if (Math.abs(radius - endRadius) > 2e-4)
    throw new Error(`the arc begins at radius ${radius} and ends at ${endRadius}`);
  const start = Math.atan2(from.y - cy, from.x - cx);
  let sweep = (Math.atan2(to.y - cy, to.x - cx) - start) * turn;
  while (sweep <= 1e-9) sweep += 2 * Math.PI;
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const share = step / STEPS;
    const angle = start + turn * sweep * share;
    return {
      x: cx + radius * Math.cos(angle),
      y: cy + radius * Math.sin(angle),
      z: from.z + (to.z - from.z) * share,
    };
  });
}

/** The moves of a program; throws on a block that it can not follow. */
export function readProgram(blocks: readonly string[]): ReadProgram {
  let place: Partial<Place> = {};
  let speed: number | undefined;
  let feed: number | undefined;
  const modes: string[] = [];
  const moves: Move[] = [];
  for (const block of blocks) {
    const words = wordsOf(block);
    if (words.size === 0) continue;
    speed = words.get('S')?.[0] ?? speed;
    feed = words.get('F')?.[0] ?? feed;
    const codes = words.get('G') ?? [];
    modes.push(...codes.filter((code) => code > 3).map((code) => `G${code}`));
    const motion = codes.find((code) => code <= 3);
    if (motion === undefined) continue;
    const target = {
      x: words.get('X')?.[0] ?? place.x,
      y: words.get('Y')?.[0] ?? place.y,
      z: words.get('Z')?.[0] ?? place.z,
    };
    const { x, y, z } = target;
    if (x === undefined || y === undefined || z === undefined) throw new Error(`no place after ${block}`);
    const to = { x, y, z };
    const from = { x: place.x ?? x, y: place.y ?? y, z: place.z ?? z };
    const turn = motion === 3 ? 1 : motion === 2 ? -1 : 0;
    if (motion !== 0 && feed === undefined) throw new Error(`no feed rate for ${block}`);
    moves.push({
      rapid: motion === 0,
      turn,
      feed: motion === 0 ? undefined : feed,
      places:
        turn === 0 ? [from, to] : arc(from, to, words.get('I')?.[0] ?? 0, words.get('J')?.[0] ?? 0, turn),
    });
    place = to;
  }
  return { speed, modes, moves };
}

/** Seconds along the moves at feed. */
export const secondsOf = ({ moves }: ReadProgram): number =>
  moves.reduce((total, { places, feed }) => {
    if (feed === undefined) return total;
    let length = 0;
    for (const [index, { x, y, z }] of places.entries()) {
      const before = places[index - 1];
      if (before) length += Math.hypot(x - before.x, y - before.y, z - before.z);
    }
    return total + (length / feed) * 60;
  }, 0);
