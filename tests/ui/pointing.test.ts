/** Pointing into a formula: where a reference may stand, ranges that grow, colours of what is meant. */

import { expect, test } from 'vitest';
import { apply, defineName, emptyNotebook, enter, isRefusal } from '../../src/document/index.ts';
import type { Notebook, Refusal, Transaction } from '../../src/document/index.ts';
import { pointAt, pointBy, pointTo, pointedAt } from '../../src/ui/pointing.ts';
import { referenceMarks } from '../../src/ui/reference-marks.ts';
import { Session } from '../../src/ui/session.ts';
import type { World } from '../../src/ui/ports.ts';

function after(before: Notebook, answer: Transaction | Refusal): Notebook {
  if (isRefusal(answer)) throw new Error(answer.message);
  return apply(before, answer.changes);
}

function notebook(): Notebook {
  const start = emptyNotebook({ id: 'n', worksheetTitle: 'Feeds' });
  const filled = after(
    start,
    enter(start, { worksheet: 'w1', row: 0, column: 0, typed: [['1 mm'], ['2 mm']] }),
  );
  const target = { row: 1, column: 1, rows: 2, columns: 1 };
  return after(filled, defineName(filled, { worksheet: 'w1', name: 'both', target }));
}

test('the same block has one colour, names count, other worksheets are known apart', () => {
  const marks = referenceMarks(notebook(), 'w1', '=A1+SUM(B2:B3)*both-$A$1+Feeds.A1+nobody');
  expect(marks.map(({ colour, block }) => [colour, block.row, block.column, block.rows])).toEqual([
    [0, 0, 0, 1],
    [1, 1, 1, 2],
    [1, 1, 1, 2],
    [0, 0, 0, 1],
    [0, 0, 0, 1],
  ]);
  expect(referenceMarks(notebook(), 'w1', 'A1')).toEqual([]);
  expect(referenceMarks(notebook(), 'w1', '=Nowhere.A1')).toEqual([]);
});

/** A session on a world that answers nothing: enough for typing. */
function typing(text: string, typedOver = true): Session {
  const world = {
    startCalculator: () => ({ post: () => undefined, terminate: () => undefined }),
    loadCatalogue: () => new Promise(() => undefined),
    clock: { now: () => 0, newId: () => 'x' },
  } as unknown as World;
  const session = new Session(world, { notebook: notebook() });
  session.select(4, 3);
  session.setDraft({ text, from: text.length, to: text.length, typedOver, where: 'cell' });
  return session;
}
const text = (session: Session): string => session.draft?.text ?? '';

test('a cell goes in behind =, an operator, a bracket and a separator, and nowhere else', () => {
  for (const [typed, wanted] of [
    ['=', '=B1'],
    ['=2*', '=2*B1'],
    ['=SUM(', '=SUM(B1'],
    ['=SUM(A1;', '=SUM(A1; B1'],
    ['=SUM(A1; ', '=SUM(A1; B1'],
    ['=A1', '=B1'],
  ] as const) {
    const session = typing(typed);
    expect(pointAt(session, 0, 1)).toBe(true);
    expect(text(session)).toBe(wanted);
  }
  for (const typed of ['=2', '="a"', '=A1+3 mm', '12', 'feed', '=(A1)'])
    expect(pointAt(typing(typed), 0, 1), typed).toBe(false);
});

test('pulled on a reference becomes a range, and a name where one means exactly that block', () => {
  const session = typing('=SUM(');
  pointAt(session, 2, 2);
  pointTo(session, 0, 1);
  expect(text(session)).toBe('=SUM(B1:C3');
  pointTo(session, 2, 2);
  expect(text(session)).toBe('=SUM(C3');
  pointAt(session, 1, 1);
  pointTo(session, 2, 1);
  expect(text(session)).toBe('=SUM(both');
  expect(pointedAt(session)).toMatchObject({ row: 1, toRow: 2 });
});

test('arrows start from the cell that is edited, with Shift they grow the range, and stop at the edges', () => {
  const session = typing('=');
  expect(pointBy(session, 'up', false)).toBe(true);
  expect(text(session)).toBe('=D4');
  pointBy(session, 'left', false);
  pointBy(session, 'left', true);
  pointBy(session, 'up', true);
  expect(text(session)).toBe('=B3:C4');
  for (let k = 0; k < 6; k += 1) pointBy(session, 'up', false);
  expect(text(session)).toBe('=C1');
});

test('arrows belong to the caret in a text that was opened, and behind a finished reference', () => {
  expect(pointBy(typing('=', false), 'up', false)).toBe(false);
  expect(pointBy(typing('=A1'), 'up', false)).toBe(false);
  expect(pointBy(typing('=2'), 'up', false)).toBe(false);
  expect(pointBy(typing('feed'), 'up', false)).toBe(false);
  const session = typing('=');
  pointBy(session, 'up', false);
  session.setDraft({ text: '=D4*', from: 4, to: 4, typedOver: true, where: 'cell' });
  expect(pointedAt(session)).toBeUndefined();
  pointBy(session, 'down', false);
  expect(text(session)).toBe('=D4*D6');
});
