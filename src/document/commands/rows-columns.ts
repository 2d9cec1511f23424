/** Inserting, deleting and moving rows and columns; references and names follow on every worksheet. */

import { tidyRow, trimmed, usedExtent, worksheetOf } from '../cells.ts';
import type { Transaction } from '../change.ts';
import { transactionTo } from '../changes-between.ts';
import { followed } from '../follow-references.ts';
import { columnLetters } from '../../expression/index.ts';
import { movedInterval, movedList } from '../movement.ts';
import type { Movement } from '../movement.ts';
import { LIMITS } from '../notebook.ts';
import type { Block, DefinedName, Notebook, Row, Worksheet } from '../notebook.ts';
import type { Refusal } from '../refusal.ts';
import { withWorksheet } from '../with-worksheet.ts';

export type Axis = 'row' | 'column';

export interface Lines {
  /** Worksheet id. */
  readonly worksheet: string;
  readonly axis: Axis;
  /** First row or column, from 0. */
  readonly at: number;
  readonly count: number;
}

const isRow = (axis: Axis): boolean => axis === 'row';

function movedBlock(block: Block, axis: Axis, movement: Movement): Block | undefined {
  const first = isRow(axis) ? block.row : block.column;
  const length = isRow(axis) ? block.rows : block.columns;
  const moved = movedInterval({ first, last: first + length - 1 }, movement);
  if (!moved) return undefined;
  const size = moved.last - moved.first + 1;
  return isRow(axis)
    ? { ...block, row: moved.first, rows: size }
    : { ...block, column: moved.first, columns: size };
}

function movedNames(worksheet: Worksheet, axis: Axis, movement: Movement): readonly DefinedName[] {
  return worksheet.names.flatMap((defined) => {
    const target = movedBlock(defined.target, axis, movement);
    return target ? [{ ...defined, target }] : [];
  });
}

function movedWorksheet(worksheet: Worksheet, axis: Axis, movement: Movement): Worksheet {
  const by = movement.type === 'insert' ? movement.count : movement.type === 'delete' ? -movement.count : 0;
  const names = movedNames(worksheet, axis, movement);
  if (isRow(axis)) {
    const rowCount = Math.max(1, Math.min(LIMITS.rows, worksheet.rowCount + by));
    return { ...worksheet, rowCount, names, rows: trimmed(movedList<Row>(worksheet.rows, movement)) };
  }
  return {
    ...worksheet,
    columnCount: Math.max(1, Math.min(LIMITS.columns, worksheet.columnCount + by)),
    names,
    widths: trimmed(movedList(worksheet.widths, movement)),
    rows: trimmed(worksheet.rows.map((row) => row && tidyRow(movedList(row, movement)))),
  };
}

function restructured(
  notebook: Notebook,
  worksheetId: string,
  axis: Axis,
  movement: Movement,
  description: string,
): Transaction | Refusal {
  const before = worksheetOf(notebook, worksheetId);
  const moved = movedWorksheet(before, axis, movement);
  const lost = new Set(before.names.map((each) => each.name));
  for (const { name } of moved.names) lost.delete(name);
  const after = followed(notebook, withWorksheet(notebook, moved), {
    block: (worksheet, block) => {
      const target = worksheet === worksheetId ? movedBlock(block, axis, movement) : block;
      return target && { worksheet, block: target };
    },
    name: (worksheet, name) =>
      worksheet === worksheetId && lost.has(name) ? undefined : { worksheet, name },
  });
  return transactionTo(notebook, after, description);
}

const linesText = (axis: Axis, count: number): string => `${count} ${axis}${count === 1 ? '' : 's'}`;

function check({ at, count, axis }: Lines): void {
  const most = isRow(axis) ? LIMITS.rows : LIMITS.columns;
  if (!Number.isInteger(at) || !Number.isInteger(count) || at < 0 || count < 1 || at + count > most) {
    throw new RangeError(`${axis} ${at}, count ${count}: must lie in 0 to ${most - 1}`);
  }
}

/** New empty rows or columns before `at`. Refused where filled cells or a range would pass a limit. */
export function insertLines(notebook: Notebook, lines: Lines): Transaction | Refusal {
  check(lines);
  const { worksheet, axis, at, count } = lines;
  const used = usedExtent(worksheetOf(notebook, worksheet))[isRow(axis) ? 'rows' : 'columns'];
  const most = isRow(axis) ? LIMITS.rows : LIMITS.columns;
  if (at < used && used + count > most) {
    return {
      message: `The worksheet would have ${used + count} ${axis}s; ${most} is the most.`,
    };
  }
  const description = `insert ${linesText(axis, count)}`;
  return restructured(notebook, worksheet, axis, { type: 'insert', at, count }, description);
}

/** Takes rows or columns away; what referred to them reads #REF! (see `usersOf`). */
export function deleteLines(notebook: Notebook, lines: Lines): Transaction | Refusal {
  check(lines);
  const { worksheet, axis, at, count } = lines;
  const description = `delete ${linesText(axis, count)}`;
  return restructured(notebook, worksheet, axis, { type: 'delete', at, count }, description);
}

/** Moves rows or columns to stand before `to` (counted before the move). */
export function moveLines(notebook: Notebook, lines: Lines & { readonly to: number }): Transaction | Refusal {
  check(lines);
  const { worksheet, axis, at, count, to } = lines;
  const sheet = worksheetOf(notebook, worksheet);
  const length = isRow(axis) ? sheet.rowCount : sheet.columnCount;
  if (!Number.isInteger(to) || to < 0 || to > length) {
    throw new RangeError(`target ${to}: must lie in 0 to ${length}`);
  }
  if (to >= at && to <= at + count) {
    const place = isRow(axis) ? `Row ${at + 1}` : `Column ${columnLetters(at)}`;
    return { message: `${place} already stands there.` };
  }
  const description = `move ${linesText(axis, count)}`;
  return restructured(notebook, worksheet, axis, { type: 'move', at, count, to }, description);
}
