/** Asking before rows or columns go that others use. */

import { usersOf } from '../document/index.ts';
import { deleteColumns, deleteRows, selectedBlock } from './editing.ts';
import type { Session } from './session.ts';

const LISTED = 12;

/** Deletes at once where no other cell uses them; else with the list of those that would read #REF!. */
export function askToDelete(session: Session, axis: 'row' | 'column', from: EventTarget): void {
  const { worksheet, notebook } = session;
  const { row, column, rows, columns } = selectedBlock(session);
  const block =
    axis === 'row'
      ? { row, rows, column: 0, columns: worksheet.columnCount }
      : { column, columns, row: 0, rows: worksheet.rowCount };
  const users = usersOf(notebook, { worksheet: worksheet.id, block });
  const done = (): boolean => (axis === 'row' ? deleteRows(session) : deleteColumns(session));
  if (users.length === 0) {
    done();
    return;
  }
  const count = axis === 'row' ? rows : columns;
  const more = users.length > LISTED ? ` and ${users.length - LISTED} more` : '';
  const list = users.slice(0, LISTED).map(({ text }) => text);
  from.dispatchEvent(
    new CustomEvent('ask-consent', {
      bubbles: true,
      composed: true,
      detail: {
        title: `Delete ${count} ${axis}${count === 1 ? '' : 's'}?`,
        words: `These cells use them and would read #REF! where nothing else is left: ${list.join(', ')}${more}. Undo brings everything back.`,
        action: 'Delete',
        done,
      },
    }),
  );
}
