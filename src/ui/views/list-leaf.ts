/** A list of cells before it is taken back in: which cells it changes, from what to what; what has to be chosen. Nothing is guessed. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { findWorksheet, isRefusal } from '../../document/index.ts';
import type { LeftAsItWas } from '../../document/index.ts';
import { understandList } from '../../exchange/index.ts';
import type { ListReading, UnderstoodList } from '../../exchange/index.ts';
import { addressText, titleText } from '../../expression/index.ts';
import { editedText } from '../number-locale.ts';
import { openLeaf } from '../open-leaf.ts';
import type { ForeignTable } from '../pasting.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { takenList, type ListedChange, type TakenList } from '../taking-list.ts';
import { markQuestion } from './mark-question.ts';
import { tableStyles } from './table-leaf.styles.ts';

/** Changes that are shown; all of them are taken. */
const SHOWN = 200;

const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

export class ListLeaf extends LitElement {
  static override styles = [
    shared,
    tableStyles,
    css`
      .preview table {
        inline-size: 100%;
      }
      tbody th {
        font-weight: 400;
      }
      tbody > * > * {
        vertical-align: top;
      }
      tbody td {
        min-inline-size: 150px;
        overflow-wrap: break-word;
        white-space: normal;
      }
      .asked .near {
        display: inline-flex;
        margin: 0;
      }
      .left {
        max-block-size: 20dvh;
        margin: 0 0 10px;
        padding: 0;
        overflow: auto;
        color: var(--caution);
        list-style: none;
      }
    `,
  ];
  static override properties = {
    session: { attribute: false },
    table: { attribute: false },
    choice: { state: true },
    refused: { state: true },
  };
  declare session: Session | undefined;
  declare table: ForeignTable | undefined;
  declare close: () => void;
  declare choice: ListReading;
  /** Why it could not be put in. */
  declare refused: string;

  #understood: ReturnType<typeof understandList> | undefined;
  #taken: TakenList | undefined;

  constructor() {
    super();
    this.choice = {};
    this.refused = '';
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    const { session, table } = this;
    if (changed.has('table')) {
      this.choice = {};
      this.refused = '';
    }
    if (!session || !table || !(changed.has('table') || changed.has('choice'))) return;
    this.#understood = understandList(table.text, this.choice);
    this.#taken = isRefusal(this.#understood)
      ? undefined
      : takenList(session.notebook, this.#understood.cells, table.from);
  }

  override render(): TemplateResult | typeof nothing {
    const { session, table } = this;
    const [understood, taken] = [this.#understood, this.#taken];
    if (!session || !table || !understood) return nothing;
    if (isRefusal(understood) || !taken)
      return html`<p class="error" role="alert">${isRefusal(understood) ? understood.message : ''}</p>`;
    const { changes, same, added, unknownUnits } = taken;
    const [where, unknown] = [understood.asksDecimalMark, unknownUnits.size > 0];
    return html`<p>
        From ${table.from}: ${counted(understood.cells.length, 'cell')}. ${counted(changes.length, 'cell')}
        would change, ${same} ${same === 1 ? 'is' : 'are'} here as listed; a cell that is not listed stays as
        it is.
        ${added.length > 0 ? html`<span class="over">▲ New ${added.length === 1 ? 'worksheet' : 'worksheets'}: ${added.join(', ')}.</span>` : nothing}
        ${table.text.includes('\ufffd') ? html`<span class="over">▲ Some characters of the file could not be read: it is not stored as UTF-8.</span>` : nothing}
      </p>
      ${where || understood.example ? markQuestion(understood, (decimalMark) => this.#choose({ decimalMark })) : nothing}
      ${[...unknownUnits].map(([unit, near]) => this.#unit(unit, near))}
      ${changes.length > 0 ? this.#preview(session, changes) : nothing} ${this.#left(session, taken.left)}
      ${this.refused ? html`<p class="error" role="alert">${this.refused}</p>` : nothing}
      <div class="answers">
        <button class="link" @click=${() => openLeaf(this, 'table', table)}>
          take it as a plain table instead
        </button>
        <span role="status"
          >${where ? '▲ Choose how the numbers are read.' : unknown ? '▲ Choose a known unit, or none.' : ''}</span
        >
        <button
          class="primary"
          ?disabled=${where || unknown || changes.length === 0 || session.readOnly}
          @click=${() => this.#take(session, table, understood)}
        >
          Put it in
        </button>
      </div>`;
  }

  #choose(change: ListReading): void {
    this.choice = { ...this.choice, ...change };
    this.refused = '';
  }

  #unit(unit: string, near: readonly string[]): TemplateResult {
    const set = (text: string): void =>
      this.#choose({ units: new Map([...(this.choice.units ?? []), [unit, text]]) });
    return html`<fieldset class="asked">
      <legend>${unit} is no unit that is known here</legend>
      <label
        >instead of ${unit}
        <input
          spellcheck="false"
          autocapitalize="off"
          placeholder="no unit"
          @change=${(event: Event) => event.target instanceof HTMLInputElement && set(event.target.value.trim())}
        />
      </label>
      <span class="near">
        ${[...near, ''].map((each) => html`<button @click=${() => set(each)}>${each || 'no unit'}</button>`)}
      </span>
    </fieldset>`;
  }

