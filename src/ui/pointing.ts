/** Pointing at cells while a formula is typed, by pointer or arrow keys: puts a name, an address or a range where a reference may stand. */

import { addressText, titleText, tokenize } from '../expression/index.ts';
import type { Token } from '../expression/index.ts';
import { worksheetTitled } from '../document/index.ts';
import type { Worksheet } from '../document/index.ts';
import type { Move } from './keymap.ts';
import { typing } from './number-locale.ts';
import type { Session } from './session.ts';

const BEFORE_REFERENCE = new Set<Token['type']>(['equals', 'operator', 'separator', 'open', 'colon', 'row']);
const REFERENCE = new Set<Token['type']>(['cell', 'name']);

interface Corners {
  readonly row: number;
  readonly column: number;
  readonly toRow: number;
  readonly toColumn: number;
}

/** A reference that was pointed at and can be pulled on, as long as the text stands as it left it. */
interface Pointed extends Corners, Place {
  readonly text: string;
  readonly to: number;
  /** Id of the worksheet it lies on. */
  readonly worksheet: string;
}
const latest = new WeakMap<Session, Pointed>();

/** Where in the text a reference would stand. */
interface Place {
  readonly from: number;
  /** Behind the colon of a range: where the range begins, and the worksheet its first cell lies on. */
  readonly range?: { readonly from: number; readonly worksheet: string | undefined };
}

/** What was pointed at last, while its reference is the end of what is typed. */
export function pointedAt(session: Session): Pointed | undefined {
  const { draft } = session;
  const pointed = latest.get(session);
  return pointed && draft?.text === pointed.text && draft.from === pointed.to && draft.to === pointed.to
    ? pointed
    : undefined;
}

/** The same, where it lies on the worksheet in sight. */
export function pointedInSight(session: Session): Pointed | undefined {
  const pointed = pointedAt(session);
  return pointed?.worksheet === session.inSight.id ? pointed : undefined;
}

/** The token with which the reference begins that ends with the token at this place: its worksheet, or itself. */
const beginning = (tokens: readonly Token[], at: number): number =>
  tokens[at - 1]?.type === 'dot' && tokens[at - 2]?.type === 'worksheet' ? at - 2 : at;

/** The range whose last cell would begin behind these tokens. */
function rangeBefore(session: Session, tokens: readonly Token[]): Place['range'] {
  const cell = tokens.length - 2;
  if (tokens.at(-1)?.type !== 'colon' || tokens[cell]?.type !== 'cell') return undefined;
  const start = beginning(tokens, cell);
  const worksheet =
    start === cell ? session.worksheet : worksheetTitled(session.notebook, tokens[start]?.value ?? '');
  return { from: tokens[start]?.from ?? 0, worksheet: worksheet?.id };
}

/** Where a reference would begin; undefined where none may stand. */
function placeFor(session: Session): (Place & { readonly gap: string }) | undefined {
  const { draft } = session;
  if (!draft?.text.startsWith('=')) return undefined;
  const pointed = pointedAt(session);
  if (pointed) return { ...pointed, gap: '' };
  const tokens = tokenize(draft.text, typing()).filter((token) => token.from < draft.from);
  const last = tokens.at(-1);
  if (!last) return undefined;
  const isReplaced = REFERENCE.has(last.type) && last.to === draft.from;
  if (!isReplaced && !BEFORE_REFERENCE.has(last.type)) return undefined;
  const before = isReplaced ? tokens.slice(0, beginning(tokens, tokens.length - 1)) : tokens;
  const range = rangeBefore(session, before);
  return {
    from: isReplaced ? (tokens[before.length]?.from ?? last.from) : draft.from,
    gap: last.type === 'separator' && draft.from === last.to ? ' ' : '',
    ...(range && { range }),
  };
}

