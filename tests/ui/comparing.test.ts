/** A notebook that came back laid beside one's own: inserted lines are no differences of everything below them. */

import { expect, test } from 'vitest';
import { apply, cellAt, emptyNotebook, enter, insertLines, isRefusal } from '../../src/document/index.ts';
import type { Notebook, Refusal, Transaction } from '../../src/document/index.ts';
import { compareNotebooks } from '../../src/exchange/index.ts';
import type { ReadNotebook } from '../../src/exchange/index.ts';
import { ancestorOf, comparison, taking } from '../../src/ui/comparing.ts';
import type { Comparison } from '../../src/ui/comparing.ts';

const carried = (notebook: Notebook, answer: Transaction | Refusal): Notebook => {
  if (isRefusal(answer)) throw new Error(answer.message);
  return apply(notebook, answer.changes);
};
const typed = (notebook: Notebook, row: number, column: number, text: string): Notebook =>
  carried(notebook, enter(notebook, { worksheet: 'w1', row, column, typed: text }));
const contents = ({ worksheets: [sheet] }: Notebook): readonly (readonly string[])[] =>
  Array.from({ length: 4 }, (_, row) =>
    [0, 1].map((column) => (sheet && cellAt(sheet, row, column)?.content) ?? ''),
  );

function base(): Notebook {
  let notebook = emptyNotebook({ id: 'n1', title: 'cut', reading: 'metric' });
  for (const [row, line] of [
    ['diameter', '50 mm'],
    ['speed', '200 m/min'],
    ['turns', '=B2/B1'],
  ].entries())
    for (const [column, text] of line.entries()) notebook = typed(notebook, row, column, text);
  return notebook;
}

/** A row inserted above all, its text, and another diameter; with a result stored where the formula stands now. */
function received(): ReadNotebook {
  const above = insertLines(base(), { worksheet: 'w1', axis: 'row', at: 0, count: 1 });
  const notebook = typed(typed(carried(base(), above), 0, 0, 'as tried by Mara'), 1, 1, '40 mm');
  const result = { value: 83.3, kind: 'rate', unit: '1/s' };
  return { notebook, results: new Map([['w1', new Map([['B4', result]])]]) };
}

function compared(ours: Notebook): Comparison {
  const made = comparison(ours, received(), base());
  if (isRefusal(made)) throw new Error(made.message);
  return made;
}

test('only what differs is listed, at our places with room made, and nothing of ours is changed by looking', () => {
  const ours = base();
  const { ours: laid, theirs } = compared(ours);
  const places = compareNotebooks(laid, theirs).map((each) =>
    each.type === 'cell' ? `${each.row} ${each.column}` : each.type,
  );
  expect(places).toEqual(['0 0', '1 1']);
  expect(contents(ours)).toEqual(contents(base()));
});

test('stored results are found where their formulas were laid', () => {
  const { theirs, results } = compared(base());
  const [sheet] = theirs.worksheets;
  expect(sheet && cellAt(sheet, 3, 1)?.content).toBe('=B3/B2');
  expect(results.get(sheet?.id ?? '')?.get('B4')?.value).toBe(83.3);
});

test('taking everything gives the received notebook, in one step that can be taken back', () => {
  const ours = base();
  const made = compared(ours);
  const places = compareNotebooks(made.ours, made.theirs).map((difference) => ({
    key: '',
    difference,
    where: '',
    place: undefined,
    author: 'unknown' as const,
    ours: { value: '', lines: [] },
    theirs: { value: '', lines: [] },
  }));
  const after = carried(ours, taking(ours, made, places));
  expect(contents(after)).toEqual(contents(received().notebook));
  expect(contents(after)[3]).toEqual(['turns', '=B3/B2']);
});

test('of the states that were handed over, the nearest one is taken for the common one', () => {
  const older = typed(base(), 1, 1, '150 m/min');
  const states = [
    { at: 1, notebook: older },
    { at: 2, notebook: base() },
  ];
  expect(ancestorOf(typed(base(), 0, 1, '63 mm'), states)?.at).toBe(2);
  expect(ancestorOf(base(), [])).toBeUndefined();
});
