/** A table of another program before it is taken: what was understood, what has to be chosen, where it goes. Nothing is guessed. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { isRefusal } from '../../document/index.ts';
import { understandTable } from '../../exchange/index.ts';
import type { TableColumn, TableOptions, UnderstoodTable } from '../../exchange/index.ts';
import { addressText } from '../../expression/index.ts';
import { typing } from '../number-locale.ts';
import type { ForeignTable } from '../pasting.ts';
import type { Session } from '../session.ts';
import { whole, wholeSelectStyles } from '../elements/whole-select.ts';
import { shared } from '../shared.styles.ts';
import { overwritten, takenAnew, takenAt } from '../taking-table.ts';
import { markQuestion } from './mark-question.ts';
import { tableStyles } from './table-leaf.styles.ts';

const DELIMITERS = [
  [';', 'semicolons'],
  [',', 'commas'],
  ['\t', 'tabs'],
  ['|', 'bars'],
] as const;
/** Lines that are shown; all of them are taken. */
const SHOWN = 12;

export class TableLeaf extends LitElement {
  static override styles = [shared, tableStyles, wholeSelectStyles];
  static override properties = {
    session: { attribute: false },
    table: { attribute: false },
    refused: { state: true },
    choice: { state: true },
    anew: { state: true },
  };
  declare session: Session | undefined;
  declare table: ForeignTable | undefined;
  declare close: () => void;
  /** Why it could not be put in. */
  declare refused: string;
  declare choice: TableOptions;
  declare anew: boolean;

  constructor() {
    super();
    this.refused = '';
    this.choice = {};
    this.anew = false;
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (!changed.has('table') || !this.table) return;
    this.choice = this.table.copied ? { delimiter: '\t' } : {};
    this.anew = !this.table.copied;
    this.refused = '';
  }

