/** What can be done with what is selected on the page, a row each, for the actions menu. */

import { COLUMN_WIDTHS } from '../document/index.ts';
import {
  clearSelection,
  copyText,
  fillSelection,
  insertColumns,
  insertRows,
  selectedBlock,
} from './editing.ts';
import { askToDelete } from './asking.ts';
import { openLeaf } from './open-leaf.ts';
import { carryLines, setColumns } from './line-editing.ts';
import { pasteFrom } from './pasting.ts';
import type { ProgramCommand } from './program-command.ts';
import type { Session } from './session.ts';

const copyAway = async (session: Session, isCut: boolean): Promise<void> => {
  try {
    await navigator.clipboard.writeText(copyText(session, isCut));
    session.say(isCut ? 'cut: it moves when it is pasted' : 'copied');
  } catch {
    session.say(`the browser did not allow it; press Ctrl+${isCut ? 'X' : 'C'}`, true);
  }
};

const pasteHere = async (session: Session, from: EventTarget): Promise<void> => {
  try {
    pasteFrom(session, await navigator.clipboard.readText(), from);
  } catch {
    session.say('the browser did not allow it; press Ctrl+V', true);
  }
};

function askWidth(session: Session, from: EventTarget): void {
  const { column, columns } = selectedBlock(session);
  const now = session.worksheet.widths[column];
  const detail = {
    title: 'Column width',
    words: `${COLUMN_WIDTHS.least} to ${COLUMN_WIDTHS.most} pixels; empty for the usual width.`,
    value: now === undefined ? '' : String(now),
    done: (text: string) => {
      const width = Math.round(Number(text));
      setColumns(session, { column, columns, ...(text !== '' && { width }) });
    },
  };
  from.dispatchEvent(new CustomEvent('ask-text', { bubbles: true, composed: true, detail }));
}

/** One or several, as the selection has it: "row 3", "rows 3 to 5". */
const rowWords = (session: Session): string => (selectedBlock(session).rows > 1 ? 'rows' : 'row');
const columnWords = (session: Session): string => (selectedBlock(session).columns > 1 ? 'columns' : 'column');
const several = (session: Session): boolean => {
  const { rows, columns } = selectedBlock(session);
  return rows * columns > 1;
};

export const SELECTION_COMMANDS: readonly ProgramCommand[] = [
  {
    group: 'Clipboard',
    words: 'Cut',
    shown: 'Ctrl X',
    changes: true,
    run: (session) => copyAway(session, true),
  },
  { group: 'Clipboard', words: 'Copy', shown: 'Ctrl C', run: (session) => copyAway(session, false) },
  { group: 'Clipboard', words: 'Paste', shown: 'Ctrl V', changes: true, run: pasteHere },
  { group: 'Clipboard', words: 'Empty the cells', shown: 'Delete', changes: true, run: clearSelection },
  {
    group: 'Cells',
    words: 'Fill down from the first row',
    shown: 'Ctrl D',
    changes: true,
    possible: several,
    run: (session) => fillSelection(session, 'down'),
  },
  {
    group: 'Cells',
    words: 'Fill to the right from the first column',
    shown: 'Ctrl R',
    changes: true,
    possible: several,
    run: (session) => fillSelection(session, 'right'),
  },
  {
    group: 'Cells',
    words: 'Fill up from the last row',
    shown: 'Ctrl Shift D',
    changes: true,
    possible: several,
    run: (session) => fillSelection(session, 'up'),
  },
  {
    group: 'Cells',
    words: 'Fill to the left from the last column',
    shown: 'Ctrl Shift R',
    changes: true,
    possible: several,
    run: (session) => fillSelection(session, 'left'),
  },
  {
    group: 'Cells',
    words: 'Sort rows…',
    changes: true,
    run: (_, from) => openLeaf(from, 'sort'),
  },
  {
    group: 'Cells',
    words: 'Role, unit, digits, choices, note…',
    run: (_, from) => openLeaf(from, 'cell'),
  },
  { group: 'Rows', words: (session) => `Insert ${rowWords(session)} above`, changes: true, run: insertRows },
  {
    group: 'Rows',
    words: (session) => `Delete the selected ${rowWords(session)}`,
    changes: true,
    run: (session, from) => askToDelete(session, 'row', from),
  },
  {
    group: 'Rows',
    words: (session) => `Move the ${rowWords(session)} up`,
    shown: 'Alt Shift ↑',
    changes: true,
    run: (session) => carryLines(session, 'up'),
  },
  {
    group: 'Rows',
    words: (session) => `Move the ${rowWords(session)} down`,
    shown: 'Alt Shift ↓',
    changes: true,
    run: (session) => carryLines(session, 'down'),
  },
  {
    group: 'Columns',
    words: (session) => `Insert ${columnWords(session)} before`,
    changes: true,
    run: insertColumns,
  },
  {
    group: 'Columns',
    words: (session) => `Delete the selected ${columnWords(session)}`,
    changes: true,
    run: (session, from) => askToDelete(session, 'column', from),
  },
  {
    group: 'Columns',
    words: (session) => `Move the ${columnWords(session)} left`,
    shown: 'Alt Shift ←',
    changes: true,
    run: (session) => carryLines(session, 'left'),
  },
  {
    group: 'Columns',
    words: (session) => `Move the ${columnWords(session)} right`,
    shown: 'Alt Shift →',
    changes: true,
    run: (session) => carryLines(session, 'right'),
  },
  {
    group: 'Columns',
    words: 'Column width…',
    shown: 'Alt ← →',
    changes: true,
    run: askWidth,
  },
];
