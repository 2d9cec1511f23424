import { expect, test } from 'vitest';
import type { ChangedResult, FromEngine } from '../../src/calculation/index.ts';
import { inPieces } from '../../src/engine/in-pieces.ts';

const answer = (count: number): FromEngine => ({
  type: 'results',
  revision: 7,
  complete: true,
  worksheets: ['w'],
  numbers: { addresses: Uint32Array.of(3), values: Float64Array.of(4) },
  results: Array.from({ length: count }, (_, row): ChangedResult => ({
    address: { worksheet: 'w', row, column: 0 },
  })),
});

test('a short answer stays one message', () => {
  const message = answer(2_000);
  expect(inPieces(message)).toEqual([message]);
});

test('the pieces of a long answer hold every result once and in order, and the numbers once', () => {
  for (const count of [2_001, 4_000, 20_011]) {
    const pieces = inPieces(answer(count)).filter((piece) => piece.type === 'results');
    expect(pieces.length).toBe(Math.ceil(count / 2_000));
    expect(pieces.flatMap(({ results }) => results.map(({ address }) => address.row))).toEqual(
      Array.from({ length: count }, (_, row) => row),
    );
    expect(pieces.flatMap(({ numbers }) => [...numbers.values])).toEqual([4]);
    expect(pieces.map(({ more }) => more ?? false)).toEqual(pieces.map((_, k) => k < pieces.length - 1));
    // A column that was handed over can not be handed over again.
    expect(
      new Set(pieces.flatMap(({ numbers }) => [numbers.addresses.buffer, numbers.values.buffer])).size,
    ).toBe(2 * pieces.length);
    expect(new Set(pieces.map(({ revision, complete }) => `${revision} ${complete}`))).toEqual(
      new Set(['7 true']),
    );
  }
});

test('what is no answer with results is left as it is', () => {
  const ready: FromEngine = { type: 'ready', build: 'b' };
  expect(inPieces(ready)).toEqual([ready]);
});
