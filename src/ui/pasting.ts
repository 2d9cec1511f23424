/** Pasting: what was copied here goes on as it is; a table of another program is understood, and shown first where anything in it is not plain. */

import { enter, isRefusal } from '../document/index.ts';
import { pasteOwn } from './editing.ts';
import { openLeaf } from './open-leaf.ts';
import { typing } from './number-locale.ts';
import type { Session } from './session.ts';

/** A table to be looked at before it is taken, for the leaf "table". */
export interface ForeignTable {
  readonly text: string;
  /** Where it comes from: "what was copied", the name of a file. */
  readonly from: string;
  readonly copied: boolean;
}

/** Shows the table or list of a file before it is taken. */
export async function showFile(from: EventTarget, name: string, text: string): Promise<void> {
  const { leafOf } = await import('./foreign-table.ts');
  openLeaf(from, leafOf(text), { text, from: name, copied: false });
}

/** Puts a copied text into the worksheet from the active cell on, or asks in the leaf "table". */
export function pasteFrom(session: Session, text: string, from: EventTarget): void {
  if (session.readOnly || text === '' || pasteOwn(session, text)) return;
  const { notebook, address } = session;
  const ask = (leaf = 'table'): void => openLeaf(from, leaf, { text, from: 'what was copied', copied: true });
  if (!/[\t\r\n]/.test(text.replace(/\r?\n$/, ''))) {
    const answer = enter(notebook, { ...address, typed: text.replace(/\r?\n$/, ''), ...typing() });
    if (isRefusal(answer) && answer.readings) ask();
    else session.run(answer);
    return;
  }
  void import('./foreign-table.ts').then(({ takeCopied }) => takeCopied(session, address, text, ask));
}
