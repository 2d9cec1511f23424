/** Single cells on any worksheet as a list gives them: what they hold, are called and stand for, as one step; what can not be taken is left as it was, and named. */

import { canonicalContent } from '../canonical-content.ts';
import { cellAt, worksheetOf } from '../cells.ts';
import type { CellPlace, CellWrite } from '../cells.ts';
import { transactionTo } from '../changes-between.ts';
import { labelOf, roleOf } from '../label-role.ts';
import type { Cell, Notebook, Role } from '../notebook.ts';
import { isRefusal } from '../refusal.ts';
import { tidyCell } from '../tidy-cell.ts';
import { withWrites } from '../with-worksheet.ts';
import { apply } from '../apply.ts';
import { choiceRefusal, filledCell, outsideRefusal } from './enter.ts';
import type { EnteredMany, LeftAsItWas } from './enter-many.ts';
import { changeName, defineName, renameName } from './names.ts';
import { withProperty } from './properties.ts';

/** What is left out stays as it is. */
export interface GivenCell extends CellPlace {
  /** Canonical. */
  readonly content?: string;
  readonly label?: string;
  readonly role?: Role;
  /** Name of exactly this cell. */
  readonly name?: string;
  /** How the name is shown (F24). */
  readonly symbol?: string;
}

/** A formula is worked, whatever the list calls it. */
const mayBe = ({ content }: Cell, role: Role): boolean =>
  !content.startsWith('=') || role === 'worked' || role === 'note';

interface Taken {
  /** Absent where nothing of it can be taken; `undefined` in it is an emptied cell. */
  readonly write?: Omit<CellWrite, 'row' | 'column'>;
  /** What could not be taken. */
  readonly why?: string;
}

/** The cell with what is given. */
function takenCell(was: Cell | undefined, { content, role }: GivenCell, currency: string): Taken {
  let cell: Cell = was ?? { content: '' };
  if (content !== undefined) {
    const canonical = canonicalContent(content, { separator: ';', currency }, was);
    if (isRefusal(canonical)) return { why: canonical.message };
    const why = choiceRefusal(was, canonical.content);
    if (why !== undefined) return { why };
    cell = filledCell(was, canonical, currency);
  }
  const changes = role !== undefined && role !== roleOf(cell);
  if (changes && !mayBe(cell, role))
    return { write: { cell: tidyCell(cell) }, why: `it is ${roleOf(cell)} and can not be ${role}` };
  return { write: { cell: tidyCell(changes ? { ...cell, role } : cell) } };
}

/** Labels of their own for those cells that the texts beside them name otherwise. */
function withLabels(notebook: Notebook, given: readonly GivenCell[]): Notebook {
  const writes = new Map<string, CellWrite[]>();
  for (const { worksheet, row, column, label } of given) {
    const sheet = worksheetOf(notebook, worksheet);
    const cell = cellAt(sheet, row, column);
    if (!cell || label === undefined || labelOf(sheet, row, column) === label) continue;
    const own = withProperty(cell, 'label', label === '' ? undefined : label);
    const list = writes.get(worksheet) ?? [];
    list.push({ row, column, cell: own });
    writes.set(worksheet, list);
  }
  let after = notebook;
  for (const [worksheet, cells] of writes) after = withWrites(after, worksheet, cells);
  return after;
}

/** The notebook with the name and its symbol at the place; words where it can not be. */
function withName(
  notebook: Notebook,
  { worksheet, row, column, name, symbol }: GivenCell,
): Notebook | string {
  const here = worksheetOf(notebook, worksheet).names.find(
    ({ target }) =>
      target.row === row && target.column === column && target.rows === 1 && target.columns === 1,
  );
  const shown = symbol === undefined ? {} : { symbol };
  const called = name ?? here?.name;
  if (called === undefined) return notebook;
  const target = { row, column, rows: 1, columns: 1 };
  const answer = here
    ? renameName(notebook, { worksheet, name: here.name, to: called })
    : defineName(notebook, { worksheet, name: called, target, ...shown });
  if (isRefusal(answer)) return answer.message;
  const named = apply(notebook, answer.changes);
  const last = changeName(named, { worksheet, name: called, ...shown });
  return isRefusal(last) ? last.message : apply(named, last.changes);
}

/** One step for all of them, however many worksheets; `before` is the notebook it starts from where worksheets were added for them. */
export function takeCells(
  notebook: Notebook,
  given: readonly GivenCell[],
  description: string,
  before = notebook,
): EnteredMany {
  const writes = new Map<string, CellWrite[]>();
  const left: LeftAsItWas[] = [];
  for (const each of given) {
    const { worksheet, row, column } = each;
    const outside = outsideRefusal({ row, column, rows: 1, columns: 1 });
    const was = cellAt(worksheetOf(notebook, worksheet), row, column);
    const { write, why }: Taken = outside
      ? { why: outside.message }
      : takenCell(was, each, notebook.currency);
    if (why !== undefined) left.push({ worksheet, row, column, why });
    if (!write) continue;
    const list = writes.get(worksheet) ?? [];
    list.push({ row, column, ...write });
    writes.set(worksheet, list);
  }
  let after = notebook;
  for (const [worksheet, cells] of writes) after = withWrites(after, worksheet, cells);
  after = withLabels(after, given);
  for (const each of given) {
    if (each.name === undefined && each.symbol === undefined) continue;
    const named = withName(after, each);
    if (typeof named !== 'string') after = named;
    else left.push({ worksheet: each.worksheet, row: each.row, column: each.column, why: named });
  }
  return { transaction: transactionTo(before, after, description), left };
}
