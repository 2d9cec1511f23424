/** Whether the actions for the selection are asked for, and where on the screen. */

import type { Session } from './session.ts';

export interface ActionsPlace {
  readonly x: number;
  readonly y: number;
}

const asked = new WeakMap<Session, ActionsPlace | 'cell'>();

/** Opens the actions at a place of the screen, or at the active cell. */
export function openActions(session: Session, at: ActionsPlace | 'cell' = 'cell'): void {
  asked.set(session, at);
  session.changed();
}

/** Takes the question: it is answered once. */
export function takeActions(session: Session): ActionsPlace | 'cell' | undefined {
  const at = asked.get(session);
  asked.delete(session);
  return at;
}
