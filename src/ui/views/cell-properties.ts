/** What belongs to the selected cell besides its value: digits, label, source, limits. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { labelOf, setFormat, setLabel, setLimits, setSource } from '../../document/index.ts';
import type { Cell, Limits, NumberFormat, Refusal, Transaction } from '../../document/index.ts';
import '../elements/machine-mark.ts';
import { selectedBlock } from '../editing.ts';
import { canonicalText, editedText } from '../number-locale.ts';
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
      select {
        min-block-size: 26px;
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
    new Watching(this);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    const cell = session?.cell;
    if (!session || !cell) return nothing;
    const isNumber = typeof session.result?.value === 'number';
    const { limits } = cell;
    return html`<h3>About this cell</h3>
      <dl>
        ${
          isNumber
            ? html`<dt>digits</dt>
                <dd>${this.#format(session, cell)}</dd>`
            : nothing
        }
        <dt>label</dt>
        <dd>
          ${this.#text(session, 'Label', cell.label ?? labelOf(session.worksheet, session.selection.row, session.selection.column), (label) => setLabel(session.notebook, { ...args(session), ...(label && { label }) }))}
        </dd>
        ${
          cell.content.startsWith('=')
            ? nothing
            : html`<dt>source</dt>
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
        <dt>machine</dt>
        <dd><machine-mark .session=${session}></machine-mark></dd>
      </dl>`;
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

  #limit(session: Session, limits: Limits | undefined, side: 'low' | 'high'): TemplateResult {
    const title = side === 'low' ? 'Lowest allowed value' : 'Highest allowed value';
    const { currency } = session.notebook;
    return this.#text(session, title, editedText(limits?.[side] ?? '', currency), (typed) => {
      const text = canonicalText(typed, currency) ?? typed;
      const { [side]: _old, ...rest } = limits ?? {};
      const next: Limits = text ? { ...rest, [side]: text } : rest;
      const set = Object.keys(next).length > 0;
      return setLimits(session.notebook, { ...args(session), ...(set && { limits: next }) });
    });
  }

  #text(
    session: Session,
    title: string,
    now: string,
    done: (text: string) => Transaction | Refusal,
  ): TemplateResult {
    const ask = (): void => {
      const detail = {
        title,
        words: 'Empty takes it away.',
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

const chosen = (event: Event): number =>
  event.target instanceof HTMLSelectElement ? Number(event.target.value) : 0;

customElements.define('cell-properties', CellProperties);