  #preview(session: Session, changes: readonly ListedChange[]): TemplateResult {
    const { currency } = session.notebook;
    const rest = changes.length - SHOWN;
    return html`<div class="preview" tabindex="0" role="region" aria-label="what would change">
      <table>
        <thead>
          <tr>
            <th scope="col">cell</th>
            <th scope="col">now</th>
            <th scope="col">then</th>
            <th scope="col">besides</th>
          </tr>
        </thead>
        <tbody>
          ${changes.slice(0, SHOWN).map(
            (each) =>
              html`<tr>
                <th scope="row">${this.#place(session, each)}</th>
                <td>${editedText(each.was, currency)}</td>
                <td>${each.is === each.was ? '' : editedText(each.is, currency) || 'empty'}</td>
                <td>${besides(each)}</td>
              </tr>`,
          )}
        </tbody>
      </table>
      ${rest > 0 ? html`<p class="second">and ${rest} more</p>` : nothing}
    </div>`;
  }

  /** "Feeds.B7"; a worksheet that is not here yet has no id here, but its title stands in the list. */
  #place(session: Session, { worksheet, row, column }: LeftAsItWas | ListedChange): string {
    const title = findWorksheet(session.notebook, worksheet)?.title ?? this.#titleOf(worksheet);
    return `${titleText(title)}.${addressText(column, row)}`;
  }

  #titleOf(worksheet: string): string {
    return this.#taken?.titles.get(worksheet) ?? worksheet;
  }

  #left(session: Session, left: readonly LeftAsItWas[]): TemplateResult | typeof nothing {
    if (left.length === 0) return nothing;
    return html`<ul class="left">
      ${left.slice(0, 50).map((each) => html`<li>▲ ${this.#place(session, each)}: ${each.why}</li>`)}
      ${left.length > 50 ? html`<li>and ${left.length - 50} more</li>` : nothing}
    </ul>`;
  }

  #take(session: Session, { from }: ForeignTable, { cells }: UnderstoodList): void {
    const { transaction } = takenList(session.notebook, cells, from);
    if (isRefusal(transaction)) this.refused = transaction.message;
    else if (session.run(transaction)) this.close();
  }
}

/** What changes of a cell besides its content. */
const besides = ({ name, symbol, role, label }: ListedChange): string =>
  [
    name === undefined ? '' : `name ${name}`,
    symbol === undefined ? '' : `symbol ${symbol}`,
    role === undefined ? '' : role,
    label === undefined ? '' : `label “${label}”`,
  ]
    .filter(Boolean)
    .join(', ');

customElements.define('list-leaf', ListLeaf);
