/** What can be done with the notebook, the page and the program, a row each: the menu and the keys read this list. */

import { writeCsvGrid, writeCsvList } from '../exchange/index.ts';
import { deleteColumns, deleteRows, fillSelection, insertColumns, insertRows } from './editing.ts';
import { resultsFor } from './export-results.ts';
import { decimalMark, setDecimalMark } from './number-locale.ts';
import type { Session } from './session.ts';
import { isDark, setTheme } from './theme.ts';

export interface ProgramCommand {
  readonly group: 'File' | 'Page' | 'Notebook' | 'Program';
  readonly words: string | ((session: Session) => string);
  /** With Ctrl or the command key; upper case needs Shift too. */
  readonly key?: string;
  /** Changes the notebook: not possible where it is read only. */
  readonly changes?: true;
  possible?(session: Session): boolean;
  /** `from` takes the events of what only the whole page can do. */
  run(session: Session, from: EventTarget): unknown;
}

const tell = (from: EventTarget, what: string): boolean =>
  from.dispatchEvent(new CustomEvent(what, { bubbles: true, composed: true }));

function saveTable(session: Session, form: 'grid' | 'list'): void {
  const { notebook, worksheet } = session;
  const results = resultsFor(session);
  const text =
    form === 'grid' ? writeCsvGrid(notebook, worksheet.id, results) : writeCsvList(notebook, results);
  const name = form === 'grid' ? worksheet.title : `${notebook.title} list`;
  void session.world.files.save(`${name}.csv`, text, 'text/csv');
}

export const PROGRAM_COMMANDS: readonly ProgramCommand[] = [
  { group: 'File', words: 'Save a file copy', key: 's', run: (_, from) => tell(from, 'save-file') },
  { group: 'File', words: 'Open a file…', run: (_, from) => tell(from, 'open-file') },
  { group: 'File', words: 'Save this page as a table (CSV)', run: (session) => saveTable(session, 'grid') },
  { group: 'File', words: 'Save all values as a list (CSV)', run: (session) => saveTable(session, 'list') },
  { group: 'File', words: 'Print…', run: () => window.print() },
  {
    group: 'Page',
    words: 'Fill the selection down from its first row',
    changes: true,
    run: (session) => fillSelection(session, 'down'),
  },
  {
    group: 'Page',
    words: 'Fill it to the right from its first column',
    changes: true,
    run: (session) => fillSelection(session, 'right'),
  },
  { group: 'Page', words: 'Insert rows above', changes: true, run: insertRows },
  { group: 'Page', words: 'Delete the selected rows', changes: true, run: deleteRows },
  { group: 'Page', words: 'Insert columns before', changes: true, run: insertColumns },
  { group: 'Page', words: 'Delete the selected columns', changes: true, run: deleteColumns },
  {
    group: 'Page',
    words: (session) => (session.showFormulas ? 'Show values' : 'Show formulas in place of values'),
    run(session) {
      session.showFormulas = !session.showFormulas;
      session.changed();
    },
  },
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
  {
    group: 'Program',
    words: 'Check for a new version',
    run: (session) => session.world.installation.checkForUpdate(),
  },
  { group: 'Program', words: 'About, licences, cautions', run: (_, from) => tell(from, 'about') },
  {
    group: 'Program',
    words: 'All notebooks on this device',
    run: (_, from) => tell(from, 'all-notebooks'),
  },
];

/** Whether a command can be carried out now. */
export const isPossible = (command: ProgramCommand, session: Session): boolean =>
  !(command.changes && session.readOnly) && (command.possible?.(session) ?? true);

/** The command a key with Ctrl or the command key stands for. */
export function commandFor(event: KeyboardEvent): ProgramCommand | undefined {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return undefined;
  const key = event.shiftKey ? event.key.toUpperCase() : event.key.toLowerCase();
  return PROGRAM_COMMANDS.find((command) => command.key === key);
}
