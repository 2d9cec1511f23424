/** The keypad at the desk: which units it offers for what is being typed, and what its keys do to the text. */

import type { FunctionDefinition } from '../definition/index.ts';
import { contentOf, roleOf } from '../document/index.ts';
import { isKindName, kindNamed, PLAIN } from '../quantity/index.ts';
import type { Kind } from '../quantity/index.ts';
import { commitDraft, contentHere, dropDraft } from './editing.ts';
import { pressed, type KeypadPress } from './keypad-press.ts';
import type { Session } from './session.ts';
import { callAt } from './signature.ts';

/** Units of the trade for a cell that has none yet. */
export const USUAL_UNITS = {
  metric: ['mm', 'm/min', 'mm/min', '1/min', 'mm/tooth', 'deg', 'N', 'kW', '%', 'teeth'],
  inch: ['in', 'ft/min', 'in/min', '1/min', 'in/tooth', 'deg', 'lbf', 'hp', '%', 'teeth'],
} as const;

const kindOf = (name: string): Kind | undefined => (isKindName(name) ? kindNamed(name) : undefined);

/** The kind that fits: of the argument at the caret, else of the cell. */
export function kindHere({ draft, result, cell, catalogue, notebook }: Session): Kind {
  if (draft?.text.startsWith('=')) {
    const call = callAt(draft.text, draft.from);
    const definition: FunctionDefinition | undefined = catalogue?.domain.find(
      ({ name }) => name === call?.name,
    );
    const parameter = definition?.parameters[Math.min(call?.argument ?? 0, definition.parameters.length - 1)];
    return kindOf(parameter?.kind ?? '') ?? PLAIN;
  }
  const content = cell && contentOf(cell, notebook.currency);
  if (content?.type === 'quantity') return content.kind;
  return kindOf(result?.kind ?? '') ?? PLAIN;
}

/** Carries a press of the keypad out. */
export function pressKey(session: Session, press: KeypadPress): void {
  const { draft } = session;
  if (!draft) return;
  if (press.type === 'leave') dropDraft(session);
  else if (press.type === 'done') commitDraft(session, undefined);
  else if (press.type === 'next') next(session);
  else session.setDraft({ ...draft, ...pressed(draft, press) });
}

/** Takes the text and opens the next given, measured or choice cell of the worksheet, row by row; else the cell below. */
function next(session: Session): void {
  if (!commitDraft(session, undefined)) return;
  const { worksheet, selection } = session;
  for (let row = selection.row; row < worksheet.rows.length; row += 1) {
    const from = row === selection.row ? selection.column + 1 : 0;
    const cells = worksheet.rows[row] ?? [];
    for (let column = from; column < cells.length; column += 1) {
      const cell = cells[column];
      if (!cell || !['given', 'measured', 'choice'].includes(roleOf(cell))) continue;
      session.select(row, column);
      const text = contentHere(session);
      session.leaveDraft = () => commitDraft(session, undefined);
      session.setDraft({ text, from: 0, to: text.length, typedOver: true, where: 'cell' });
      return;
    }
  }
  session.move('down', false);
}
