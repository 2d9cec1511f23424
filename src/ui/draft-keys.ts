/** Keys while a text is being edited, in the cell and on the entry line alike. */

import { addressText } from '../expression/index.ts';
import { commitDraft } from './editing.ts';
import { completionAt } from './completion.ts';
import type { Completion } from './completion.ts';
import type { KeyLike } from './keymap.ts';
import type { Session } from './session.ts';

/** Which completion is marked, and the text for which it was put away with Escape. */
interface Picking {
  at: number;
  for: string;
  hidden: boolean;
}
const picking = new WeakMap<Session, Picking>();

export interface ShownCompletion extends Completion {
  readonly at: number;
}

/** The completion list as it is shown now; undefined while it is put away. */
export function shownCompletion(session: Session): ShownCompletion | undefined {
  const { draft } = session;
  if (!draft) return undefined;
  const state = pickingOf(session);
  if (state.hidden) return undefined;
  const completion = completionAt({
    draft,
    notebook: session.notebook,
    worksheet: session.worksheet,
    catalogue: session.catalogue,
  });
  return completion && { ...completion, at: Math.min(state.at, completion.choices.length - 1) };
}

function pickingOf(session: Session): Picking {
  const text = session.draft?.text ?? '';
  const known = picking.get(session);
  if (known && known.for === text) return known;
  const made = { at: 0, for: text, hidden: false };
  picking.set(session, made);
  return made;
}

/** Puts a choice into the text. */
export function pick(session: Session, completion: Completion, at: number): void {
  const choice = completion.choices[at];
  const { draft } = session;
  if (!choice || !draft) return;
  const rest = draft.text.slice(completion.to);
  const insert =
    choice.insert.endsWith('(') && rest.startsWith('(') ? choice.insert.slice(0, -1) : choice.insert;
  const caret = completion.from + insert.length;
  session.setDraft({
    ...draft,
    text: draft.text.slice(0, completion.from) + insert + rest,
    from: caret,
    to: caret,
    typedOver: false,
  });
  pickingOf(session).hidden = choice.type !== 'function';
}

/** True where the key was used. */
export function draftKey(session: Session, event: KeyLike): boolean {
  const completion = shownCompletion(session);
  if (completion && !event.ctrlKey && !event.metaKey && !event.altKey) {
    const state = pickingOf(session);
    const count = completion.choices.length;
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      state.at = (completion.at + (event.key === 'ArrowDown' ? 1 : count - 1)) % count;
      session.changed();
      return true;
    }
    if (event.key === 'Tab' && !event.shiftKey) {
      pick(session, completion, completion.at);
      return true;
    }
    if (event.key === 'Escape') {
      state.hidden = true;
      session.changed();
      return true;
    }
  }
  if (event.key === 'Escape') {
    session.setDraft(undefined);
    return true;
  }
  if (event.key === 'Enter') return commitDraft(session, event.shiftKey ? 'up' : 'down') || true;
  if (event.key === 'Tab') return commitDraft(session, event.shiftKey ? 'left' : 'right') || true;
  const arrow = { ArrowUp: 'up', ArrowDown: 'down', ArrowLeft: 'left', ArrowRight: 'right' }[event.key] as
    | 'up'
    | 'down'
    | 'left'
    | 'right'
    | undefined;
  const { draft } = session;
  if (arrow && draft?.typedOver && draft.where === 'cell' && !draft.text.startsWith('=') && !event.shiftKey)
    return commitDraft(session, arrow) || true;
  return false;
}

/** "C11 · feed per tooth": which cell is being edited. */
export const draftPlace = (session: Session): string =>
  addressText(session.selection.column, session.selection.row);
