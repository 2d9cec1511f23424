/** Which bar lies over the page: finding and replacing, or going to a place. */

import type { Query } from './finding.ts';
import { holdKeys, takeHeld } from './held-keys.ts';
import { isFormulaOpen } from './pointing.ts';
import type { Session } from './session.ts';

export type Bar = 'find' | 'go';

const open = new WeakMap<Session, Bar>();
let asked = 0;

export const barOf = (session: Session): Bar | undefined => open.get(session);

/** How often a bar was asked for: an open one takes the focus again. */
export const timesAsked = (): number => asked;

/** Opens it, or gives an open one the focus again; keys that are pressed until it has it are held for it. A formula stays open: going puts the place into it. */
export function openBar(session: Session, bar: Bar): void {
  const { draft } = session;
  // The hands leave the cell, so that it does not take the focus back.
  if (draft && bar === 'go' && isFormulaOpen(session)) session.setDraft({ ...draft, where: 'line' });
  else if (draft && !session.leaveDraft?.()) return;
  holdKeys(session);
  open.set(session, bar);
  asked += 1;
  session.changed();
}

export function closeBar(session: Session): void {
  open.delete(session);
  takeHeld(session);
  session.changed();
}

const latest = new WeakMap<Session, Query>();

/** What was looked for last: F3 goes on with it, and the bar begins with it. */
export const latestQuery = (session: Session): Query | undefined => latest.get(session);

export function keepQuery(session: Session, query: Query): void {
  latest.set(session, query);
}
