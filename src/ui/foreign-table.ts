/** A copied table of another program, taken at once where it is plain; else it is asked for. Loaded when it is needed. */

import type { CellAddress } from '../calculation/index.ts';
import { enter, isRefusal } from '../document/index.ts';
import { isCellList, understandTable } from '../exchange/index.ts';
import type { UnderstoodTable } from '../exchange/index.ts';
import { typing } from './number-locale.ts';
import type { Session } from './session.ts';

/** Nothing in it was understood as more than it says: no question, no units line, no unit of a header. */
const isPlain = ({ asksDecimalMark, columns, headerLines }: UnderstoodTable): boolean =>
  !asksDecimalMark && headerLines < 2 && columns.every(({ unit }) => unit === '');

/** The leaf that shows a table before it is taken: a list of cells tells by its headers where each of them belongs. */
export const leafOf = (text: string): 'list' | 'table' => (isCellList(text) ? 'list' : 'table');

/** Puts the table into the worksheet from a cell on, or asks. */
export function takeCopied(
  session: Session,
  at: CellAddress,
  text: string,
  ask: (leaf: string) => void,
): void {
  const { notebook } = session;
  if (isCellList(text)) return ask('list');
  const { currency } = notebook;
  const table = understandTable(text, {
    delimiter: '\t',
    currency,
    keepsBlankLines: true,
    formulas: { ...typing(), currency },
  });
  if (isRefusal(table)) session.run(table);
  else if (isPlain(table)) session.run(enter(notebook, { ...at, typed: table.contents }));
  else ask('table');
}
