/** A cell in words, for the label of the input over it and for announcements. */

import { addressText } from '../expression/index.ts';
import { labelOf, roleOf } from '../document/index.ts';
import type { Session } from './session.ts';
import { editedText, inWords } from './number-locale.ts';
import { resultText, spokenText } from './value-text.ts';

/** "B7, feed per tooth, fz, 0.12 millimetres, given". */
export function describeCell(session: Session): string {
  const { row, column } = session.selection;
  const { cell, result, worksheet, notebook } = session;
  const address = addressText(column, row);
  if (!cell && !result) return `${address}, empty`;
  const label = labelOf(worksheet, row, column);
  const name = worksheet.names.find(
    ({ target }) =>
      target.row === row && target.column === column && target.rows === 1 && target.columns === 1,
  );
  const shown = result
    ? resultText(result, notebook, cell?.format)
    : editedText(cell?.content ?? '', notebook.currency);
  const cautions = (result?.cautions ?? []).filter((caution) => caution.type !== 'assumed');
  return [
    address,
    label === shown ? '' : label,
    name ? (name.symbol ?? name.name).replaceAll('_', ' ') : '',
    result ? spokenText(result, notebook, cell?.format) : shown,
    cell ? roleOf(cell) : 'filled from another cell',
    result && session.results.fromLastTime ? 'from last time' : '',
    cell?.note ? 'with a note' : '',
    cautions.length > 0
      ? `${cautions.length === 1 ? 'caution' : 'cautions'}: ${cautions.map((each) => inWords(each.text)).join('; ')}`
      : '',
  ]
    .filter(Boolean)
    .join(', ');
}
