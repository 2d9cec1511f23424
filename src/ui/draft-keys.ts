/** Keys while a text is being edited, in the cell and on the entry line alike. */

import { addressText } from '../expression/index.ts';
import { commitDraft, dropDraft } from './editing.ts';
import { completionAt } from './completion.ts';
import type { Completion } from './completion.ts';
import { directionOf, worksheetStep, type KeyLike } from './keymap.ts';
import { pointBy, pointedAt, showNextWorksheet } from './pointing.ts';
import type { Session } from './session.ts';

/** Which completion is marked, and the text for which it was put away with Escape. */
interface Picking {
  /** Below 0: not moved yet. */
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
  if (state.hidden || pointedAt(session)) return undefined;
  const choices = choicesAt(session);
  if (choices) {
    const now = choices.choices.findIndex(({ label }) => label === draft.text);
    return {
      ...choices,
      at: state.at < 0 ? Math.max(0, now) : Math.min(state.at, choices.choices.length - 1),
    };
  }
  const completion = completionAt({
    draft,
    notebook: session.notebook,
    worksheet: session.worksheet,
    catalogue: session.catalogue,
  });
  const last = (completion?.choices.length ?? 0) - 1;
  return completion && { ...completion, at: Math.min(Math.max(0, state.at), last) };
}

/** The choices of a choice cell: all of them until something else is typed, then those that hold it. */
function choicesAt({ cell, draft }: Session): Completion | undefined {
  if (!cell?.choices || !draft || draft.text.startsWith('=')) return undefined;
  const now = cell.content.replace(/^'/, '');
  const wanted = draft.text === now || draft.text === cell.content ? '' : draft.text.trim().toLowerCase();
  const choices = cell.choices
    .filter((label) => label.toLowerCase().includes(wanted))
    .map((label) => ({ type: 'choice', label, detail: '', insert: label }) as const);
  return choices.length > 0 ? { from: 0, to: draft.text.length, choices } : undefined;
}

/** Takes one of the choices of a choice cell into it. */
export function pickChoice(session: Session, at: number): boolean {
  const completion = shownCompletion(session);
  if (completion?.choices[at]?.type !== 'choice') return false;
  pick(session, completion, at);
  return commitDraft(session, undefined);
}

function pickingOf(session: Session): Picking {
  const text = session.draft?.text ?? '';
  const known = picking.get(session);
  if (known && known.for === text) return known;
  const made = { at: -1, for: text, hidden: false };
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
    const isChoice = completion.choices[0]?.type === 'choice';
    if (isChoice && event.key === 'Enter') {
      pick(session, completion, completion.at);
      return commitDraft(session, event.shiftKey ? 'up' : 'down') || true;
    }
    if (event.key === 'Tab' && !event.shiftKey) {
      pick(session, completion, completion.at);
      return isChoice ? commitDraft(session, 'right') || true : true;
    }
    if (event.key === 'Escape') {
      state.hidden = true;
      session.changed();
      return true;
    }
  }
  const by = worksheetStep(event);
  if (by) {
    showNextWorksheet(session, by);
    return true;
  }
  if (event.key === 'Escape') {
    dropDraft(session);
    return true;
  }
  if (event.key === 'Enter') return commitDraft(session, event.shiftKey ? 'up' : 'down') || true;
  if (event.key === 'Tab') return commitDraft(session, event.shiftKey ? 'left' : 'right') || true;
  const { draft } = session;
  if (event.key === 'F2' && draft) {
    session.setDraft({ ...draft, typedOver: !draft.typedOver });
    return true;
  }
  const arrow = directionOf(event.key);
  if (!arrow || !draft?.typedOver || draft.where !== 'cell' || event.ctrlKey || event.metaKey || event.altKey)
    return false;
  if (draft.text.startsWith('=')) return pointBy(session, arrow, event.shiftKey);
  return !event.shiftKey && (commitDraft(session, arrow) || true);
}

/** "C11 · feed per tooth": which cell is being edited. */
export const draftPlace = (session: Session): string =>
  addressText(session.selection.column, session.selection.row);
