/** Where the page stands while a formula points into another worksheet: nothing is selected there, and the text field waits at what is pointed at. */

import type { Block, Selection } from '../document/index.ts';
import { selectedBlock } from './editing.ts';
import { pointedInSight } from './pointing.ts';
import type { Session } from './session.ts';

type Corners = Omit<Selection, 'worksheet'>;

const NOWHERE: Corners = { row: -1, column: -1, toRow: -1, toColumn: -1 };

export const isAway = ({ inSight, worksheet }: Session): boolean => inSight.id !== worksheet.id;

/** The selected block of the worksheet in sight; all -1 where nothing of it is selected. */
export const chosenInSight = (session: Session): Corners => (isAway(session) ? NOWHERE : session.selection);

/** Row and column of the cell that holds the text field. */
export function fieldPlace(session: Session): Pick<Corners, 'row' | 'column'> {
  if (!isAway(session)) return session.selection;
  const { toRow: row = 0, toColumn: column = 0 } = pointedInSight(session) ?? {};
  return { row, column };
}

/** The corner that has to be in sight: of the selection, or of what is pointed at. */
export function farCorner(session: Session): Pick<Corners, 'row' | 'column'> {
  const { toRow: row, toColumn: column } = pointedInSight(session) ?? session.selection;
  return isAway(session) ? fieldPlace(session) : { row, column };
}

/** The block with handles at its corners: what is pointed at, or else what is selected; none while anything else is typed. */
export function handledBlock(session: Session): Block | undefined {
  const pointed = pointedInSight(session);
  if (!pointed) return session.draft ? undefined : selectedBlock(session);
  const { row, column, toRow, toColumn } = pointed;
  return {
    row: Math.min(row, toRow),
    column: Math.min(column, toColumn),
    rows: Math.abs(row - toRow) + 1,
    columns: Math.abs(column - toColumn) + 1,
  };
}
