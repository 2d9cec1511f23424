/** Typing into cells, clearing them, and their display unit. */

import { canonicalContent, isSameDimension } from '../canonical-content.ts';
import type { Canonical, TypingLocale } from '../canonical-content.ts';
import { cellAt, checkBlock, worksheetOf } from '../cells.ts';
import type { CellPlace, CellWrite } from '../cells.ts';
import type { Transaction } from '../change.ts';
import { transactionTo } from '../changes-between.ts';
import { readContent } from '../content.ts';
import { isUnknownUnit, parseUnit } from '../../quantity/index.ts';
import { addressOf, blockText } from '../formula-references.ts';
import { LIMITS } from '../notebook.ts';
import type { Block, Cell, Notebook } from '../notebook.ts';
import { isRefusal } from '../refusal.ts';
import type { Refusal } from '../refusal.ts';
import { tidyCell } from '../tidy-cell.ts';
import { withWrites } from '../with-worksheet.ts';
import { changeCells, withProperty } from './properties.ts';
import type { CellsArgs } from './properties.ts';

export interface EnterArgs extends CellPlace, Omit<TypingLocale, 'currency'> {
  /** What was typed into the cell, or pasted from the cell on to the right and down. */
  readonly typed: string | readonly (readonly string[])[];
}

/** A cell after new content, given what it was: its own unit falls where it no longer fits, a formula makes it worked. */
export function filledCell(was: Cell | undefined, canonical: Canonical, currency: string): Cell {
  const { content, dropsUnit } = canonical;
  let cell: Cell = { ...was, content };
  if (dropsUnit) cell = withProperty(cell, 'unit', undefined);
  if (was && was.content !== content) {
    cell = withProperty(withProperty(cell, 'acknowledged', undefined), 'changed', undefined);
  }
  if (content === '') return withProperty(cell, 'source', undefined);
  const read = readContent(content, currency);
  if (read.type === 'formula') {
    if (cell.role !== undefined && cell.role !== 'worked' && cell.role !== 'note') {
      cell = withProperty(cell, 'role', undefined);
    }
    cell = withProperty(withProperty(cell, 'choices', undefined), 'source', undefined);
    if (cell.machine?.place === 'changed') cell = { ...cell, machine: { place: 'shown' } };
    return cell;
  }
  if (cell.role === 'worked') cell = withProperty(cell, 'role', undefined);
  if (read.type === 'quantity' && cell.unit !== undefined) {
    const keeps =
      isSameDimension(cell.unit, read.unitText, currency) && !isSameUnit(cell.unit, read.unitText, currency);
    if (!keeps) cell = withProperty(cell, 'unit', undefined);
  }
  return cell;
}

const isSameUnit = (a: string, b: string, currency: string): boolean =>
  parseUnit(a, currency) === parseUnit(b, currency);

const wasGiven = (cell: Cell | undefined): boolean =>
  cell?.role === 'given' ||
  cell?.role === 'measured' ||
  cell?.role === 'choice' ||
  cell?.machine?.place === 'changed';

/** Why a text can not be picked; undefined where the cell has no choices, is emptied or gets a formula. */
export function choiceRefusal(cell: Cell | undefined, content: string): string | undefined {
  if (!cell?.choices || content === '' || content.startsWith('=')) return undefined;
  const text = content.startsWith("'") ? content.slice(1) : content;
  if (cell.choices.includes(text)) return undefined;
  return `"${text}" is none of the choices: ${cell.choices.join(', ')}.`;
}

/** Puts what was typed or pasted into cells; one paste is one step. Refused with the cell named where a text has two readings. */
export function enter(notebook: Notebook, args: EnterArgs): Transaction | Refusal {
  const { worksheet, row, column, typed } = args;
  const sheet = worksheetOf(notebook, worksheet);
  const lines = typeof typed === 'string' ? [[typed]] : typed;
  const columns = lines.reduce((most, line) => Math.max(most, line.length), 0);
  const refusal = outsideRefusal({ row, column, rows: lines.length, columns });
  if (refusal) return refusal;
  const locale = {
    ...(args.decimalMark && { decimalMark: args.decimalMark }),
    ...(args.separator && { separator: args.separator }),
    currency: notebook.currency,
  };
  const writes: CellWrite[] = [];
  const worked: string[] = [];
  for (const [down, line] of lines.entries()) {
    for (const [right, text] of line.entries()) {
      const place = { row: row + down, column: column + right };
      const was = cellAt(sheet, place.row, place.column);
      const canonical = canonicalContent(text, locale, was);
      const address = addressOf(place.row, place.column);
      if (isRefusal(canonical)) return { ...canonical, message: `${address}: ${canonical.message}` };
      const stranger = choiceRefusal(was, canonical.content);
      if (stranger) return { message: `${address}: ${stranger}` };
      if (canonical.content.startsWith('=') && wasGiven(was)) worked.push(address);
      writes.push({ ...place, cell: tidyCell(filledCell(was, canonical, notebook.currency)) });
    }
  }
  const [first = '', ...others] = worked;
  const notice =
    others.length > 0
      ? `${worked.length} cells are worked now: ${worked.slice(0, 5).join(', ')}${worked.length > 5 ? ' ...' : ''}.`
      : `${first} is worked now.`;
  const target = { row, column, rows: Math.max(1, lines.length), columns: Math.max(1, columns) };
  return transactionTo(
    notebook,
    withWrites(notebook, worksheet, writes),
    `enter ${blockText(target)}`,
    worked.length > 0 ? { notice } : {},
  );
}

