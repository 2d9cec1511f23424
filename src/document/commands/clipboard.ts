/** Copying, cutting and pasting blocks: a copy shifts its references and leaves its names, a cut takes along whatever refers to it. */

import { cellAt, checkBlock, isBlockWithin, isInBlock, worksheetOf } from '../cells.ts';
import type { CellWrite } from '../cells.ts';
import type { Transaction } from '../change.ts';
import { transactionTo } from '../changes-between.ts';
import { carriedNames, followed } from '../follow-references.ts';
import { foreignNotice } from '../foreign-notice.ts';
import { blockText } from '../formula-references.ts';
import { LIMITS } from '../notebook.ts';
import type { Block, Cell, DefinedName, Notebook, Row } from '../notebook.ts';
import type { Refusal } from '../refusal.ts';
import { namesOn } from '../resolve-name.ts';
import { withWorksheet, withWrites } from '../with-worksheet.ts';
import { outsideRefusal } from './enter.ts';
import { copiedCell } from './fill.ts';
import type { CellsArgs } from './properties.ts';

/** What was copied or cut, as a value. */
export interface Clipboard {
  /** The notebook as it was then. */
  readonly source: Notebook;
  /** Worksheet id. */
  readonly worksheet: string;
  readonly block: Block;
  readonly cut: boolean;
}

export function copy(notebook: Notebook, { worksheet, block }: CellsArgs): Clipboard {
  checkBlock(block);
  worksheetOf(notebook, worksheet);
  return { source: notebook, worksheet, block, cut: false };
}

/** Nothing changes before it is pasted. */
export function cut(notebook: Notebook, args: CellsArgs): Clipboard {
  return { ...copy(notebook, args), cut: true };
}

/** The cells of a clipboard, row by row from its corner. */
export function clipboardRows({ source, worksheet, block }: Clipboard): readonly Row[] {
  const { rows } = worksheetOf(source, worksheet);
  return Array.from({ length: block.rows }, (_, down) =>
    Array.from({ length: block.columns }, (_cell, right) => rows[block.row + down]?.[block.column + right]),
  );
}

export interface PasteArgs {
  readonly clipboard: Clipboard;
  /** Worksheet id. */
  readonly worksheet: string;
  readonly row: number;
  readonly column: number;
  /** Size of the selection: a whole multiple of the copied block is filled with it. */
  readonly rows?: number;
  readonly columns?: number;
}

export function paste(notebook: Notebook, args: PasteArgs): Transaction | Refusal {
  const { clipboard } = args;
  const here = clipboard.source.id === notebook.id;
  return clipboard.cut && here ? pasteCut(notebook, args) : pasteCopy(notebook, args, here);
}

/** How often the block fits: once, or as often as the selection holds it without a rest. */
const times = (selected: number | undefined, size: number): number =>
  selected !== undefined && selected % size === 0 ? selected / size : 1;

function pasteCopy(notebook: Notebook, args: PasteArgs, here: boolean): Transaction | Refusal {
  const { clipboard, worksheet, row, column } = args;
  const { source, block } = clipboard;
  const target = {
    row,
    column,
    rows: block.rows * times(args.rows, block.rows),
    columns: block.columns * times(args.columns, block.columns),
  };
  const refusal = outsideRefusal(target);
  if (refusal) return refusal;
  const from = worksheetOf(source, clipboard.worksheet);
  const to = worksheetOf(notebook, worksheet);
  const writes: CellWrite[] = [];
  const foreign: string[] = [];
  for (let down = 0; down < target.rows; down++) {
    for (let right = 0; right < target.columns; right++) {
      const origin = { row: block.row + (down % block.rows), column: block.column + (right % block.columns) };
      const original = cellAt(from, origin.row, origin.column);
      const place = { row: row + down, column: column + right };
      const was = cellAt(to, place.row, place.column);
      if (!original && !was) continue;
      if (original && !here) foreign.push(original.content);
      const carried =
        original && here && from.id !== to.id
          ? carriedNames(source, notebook, original, from.id, to.id)
          : original;
      const cell =
        carried &&
        copiedCell(carried, was, place.row - origin.row, place.column - origin.column, notebook.currency);
      if (cell && cell.content.length > LIMITS.contentLength) {
        return { message: `A formula would be longer than ${LIMITS.contentLength} characters.` };
      }
      writes.push({ ...place, cell });
    }
  }
  const notice = here ? undefined : foreignNotice(source, notebook, foreign, blockText(target));
  return transactionTo(
    notebook,
    withWrites(notebook, worksheet, writes),
    `paste ${blockText(target)}`,
    notice === undefined ? {} : { notice },
  );
}

