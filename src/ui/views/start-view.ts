/** The first sight: notebooks on this device, templates, a file, an empty page. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import type { ShelfItem, World } from '../ports.ts';
import { openLeaf } from '../leaves.ts';
import { shared } from '../shared.styles.ts';

export class StartView extends LitElement {
  static override properties = {
    world: { attribute: false },
    problem: { attribute: false },
    items: { state: true },
  };
  declare world: World | undefined;
  declare problem: string;
  declare items: readonly ShelfItem[] | undefined;

  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      .sheet {
        max-inline-size: 980px;
        margin: 4vh auto;
        padding: 26px 34px 34px;
        border-radius: 3px;
        background: var(--paper);
        box-shadow: var(--shadow);
      }
      h1 {
        margin: 0;
        font-size: 30px;
        line-height: 1.2;
      }
      .motto {
        max-inline-size: 62ch;
        margin: 4px 0 22px;
        color: var(--ink-2);
      }
      .two {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(300px, 1fr));
        gap: 28px 44px;
      }
      h2 {
        padding-block-end: 4px;
        border-block-end: 1.5px solid var(--line);
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: flex;
        align-items: baseline;
        justify-content: space-between;
        gap: 12px;
        border-block-end: 1px solid var(--ruling);
      }
      .open {
        flex: 1;
        padding: 7px 0;
        border: 0;
        border-radius: 0;
        background: none;
        color: var(--accent);
        text-align: start;
      }
      .open:hover {
        text-decoration: underline;
      }
      .actions {
        display: flex;
        flex-wrap: wrap;
        gap: 10px;
        margin-block: 0 26px;
      }
    `,
  ];

  constructor() {
    super();
    this.problem = '';
  }

  override firstUpdated(): void {
    void this.#list();
  }

  async #list(): Promise<void> {
    try {
      this.items = [...((await this.world?.shelf.list()) ?? [])].sort((a, b) => b.changedAt - a.changedAt);
    } catch (reason) {
      this.problem = `the notebooks on this device could not be listed: ${String(reason)}`;
      this.items = [];
    }
  }

  override render(): TemplateResult {
    const ready = this.world?.installation.readiness === 'ready';
    return html`<div class="sheet">
      <h1>Swarfbook</h1>
      <p class="motto">
        A calculation notebook for metal cutting: units are checked in every cell, every result shows how it
        was worked out, and everything stays on this
        device.${ready ? html` <b>Ready without network.</b>` : nothing}
      </p>
      ${this.problem ? html`<p class="error" role="alert">${this.problem}</p>` : nothing}
      <div class="actions">
        <button class="primary" @click=${() => this.#tell('new-notebook', 'metric')}>
          Empty page, metric
        </button>
        <button @click=${() => this.#tell('new-notebook', 'inch')}>Empty page, inch</button>
        <button @click=${() => this.#tell('open-file')}>Open a file…</button>
        <button class="quiet" @click=${() => openLeaf(this, 'help')}>Help</button>
        <button class="quiet" @click=${() => openLeaf(this, 'about')}>About</button>
      </div>
      <div class="two">
        <section aria-label="notebooks on this device">
          <h2>On this device</h2>
          ${
            this.items === undefined
              ? html`<p class="second">looking…</p>`
              : this.items.length === 0
                ? html`<p class="second">No notebook yet.</p>`
                : html`<ul>
                    ${this.items.map(
                      (item) =>
                        html`<li>
                          <button class="open" @click=${() => this.#tell('open-notebook', item.id)}>
                            ${item.title}
                          </button>
                          <span class="second"
                            >${new Date(item.changedAt).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short', hour12: false })}</span
                          >
                          <button class="link" @click=${() => this.#remove(item)}>remove</button>
                        </li>`,
                    )}
                  </ul>`
          }
        </section>
        <section aria-label="templates">
          <h2>Worked examples to start from</h2>
          <ul>
            ${(this.world?.templates ?? []).map(
              (template) =>
                html`<li>
                  <button class="open" @click=${() => this.#tell('open-template', template)}>
                    ${template.title}
                  </button>
                </li>`,
            )}
          </ul>
        </section>
      </div>
    </div>`;
  }

  #tell(what: string, detail?: unknown): void {
    this.dispatchEvent(new CustomEvent(what, { bubbles: true, composed: true, detail }));
  }

  #remove(item: ShelfItem): void {
    const detail = {
      title: `Remove ${item.title} from this device?`,
      words:
        item.copiedAt === undefined
          ? 'There is no file copy of it: it can not be brought back.'
          : 'It can be brought back from its file copy, as it was then.',
      action: 'Remove',
      done: () => void this.world?.shelf.remove(item.id).then(() => this.#list()),
    };
    this.dispatchEvent(new CustomEvent('ask-consent', { bubbles: true, composed: true, detail }));
  }
}
customElements.define('start-view', StartView);