/** Name of exactly this block, else its address. */
function referenceText(worksheet: Worksheet, { row, column, toRow, toColumn }: Corners): string {
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

/** Puts the block of these corners into the text, qualified where another worksheet is in sight; false where no reference may stand at the caret. */
export function point(session: Session, corners: Corners): boolean {
  const { draft, inSight, worksheet } = session;
  const place = placeFor(session);
  if (!draft || !place) return false;
  // The second cell of a range is an address on the worksheet of the first; on any other a reference of its own takes the range's place.
  const range = place.range?.worksheet === inSight.id ? place.range : undefined;
  const begin = range || !place.range ? place.from + place.gap.length : place.range.from;
  const title = inSight.id === worksheet.id ? '' : `${titleText(inSight.title)}.`;
  const reference = range
    ? addressText(corners.toColumn, corners.toRow)
    : title + referenceText(inSight, corners);
  const gap = begin > place.from ? place.gap : '';
  const text = draft.text.slice(0, begin - gap.length) + gap + reference + draft.text.slice(draft.to);
  const to = begin + reference.length;
  const { toRow: row, toColumn: column } = corners;
  latest.set(session, {
    ...(range ? { row, column, toRow: row, toColumn: column, range } : corners),
    worksheet: inSight.id,
    text,
    from: begin,
    to,
  });
  session.setDraft({ ...draft, text, from: to, to });
  return true;
}

/** True where the pointed cell went into the text. */
export const pointAt = (session: Session, row: number, column: number): boolean =>
  point(session, { row, column, toRow: row, toColumn: column });

/** Pulls the reference on to another cell; false where none is being pointed at on the worksheet in sight. */
export function pointTo(session: Session, row: number, column: number): boolean {
  const pointed = pointedInSight(session);
  if (!pointed) return false;
  if (pointed.toRow === row && pointed.toColumn === column) return true;
  return point(session, { row: pointed.row, column: pointed.column, toRow: row, toColumn: column });
}

/** The corner that stays while the reference is pulled by the handle at the other one. */
export function pullFrom(session: Session, handle: 'start' | 'end'): boolean {
  const pointed = pointedInSight(session);
  if (!pointed) return false;
  const rows = [pointed.row, pointed.toRow].toSorted((a, b) => a - b) as [number, number];
  const columns = [pointed.column, pointed.toColumn].toSorted((a, b) => a - b) as [number, number];
  const [stays, goes] = handle === 'end' ? ([0, 1] as const) : ([1, 0] as const);
  latest.set(session, {
    ...pointed,
    row: rows[stays],
    column: columns[stays],
    toRow: rows[goes],
    toColumn: columns[goes],
  });
  return true;
}

const STEPS = new Map<Move, readonly [number, number]>([
  ['up', [-1, 0]],
  ['down', [1, 0]],
  ['left', [0, -1]],
  ['right', [0, 1]],
]);

/** Arrow keys: from the cell that is edited, or from the one pointed at; with Shift the range grows. On another worksheet the first press is its first cell. */
export function pointBy(session: Session, move: Move, extend: boolean): boolean {
  const { draft, worksheet, inSight, selection } = session;
  const step = STEPS.get(move);
  if (!draft?.typedOver || !step || draft.from !== draft.to) return false;
  // Behind a finished reference the arrows belong to the caret, unless it was pointed at.
  if (!pointedAt(session) && placeFor(session)?.from !== draft.from) return false;
  const pointed = pointedInSight(session);
  if (!pointed && inSight.id !== worksheet.id) return pointAt(session, 0, 0);
  const [row, column] = pointed
    ? extend
      ? [pointed.toRow, pointed.toColumn]
      : [pointed.row, pointed.column]
    : [selection.row, selection.column];
  const toRow = Math.min(Math.max(row + step[0], 0), inSight.rowCount - 1);
  const toColumn = Math.min(Math.max(column + step[1], 0), inSight.columnCount - 1);
  return pointed && extend ? pointTo(session, toRow, toColumn) : pointAt(session, toRow, toColumn);
}

export const isFormulaOpen = ({ draft }: Session): boolean => draft?.text.startsWith('=') ?? false;

/** Shows a worksheet: while a formula is typed only to point into it, the formula stays open; else its first cell is selected. */
export function showWorksheet(session: Session, id: string): void {
  const { draft, worksheet } = session;
  if (!draft?.text.startsWith('=')) return session.select(0, 0, false, id);
  const { elsewhere: _, ...rest } = draft;
  const other = id === worksheet.id ? {} : { elsewhere: id };
  session.setDraft({ ...rest, ...other, typedOver: true, where: 'cell' });
}

/** The worksheet before or after the one in sight, round and round. */
export function showNextWorksheet(session: Session, by: 1 | -1): void {
  const { worksheets } = session.notebook;
  const at = worksheets.findIndex(({ id }) => id === session.inSight.id);
  const next = worksheets[(at + by + worksheets.length) % worksheets.length];
  if (next && next.id !== session.inSight.id) showWorksheet(session, next.id);
}
