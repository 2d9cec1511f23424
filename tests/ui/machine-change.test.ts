/** A given changed at the machine: who, when, what stood there, why where a limit is passed; and the cautions that apply there. */

import { expect, test } from 'vitest';
import { apply, cellAt, emptyNotebook, enter, isRefusal, setMachinePlace } from '../../src/document/index.ts';
import type { Cell, Notebook, Refusal, Transaction } from '../../src/document/index.ts';
import { addedCautions } from '../../src/ui/machine-cautions.ts';
import { changedAtMachine } from '../../src/ui/machine-change.ts';
import { receivedNow, restored } from '../../src/ui/received-values.ts';

const carried = (notebook: Notebook, answer: Transaction | Refusal): Notebook => {
  if (isRefusal(answer)) throw new Error(answer.message);
  return apply(notebook, answer.changes);
};
const typed = (notebook: Notebook, row: number, column: number, text: string): Notebook =>
  carried(notebook, enter(notebook, { worksheet: 'w1', row, column, typed: text }));
const cell = (notebook: Notebook): Cell | undefined => {
  const [sheet] = notebook.worksheets;
  return sheet && cellAt(sheet, 0, 1);
};

function speed(): Notebook {
  const empty = emptyNotebook({ id: 'n1', title: 'speed', reading: 'metric' });
  const filled = typed(typed(empty, 0, 0, 'cutting speed'), 0, 1, '260 m/min');
  const block = { row: 0, column: 1, rows: 1, columns: 1 };
  return carried(filled, setMachinePlace(filled, { worksheet: 'w1', block, machine: { place: 'changed' } }));
}

const at = '2026-11-25T14:20:00.000Z';
const change = (notebook: Notebook, text: string, more: { by?: string; reason?: string } = {}): Notebook =>
  carried(
    notebook,
    changedAtMachine(notebook, { worksheet: 'w1', row: 0, column: 1, typed: text, by: 'JK', at, ...more }),
  );

test('a change carries who, when and what the desk had set, however often it is changed after', () => {
  const once = change(speed(), '270');
  expect(cell(once)?.changed).toEqual({ by: 'JK', at, from: '260 m/min' });
  const twice = change(once, '280', { by: 'MK', reason: 'agreed' });
  expect(cell(twice)).toMatchObject({
    content: '280 m/min',
    changed: { by: 'MK', at, from: '260 m/min', reason: 'agreed' },
  });
});

test('the mark falls when the value of the desk is back, and when the desk writes another', () => {
  const once = change(speed(), '270');
  expect(cell(change(once, '260'))?.changed).toBeUndefined();
  expect(cell(typed(once, 0, 1, '250 m/min'))?.changed).toBeUndefined();
});

test('values as received are one step back, with the marks that were there', () => {
  const marked = change(speed(), '270');
  const one = { row: 0, column: 1, address: 'B1', label: 'v', symbol: '', result: undefined };
  const now = cell(marked);
  if (!now) throw new Error('no cell');
  const received = receivedNow(marked, 'w1', [{ ...one, cell: now }]);
  const after = change(marked, '290', { by: 'MK' });
  expect(cell(carried(after, restored(after, received)))).toEqual(now);
  expect(restored(marked, received).changes).toEqual([]);
});

test('burning chips, large cutters and long overhangs are cautioned where the notebook names them', () => {
  const base = speed();
  expect(addedCautions(base)).toEqual([]);
  for (const name of ['Ti-6Al-4V', 'titanium alloys', '=FORCE.KC("titanium alloys"; 0.1 mm)'])
    expect(addedCautions(typed(base, 3, 1, name)).join(' ')).toContain('Titanium chips burn');
  expect(addedCautions(typed(base, 3, 1, 'AZ91')).join(' ')).toContain('Magnesium chips burn');
  // A sentence about it is no material.
  const note = 'Titanium and magnesium chips burn: have the right extinguisher at hand.';
  expect(addedCautions(typed(base, 3, 0, note))).toEqual([]);
  const cutter = typed(typed(base, 3, 0, 'cutter diameter'), 3, 1, '125 mm');
  expect(addedCautions(cutter).join(' ')).toContain('speed limit of the body');
  const small = typed(typed(base, 3, 0, 'cutter diameter'), 3, 1, '50 mm');
  expect(addedCautions(small)).toEqual([]);
  const long = typed(typed(base, 3, 0, 'overhang'), 3, 1, '180 mm');
  expect(addedCautions(long).join(' ')).toContain('speed limit of the body');
});
