/** What can be done with the page as a whole: in the notebook's menu. */

import { openActions } from './actions-place.ts';
import { toggleHead } from './line-editing.ts';
import { openBar } from './page-bar.ts';
import { showFile } from './pasting.ts';
import type { ProgramCommand } from './program-command.ts';
import type { Session } from './session.ts';

/** Asks for a table of another program, or a list of cells that comes back, and shows it before it is taken. */
async function openTable(session: Session, from: EventTarget): Promise<void> {
  try {
    const picked = await session.world.files.pick('.csv,.tsv,.tab,.txt,text/csv,text/plain');
    if (picked) await showFile(from, picked.name, picked.text);
  } catch (reason) {
    session.say(reason instanceof Error ? reason.message : String(reason), true);
  }
}

export const PAGE_COMMANDS: readonly ProgramCommand[] = [
  { group: 'File', words: 'Take a table in (CSV)…', changes: true, run: openTable },
  { group: 'File', words: 'Take a list of values back in (CSV)…', changes: true, run: openTable },
  { group: 'Page', words: 'Find and replace…', key: 'f', run: (session) => openBar(session, 'find') },
  { group: 'Page', words: 'Go to…', key: 'g', run: (session) => openBar(session, 'go') },
  {
    group: 'Page',
    words: 'Actions for the selection…',
    shown: 'Shift F10',
    run: (session) => openActions(session),
  },
  {
    group: 'Page',
    words: (session) => (session.showFormulas ? 'Show values' : 'Show formulas in place of values'),
    run(session) {
      session.showFormulas = !session.showFormulas;
      session.changed();
    },
  },
  {
    group: 'Page',
    words: ({ worksheet }) =>
      worksheet.headRow ? 'Let the first row scroll' : 'Keep the first row in sight',
    changes: true,
    run: (session) => toggleHead(session, 'headRow'),
  },
  {
    group: 'Page',
    words: ({ worksheet }) =>
      worksheet.headColumn ? 'Let the first column scroll' : 'Keep the first column in sight',
    changes: true,
    run: (session) => toggleHead(session, 'headColumn'),
  },
];
