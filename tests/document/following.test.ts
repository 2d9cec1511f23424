import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addWorksheet,
  apply,
  cellAt,
  cut,
  defineName,
  deleteLines,
  enter,
  forEachCell,
  insertLines,
  isRefusal,
  moveLines,
  namesOn,
  paste,
  renameWorksheet,
  sort,
  worksheetOf,
  worksheetTitled,
} from '../../src/document/index.ts';
import type { Notebook, Refusal, Transaction } from '../../src/document/index.ts';
import { parse } from '../../src/expression/index.ts';
import { done, sample } from './sample.ts';

const SIZE = 6;

/** A square of texts that are all different; on a second worksheet a formula for each, and a name for each in the first row. */
function marked(): Notebook {
  const start = sample();
  const rows = Array.from({ length: SIZE }, (_, row) =>
    Array.from({ length: SIZE }, (_cell, column) => `mark ${row} ${column}`),
  );
  const texts = done(start, enter(start, { worksheet: 'w1', row: 0, column: 0, typed: rows }));
  const two = done(texts, addWorksheet(texts, { title: 'Links' }));
  const formulas = rows.map((line, row) =>
    line.map((_text, column) => `=Feeds.${String.fromCodePoint(65 + column)}${row + 1}`),
  );
  let notebook = done(two, enter(two, { worksheet: 'w2', row: 0, column: 0, typed: formulas }));
  for (let column = 0; column < SIZE; column++) {
    const target = { row: 0, column, rows: 1, columns: 1 };
    notebook = done(notebook, defineName(notebook, { worksheet: 'w1', name: `n_${column}`, target }));
  }
  return notebook;
}

const move = fc.record({
  command: fc.nat(5),
  at: fc.nat(SIZE),
  count: fc.integer({ min: 1, max: 3 }),
  to: fc.nat(SIZE + 3),
  side: fc.nat(SIZE),
  axis: fc.constantFrom('row' as const, 'column' as const),
});

function answerOf(
  notebook: Notebook,
  draw: { command: number; at: number; count: number; to: number; side: number; axis: 'row' | 'column' },
): Transaction | Refusal {
  const { at, count, to, side, axis } = draw;
  const lines = { worksheet: 'w1', axis, at, count };
  const block = { row: at, column: side, rows: count, columns: count };
  switch (draw.command) {
    case 0:
      return insertLines(notebook, lines);
    case 1:
      return deleteLines(notebook, lines);
    case 2:
      return moveLines(notebook, { ...lines, to });
    case 3: {
      // Only to where nothing is overwritten: below or right of everything.
      const clipboard = cut(notebook, { worksheet: 'w1', block });
      const free = worksheetOf(notebook, 'w1').rows.length + 1;
      return paste(notebook, { clipboard, worksheet: 'w1', row: free, column: side });
    }
    case 4:
      return sort(notebook, { worksheet: 'w2', block: { row: 8, column: 8, rows: 2, columns: 2 }, keys: [] });
    default:
      return renameWorksheet(notebook, { worksheet: 'w1', title: `Feeds ${to}` });
  }
}

/** Texts that are still somewhere on the first worksheet. */
function living(notebook: Notebook): ReadonlySet<string> {
  const texts = new Set<string>();
  forEachCell(worksheetOf(notebook, 'w1'), (cell) => texts.add(cell.content));
  return texts;
}

test('whatever moves, a reference finds the very cell it meant, or reads #REF! when that is gone', () => {
  fc.assert(
    fc.property(fc.array(move, { maxLength: 12 }), (draws) => {
      let notebook = marked();
      for (const draw of draws) {
        const answer = answerOf(notebook, draw);
        if (!isRefusal(answer)) notebook = apply(notebook, answer.changes);
      }
      const alive = living(notebook);
      for (let row = 0; row < SIZE; row++) {
        for (let column = 0; column < SIZE; column++) {
          const text = `mark ${row} ${column}`;
          const formula = cellAt(worksheetOf(notebook, 'w2'), row, column)?.content ?? '';
          const { tree } = parse(formula);
          if (!alive.has(text)) {
            expect(formula).toBe('=#REF!');
            continue;
          }
          if (tree?.type !== 'cell') throw new Error(`${text}: ${formula}`);
          const worksheet = worksheetTitled(notebook, tree.worksheet ?? '');
          expect(worksheet && cellAt(worksheet, tree.row, tree.column)?.content).toBe(text);
        }
      }
      for (let column = 0; column < SIZE; column++) {
        const worksheet = worksheetOf(notebook, 'w1');
        const target = namesOn(worksheet).get(`n_${column}`)?.target;
        const text = `mark 0 ${column}`;
        if (!alive.has(text)) expect(target).toBeUndefined();
        else expect(target && cellAt(worksheet, target.row, target.column)?.content).toBe(text);
      }
    }),
    { seed: 42, numRuns: 300 },
  );
});

test('a range holds after inserts, deletes and moves of rows just the cells it held, as far as they stand together', () => {
  fc.assert(
    fc.property(fc.nat(5), fc.nat(5), fc.nat(5), fc.integer({ min: 1, max: 3 }), (a, b, at, count) => {
      const [first, last] = [Math.min(a, b), Math.max(a, b)];
      const start = marked();
      const linked = done(
        start,
        enter(start, {
          worksheet: 'w2',
          row: 20,
          column: 0,
          typed: `=SUM(Feeds.A${first + 1}:A${last + 1})`,
        }),
      );
      const held = Array.from({ length: last - first + 1 }, (_, index) => `mark ${first + index} 0`);
      const after = done(linked, deleteLines(linked, { worksheet: 'w1', axis: 'row', at, count }));
      const left = held.filter((text) => living(after).has(text));
      const formula = cellAt(worksheetOf(after, 'w2'), 20, 0)?.content ?? '';
      const [, from = '', to = ''] = /A(\d+):A(\d+)/.exec(formula) ?? [];
      const now = Array.from(
        { length: from === '' ? 0 : Number(to) - Number(from) + 1 },
        (_, index) => cellAt(worksheetOf(after, 'w1'), Number(from) - 1 + index, 0)?.content,
      );
      expect(now).toEqual(left);
    }),
    { seed: 5, numRuns: 200 },
  );
});
