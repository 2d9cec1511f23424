/** The margin beside the page: a tab for each panel. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { PANELS, type Panel } from '../panels.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';

export class MarginView extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;
  readonly #loaded = new Set<string>();

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
        flex-wrap: wrap;
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
    new Watching(this, 'later');
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const panel = PANELS.find(({ key }) => key === session.margin) ?? PANELS[0];
    if (panel && !this.#loaded.has(panel.key)) void this.#load(panel);
    return html`
      <div class="tabs" role="tablist" aria-label="margin" @keydown=${this.#onKey}>
        ${PANELS.map(({ key, words, waiting }) => {
          const count = waiting?.(session) ?? 0;
          return html`<button
            role="tab"
            id="tab-${key}"
            aria-controls="panel"
            aria-selected=${key === panel?.key ? 'true' : 'false'}
            tabindex=${key === panel?.key ? 0 : -1}
            @click=${() => session.showMargin(key)}
          >
            ${words}${count > 0 ? html`<span class="count">${count}</span>` : nothing}
          </button>`;
        })}
      </div>
      <div class="panel" id="panel" role="tabpanel" tabindex="0" aria-labelledby="tab-${panel?.key}">
        ${panel && this.#loaded.has(panel.key) ? panel.view(session) : nothing}
      </div>
    `;
  }

  async #load(panel: Panel): Promise<void> {
    await panel.load();
    this.#loaded.add(panel.key);
    this.requestUpdate();
  }

  #onKey(event: KeyboardEvent): void {
    const { session } = this;
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (!session || step === 0) return;
    event.preventDefault();
    const at = PANELS.findIndex(({ key }) => key === session.margin);
    const next = PANELS[(at + step + PANELS.length) % PANELS.length];
    if (!next) return;
    session.showMargin(next.key);
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>(`#tab-${next.key}`)?.focus(),
    );
  }
}
customElements.define('margin-view', MarginView);
