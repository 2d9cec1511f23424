/** What is typed while a bar, a menu or a leaf that was asked for is still on its way: it belongs there, never to the cell. */

import type { Session } from './session.ts';

export interface Held {
  readonly text: string;
  /** Enter was pressed behind it: nothing is taken on any more. */
  readonly entered: boolean;
}

const NOTHING: Held = { text: '', entered: false };
const held = new WeakMap<Session, Held>();

/** From now on keys are held; what is being edited already goes on as it is. */
export function holdKeys(session: Session): void {
  if (!session.draft && !held.has(session)) held.set(session, NOTHING);
}

/** What is held so far; undefined where nothing is awaited. */
export const heldKeys = (session: Session): Held | undefined => held.get(session);

export function holdMore(session: Session, more: Partial<Held>): void {
  held.set(session, { ...NOTHING, ...held.get(session), ...more });
}

/** Hands out what was held, once: what was awaited has the keys now, or will not come. */
export function takeHeld(session: Session): Held {
  const keys = held.get(session) ?? NOTHING;
  held.delete(session);
  return keys;
}
