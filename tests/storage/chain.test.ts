/** The journal's chain: what is torn or missing is noticed, and the longest sound chain wins. */

import { expect, test } from 'vitest';
import { digest, entryAfter, longestChain, snapshotOf, type Entry } from '../../src/storage/index.ts';

const chainOf = (count: number): Entry[] => {
  const entries: Entry[] = [];
  let before = 'start';
  for (let seq = 2; seq < count + 2; seq += 1) {
    const entry = entryAfter(before, seq, `edit ${seq}`);
    entries.push(entry);
    before = entry.hash;
  }
  return entries;
};
const first = snapshotOf(1, 'start', 'empty notebook');

test('3 a sound chain is used to its end', () => {
  const chain = longestChain([first], chainOf(5));
  expect(chain?.seq).toBe(6);
  expect(chain?.damaged).toBe(false);
  expect(chain?.entries.map((entry) => entry.body)).toEqual([2, 3, 4, 5, 6].map((seq) => `edit ${seq}`));
});

test('3 what follows a missing entry is not used, and the damage is told', () => {
  const chain = longestChain(
    [first],
    chainOf(5).filter((entry) => entry.seq !== 4),
  );
  expect(chain?.seq).toBe(3);
  expect(chain?.damaged).toBe(true);
});

test('3 an entry whose text was torn is not used', () => {
  const entries = chainOf(3).map((entry) => (entry.seq === 3 ? { ...entry, body: 'edi' } : entry));
  expect(longestChain([first], entries)?.seq).toBe(2);
});

test('4 a torn snapshot falls back to the older one and the entries since then', () => {
  const entries = chainOf(4);
  const last = entries.at(-1);
  const torn = { ...snapshotOf(5, last?.hash ?? '', 'whole notebook'), body: 'whole note' };
  const chain = longestChain([first, torn], entries);
  expect(chain?.snapshot.seq).toBe(1);
  expect(chain?.seq).toBe(5);
  expect(chain?.damaged).toBe(true);
});

test('4 of two sound snapshots the newer one is opened', () => {
  const entries = chainOf(4);
  const at = entries.find((entry) => entry.seq === 3);
  const chain = longestChain([first, snapshotOf(3, at?.hash ?? '', 'later')], entries);
  expect(chain?.snapshot.seq).toBe(3);
  expect(chain?.entries).toHaveLength(2);
});

test('without a sound snapshot there is nothing to open', () => {
  expect(longestChain([{ ...first, body: 'torn' }], chainOf(2))).toBeUndefined();
});

test('3 the digest tells texts apart that differ in one character, at any place', () => {
  const text = 'feed per tooth 0.12 mm, cutting speed 260 m/min'.repeat(20);
  const seen = new Set([digest(text)]);
  for (let k = 0; k < text.length; k += 1) seen.add(digest(`${text.slice(0, k)}~${text.slice(k + 1)}`));
  const changed = [...text].filter((letter) => letter !== '~').length;
  expect(seen.size).toBe(changed + 1);
});