  #understood(session: Session, table: ForeignTable): ReturnType<typeof understandTable> {
    const { currency } = session.notebook;
    return understandTable(table.text, {
      ...this.choice,
      currency,
      ...(table.copied && { keepsBlankLines: true, formulas: { ...typing(), currency } }),
    });
  }

  override render(): TemplateResult | typeof nothing {
    const { session, table } = this;
    if (!session || !table) return nothing;
    const understood = this.#understood(session, table);
    if (isRefusal(understood)) return html`<p class="error" role="alert">${understood.message}</p>`;
    const unknown = understood.columns.filter(({ unknownUnit }) => unknownUnit);
    const lines = understood.contents.length;
    return html`<p>
        From ${table.from}: ${lines} ${lines === 1 ? 'line' : 'lines'}, ${understood.columns.length}
        ${understood.columns.length === 1 ? 'column' : 'columns'}.
        ${table.text.includes('\ufffd') ? html`<b class="caution">▲ Some characters of the file could not be read: it is not stored as UTF-8.</b>` : nothing}
      </p>
      ${markQuestion(understood, (decimalMark) => this.#choose({ decimalMark }))}
      <div class="choices">
        ${table.copied ? nothing : this.#delimiter(understood)} ${this.#headers(understood)}
      </div>
      ${this.#preview(understood)} ${this.#where(session, understood)}
      ${this.refused ? html`<p class="error" role="alert">${this.refused}</p>` : nothing}
      <div class="answers">
        <span role="status">
          ${
            understood.asksDecimalMark
              ? '▲ Choose how the numbers are read.'
              : unknown.length > 0
                ? `▲ ${unknown.map(({ unit }) => unit).join(', ')}: choose a known unit, or none.`
                : ''
          }
        </span>
        <button
          class="primary"
          ?disabled=${understood.asksDecimalMark || unknown.length > 0 || session.readOnly}
          @click=${() => this.#take(session, table, understood)}
        >
          Put it in
        </button>
      </div>`;
  }

  #choose(change: Partial<TableOptions>): void {
    this.choice = { ...this.choice, ...change };
    this.refused = '';
  }

  #delimiter({ delimiter }: UnderstoodTable): TemplateResult {
    return html`<label>
      columns parted by
      <select @change=${(event: Event) => this.#choose({ delimiter: valueOf(event) })}>
        ${DELIMITERS.map(([each, words]) => html`<option value=${each} .selected=${each === delimiter}>${words}</option>`)}
      </select>
    </label>`;
  }

  #headers({ headerLines }: UnderstoodTable): TemplateResult {
    const has = this.choice.headers ?? headerLines > 0;
    const words = ['headers, with units or without', 'values like the others'] as const;
    const list = html`<select
      @change=${(event: Event) => this.#choose({ headers: valueOf(event) === 'headers' })}
    >
      <option value="headers" .selected=${has}>${words[0]}</option>
      <option value="values" .selected=${!has}>${words[1]}</option>
    </select>`;
    return html`<label> the first line holds ${whole(words[has ? 0 : 1], list)} </label>`;
  }

  #preview({ columns, contents, headerLines }: UnderstoodTable): TemplateResult {
    const body =
      headerLines > 0 && columns.some(({ header }) => header !== '') ? contents.slice(1) : contents;
    const rest = body.length - SHOWN;
    return html`<div class="preview" tabindex="0" role="region" aria-label="what was understood">
      <table>
        <thead>
          <tr>
            ${columns.map((column, k) => html`<th scope="col">${column.header || addressText(k, 0).replace(/1$/, '')}</th>`)}
          </tr>
          <tr>
            ${columns.map((column, k) => html`<td class="unit">${this.#unit(column, k)}</td>`)}
          </tr>
        </thead>
        <tbody>
          ${body.slice(0, SHOWN).map(
            (line) =>
              html`<tr>
                ${line.map((field) => html`<td class=${/^[-\d]/.test(field) ? 'number' : ''}>${field.replace(/^'/, '')}</td>`)}
              </tr>`,
          )}
        </tbody>
      </table>
      ${rest > 0 ? html`<p class="second">and ${rest} more lines</p>` : nothing}
    </div>`;
  }

  #unit(
    { unit, unknownUnit, near, numbers, header }: TableColumn,
    k: number,
  ): TemplateResult | typeof nothing {
    if (numbers === 0 && unit === '') return nothing;
    const set = (text: string): void =>
      this.#choose({ units: new Map([...(this.choice.units ?? []), [k, text]]) });
    return html`<input
        class=${unknownUnit ? 'unknown' : ''}
        aria-label="unit of ${header || `column ${k + 1}`}"
        aria-invalid=${unknownUnit ? 'true' : 'false'}
        placeholder="no unit"
        spellcheck="false"
        autocapitalize="off"
        .value=${unit}
        @change=${(event: Event) => set(valueOf(event).trim())}
      />
      ${
        unknownUnit
          ? html`<div class="near" role="group" aria-label="instead of ${unit}">
              ${[...near.slice(0, 4), ''].map((each) => html`<button @click=${() => set(each)}>${each || 'no unit'}</button>`)}
            </div>`
          : nothing
      }`;
  }

  #where(session: Session, { contents }: UnderstoodTable): TemplateResult {
    const { row, column } = session.selection;
    const over = this.anew ? 0 : overwritten(session.notebook, session.address, contents);
    const choice = (anew: boolean, words: string): TemplateResult =>
      html`<label
        ><input
          type="radio"
          name="where"
          .checked=${this.anew === anew}
          @change=${() => {
            this.anew = anew;
            this.refused = '';
          }}
        />${words}</label
      >`;
    return html`<fieldset>
      <legend>Where it goes</legend>
      ${choice(false, `${session.worksheet.title}, from ${addressText(column, row)} on`)}
      ${choice(true, 'a new worksheet')}
      ${over > 0 ? html`<span class="over">▲ ${over} filled ${over === 1 ? 'cell is' : 'cells are'} written over; undo brings them back.</span>` : nothing}
    </fieldset>`;
  }

  #take(session: Session, { from, copied }: ForeignTable, { contents }: UnderstoodTable): void {
    const answer = this.anew
      ? takenAnew(session.notebook, copied ? '' : from, contents)
      : takenAt(session.notebook, session.address, contents);
    if (isRefusal(answer)) this.refused = answer.message;
    else if (session.run(answer)) this.close();
  }
}

const valueOf = (event: Event): string =>
  event.target instanceof HTMLSelectElement || event.target instanceof HTMLInputElement
    ? event.target.value
    : '';

customElements.define('table-leaf', TableLeaf);
