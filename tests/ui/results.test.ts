import { expect, test } from 'vitest';
import { packAddress } from '../../src/calculation/index.ts';
import type { CellResult } from '../../src/calculation/index.ts';
import type { ResultsMessage } from '../../src/ui/calculation-client.ts';
import { Results } from '../../src/ui/results.ts';

const number = (value: number): CellResult => ({ value, kind: 'length', unit: 'mm', cautions: [] });
const caution = { type: 'caution', key: 'k', text: 'look' } as const;

type Told = readonly [row: number, column: number, result: CellResult | undefined];

const message = (
  told: readonly Told[],
  numbers: readonly (readonly [row: number, column: number, value: number])[] = [],
  complete = false,
): ResultsMessage => ({
  type: 'results',
  revision: 1,
  complete,
  worksheets: ['w'],
  numbers: {
    addresses: Uint32Array.from(numbers, ([row, column]) => packAddress(0, row, column)),
    values: Float64Array.from(numbers, ([, , value]) => value),
  },
  results: told.map(([row, column, result]) => ({
    address: { worksheet: 'w', row, column },
    ...(result && { result }),
  })),
});

const flagged = (results: Results): string[] => {
  const places: string[] = [];
  results.forEachFlagged((_, worksheet, row, column) => places.push(`${worksheet} ${row} ${column}`));
  return places;
};

test('a row stays the same object until one of its results changes', () => {
  const results = new Results();
  results.take(message([[0, 1, number(1)], [5, 1, number(2)], [5, 63, number(3)]], [], true)); // prettier-ignore
  const [first, sixth] = [results.row('w', 0), results.row('w', 5)];
  results.take(message([], [[5, 63, 4]]));
  expect(results.row('w', 0)).toBe(first);
  expect(results.row('w', 5)).not.toBe(sixth);
  expect(results.at('w', 5, 63)?.value).toBe(4);
  expect(results.at('w', 5, 1)).toBe(sixth?.get(1));
  expect(sixth?.get(63)?.value).toBe(3);
});

test('rows that were taken as they are stay so, whatever is taken in later', () => {
  const results = new Results();
  results.take(message([[0, 1, number(1)], [5, 1, number(2)]], [], true)); // prettier-ignore
  const rows = results.rowsAsTheyAre().get('w');
  results.take(message([[6, 1, number(3)]], [[5, 1, 4]]));
  results.take(message([[5, 1, undefined]]));
  results.take(message([[0, 1, number(9)]], [], true));
  expect(rows?.map(([row, cells]) => [row, cells.get(1)?.value])).toEqual([[0, 1], [5, 2]]); // prettier-ignore
});

test('what is flagged follows errors and cautions as they come and go', () => {
  const results = new Results();
  const error = {
    value: null,
    kind: 'error',
    unit: '',
    error: { code: '#UNIT!', message: '' },
    cautions: [],
  };
  results.take(
    message([[0, 0, number(1)], [1, 2, error], [1999, 63, { ...number(1), cautions: [caution] }]], [], true), // prettier-ignore
  );
  expect(flagged(results)).toEqual(['w 1 2', 'w 1999 63']);
  results.take(message([], [[1999, 63, 2]]));
  expect(flagged(results)).toEqual(['w 1 2', 'w 1999 63']);
  results.take(message([[1, 2, number(3)], [1999, 63, undefined], [0, 0, error]])); // prettier-ignore
  expect(flagged(results)).toEqual(['w 0 0']);
  results.take(message([[0, 0, number(1)]], [], true));
  expect(flagged(results)).toEqual([]);
});

test('a complete message leaves nothing of what was known before', () => {
  const results = new Results();
  results.begin(new Map([['w', new Map([['B3', number(7)]])]]), () => true);
  expect(results.fromLastTime).toBe(true);
  expect(results.at('w', 2, 1)?.value).toBe(7);
  results.take(message([[0, 0, number(1)]], [], true));
  expect(results.fromLastTime).toBe(false);
  expect(results.at('w', 2, 1)).toBeUndefined();
});

test('a complete answer in pieces takes the place of what was known with its last piece', () => {
  const results = new Results();
  results.take(message([[0, 0, number(1)], [9, 9, number(1)]], [], true)); // prettier-ignore
  results.take({ ...message([[0, 0, number(2)]], [], true), more: true });
  expect(results.at('w', 0, 0)?.value).toBe(1);
  expect(results.at('w', 9, 9)?.value).toBe(1);
  results.take(message([[1, 0, number(3)]], [], true));
  expect(results.at('w', 0, 0)?.value).toBe(2);
  expect(results.at('w', 1, 0)?.value).toBe(3);
  expect(results.at('w', 9, 9)).toBeUndefined();
});

test('pieces of an answer that was broken off do not come into the next one', () => {
  const results = new Results();
  results.take({ ...message([[5, 5, number(2)]], [], true), revision: 1, more: true });
  results.take({ ...message([[0, 0, number(3)]], [], true), revision: 2 });
  expect(results.at('w', 0, 0)?.value).toBe(3);
  expect(results.at('w', 5, 5)).toBeUndefined();
});
