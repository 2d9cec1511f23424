/** The press that writes the reading a caution offers in place of what stands in the formula (F7a). */

import { html, nothing, type TemplateResult } from 'lit';
import type { CellAddress, ResultCaution } from '../calculation/index.ts';
import { cellAt, enter, findWorksheet } from '../document/index.ts';
import { editedText } from './number-locale.ts';
import type { Session } from './session.ts';

type Offer = Pick<ResultCaution, 'replacement' | 'from' | 'to'>;

/** A button for a caution that offers another reading; nothing for the others. */
export function otherReading(
  session: Session,
  address: CellAddress,
  { replacement, from, to }: Offer,
): TemplateResult | typeof nothing {
  if (replacement === undefined || from === undefined || to === undefined) return nothing;
  return html`<button
    class="link"
    ?disabled=${session.readOnly}
    @click=${() => {
      const sheet = findWorksheet(session.notebook, address.worksheet);
      const content = (sheet && cellAt(sheet, address.row, address.column)?.content) ?? '';
      const typed = content.slice(0, from) + replacement + content.slice(to);
      session.run(enter(session.notebook, { ...address, typed }));
    }}
  >
    write ${editedText(replacement, session.notebook.currency)} instead
  </button>`;
}
