/** Variants side by side: the watched cells with each variant's own contents, against the notebook as it stands. */

import type { AskedVariant, CellAddress, VariantRow, VariantValue } from '../calculation/index.ts';
import { apply, cellAt, readContent, worksheetOf } from '../document/index.ts';
import type { CellChange, Notebook } from '../document/index.ts';
import type { Dimension } from '../quantity/index.ts';
import { Refused } from './refused.ts';
import type { StudyBook } from './study-book.ts';

interface Seen {
  readonly value: VariantValue;
  readonly dimension: Dimension | undefined;
}

function seen(book: StudyBook, cell: CellAddress): Seen {
  const state = book.state(cell);
  const { value, kind, unit, error, cautions } = book.resultOf(state);
  const breaches = cautions.filter(({ type }) => type === 'breach').map(({ text }) => text);
  return {
    value: { value, kind, unit, ...(error && { error }), breaches },
    dimension: state.type.type === 'number' ? state.type.kind.dimension : undefined,
  };
}

function compared(own: Seen, base: Seen): VariantValue {
  const [now, before] = [own.value.value, base.value.value];
  if (typeof now !== 'number' || typeof before !== 'number' || own.dimension !== base.dimension)
    return own.value;
  const difference = now - before;
  return {
    ...own.value,
    difference,
    ...(before !== 0 && { relative: difference / Math.abs(before) }),
  };
}

/** The contents as changes of the notebook's cells. */
function changesOf(book: StudyBook, { name, contents }: AskedVariant): CellChange[] {
  const { notebook } = book;
  return contents.map(({ cell, content }) => {
    const state = book.state(cell);
    if (readContent(content, notebook.currency).type === 'formula')
      throw new Refused(
        `${name}: ${book.name(state)} can not become a formula in a variant: only given values differ.`,
        cell,
      );
    if (state.formula)
      throw new Refused(
        `${name}: ${book.name(state)} is computed: a variant changes given values only.`,
        cell,
      );
    const from = cellAt(worksheetOf(notebook, cell.worksheet), cell.row, cell.column);
    const { worksheet, row, column } = cell;
    return { type: 'cell', worksheet, row, column, ...(from && { from }), to: { ...from, content } };
  });
}

const backwards = ({ from, to, ...place }: CellChange): CellChange => ({
  ...place,
  ...(to && { from: to }),
  ...(from && { to: from }),
});

export function* variants(
  book: StudyBook,
  asked: readonly AskedVariant[],
  watched: readonly CellAddress[],
): Generator<number, readonly VariantRow[]> {
  const { workbook } = book;
  const changes = asked.map((variant) => changesOf(book, variant));
  const base = watched.map((cell) => seen(book, cell));
  const columns: VariantValue[][] = [base.map(({ value }) => value)];
  for (const [index, own] of changes.entries()) {
    const before: Notebook = workbook.notebook;
    workbook.apply(apply(before, own), own);
    try {
      columns.push(watched.map((cell, place) => compared(seen(book, cell), base[place] as Seen)));
    } finally {
      workbook.apply(before, own.map(backwards));
    }
    yield (index + 1) / changes.length;
  }
  return watched.map((cell, place) => ({
    cell,
    values: columns.map((column) => column[place] as VariantValue),
  }));
}
