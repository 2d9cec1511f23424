/** The margin beside the page: tabs for working, functions and cautions. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import './margin-cautions.ts';
import { openCautions } from '../open-cautions.ts';
import './margin-functions.ts';
import './margin-working.ts';
import type { MarginTab, Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';

const TABS: readonly (readonly [MarginTab, string])[] = [
  ['working', 'Working'],
  ['functions', 'Functions'],
  ['cautions', 'Cautions'],
];

export class MarginView extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  static override styles = [
    shared,
    css`
      :host {
        display: flex;
        flex-direction: column;
        min-block-size: 0;
        border-radius: 3px;
        background: var(--paper);
        box-shadow: var(--shadow);
      }
      .tabs {
        display: flex;
        gap: 2px;
        padding: 8px 10px 0;
        border-block-end: 1px solid var(--ruling-strong);
        border-radius: 3px 3px 0 0;
        background: var(--paper-edge);
      }
      .tabs button {
        padding: 4px 10px;
        border: 1px solid transparent;
        border-block-start: 3px solid transparent;
        border-block-end: 0;
        border-radius: 3px 3px 0 0;
        background: none;
        color: var(--ink-2);
      }
      .tabs button[aria-selected='true'] {
        margin-block-end: -1px;
        border-color: var(--ruling-strong);
        border-block-start-color: var(--accent);
        background: var(--paper);
        color: var(--ink);
      }
      .panel {
        flex: 1;
        min-block-size: 0;
        overflow: auto;
        padding: 12px 16px 20px;
      }
      .count {
        margin-inline-start: 4px;
        padding: 0 6px;
        border-radius: 8px;
        background: var(--caution-wash);
        color: var(--caution);
        font-size: 12px;
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
    const open = openCautions(session).filter((each) => each.acknowledged === undefined).length;
    return html`
      <div class="tabs" role="tablist" aria-label="margin" @keydown=${this.#onKey}>
        ${TABS.map(
          ([tab, words]) =>
            html`<button
              role="tab"
              id="tab-${tab}"
              aria-controls="panel"
              aria-selected=${session.margin === tab ? 'true' : 'false'}
              tabindex=${session.margin === tab ? 0 : -1}
              @click=${() => session.showMargin(tab)}
            >
              ${words}${tab === 'cautions' && open > 0 ? html`<span class="count">${open}</span>` : nothing}
            </button>`,
        )}
      </div>
      <div class="panel" id="panel" role="tabpanel" tabindex="0" aria-labelledby="tab-${session.margin}">
        ${
          session.margin === 'working'
            ? html`<margin-working .session=${session}></margin-working>`
            : session.margin === 'functions'
              ? html`<margin-functions .session=${session}></margin-functions>`
              : html`<margin-cautions .session=${session}></margin-cautions>`
        }
      </div>
    `;
  }

  #onKey(event: KeyboardEvent): void {
    const { session } = this;
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (!session || step === 0) return;
    event.preventDefault();
    const at = TABS.findIndex(([tab]) => tab === session.margin);
    const next = TABS[(at + step + TABS.length) % TABS.length];
    if (!next) return;
    session.showMargin(next[0]);
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>(`#tab-${next[0]}`)?.focus(),
    );
  }
}
customElements.define('margin-view', MarginView);
