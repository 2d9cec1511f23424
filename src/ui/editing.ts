/** What the hands do, as commands on the session: typing, clearing, copying, units, roles, names, rows and columns. */

import {
  LIMITS,
  acknowledge as acknowledgeCommand,
  cellAt,
  clear,
  contentOf,
  copy,
  cut,
  defineName,
  deleteLines,
  deleteName,
  enter,
  fill,
  insertLines,
  isRefusal,
  paste,
  removeUnit,
  renameName,
  setRole as setRoleCommand,
  setUnit as setUnitCommand,
  setWidth,
  worksheetOf,
} from '../document/index.ts';
import type { Block, Clipboard, FillDirection, Role } from '../document/index.ts';
import { isKindName, kindNamed, unitsOfKind } from '../quantity/index.ts';
import { CELL_CHANGED, STAYS_OPEN, notTaken } from './not-taken.ts';
import { editedText, typing } from './number-locale.ts';
import type { OpenCaution } from './open-cautions.ts';
import type { Session } from './session.ts';

/** The selected block with its corners in order. */
export function selectedBlock({ selection }: Session): Block {
  const { row, column, toRow, toColumn } = selection;
  return {
    row: Math.min(row, toRow),
    column: Math.min(column, toColumn),
    rows: Math.abs(row - toRow) + 1,
    columns: Math.abs(column - toColumn) + 1,
  };
}

const blockArgs = (session: Session): { readonly worksheet: string; readonly block: Block } => ({
  worksheet: session.worksheet.id,
  block: selectedBlock(session),
});

/** Text of a cell as it is edited at this device; of the active one unless another is named. */
export const contentHere = (
  session: Session,
  row = session.selection.row,
  column = session.selection.column,
): string => editedText(cellAt(session.worksheet, row, column)?.content ?? '', session.notebook.currency);

/** Opens the active cell for editing with this text, the caret at its end. */
export function startDraft(session: Session, text: string, typedOver: boolean, where: 'cell' | 'line'): void {
  if (!session.readOnly) openDraft(session, text, typedOver, where);
}

/** The same for a text that was being typed before: also where it can only be read and copied. */
export function openDraft(session: Session, text: string, typedOver: boolean, where: 'cell' | 'line'): void {
  session.notice = undefined;
  session.leaveDraft = () => commitDraft(session, undefined);
  const over = contentHere(session);
  session.setDraft({ text, from: text.length, to: text.length, typedOver, over, where });
}

/** Leaves the cell as it was. */
export function dropDraft(session: Session): void {
  session.notice = undefined;
  session.setDraft(undefined);
}

/** Takes the draft into the cell and moves on; false where it is refused: then it stays open with the words why. */
export function commitDraft(session: Session, move: 'up' | 'down' | 'left' | 'right' | undefined): boolean {
  const { draft, preview } = session;
  if (!draft) return true;
  const { worksheet, row, column } = session.address;
  const now = contentHere(session);
  const unchanged = draft.text === now;
  if (!unchanged && draft.over !== undefined && draft.over !== now) {
    session.setDraft({ ...draft, over: now });
    session.say(CELL_CHANGED, true);
    return false;
  }
  if (!unchanged) {
    const typed = draft.text.replace(/[\r\n]+/g, ' ');
    const answer = enter(session.notebook, { worksheet, row, column, typed, ...typing() });
    if (isRefusal(answer)) {
      session.run(answer);
      return false;
    }
    session.draft = undefined;
    session.preview = undefined;
    if (!session.run(answer)) {
      Object.assign(session, { draft, preview });
      if (session.readOnly) session.say(`${notTaken(session)} ${STAYS_OPEN}`, true);
      return false;
    }
    if (answer.notice) session.notice = { words: answer.notice, refused: false };
  }
  const { notice } = session;
  session.setDraft(undefined);
  if (move) {
    grow(session, move);
    session.move(move, false);
    session.notice = notice;
  }
  return true;
}

/** Going down from the last row lets the worksheet grow by some rows, to the limit. */
function grow(session: Session, move: 'up' | 'down' | 'left' | 'right'): void {
  const { id, rowCount } = session.worksheet;
  if (move !== 'down' || session.selection.row < rowCount - 1 || rowCount >= LIMITS.rows) return;
  const count = Math.min(20, LIMITS.rows - rowCount);
  session.run(insertLines(session.notebook, { worksheet: id, axis: 'row', at: rowCount, count }));
}

export function clearSelection(session: Session): void {
  session.run(clear(session.notebook, blockArgs(session)));
}

/** What was copied or cut last here: pasting its text again shifts references instead of reading the text anew. */
const taken = new WeakMap<Session, { readonly text: string; readonly clipboard: Clipboard }>();

