/** The table of a sweep as a worksheet of its own, with a plot of it: one step. */

import type { StudyAnswer } from '../../calculation/index.ts';
import {
  addWorksheet,
  apply,
  enter,
  freshPartId,
  isRefusal,
  putPart,
  setFormat,
  transactionTo,
} from '../../document/index.ts';
import type { Block, Figure, Notebook, PlotSeries, Refusal, Transaction } from '../../document/index.ts';
import { fromSI, isUnknownUnit, parseUnit } from '../../quantity/index.ts';

export type Swept = Extract<StudyAnswer, { readonly type: 'sweep' }>;

/** A value as it is typed into a cell, in the unit in which it is shown: all digits. */
function contentOf(value: number | string | boolean | null, unit: string, currency: string): string {
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (typeof value === 'string') return `'${value}`;
  const parsed = unit === '' ? undefined : parseUnit(unit, currency);
  const shown = parsed && !isUnknownUnit(parsed) ? fromSI(value, parsed) : value;
  return unit === '' ? String(shown) : `${shown} ${unit}`;
}

/** Rows of typed texts: headings, then one row a point. */
function rowsOf({ columns, rows }: Swept, words: readonly string[], currency: string): string[][] {
  const heading = words.map((text) => `'${text}`);
  const body = Array.from({ length: rows }, (_, row) =>
    columns.map(({ values, unit }) => contentOf(values[row] ?? null, unit, currency)),
  );
  return [heading, ...body];
}

const column = (at: number, from: number, rows: number): Block => ({
  row: 1 + from,
  column: at,
  rows,
  columns: 1,
});

/** Rows of the table that belong together: with two givens, one run of the faster for each value of the slower. */
function runsOf({ columns, rows }: Swept): readonly (readonly [number, number])[] {
  const givens = columns.filter(({ role }) => role === 'given');
  const [slow] = givens;
  if (givens.length < 2 || !slow) return [[0, rows]];
  const runs: (readonly [number, number])[] = [];
  for (let from = 0, row = 1; row <= rows; row += 1) {
    if (row < rows && slow.values[row] === slow.values[from]) continue;
    runs.push([from, row - from]);
    from = row;
  }
  return runs;
}

function figureOf(
  swept: Swept,
  words: readonly string[],
  worksheet: string,
  title: string,
): Omit<Figure, 'id'> {
  const x = swept.columns.findLastIndex(({ role }) => role === 'given');
  const results = swept.columns.flatMap(({ role, values }, at) =>
    role === 'result' && values.some((value) => typeof value === 'number') ? [at] : [],
  );
  const [first] = results;
  const runs = runsOf(swept).slice(0, 12);
  const series = (runs.length > 1 && first !== undefined ? [first] : results).flatMap((at) =>
    runs.map(([from, count], run): PlotSeries => ({
      mark: 'line',
      y: { worksheet, block: column(at, from, count) },
      label: runs.length > 1 ? `${words[0] ?? ''} ${run + 1}` : (words[at] ?? ''),
    })),
  );
  const [, count] = runs[0] ?? [0, swept.rows];
  return {
    title,
    content: { type: 'plot', x: { worksheet, block: column(x, 0, count) }, series: series.slice(0, 20) },
  };
}

/** Adds the worksheet and its figure; `words` are the headings of the columns. */
export function sweepWorksheet(
  notebook: Notebook,
  swept: Swept,
  words: readonly string[],
  title: string,
): Transaction | Refusal {
  const steps: ((current: Notebook) => Transaction | Refusal)[] = [
    (current) => addWorksheet(current, { title }),
    (current) => {
      const worksheet = current.worksheets.at(-1)?.id ?? '';
      return enter(current, { worksheet, row: 0, column: 0, typed: rowsOf(swept, words, current.currency) });
    },
    (current) => {
      const worksheet = current.worksheets.at(-1)?.id ?? '';
      const first = swept.columns.findIndex(({ role }) => role === 'result');
      const block = { row: 1, column: first, rows: swept.rows, columns: swept.columns.length - first };
      return setFormat(current, { worksheet, block, format: { type: 'significant', digits: 5 } });
    },
    (current) => {
      const worksheet = current.worksheets.at(-1)?.id ?? '';
      const record = { id: freshPartId(current, 'figures'), ...figureOf(swept, words, worksheet, title) };
      return putPart(current, { part: 'figures', record, description: title });
    },
  ];
  let after = notebook;
  for (const step of steps) {
    const answer = step(after);
    if (isRefusal(answer)) return answer;
    after = apply(after, answer.changes);
  }
  return transactionTo(notebook, after, `sweep into ${title}`);
}
