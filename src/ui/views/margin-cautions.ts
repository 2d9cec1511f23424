/** All errors, clashes, cautions, passed limits and assumed units, each with a way to its cell and an acknowledgement. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { acknowledge } from '../editing.ts';
import { cellLink } from '../cell-links.ts';
import { otherReading } from '../other-reading.ts';
import { openCautions } from '../open-cautions.ts';
import type { OpenCaution } from '../open-cautions.ts';
import { inWords } from '../number-locale.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { USUAL_CAUTIONS } from '../usual-cautions.ts';
import { Watching } from '../watching.ts';

const TITLES: Readonly<Record<OpenCaution['type'], string>> = {
  error: 'Errors',
  breach: 'Limits passed',
  caution: 'Cautions',
  assumed: 'Plain numbers read in a unit',
};

export class MarginCautions extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  static override styles = [
    shared,
    css`
      section {
        margin-block-end: 18px;
      }
      ul {
        margin: 6px 0 0;
        padding: 0;
        list-style: none;
      }
      li {
        margin-block-end: 8px;
        padding: 8px 12px;
        border-inline-start: 4px solid var(--button-edge);
        background: var(--paper-edge);
      }
      li.error,
      li.breach {
        border-inline-start-color: var(--error);
        background: var(--error-wash);
      }
      li.breach {
        color: var(--error);
      }
      @media (pointer: coarse) {
        .at {
          display: block;
        }
      }
      li.caution.open {
        border-inline-start-color: var(--caution);
        background: var(--caution-wash);
      }
      .done {
        color: var(--ink-2);
        font-size: 13px;
      }
    `,
  ];

  constructor() {
    super();
    new Watching(this);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const all = openCautions(session);
    const groups = (['error', 'breach', 'caution', 'assumed'] as const)
      .map((type) => ({ type, list: all.filter((each) => each.type === type) }))
      .filter(({ list }) => list.length > 0);
    return html`
      ${groups.length === 0 ? html`<p>Nothing in this notebook asks for a look.</p>` : nothing}
      ${groups.map(
        ({ type, list }) =>
          html`<section aria-label=${TITLES[type]}>
            <h3>${TITLES[type]} (${list.length})</h3>
            <ul>
              ${list.slice(0, 200).map((each) => this.#item(session, each))}
            </ul>
            ${list.length > 200 ? html`<p class="second">and ${list.length - 200} more</p>` : nothing}
          </section>`,
      )}
      <section aria-label="usual cautions">
        <h3>Always</h3>
        <ul>
          ${USUAL_CAUTIONS.map((words) => html`<li>${words}</li>`)}
        </ul>
      </section>
    `;
  }

  #item(session: Session, each: OpenCaution): TemplateResult {
    const open = each.acknowledged === undefined;
    const can = each.type === 'caution' || each.type === 'breach';
    return html`<li class="${each.type} ${open ? 'open' : ''}">
      <span class="at">${cellLink(session, each.address)}</span> ${inWords(each.text)}
      ${otherReading(session, each.address, each)}
      ${each.root ? html` · begins at ${cellLink(session, each.root)}` : nothing}
      ${
        open
          ? can
            ? html`<div>
                <button class="link" ?disabled=${session.readOnly} @click=${() => this.#ask(session, each)}>
                  acknowledge…
                </button>
              </div>`
            : nothing
          : html`<div class="done">acknowledged: ${each.acknowledged}</div>`
      }
    </li>`;
  }

  #ask(session: Session, each: OpenCaution): void {
    this.dispatchEvent(
      new CustomEvent('ask-text', {
        bubbles: true,
        composed: true,
        detail: {
          title: 'Acknowledge with a reason',
          words: `${inWords(each.text)}. The reason is kept with the cell and printed; it falls when the value or the formula changes.`,
          value: '',
          done: (reason: string) => acknowledge(session, each, reason),
        },
      }),
    );
  }
}
customElements.define('margin-cautions', MarginCautions);
