/** A cell in words, for the label of the input over it and for announcements. */

import { addressText } from '../expression/index.ts';
import { labelOf, roleOf } from '../document/index.ts';
import type { Session } from './session.ts';
import { resultText } from './value-text.ts';

/** "B7, feed per tooth, 0.12 mm, given". */
export function describeCell(session: Session): string {
  const { row, column } = session.selection;
  const { cell, result, worksheet, notebook } = session;
  const address = addressText(column, row);
  if (!cell && !result) return `${address}, empty`;
  const label = labelOf(worksheet, row, column);
  const value = result ? resultText(result, notebook, cell?.format) : (cell?.content ?? '');
  const cautions = (result?.cautions ?? []).filter((caution) => caution.type !== 'assumed');
  return [
    address,
    label === value ? '' : label,
    value,
    cell ? roleOf(cell) : 'filled from another cell',
    cautions.length > 0
      ? `${cautions.length === 1 ? 'caution' : 'cautions'}: ${cautions.map((each) => each.text).join('; ')}`
      : '',
  ]
    .filter(Boolean)
    .join(', ');
}
