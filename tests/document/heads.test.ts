/** The first row and column kept in sight, and typing into many cells at once: one step each, and back again. */

import { expect, test } from 'vitest';
import {
  apply,
  cellAt,
  emptyNotebook,
  enterMany,
  isRefusal,
  isSame,
  setHeads,
  worksheetOf,
} from '../../src/document/index.ts';
import type { Change, Notebook, Refusal, Transaction } from '../../src/document/index.ts';
import { readNotebook, writeNotebook } from '../../src/exchange/index.ts';

const start = emptyNotebook({ id: 'n', worksheetTitle: 'Feeds' });
const possible = (answer: Transaction | Refusal): readonly Change[] => {
  if (isRefusal(answer)) throw new Error(answer.message);
  return answer.changes;
};
const back = (notebook: Notebook, changes: readonly Change[]): Notebook =>
  apply(
    notebook,
    changes.toReversed().map((change) => {
      const { from, to, ...rest } = change as Change & { from?: unknown; to?: unknown };
      return {
        ...rest,
        ...(to !== undefined && { from: to }),
        ...(from !== undefined && { to: from }),
      } as Change;
    }),
  );

test('heads are set one by one, travel in the file, and go without a trace', () => {
  const changes = possible(setHeads(start, { worksheet: 'w1', headRow: true }));
  const one = apply(start, changes);
  const two = apply(one, possible(setHeads(one, { worksheet: 'w1', headColumn: true })));
  expect(worksheetOf(two, 'w1')).toMatchObject({ headRow: true, headColumn: true });
  const read = readNotebook(writeNotebook(two));
  if (isRefusal(read)) throw new Error(read.message);
  expect(worksheetOf(read.notebook, 'w1')).toMatchObject({ headRow: true, headColumn: true });
  const none = apply(two, possible(setHeads(two, { worksheet: 'w1', headRow: false, headColumn: false })));
  expect('headRow' in worksheetOf(none, 'w1') || 'headColumn' in worksheetOf(none, 'w1')).toBe(false);
  expect(isSame(back(one, changes), start)).toBe(true);
});

test('many cells are typed into as one step, plain numbers take the unit of their place', () => {
  const place = (row: number, typed: string) => ({ worksheet: 'w1', row, column: 0, typed });
  const first = enterMany(start, [place(0, '1.5 mm'), place(1, '=A1*2'), place(700, 'far')], 'three');
  const made = apply(start, possible(first.transaction));
  expect(worksheetOf(made, 'w1').rowCount).toBe(701);
  const second = enterMany(made, [place(0, '2'), place(1, '=A1*('), place(700, '')], 'three more');
  const changed = apply(made, possible(second.transaction));
  expect(cellAt(worksheetOf(changed, 'w1'), 0, 0)?.content).toBe('2 mm');
  expect(cellAt(worksheetOf(changed, 'w1'), 1, 0)?.content).toBe('=A1*2');
  expect(cellAt(worksheetOf(changed, 'w1'), 700, 0)).toBeUndefined();
  expect(second.left).toEqual([
    { worksheet: 'w1', row: 1, column: 0, why: expect.stringContaining('could not be read') },
  ]);
});