/** Why a block has no room on any worksheet; undefined where it has. */
export function outsideRefusal({ row, column, rows, columns }: Block): Refusal | undefined {
  if (row + rows <= LIMITS.rows && column + columns <= LIMITS.columns) return undefined;
  return {
    message: `The block would reach beyond row ${LIMITS.rows} or column BL; there is no room for ${rows} rows and ${columns} columns at ${addressOf(row, column)}.`,
  };
}

/**
 * Empties cells. 'content' keeps what the place is for (unit, format, limits, label, role, machine place) and
 * drops what belonged to the value (source, acknowledgements, the mark of a change at the machine); 'all' leaves nothing.
 */
export function clear(
  notebook: Notebook,
  { worksheet, block, what = 'content' }: CellsArgs & { readonly what?: 'content' | 'all' },
): Transaction | Refusal {
  checkBlock(block);
  const sheet = worksheetOf(notebook, worksheet);
  const writes: CellWrite[] = [];
  for (let row = block.row; row < block.row + block.rows; row++) {
    for (let column = block.column; column < block.column + block.columns; column++) {
      const was = cellAt(sheet, row, column);
      if (!was) continue;
      const { source: _source, acknowledged: _acknowledged, changed: _changed, ...rest } = was;
      const cell = what === 'all' ? undefined : tidyCell({ ...rest, content: '' });
      writes.push({ row, column, cell });
    }
  }
  return transactionTo(notebook, withWrites(notebook, worksheet, writes), `clear ${blockText(block)}`);
}

/**
 * The unit in which cells are shown. A plain number takes it (F1a); a quantity is converted for display only;
 * undefined goes back to the unit as typed, or the default of a formula's kind.
 */
export function setUnit(
  notebook: Notebook,
  args: CellsArgs & { readonly unit?: string },
): Transaction | Refusal {
  const { unit } = args;
  const { currency } = notebook;
  if (unit !== undefined) {
    const parsed = parseUnit(unit, currency);
    if (isUnknownUnit(parsed)) {
      const near = parsed.near.length > 0 ? ` Near: ${parsed.near.join(', ')}.` : '';
      return { message: `Unknown unit ${unit}.${near}` };
    }
  }
  return changeCells(notebook, args, 'unit', (cell, row, column) => {
    if (unit === undefined) return withProperty(cell, 'unit', undefined);
    const read = readContent(cell.content, currency);
    if (read.type === 'number') {
      return { ...withProperty(cell, 'unit', undefined), content: `${plainNumber(cell.content)} ${unit}` };
    }
    if (read.type !== 'quantity') return withProperty(cell, 'unit', unit);
    if (isSameUnit(read.unitText, unit, currency)) return withProperty(cell, 'unit', undefined);
    if (isSameDimension(read.unitText, unit, currency)) return withProperty(cell, 'unit', unit);
    return {
      message: `${addressOf(row, column)} holds ${cell.content}, which can not be shown in ${unit}.`,
    };
  });
}

const plainNumber = (content: string): string => content.trim().replace(/\s+1$/, '');

/** Makes plain numbers of quantities: the number that is shown as typed stays, its unit goes (F1a). */
export function removeUnit(notebook: Notebook, args: CellsArgs): Transaction | Refusal {
  return changeCells(notebook, args, 'unit', (cell) => {
    const bare = withProperty(cell, 'unit', undefined);
    const read = readContent(cell.content, notebook.currency);
    return read.type === 'quantity' ? { ...bare, content: read.digits } : bare;
  });
}
