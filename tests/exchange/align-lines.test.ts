/** Lines of a worksheet found again in a later state: the truth is how the later state was made. */

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { apply, emptyNotebook, enter, insertLines, isRefusal } from '../../src/document/index.ts';
import type { Notebook, Refusal, Transaction } from '../../src/document/index.ts';
import { alignedLines } from '../../src/exchange/align-lines.ts';
import { compareNotebooks, laidBeside } from '../../src/exchange/index.ts';

const carriedOut = (notebook: Notebook, answer: Transaction | Refusal): Notebook => {
  if (isRefusal(answer)) throw new Error(answer.message);
  return apply(notebook, answer.changes);
};

/** A line whose contents stand in no other. */
const own = (name: string): readonly string[] => [`${name} mm`, 'chip thickness', `=RC*${name}`];

/** For each old line: gone, kept, or kept with one cell changed; and how many new ones stand behind it. */
const fate = fc.record({
  kept: fc.constantFrom('gone', 'same', 'same', 'same', 'changed'),
  added: fc.constantFrom(0, 0, 0, 1, 2),
});

function later(fates: readonly { readonly kept: string; readonly added: number }[]) {
  const before = fates.map((_, at) => own(`${at}.5`));
  const after: (readonly string[])[] = [];
  const truth = fates.map(({ kept, added }, at) => {
    const place = kept === 'gone' ? undefined : after.length;
    if (kept !== 'gone')
      after.push(kept === 'same' ? own(`${at}.5`) : ['another', 'chip thickness', `=RC*${at}.5`]);
    for (let k = 0; k < added; k += 1) after.push(own(`${at}.5 new ${k}`));
    return { kept, place };
  });
  return { before, after, truth };
}

for (const [lines, runs] of [
  [30, 60],
  [1500, 3],
] as const)
  test(`of ${lines} lines every one that was left as it was is found where it went, whatever was inserted, deleted and changed around it`, () => {
    fc.assert(
      fc.property(fc.array(fate, { minLength: lines, maxLength: lines }), (fates) => {
        const { before, after, truth } = later(fates);
        const found = alignedLines(before, after);
        truth.forEach(({ kept, place }, at) => {
          if (kept === 'same') expect(found[at]).toBe(place);
        });
        const places = found.filter((each) => each !== undefined);
        expect(places).toEqual(places.toSorted((a, b) => a - b));
        expect(new Set(places).size).toBe(places.length);
      }),
      { seed: 20, numRuns: runs },
    );
  });

test('lines that are all alike are paired in order, and none twice', () => {
  const alike = (count: number): readonly string[][] => Array.from({ length: count }, () => ['1 mm']);
  expect(alignedLines(alike(2000), alike(1990)).filter((each) => each !== undefined)).toHaveLength(1990);
  expect(alignedLines([], alike(2))).toEqual([]);
  expect(alignedLines(alike(2), [])).toEqual([undefined, undefined]);
});

/** A worksheet with these numbers of millimetres below one another. */
function column(values: readonly number[]): Notebook {
  let notebook = emptyNotebook({ id: 'full', title: 'Full', reading: 'metric' });
  const [worksheet] = notebook.worksheets;
  if (!worksheet) throw new Error('no worksheet');
  const count = values.length - worksheet.rowCount;
  notebook = carriedOut(
    notebook,
    insertLines(notebook, { worksheet: worksheet.id, axis: 'row', at: worksheet.rowCount, count }),
  );
  const typed = values.map((value) => [`${value} mm`]);
  return carriedOut(notebook, enter(notebook, { worksheet: worksheet.id, row: 0, column: 0, typed }));
}

test('a full worksheet whose rows moved down by one has no room to be laid beside the other: both stay as they are', () => {
  const rows = Array.from({ length: 2000 }, (_, row) => row + 1);
  const ours = column(rows);
  const theirs = column([0, ...rows.slice(0, -1)]);
  const beside = laidBeside(ours, theirs, ours);
  expect(isRefusal(beside.room)).toBe(false);
  expect(beside.theirs.worksheets[0]?.rows).toEqual(theirs.worksheets[0]?.rows);
  expect(compareNotebooks(ours, beside.theirs)).toHaveLength(2000);
});

test('a long worksheet with a row inserted at its top and one changed near its end differs in these two alone', () => {
  const rows = Array.from({ length: 1500 }, (_, row) => row + 1);
  const ours = column(rows);
  const theirs = column([0, ...rows.with(1400, 9999)]);
  const { room, theirs: laid } = laidBeside(ours, theirs, ours);
  expect(compareNotebooks(carriedOut(ours, room), laid)).toHaveLength(2);
});
