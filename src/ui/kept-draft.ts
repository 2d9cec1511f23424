/** A text that was being typed when the page was taken away, by the system or a reload: brought back with the page, in this window. */

import { LIMITS, findWorksheet } from '../document/index.ts';
import { openDraft } from './editing.ts';
import { CELL_GONE } from './not-taken.ts';
import type { Session } from './session.ts';

const keyOf = ({ notebook }: Session): string => `being typed ${notebook.id}`;

/** Keeps the open text, or forgets the one of this notebook that was kept. */
export function keepDraft(session: Session | undefined): void {
  if (!session) return;
  const { draft, address } = session;
  try {
    if (draft) sessionStorage.setItem(keyOf(session), JSON.stringify({ ...address, text: draft.text }));
    else sessionStorage.removeItem(keyOf(session));
  } catch {
    // A window without storage loses it with the page.
  }
}

/** Opens the text in its cell again, once; also where it can only be read, and where its cell is gone: then it says so. */
export function bringDraftBack(session: Session): void {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(keyOf(session)) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return;
    sessionStorage.removeItem(keyOf(session));
    const { worksheet, row, column, text } = kept as Record<string, unknown>;
    if (typeof worksheet !== 'string' || typeof row !== 'number' || typeof column !== 'number') return;
    if (typeof text !== 'string' || text.length > 2 * LIMITS.contentLength) return;
    const sheet = findWorksheet(session.notebook, worksheet);
    const there = sheet && row >= 0 && row < sheet.rowCount && column >= 0 && column < sheet.columnCount;
    if (there) session.select(row, column, false, worksheet);
    openDraft(session, text, false, 'cell');
    if (!there) session.say(CELL_GONE, true);
  } catch {
    // What can not be read was no text of ours.
  }
}
