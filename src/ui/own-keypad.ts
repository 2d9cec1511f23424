/** Whether the program's own keypad stands in for the system's keyboard: for values and formulas on touch, until the user asks for the other. */

import { contentOf } from '../document/index.ts';
import type { Session } from './session.ts';

let system = false;

/** Fingers are the pointer. */
export const isTouched = (): boolean => matchMedia('(pointer: coarse)').matches;

/** True where what is being typed is a value or a formula; a text needs letters. */
export function isOwnKeypad({ draft, cell, notebook }: Session): boolean {
  if (system || !draft || cell?.choices || !isTouched()) return false;
  if (draft.text.startsWith('=') || !cell) return !/^[^\d=+\-.]/.test(draft.text);
  return contentOf(cell, notebook.currency).type !== 'text';
}

export const isSystemKeyboard = (): boolean => system;

/** Keeps to the system's keyboard, or goes back to the keypad. */
export function setSystemKeyboard(session: Session, wanted: boolean): void {
  system = wanted;
  session.changed();
}
