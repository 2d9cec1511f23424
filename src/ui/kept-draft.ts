/** A text that was being typed when the page was taken away, by the system or a reload: brought back with the page, in this window. */

import { LIMITS, findWorksheet } from '../document/index.ts';
import { startDraft } from './editing.ts';
import type { Session } from './session.ts';

const KEY = 'being typed';

/** Keeps the open text, or forgets the one that was kept. */
export function keepDraft(session: Session | undefined): void {
  const { draft, address, notebook } = session ?? {};
  try {
    if (draft && notebook)
      sessionStorage.setItem(KEY, JSON.stringify({ notebook: notebook.id, ...address, text: draft.text }));
    else sessionStorage.removeItem(KEY);
  } catch {
    // A window without storage loses it with the page.
  }
}

/** Opens the text in its cell again, once. */
export function bringDraftBack(session: Session): void {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? 'null');
    if (typeof kept !== 'object' || kept === null || session.readOnly) return;
    const { notebook, worksheet, row, column, text } = kept as Record<string, unknown>;
    if (notebook !== session.notebook.id) return;
    sessionStorage.removeItem(KEY);
    if (typeof worksheet !== 'string' || typeof row !== 'number' || typeof column !== 'number') return;
    if (typeof text !== 'string' || text.length > 2 * LIMITS.contentLength) return;
    const sheet = findWorksheet(session.notebook, worksheet);
    if (!sheet || !(row >= 0 && row < sheet.rowCount && column >= 0 && column < sheet.columnCount)) return;
    session.select(row, column, false, worksheet);
    startDraft(session, text, false, 'cell');
  } catch {
    // What can not be read was no text of ours.
  }
}
