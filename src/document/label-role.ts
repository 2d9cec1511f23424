/** What a cell is called and what part it plays, where the user did not say. */

import { cellAt } from './cells.ts';
import { contentOf } from './content.ts';
import type { Cell, Role, Worksheet } from './notebook.ts';

/** The text of a cell that holds text; a formula is none. */
function textOf(cell: Cell | undefined): string | undefined {
  if (!cell || cell.content === '') return undefined;
  const content = contentOf(cell);
  return content.type === 'text' && content.text.trim() !== '' ? content.text.trim() : undefined;
}

/** Its own label; otherwise the nearest text to the left, else the nearest above; "" where there is none. */
export function labelOf(worksheet: Worksheet, row: number, column: number): string {
  const own = cellAt(worksheet, row, column)?.label;
  if (own !== undefined) return own;
  for (let left = column - 1; left >= 0; left--) {
    const text = textOf(cellAt(worksheet, row, left));
    if (text !== undefined) return text;
  }
  for (let above = row - 1; above >= 0; above--) {
    const text = textOf(cellAt(worksheet, above, column));
    if (text !== undefined) return text;
  }
  return '';
}

/** As set by the user, else guessed: a formula is worked, a text a note, everything else given. */
export function roleOf(cell: Cell): Role {
  if (cell.role) return cell.role;
  if (cell.choices) return 'choice';
  const content = contentOf(cell);
  if (content.type === 'formula') return 'worked';
  return content.type === 'text' ? 'note' : 'given';
}
