/** Pulling a block on by its handle: which way, how far, and that it is one step. */

import { expect, test } from 'vitest';
import { apply, cellAt, emptyNotebook, enter, isRefusal } from '../../src/document/index.ts';
import { fillTo, pulledBlock } from '../../src/ui/line-editing.ts';
import { Session } from '../../src/ui/session.ts';
import type { World } from '../../src/ui/ports.ts';

/** A session on a world that computes nothing and keeps everything. */
function session(typed: readonly (readonly string[])[]): Session {
  const start = emptyNotebook({ id: 'n', worksheetTitle: 'Feeds' });
  const answer = enter(start, { worksheet: 'w1', row: 3, column: 2, typed });
  if (isRefusal(answer)) throw new Error(answer.message);
  const world = {
    startCalculator: () => ({ post: () => undefined, terminate: () => undefined }),
    loadCatalogue: () => new Promise(() => undefined),
    clock: { now: () => 0, newId: () => 'x' },
    shelf: { append: () => Promise.resolve() },
  } as unknown as World;
  return new Session(world, { notebook: apply(start, answer.changes) });
}

const C4_D5 = { row: 3, column: 2, rows: 2, columns: 2 };

test('the handle leads the way that is furthest, over each edge of the block, and nowhere within it', () => {
  expect(pulledBlock(C4_D5, 6, 3)).toEqual({ direction: 'down', block: { ...C4_D5, rows: 4 } });
  expect(pulledBlock(C4_D5, 4, 6)).toEqual({ direction: 'right', block: { ...C4_D5, columns: 5 } });
  expect(pulledBlock(C4_D5, 0, 1)).toEqual({ direction: 'up', block: { ...C4_D5, row: 0, rows: 5 } });
  expect(pulledBlock(C4_D5, 2, 0)).toEqual({ direction: 'left', block: { ...C4_D5, column: 0, columns: 4 } });
  expect(pulledBlock(C4_D5, 3, 2)).toBeUndefined();
  expect(pulledBlock(C4_D5, 4, 3)).toBeUndefined();
});

test('pulled up the first row goes on, pulled to the left the first column, selected and undone in one step', () => {
  const open = session([
    ['1 mm', '=C4*2'],
    ['5 mm', '=C5*3'],
  ]);
  const content = (row: number, column: number): string | undefined =>
    cellAt(open.worksheet, row, column)?.content;
  const up = pulledBlock(C4_D5, 1, 3);
  if (!up) throw new Error('nowhere');
  fillTo(open, C4_D5, up);
  expect([content(1, 2), content(1, 3), content(2, 3)]).toEqual(['1 mm', '=C2*2', '=C3*2']);
  expect([content(3, 3), content(4, 3)]).toEqual(['=C4*2', '=C5*3']);
  expect(open.selection).toMatchObject({ row: 1, column: 2, toRow: 4, toColumn: 3 });
  open.undo();
  expect(content(1, 3)).toBeUndefined();
  expect(content(2, 2)).toBeUndefined();
  const D4 = { row: 3, column: 3, rows: 1, columns: 1 };
  const left = pulledBlock(D4, 3, 1);
  if (!left) throw new Error('nowhere');
  fillTo(open, D4, left);
  expect([content(3, 1), content(3, 2)]).toEqual(['=A4*2', '=B4*2']);
  open.undo();
  expect([content(3, 1), content(3, 2)]).toEqual([undefined, '1 mm']);
});
