/** Pointing at cells while a formula is typed, by pointer or arrow keys: puts a name, an address or a range where a reference may stand. */

import { addressText, titleText, tokenize } from '../expression/index.ts';
import type { Token } from '../expression/index.ts';
import type { Worksheet } from '../document/index.ts';
import type { Move } from './keymap.ts';
import { typing } from './number-locale.ts';
import type { Session } from './session.ts';

const BEFORE_REFERENCE = new Set<Token['type']>(['equals', 'operator', 'separator', 'open', 'colon', 'row']);
const REFERENCE = new Set<Token['type']>(['cell', 'name']);

/** A reference that was pointed at and can be pulled on, as long as the text stands as it left it. */
interface Pointed {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  readonly row: number;
  readonly column: number;
  readonly toRow: number;
  readonly toColumn: number;
}
const latest = new WeakMap<Session, Pointed>();

/** The cell that was pointed at last, while its reference is the end of what is typed. */
export function pointedAt(session: Session): Pointed | undefined {
  const { draft } = session;
  const pointed = latest.get(session);
  return pointed && draft?.text === pointed.text && draft.from === pointed.to && draft.to === pointed.to
    ? pointed
    : undefined;
}

/** Where a reference would begin; undefined where none may stand. */
function placeFor(session: Session): { readonly from: number; readonly gap: string } | undefined {
  const { draft } = session;
  if (!draft?.text.startsWith('=')) return undefined;
  const pointed = pointedAt(session);
  if (pointed) return { from: pointed.from, gap: '' };
  const last = tokenize(draft.text, typing())
    .filter((token) => token.from < draft.from)
    .at(-1);
  if (!last) return undefined;
  if (REFERENCE.has(last.type) && last.to === draft.from) return { from: last.from, gap: '' };
  if (!BEFORE_REFERENCE.has(last.type)) return undefined;
  return { from: draft.from, gap: last.type === 'separator' && draft.from === last.to ? ' ' : '' };
}

/** Name of exactly this block, else its address. */
function referenceText(
  worksheet: Worksheet,
  { row, column, toRow, toColumn }: Omit<Pointed, 'text'>,
): string {
  const [top, left] = [Math.min(row, toRow), Math.min(column, toColumn)];
  const [rows, columns] = [Math.abs(row - toRow) + 1, Math.abs(column - toColumn) + 1];
  const name = worksheet.names.find(
    ({ target }) =>
      target.row === top && target.column === left && target.rows === rows && target.columns === columns,
  );
  if (name) return name.name;
  const first = addressText(left, top);
  return rows * columns === 1 ? first : `${first}:${addressText(left + columns - 1, top + rows - 1)}`;
}

/** Puts the block of these corners into the text; false where no reference may stand at the caret. */
function point(session: Session, corners: Pick<Pointed, 'row' | 'column' | 'toRow' | 'toColumn'>): boolean {
  const { draft, worksheet, selection } = session;
  const place = placeFor(session);
  if (!draft || !place) return false;
  const from = place.from + place.gap.length;
  const own = worksheet.id === selection.worksheet;
  const title = own ? '' : `${titleText(worksheet.title)}.`;
  const reference = title + referenceText(worksheet, { ...corners, from, to: from });
  const text = draft.text.slice(0, place.from) + place.gap + reference + draft.text.slice(draft.to);
  const to = from + reference.length;
  latest.set(session, { ...corners, text, from, to });
  session.setDraft({ ...draft, text, from: to, to });
  return true;
}

/** True where the pointed cell went into the text. */
export const pointAt = (session: Session, row: number, column: number): boolean =>
  point(session, { row, column, toRow: row, toColumn: column });

/** Pulls the reference on to another cell; false where none is being pointed at. */
export function pointTo(session: Session, row: number, column: number): boolean {
  const pointed = pointedAt(session);
  if (!pointed) return false;
  if (pointed.toRow === row && pointed.toColumn === column) return true;
  return point(session, { row: pointed.row, column: pointed.column, toRow: row, toColumn: column });
}

const STEPS = new Map<Move, readonly [number, number]>([
  ['up', [-1, 0]],
  ['down', [1, 0]],
  ['left', [0, -1]],
  ['right', [0, 1]],
]);

/** Arrow keys: from the cell that is edited, or from the one pointed at; with Shift the range grows. */
export function pointBy(session: Session, move: Move, extend: boolean): boolean {
  const { draft, worksheet, selection } = session;
  const step = STEPS.get(move);
  if (!draft?.typedOver || !step || draft.from !== draft.to) return false;
  const pointed = pointedAt(session);
  // Behind a finished reference the arrows belong to the caret, unless it was pointed at.
  if (!pointed && placeFor(session)?.from !== draft.from) return false;
  const [row, column] = pointed
    ? extend
      ? [pointed.toRow, pointed.toColumn]
      : [pointed.row, pointed.column]
    : [selection.row, selection.column];
  const toRow = Math.min(Math.max(row + step[0], 0), worksheet.rowCount - 1);
  const toColumn = Math.min(Math.max(column + step[1], 0), worksheet.columnCount - 1);
  return pointed && extend ? pointTo(session, toRow, toColumn) : pointAt(session, toRow, toColumn);
}
