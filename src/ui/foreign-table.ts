/** A copied table of another program, taken at once where it is plain; else it is asked for. Loaded when it is needed. */

import type { CellAddress } from '../calculation/index.ts';
import { enter, isRefusal } from '../document/index.ts';
import { understandTable } from '../exchange/index.ts';
import type { UnderstoodTable } from '../exchange/index.ts';
import { typing } from './number-locale.ts';
import type { Session } from './session.ts';

/** Nothing in it was understood as more than it says: no question, no units line, no unit of a header. */
const isPlain = ({ asksDecimalMark, columns, headerLines }: UnderstoodTable): boolean =>
  !asksDecimalMark && headerLines < 2 && columns.every(({ unit }) => unit === '');

/** Puts the table into the worksheet from a cell on, or asks. */
export function takeCopied(session: Session, at: CellAddress, text: string, ask: () => void): void {
  const { notebook } = session;
  const { currency } = notebook;
  const table = understandTable(text, {
    delimiter: '\t',
    currency,
    keepsBlankLines: true,
    formulas: { ...typing(), currency },
  });
  if (isRefusal(table)) session.run(table);
  else if (isPlain(table)) session.run(enter(notebook, { ...at, typed: table.contents }));
  else ask();
}
