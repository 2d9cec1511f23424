/** What belongs to the selected cell besides its value: digits, label, source, limits. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import {
  ROLES,
  contentOf,
  labelOf,
  roleOf,
  setFormat,
  setLabel,
  setLimits,
  setRole,
  setSource,
} from '../../document/index.ts';
import type { Cell, Limits, NumberFormat, Refusal, Transaction } from '../../document/index.ts';
import '../elements/machine-mark.ts';
import { destinations } from '../destinations.ts';
import { selectedBlock, setUnit, unitChoices } from '../editing.ts';
import { inlineView, noteView } from '../elements/note.ts';
import { hasMarks, readInline, readNote } from '../note-tree.ts';
import { openLeaf } from '../open-leaf.ts';
import { storedText, editedText } from '../number-locale.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';

const FORMATS: readonly (readonly [string, NumberFormat | undefined])[] = [
  ['as it comes', undefined],
  ...[2, 3, 4, 5, 6].map((digits): readonly [string, NumberFormat] => [
    `${digits} significant digits`,
    { type: 'significant', digits },
  ]),
  ...[0, 1, 2, 3, 4].map((digits): readonly [string, NumberFormat] => [
    digits === 1 ? '1 decimal' : `${digits} decimals`,
    { type: 'decimals', digits },
  ]),
  ...[16, 32, 64].map((denominator): readonly [string, NumberFormat] => [
    `fractions to 1/${denominator}`,
    { type: 'fraction', denominator },
  ]),
];

export class CellProperties extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  static override styles = [
    shared,
    css`
      :host {
        display: block;
        margin-block-start: 18px;
      }
      dl {
        display: grid;
        grid-template-columns: auto 1fr;
        align-items: center;
        gap: 4px 12px;
        margin: 6px 0 0;
        font-size: 14px;
      }
      dt {
        color: var(--ink-2);
      }
      dd {
        margin: 0;
        overflow-wrap: anywhere;
      }
      .note {
        margin-block-start: 6px;
        padding: 2px 0 2px 10px;
        border-inline-start: 3px solid var(--line);
        font-size: 14px;
      }
      .note :is(p, ul, ol) {
        margin: 4px 0;
      }
      .note :is(ul, ol) {
        padding-inline-start: 22px;
      }
      code {
        padding: 0 3px;
        background: var(--paper-edge);
        font-family: var(--mono);
      }
      select,
      input {
        min-block-size: var(--least, 26px);
        padding: 0 4px;
        font-size: 14px;
      }
      button.link {
        min-block-size: 24px;
      }
    `,
  ];

  constructor() {
    super();
    new Watching(this, 'later');
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const { row, column } = session.selection;
    const cell: Cell = session.cell ?? { content: '' };
    const { limits } = cell;
    const { value } = session.result ?? {};
    const isNumber = typeof value === 'number' || cell.content === '';
    const label = cell.label ?? labelOf(session.worksheet, row, column);
    return html`<h3>About this cell</h3>
      ${this.#note(session, cell)}
      <dl>
        <dt>role</dt>
        <dd>${this.#role(session, cell)}</dd>
        ${
          isNumber
            ? html`<dt>unit</dt>
                <dd>${this.#unit(session, cell)}</dd>
                <dt>digits</dt>
                <dd>${this.#format(session, cell)}</dd>`
            : nothing
        }
        <dt>label</dt>
        <dd>
          ${this.#text(session, 'Label', label, (text) => setLabel(session.notebook, { ...args(session), ...(text && { label: text }) }))}
        </dd>
        ${
          cell.content.startsWith('=')
            ? nothing
            : html`<dt>choices</dt>
                <dd>
                  ${this.#leaf(session, 'choices', cell.choices ? `${cell.choices.length} to pick from` : '', 'What may be picked')}
                </dd>
                <dt>source</dt>
                <dd>
                  ${this.#text(session, 'Where the value comes from', cell.source ?? '', (source) => setSource(session.notebook, { ...args(session), ...(source && { source }) }))}
                </dd>`
        }
        ${
          isNumber
            ? html`<dt>lowest</dt>
                <dd>${this.#limit(session, limits, 'low')}</dd>
                <dt>highest</dt>
                <dd>${this.#limit(session, limits, 'high')}</dd>`
            : nothing
        }
        <dt>note</dt>
        <dd>${this.#leaf(session, 'note', cell.note ? 'above' : '', 'Note')}</dd>
        <dt>machine</dt>
        <dd><machine-mark .session=${session}></machine-mark></dd>
      </dl>`;
  }

  /** The cell's note, and its text where links can be followed from it. */
  #note(session: Session, cell: Cell): TemplateResult | typeof nothing {
    const content = contentOf(cell, session.notebook.currency);
    const parts = content.type === 'text' && roleOf(cell) === 'note' ? readInline(content.text) : [];
    if (!cell.note && !hasMarks(parts)) return nothing;
    const go = (place: string): void => {
      const [target] = destinations(session.notebook, session.worksheet.id, place);
      if (!target) return session.say(`there is no ${place} in this notebook`, true);
      session.select(target.block.row, target.block.column, false, target.worksheet);
    };
    return html`<div class="note">
      ${hasMarks(parts) ? html`<p>${inlineView(parts, go)}</p>` : nothing}
      ${cell.note ? noteView(readNote(cell.note), go) : nothing}
    </div>`;
  }

  #role(session: Session, cell: Cell): TemplateResult {
    return html`<select
      aria-label="role of the cell"
      ?disabled=${session.readOnly}
      @change=${(event: Event) => {
        const role = ROLES.find((each) => each === textOf(event));
        session.run(setRole(session.notebook, { ...args(session), ...(role && { role }) }));
      }}
    >
      <option value="" .selected=${cell.role === undefined}>
        ${cell.content === '' ? 'by its content' : `${roleOf(cell)}, by its content`}
      </option>
      ${ROLES.map((role) => html`<option value=${role} .selected=${cell.role === role}>${role}</option>`)}
    </select>`;
  }

  /** Any unit of its kind; an empty cell takes any at all and gives it to the number typed next. */
  #unit(session: Session, cell: Cell): TemplateResult {
    const now = session.result?.unit ?? cell.unit ?? '';
    return html`<input
        aria-label="unit in which it is shown"
        list="units"
        size="10"
        placeholder="no unit"
        spellcheck="false"
        autocapitalize="off"
        ?readonly=${session.readOnly}
        .value=${now}
        @change=${(event: Event) => {
          if (textOf(event).trim() !== now) setUnit(session, textOf(event).trim());
          this.requestUpdate();
        }}
      />
      <datalist id="units">
        ${unitChoices(session).map((unit) => html`<option value=${unit}></option>`)}
      </datalist>`;
  }

  #leaf(session: Session, key: string, now: string, title: string): TemplateResult {
    return html`${now}
      <button
        class="link"
        ?disabled=${session.readOnly}
        aria-label="${title}: ${now === '' ? 'set' : 'change'}"
        @click=${() => openLeaf(this, key)}
      >
        ${now === '' ? 'set…' : 'change…'}
      </button>`;
  }

  #format(session: Session, cell: Cell): TemplateResult {
    const now = JSON.stringify(cell.format);
    return html`<select
      aria-label="digits"
      ?disabled=${session.readOnly}
      @change=${(event: Event) => {
        const format = FORMATS[chosen(event)]?.[1];
        session.run(setFormat(session.notebook, { ...args(session), ...(format && { format }) }));
      }}
    >
      ${FORMATS.map(([words, format], k) => html`<option value=${k} .selected=${JSON.stringify(format) === now}>${words}</option>`)}
    </select>`;
  }

  /** A limit with its own words behind it in brackets: "12000 1/min (marked on the holder)". */
  #limit(session: Session, limits: Limits | undefined, side: 'low' | 'high'): TemplateResult {
    const title = side === 'low' ? 'Lowest allowed value' : 'Highest allowed value';
    const words = side === 'low' ? 'lowText' : 'highText';
    const { currency } = session.notebook;
    const own = limits?.[words];
    const now = editedText(limits?.[side] ?? '', currency) + (own === undefined ? '' : ` (${own})`);
    const change = (typed: string): Transaction | Refusal => {
      const [, value = typed, said] = /^(.*?)\s+\((.+)\)$/.exec(typed) ?? [];
      const { [side]: _old, [words]: _said, ...rest } = limits ?? {};
      const next: Limits = value
        ? { ...rest, [side]: storedText(value, currency), ...(said && { [words]: said }) }
        : rest;
      const set = Object.keys(next).length > 0;
      return setLimits(session.notebook, { ...args(session), ...(set && { limits: next }) });
    };
    return this.#text(
      session,
      title,
      now,
      change,
      'Its reason may stand behind it in brackets. Empty takes it away.',
    );
  }

  #text(
    session: Session,
    title: string,
    now: string,
    done: (text: string) => Transaction | Refusal,
    words = 'Empty takes it away.',
  ): TemplateResult {
    const ask = (): void => {
      const detail = {
        title,
        words,
        value: now,
        done: (text: string) => session.run(done(text)),
      };
      this.dispatchEvent(new CustomEvent('ask-text', { bubbles: true, composed: true, detail }));
    };
    return html`${now}
      <button
        class="link"
        ?disabled=${session.readOnly}
        aria-label="${title}: ${now === '' ? 'set' : 'change'}"
        @click=${ask}
      >
        ${now === '' ? 'set…' : 'change…'}
      </button>`;
  }
}

const args = (session: Session): Parameters<typeof setLabel>[1] => ({
  worksheet: session.worksheet.id,
  block: selectedBlock(session),
});

const textOf = ({ target }: Event): string =>
  target instanceof HTMLSelectElement || target instanceof HTMLInputElement ? target.value : '';

const chosen = (event: Event): number =>
  event.target instanceof HTMLSelectElement ? Number(event.target.value) : 0;

customElements.define('cell-properties', CellProperties);