function pasteCut(notebook: Notebook, args: PasteArgs): Transaction | Refusal {
  const { clipboard, worksheet: to, row, column } = args;
  const { worksheet: from, block } = clipboard;
  const target = { ...block, row, column };
  const refusal = outsideRefusal(target) ?? nameClash(notebook, from, to, block);
  if (refusal) return refusal;
  const [down, right] = [row - block.row, column - block.column];
  const isMoved = (worksheet: string, inner: Block): boolean =>
    worksheet === from && isBlockWithin(inner, block);
  const movedBlock = (inner: Block): Block => ({
    ...inner,
    row: inner.row + down,
    column: inner.column + right,
  });

  const original = worksheetOf(notebook, from);
  const taken: CellWrite[] = [];
  const put: CellWrite[] = [];
  const goal = worksheetOf(notebook, to);
  for (let each = block.row; each < block.row + block.rows; each++) {
    for (let other = block.column; other < block.column + block.columns; other++) {
      const cell: Cell | undefined = cellAt(original, each, other);
      const place = { row: each + down, column: other + right };
      if (cell) taken.push({ row: each, column: other, cell: undefined });
      if (cell || cellAt(goal, place.row, place.column)) put.push({ ...place, cell });
    }
  }
  const emptied = withWrites(notebook, from, taken);
  const filled = withWrites(emptied, to, put);
  const structure = withMovedNames(filled, from, to, (defined) =>
    isMoved(from, defined.target) ? { ...defined, target: movedBlock(defined.target) } : undefined,
  );
  const movedNames = new Set(
    original.names.filter(({ target: each }) => isMoved(from, each)).map(({ name }) => name),
  );
  const after = followed(notebook, structure, {
    block: (worksheet, inner) =>
      isMoved(worksheet, inner) ? { worksheet: to, block: movedBlock(inner) } : { worksheet, block: inner },
    name: (worksheet, name) => ({
      worksheet: worksheet === from && movedNames.has(name) ? to : worksheet,
      name,
    }),
    home: (worksheet, each, other) => (worksheet === to && isInBlock(target, each, other) ? from : worksheet),
  });
  return transactionTo(notebook, after, `move ${blockText(block)} to ${blockText(target)}`);
}

function nameClash(notebook: Notebook, from: string, to: string, block: Block): Refusal | undefined {
  if (from === to) return undefined;
  const goal = worksheetOf(notebook, to);
  const clash = worksheetOf(notebook, from).names.find(
    ({ name, target }) => isBlockWithin(target, block) && namesOn(goal).has(name),
  );
  if (!clash) return undefined;
  return { message: `${clash.name} is already a name on ${goal.title}; rename one of the two first.` };
}

/** The notebook with those names of one worksheet that `move` places anew on the other (or the same). */
function withMovedNames(
  notebook: Notebook,
  from: string,
  to: string,
  move: (defined: DefinedName) => DefinedName | undefined,
): Notebook {
  const origin = worksheetOf(notebook, from);
  const moved = origin.names.flatMap((defined) => move(defined) ?? []);
  if (moved.length === 0) return notebook;
  if (from === to) {
    const names = origin.names.map((defined) => move(defined) ?? defined);
    return withWorksheet(notebook, { ...origin, names });
  }
  const left = origin.names.filter((defined) => !move(defined));
  const without = withWorksheet(notebook, { ...origin, names: left });
  const goal = worksheetOf(without, to);
  return withWorksheet(without, { ...goal, names: [...goal.names, ...moved] });
}
