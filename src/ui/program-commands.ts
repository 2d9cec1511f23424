/** What can be done with the notebook, the page and the program, a row each: the menu and the keys read this list. */

import { openLeaf } from './open-leaf.ts';
import { decimalMark, setDecimalMark } from './number-locale.ts';
import { PAGE_COMMANDS } from './page-commands.ts';
import type { ProgramCommand } from './program-command.ts';
import type { Session } from './session.ts';
import { isDark, setTheme } from './theme.ts';
import { TRIAL_COMMANDS } from './trial-commands.ts';

export { isPossible } from './program-command.ts';
export type { ProgramCommand } from './program-command.ts';

const tell = (from: EventTarget, what: string): boolean =>
  from.dispatchEvent(new CustomEvent(what, { bubbles: true, composed: true }));

const saveTable = async (session: Session, form: 'grid' | 'list' | 'described list'): Promise<void> => {
  const { saveTable: save } = await import('./save-table.ts');
  await save(session, form);
};

export const PROGRAM_COMMANDS: readonly ProgramCommand[] = [
  { group: 'File', words: 'Save a file copy', key: 's', run: (_, from) => tell(from, 'save-file') },
  { group: 'File', words: 'Open a file…', run: (_, from) => tell(from, 'open-file') },
  { group: 'File', words: 'Save this page as a table (CSV)', run: (session) => saveTable(session, 'grid') },
  { group: 'File', words: 'Save all values as a list (CSV)', run: (session) => saveTable(session, 'list') },
  {
    group: 'File',
    words: 'Save the list and its metadata (CSVW)',
    run: (session) => saveTable(session, 'described list'),
  },
  { group: 'File', words: 'Print…', key: 'p', run: (_, from) => tell(from, 'print-notebook') },
  ...PAGE_COMMANDS,
  ...TRIAL_COMMANDS,
  {
    group: 'Program',
    words: () =>
      decimalMark() === ',' ? 'Numbers with a decimal point: 1.5' : 'Numbers with a decimal comma: 1,5',
    run(session) {
      if (session.draft && !session.leaveDraft?.()) return;
      setDecimalMark(decimalMark() === ',' ? '.' : ',');
      session.changed();
    },
  },
  {
    group: 'Program',
    words: () => (isDark() ? 'Light page' : 'Dark page'),
    run: () => setTheme(isDark() ? 'light' : 'dark'),
  },
  { group: 'Program', words: 'Help (F1)', run: (_, from) => openLeaf(from, 'help') },
  { group: 'Program', words: 'Keys', run: (_, from) => openLeaf(from, 'keys') },
  { group: 'Program', words: 'About, licence, newer version', run: (_, from) => openLeaf(from, 'about') },
  {
    group: 'Program',
    words: 'All notebooks on this device',
    run: (_, from) => tell(from, 'all-notebooks'),
  },
];

/** The command a key with Ctrl or the command key stands for. */
export function commandFor(event: KeyboardEvent): ProgramCommand | undefined {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return undefined;
  const key = event.shiftKey ? event.key.toUpperCase() : event.key.toLowerCase();
  return PROGRAM_COMMANDS.find((command) => command.key === key);
}
