/** Pointing at a cell while a formula is typed puts its name or address where a reference may stand. */

import { addressText, titleText, tokenize } from '../expression/index.ts';
import type { Token } from '../expression/index.ts';
import { typing } from './number-locale.ts';
import type { Session } from './session.ts';

const BEFORE_REFERENCE = new Set<Token['type']>(['equals', 'operator', 'separator', 'open', 'colon', 'row']);
const REFERENCE = new Set<Token['type']>(['cell', 'name']);

/** True where the pointed cell went into the text. */
export function pointAt(session: Session, row: number, column: number): boolean {
  const { draft, worksheet, selection } = session;
  if (!draft?.text.startsWith('=')) return false;
  const tokens = tokenize(draft.text, typing()).filter((token) => token.from < draft.from);
  const last = tokens.at(-1);
  if (!last) return false;
  const own = worksheet.id === selection.worksheet;
  const name = worksheet.names.find(
    ({ target }) =>
      target.row === row && target.column === column && target.rows === 1 && target.columns === 1,
  );
  const reference = `${own ? '' : `${titleText(worksheet.title)}.`}${name?.name ?? addressText(column, row)}`;
  let from = draft.from;
  if (REFERENCE.has(last.type) && last.to === draft.from) from = last.from;
  else if (!BEFORE_REFERENCE.has(last.type)) return false;
  const gap = last.type === 'separator' && from === last.to ? ' ' : '';
  const text = draft.text.slice(0, from) + gap + reference + draft.text.slice(draft.to);
  const caret = from + gap.length + reference.length;
  session.setDraft({ ...draft, text, from: caret, to: caret, typedOver: false });
  return true;
}
