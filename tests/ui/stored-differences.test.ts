/** What counts as computed otherwise: more than 1e-9 relative, another text, error, unit or kind; not what was never stored. */

import { expect, test } from 'vitest';
import type { CellResult } from '../../src/calculation/index.ts';
import { apply, emptyNotebook, enter, isRefusal } from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import type { StoredResult } from '../../src/exchange/index.ts';
import { Results, type KnownResult } from '../../src/ui/results.ts';
import { storedDifferences, type StoredDifferences } from '../../src/ui/stored-differences.ts';

/** A notebook with formulas in A1 to A4. */
const notebook = ['=1', '=2', '=3', '=4'].reduce<Notebook>(
  (before, typed, row) => {
    const answer = enter(before, { worksheet: 'w1', row, column: 0, typed });
    if (isRefusal(answer)) throw new Error(answer.message);
    return apply(before, answer.changes);
  },
  emptyNotebook({ id: 'n1', title: 'Trial' }),
);

const length = (value: CellResult['value'], more: Partial<KnownResult> = {}): KnownResult => ({
  value,
  kind: 'length',
  unit: 'mm',
  cautions: [],
  ...more,
});

function differences(
  stored: Readonly<Record<string, StoredResult>>,
  now: Readonly<Record<number, KnownResult>>,
  exact = true,
): StoredDifferences | undefined {
  const results = new Results();
  results.take({
    type: 'results',
    revision: 1,
    worksheets: ['w1'],
    numbers: { addresses: new Uint32Array(), values: new Float64Array() },
    results: Object.entries(now).map(([row, result]) => ({
      address: { worksheet: 'w1', row: Number(row), column: 0 },
      result,
    })),
    complete: true,
  });
  const kept = { results: new Map([['w1', new Map(Object.entries(stored))]]), program: '1', exact };
  return storedDifferences(kept, results, notebook);
}

test('8 equal within 1 part in 10^9 is no difference, more is one', () => {
  expect(differences({ A1: length(0.01) }, { 0: length(0.01 * (1 + 0.9e-9)) })).toBeUndefined();
  expect(differences({ A1: length(0.01) }, { 0: length(0.01 * (1 + 1.2e-9)) })?.list).toHaveLength(1);
  expect(differences({ A1: length(0) }, { 0: length(0) })).toBeUndefined();
  expect(differences({ A1: length(0) }, { 0: length(1e-300) })?.list).toHaveLength(1);
});

test('8 another unit, kind, text or error is a difference', () => {
  const error = { code: '#NUM!', message: 'too deep' };
  for (const now of [
    length(0.01, { unit: 'in' }),
    length(0.01, { kind: 'plain' }),
    length('deep'),
    length(null, { kind: 'error', error }),
  ])
    expect(differences({ A1: length(0.01) }, { 0: now })?.list).toHaveLength(1);
  const other = { ...error, message: 'other words' };
  expect(
    differences(
      { A1: length(null, { kind: 'error', error }) },
      { 0: length(null, { kind: 'error', error: other }) },
    ),
  ).toBeUndefined();
});

test('8 a formula without a stored result and a stored result without a formula are told', () => {
  const list = differences({ A1: length(1), A9: length(2) }, { 0: length(1), 1: length(3) })?.list;
  expect(list?.map(({ row, stored, now }) => [row, stored?.value, now?.value])).toEqual([
    [8, 2, undefined],
    [1, undefined, 3],
  ]);
});

test('8 further values of a formula count where the file has some of them', () => {
  const origin = { worksheet: 'w1', row: 0, column: 0 };
  const now = { 0: length(1), 5: length(2, { origin }), 6: length(3, { origin }) };
  expect(differences({ A1: length(1) }, now)).toBeUndefined();
  expect(differences({ A1: length(1), A6: length(2) }, now)?.list.map((each) => each.row)).toEqual([6]);
});

test('8 results of an earlier state are no measure', () => {
  expect(differences({ A1: length(1) }, { 0: length(2) }, false)).toBeUndefined();
});