/** The selected contents as text, columns parted by tabs; a cut takes effect when it is pasted. */
export function copyText(session: Session, isCut: boolean): string {
  const { row, column, rows, columns } = selectedBlock(session);
  const lines: string[] = [];
  for (let r = row; r < row + rows; r += 1) {
    const line: string[] = [];
    for (let c = column; c < column + columns; c += 1)
      line.push(contentHere(session, r, c).replaceAll(/[\t\n\r]/g, ' '));
    lines.push(line.join('\t'));
  }
  const text = lines.join('\n');
  taken.set(session, { text, clipboard: (isCut ? cut : copy)(session.notebook, blockArgs(session)) });
  return text;
}

/** Pastes what was copied or cut here, references shifted; false where the text came from elsewhere. One paste is one step. */
export function pasteOwn(session: Session, text: string): boolean {
  const { worksheet } = session.address;
  const own = taken.get(session);
  if (!own || own.text !== text.replaceAll('\r\n', '\n')) return false;
  const { clipboard } = own;
  session.run(paste(session.notebook, { clipboard, worksheet, ...selectedBlock(session) }));
  if (clipboard.cut) taken.delete(session);
  return true;
}

/** Fills the selection from the row or column at one of its edges; references shift as in copies. */
export function fillSelection(session: Session, direction: FillDirection): void {
  session.run(fill(session.notebook, { ...blockArgs(session), direction }));
}

/** Of the worksheet in sight. */
export function resizeColumn(session: Session, column: number, width: number): void {
  session.run(setWidth(session.notebook, { worksheet: session.inSight.id, column, width }));
}

export function setRole(session: Session, role: Role): void {
  session.run(setRoleCommand(session.notebook, { ...blockArgs(session), role }));
}

/** Units in which the active cell's value can be shown; "" (plain) only for plain numbers. */
export function unitChoices(session: Session): readonly string[] {
  const { result, cell } = session;
  if (!cell || !result || typeof result.value !== 'number' || !isKindName(result.kind)) return [];
  const kind = kindNamed(result.kind);
  const units = unitsOfKind(kind).map((unit) => unit.symbol);
  const plain = contentOf(cell, session.notebook.currency).type === 'number' && result.unit === '';
  return [...new Set([...(plain ? [''] : []), result.unit, ...units])];
}

export function setUnit(session: Session, unit: string): void {
  session.run(
    unit === ''
      ? removeUnit(session.notebook, blockArgs(session))
      : setUnitCommand(session.notebook, { ...blockArgs(session), unit }),
  );
}

/** Gives the selection a name, renames it, or takes the name away (empty text). */
export function nameSelection(session: Session, text: string, now: string | undefined): void {
  const worksheet = session.worksheet.id;
  const { notebook } = session;
  if (text === (now ?? '')) return;
  if (now === undefined)
    session.run(defineName(notebook, { worksheet, name: text, target: selectedBlock(session) }));
  else if (text === '') session.run(deleteName(notebook, { worksheet, name: now }));
  else session.run(renameName(notebook, { worksheet, name: now, to: text }));
}

export function acknowledge(session: Session, caution: OpenCaution, reason: string): void {
  const { address, key, text } = caution;
  if (key !== undefined) session.run(acknowledgeCommand(session.notebook, { ...address, key, text, reason }));
}

const rowLines = (session: Session): Parameters<typeof insertLines>[1] => {
  const { row, rows } = selectedBlock(session);
  return { worksheet: session.worksheet.id, axis: 'row', at: row, count: rows };
};
const columnLines = (session: Session): Parameters<typeof insertLines>[1] => {
  const { column, columns } = selectedBlock(session);
  return { worksheet: session.worksheet.id, axis: 'column', at: column, count: columns };
};
export const insertRows = (session: Session): boolean =>
  session.run(insertLines(session.notebook, rowLines(session)));
export const deleteRows = (session: Session): boolean =>
  session.run(deleteLines(session.notebook, rowLines(session)));
export const insertColumns = (session: Session): boolean =>
  session.run(insertLines(session.notebook, columnLines(session)));
export const deleteColumns = (session: Session): boolean =>
  session.run(deleteLines(session.notebook, columnLines(session)));

/** Puts lines of text into the page where the active cell stands, as one step. */
export function insertLinesOfText(session: Session, typed: readonly (readonly string[])[]): boolean {
  if (session.draft && !session.leaveDraft?.()) return false;
  const { worksheet, row, column } = session.address;
  const sheet = worksheetOf(session.notebook, worksheet);
  for (let r = 0; r < typed.length; r += 1)
    for (let c = 0; c < (typed[r]?.length ?? 0); c += 1)
      if (cellAt(sheet, row + r, column + c)) {
        session.say(
          'There is something in the way here: select a place with room below and to the right.',
          true,
        );
        return false;
      }
  return session.run(enter(session.notebook, { worksheet, row, column, typed }));
}
