/** Every result that is computed otherwise than it was stored: where, what was stored, what it is now, by which programs. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { cellAt, findWorksheet, labelOf } from '../../document/index.ts';
import { addressText } from '../../expression/index.ts';
import type { StoredResult } from '../../exchange/index.ts';
import type { KnownResult } from '../results.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import type { StoredDifference, StoredDifferences } from '../stored-differences.ts';
import { resultText } from '../value-text.ts';
import { leafStyles } from './leaf.styles.ts';

/** Rows that are listed; the rest is counted. */
const MOST = 500;

export class DifferencesLeaf extends LitElement {
  static override styles = [
    shared,
    leafStyles,
    css`
      table {
        inline-size: 100%;
        border-collapse: collapse;
      }
      th,
      td {
        padding: 5px 10px 5px 0;
        border-block-end: 1px solid var(--ruling);
        text-align: start;
        vertical-align: top;
      }
      th {
        inline-size: 30%;
      }
      .link {
        text-align: start;
      }
      .number {
        font-family: var(--mono);
        overflow-wrap: anywhere;
      }
    `,
  ];
  static override properties = { session: { attribute: false }, close: { attribute: false } };
  declare session: Session | undefined;
  declare close: () => void;
  /** As they were when the leaf was opened. */
  #differences: StoredDifferences | undefined;

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    this.#differences ??= session?.differences;
    const differences = this.#differences;
    if (!session || !differences) return html`<p>Nothing differs.</p>`;
    const { list, program } = differences;
    return html`<p>
        Stored by ${program === '' ? 'a version that is not named' : `version ${program}`}, computed now by
        version ${session.world.build}. Numbers are listed where they differ by more than 1 part in 10⁹. What
        is shown on the page is what was computed now.
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">Where</th>
            <th scope="col">Stored</th>
            <th scope="col">Computed now</th>
          </tr>
        </thead>
        <tbody>
          ${list.slice(0, MOST).map((each) => this.#row(session, each))}
        </tbody>
      </table>
      ${list.length > MOST ? html`<p>And ${list.length - MOST} more.</p>` : nothing}`;
  }

  #row(session: Session, { worksheet, row, column, stored, now }: StoredDifference): TemplateResult {
    const sheet = findWorksheet(session.notebook, worksheet);
    const go = (): void => {
      this.close();
      session.select(row, column, false, worksheet);
    };
    const label = sheet ? labelOf(sheet, row, column) : '';
    return html`<tr>
      <th scope="row">
        <button class="link" @click=${go}>
          ${sheet?.title ?? worksheet} ${addressText(column, row)}${label === '' ? '' : `, ${label}`}
        </button>
      </th>
      <td class="number">${this.#text(session, worksheet, row, column, stored)}</td>
      <td class="number">${this.#text(session, worksheet, row, column, now)}</td>
    </tr>`;
  }

  /** In full where the shown digits would hide the difference. */
  #text(
    session: Session,
    worksheet: string,
    row: number,
    column: number,
    result: StoredResult | KnownResult | undefined,
  ): string {
    if (!result) return 'nothing';
    const sheet = findWorksheet(session.notebook, worksheet);
    const format = sheet && cellAt(sheet, row, column)?.format;
    const shown = resultText(result, session.notebook, format);
    const inFull = typeof result.value === 'number' ? ` (${result.value} in SI units)` : '';
    return `${shown}${inFull}`;
  }
}
customElements.define('differences-leaf', DifferencesLeaf);
