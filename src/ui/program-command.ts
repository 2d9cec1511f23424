/** A command of a menu: its words, its key, and what it does. */

import type { Session } from './session.ts';

export interface ProgramCommand {
  readonly group: 'File' | 'Page' | 'Notebook' | 'Program' | 'Clipboard' | 'Cells' | 'Rows' | 'Columns';
  readonly words: string | ((session: Session) => string);
  /** With Ctrl or the command key; upper case needs Shift too. */
  readonly key?: string;
  /** Words of a key that the page itself listens to. */
  readonly shown?: string;
  /** Changes the notebook: not possible where it is read only. */
  readonly changes?: true;
  possible?(session: Session): boolean;
  /** `from` takes the events of what only the whole page can do. */
  run(session: Session, from: EventTarget): unknown;
}

/** Whether a command can be carried out now. */
export const isPossible = (command: ProgramCommand, session: Session): boolean =>
  !(command.changes && session.readOnly) && (command.possible?.(session) ?? true);

/** "Ctrl F", "Alt ← →"; nothing where there is no key. */
export const keyWords = ({ key, shown }: ProgramCommand): string | undefined =>
  shown ?? (key && `${key === key.toLowerCase() ? 'Ctrl' : 'Ctrl Shift'} ${key.toUpperCase()}`);
