/** Pointing into a formula: where a reference may stand, ranges that grow, colours of what is meant. */

import { expect, test } from 'vitest';
import {
  addWorksheet,
  apply,
  cellAt,
  defineName,
  emptyNotebook,
  enter,
  isRefusal,
} from '../../src/document/index.ts';
import type { Notebook, Refusal, Transaction } from '../../src/document/index.ts';
import { commitDraft } from '../../src/ui/editing.ts';
import {
  point,
  pointAt,
  pointBy,
  pointTo,
  pointedAt,
  pullFrom,
  showNextWorksheet,
  showWorksheet,
} from '../../src/ui/pointing.ts';
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
function typing(text: string, typedOver = true, open = notebook()): Session {
  const world = {
    startCalculator: () => ({ post: () => undefined, terminate: () => undefined }),
    loadCatalogue: () => new Promise(() => undefined),
    clock: { now: () => 0, newId: () => 'x' },
    shelf: { append: () => Promise.resolve() },
  } as unknown as World;
  const session = new Session(world, { notebook: open });
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

/** Feeds (w1), where the formula is, and Tool trial (w2) with the name VB for B2:B3. */
function two(): Notebook {
  const start = notebook();
  const added = after(start, addWorksheet(start, { title: 'Tool trial' }));
  const target = { row: 1, column: 1, rows: 2, columns: 1 };
  return after(added, defineName(added, { worksheet: 'w2', name: 'VB', target }));
}

test('F6 with another worksheet in sight references are qualified with its name, and the draft stays where it is', () => {
  const session = typing('=2*SUM(', true, two());
  showWorksheet(session, 'w2');
  expect([session.inSight.id, session.worksheet.id, text(session)]).toEqual(['w2', 'w1', '=2*SUM(']);
  expect(pointAt(session, 0, 0)).toBe(true);
  expect(text(session)).toBe("=2*SUM('Tool trial'.A1");
  pointTo(session, 1, 2);
  expect(text(session)).toBe("=2*SUM('Tool trial'.A1:C2");
  point(session, { row: 1, column: 1, toRow: 2, toColumn: 1 });
  expect(text(session)).toBe("=2*SUM('Tool trial'.VB");
  // Changing one's mind: the same reference, on the own worksheet now.
  showWorksheet(session, 'w1');
  pointAt(session, 0, 0);
  expect(text(session)).toBe('=2*SUM(A1');
  expect(session.draft?.elsewhere).toBeUndefined();
});

test('arrows on another worksheet begin at its first cell; Shift makes a range there and never one over two worksheets', () => {
  const session = typing('=', true, two());
  pointBy(session, 'up', false);
  expect(text(session)).toBe('=D4');
  showNextWorksheet(session, 1);
  expect(pointTo(session, 2, 2)).toBe(false);
  pointBy(session, 'down', true);
  expect(text(session)).toBe("='Tool trial'.A1");
  pointBy(session, 'down', false);
  pointBy(session, 'right', true);
  expect(text(session)).toBe("='Tool trial'.A2:B2");
  showNextWorksheet(session, 1);
  expect(session.inSight.id).toBe('w1');
});

test('Enter takes the formula into the cell in which it began, leaving it goes back there, and undo is one step', () => {
  const session = typing('=', true, two());
  showWorksheet(session, 'w2');
  pointAt(session, 0, 0);
  expect(commitDraft(session, 'down')).toBe(true);
  expect(session.inSight.id).toBe('w1');
  expect(session.selection).toMatchObject({ worksheet: 'w1', row: 5, column: 3 });
  expect(cellAt(session.worksheet, 4, 3)?.content).toBe("='Tool trial'.A1");
  session.undo();
  expect(cellAt(session.worksheet, 4, 3)).toBeUndefined();
  const left = typing('=', true, two());
  showWorksheet(left, 'w2');
  left.setDraft(undefined);
  expect([left.inSight.id, left.selection.row]).toEqual(['w1', 4]);
});

test('a worksheet that goes while it is in sight leaves the own one in sight; without a formula its first cell is selected', () => {
  const session = typing('=A1*', true, two());
  showWorksheet(session, 'w2');
  session.follow(notebook(), { description: '', changes: [], origin: 'remote' });
  expect([session.inSight.id, text(session)]).toEqual(['w1', '=A1*']);
  const plain = typing('12', true, two());
  plain.setDraft(undefined);
  showWorksheet(plain, 'w2');
  expect(plain.selection).toMatchObject({ worksheet: 'w2', row: 0, column: 0 });
});

test('a written reference is replaced with its worksheet, and the end of a range stays on the worksheet of its beginning', () => {
  for (const [typed, elsewhere, wanted] of [
    ["='Tool trial'.A1", false, '=B1'],
    ["='Tool trial'.A1", true, "='Tool trial'.B1"],
    ['=A1', true, "='Tool trial'.B1"],
    ['=SUM(A1:', false, '=SUM(A1:B1'],
    ['=SUM(A1:C3', false, '=SUM(A1:B1'],
    ["=SUM('Tool trial'.A1:", true, "=SUM('Tool trial'.A1:B1"],
    ["=SUM('Tool trial'.A1:", false, '=SUM(B1'],
    ['=SUM(A1:', true, "=SUM('Tool trial'.B1"],
    ['=SUM(A1;', true, "=SUM(A1; 'Tool trial'.B1"],
  ] as const) {
    const session = typing(typed, true, two());
    if (elsewhere) showWorksheet(session, 'w2');
    expect(pointAt(session, 0, 1), typed).toBe(true);
    expect(text(session)).toBe(wanted);
  }
});

test('a handle pulls the corner it stands at: the other one stays', () => {
  const session = typing('=SUM(');
  expect(pullFrom(session, 'end')).toBe(false);
  pointAt(session, 2, 2);
  pullFrom(session, 'end');
  pointTo(session, 3, 3);
  expect(text(session)).toBe('=SUM(C3:D4');
  pullFrom(session, 'start');
  pointTo(session, 0, 0);
  expect(text(session)).toBe('=SUM(A1:D4');
});
