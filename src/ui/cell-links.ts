/** Links to cells: text as it stands in formulas, and the jump there. */

import { html, type TemplateResult } from 'lit';
import type { CellAddress } from '../calculation/index.ts';
import { findWorksheet } from '../document/index.ts';
import { addressText, titleText } from '../expression/index.ts';
import type { Session } from './session.ts';

/**
 * "B7" on the worksheet in sight, "Feeds.B7" elsewhere; with the cell's name where it has one. `bare` leaves the worksheet
 * away.
 */
export function addressWords(
  session: Session,
  { worksheet, row, column }: CellAddress,
  bare = false,
): string {
  const home = findWorksheet(session.notebook, worksheet);
  const text = addressText(column, row);
  const name = home?.names.find(({ target }) => target.row === row && target.column === column)?.name;
  const named = name ? `${text} ${name}` : text;
  return !home || bare || worksheet === session.worksheet.id ? named : `${titleText(home.title)}.${named}`;
}

export function cellLink(session: Session, address: CellAddress): TemplateResult {
  return html`<button
    class="link"
    @click=${() => session.select(address.row, address.column, false, address.worksheet)}
  >
    ${addressWords(session, address)}
  </button>`;
}
