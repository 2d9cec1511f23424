/** The first sight: notebooks on this device, templates, a file, an empty page. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { LIMITS } from '../../document/index.ts';
import type { Installation, Shelf, ShelfItem, World } from '../ports.ts';
import { openLeaf } from '../open-leaf.ts';
import { shared } from '../shared.styles.ts';

const LONGEST = LIMITS.titleLength;
const COPY = ', copy';

const when = (at: number): string =>
  new Date(at).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short', hour12: false });

export class StartView extends LitElement {
  static override properties = {
    world: { attribute: false },
    problem: { attribute: false },
    readiness: { attribute: false },
    persisted: { attribute: false },
    risk: { attribute: false },
    items: { state: true },
  };
  declare world: World | undefined;
  declare problem: string;
  /** Of the program on this device, as the world has it. */
  declare readiness: Installation['readiness'] | undefined;
  declare persisted: boolean | undefined;
  declare risk: string | undefined;
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
        flex-wrap: wrap;
        align-items: baseline;
        justify-content: space-between;
        gap: 0 12px;
        border-block-end: 1px solid var(--ruling);
      }
      .links {
        display: flex;
        gap: 12px;
        font-size: 14px;
      }
      .title {
        flex: 1;
      }
      @media (pointer: coarse) {
        .links button,
        summary {
          min-block-size: 44px;
          min-inline-size: 44px;
        }
        summary {
          align-content: center;
        }
      }
      .dates {
        flex-basis: 100%;
        margin: -4px 0 2px;
      }
      details {
        margin-block-start: 18px;
      }
      summary {
        padding-block: 6px;
        color: var(--ink-2);
        cursor: pointer;
      }
      .risk {
        padding: 7px 12px;
        border-inline-start: 6px solid var(--caution);
        background: var(--caution-wash);
        color: var(--caution);
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
      .asks {
        display: block;
        color: var(--ink-2);
        font-size: 13px;
        font-weight: 400;
        line-height: 1.35;
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
    void this.refresh().then(() => this.world?.shelf.sweep());
  }

  /** Lists the notebooks anew. */
  async refresh(): Promise<void> {
    try {
      this.items = [...((await this.world?.shelf.list()) ?? [])].sort((a, b) => b.changedAt - a.changedAt);
    } catch (reason) {
      this.problem = `the notebooks on this device could not be listed: ${String(reason)}`;
      this.items = [];
    }
  }

  override render(): TemplateResult {
    const { readiness, risk, persisted } = this;
    const items = this.items?.filter((item) => item.removedAt === undefined);
    const removed = this.items?.filter((item) => item.removedAt !== undefined) ?? [];
    return html`<div class="sheet">
      <h1>Swarfbook</h1>
      <p class="motto">
        A calculation notebook for metal cutting: units are checked in every cell, every result shows how it
        was worked out, and everything stays on this
        device.${readiness === 'ready' ? html` <b>Ready without network.</b>` : nothing}${persisted ? ' This browser has promised to keep what is stored here.' : nothing}
      </p>
      ${this.problem ? html`<p class="error" role="alert">${this.problem}</p>` : nothing}
      ${risk ? html`<p class="risk" role="status">▲ ${risk}</p>` : nothing}
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
            items === undefined
              ? html`<p class="second">looking…</p>`
              : items.length === 0
                ? html`<p class="second">No notebook yet.</p>`
                : html`<ul>
                    ${items.map((item) => this.#row(item))}
                  </ul>`
          }
          ${removed.length > 0 ? this.#aside(removed) : nothing}
        </section>
        <section aria-label="templates">
          <h2>Worked examples to start from</h2>
          <ul>
            ${(this.world?.templates ?? []).map(
              (template) =>
                html`<li>
                  <button class="open" @click=${() => this.#tell('open-template', template)}>
                    ${template.title}
                    <span class="asks">${template.question}</span>
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

  #row(item: ShelfItem): TemplateResult {
    const copy = item.copiedAt === undefined ? 'no file copy yet' : `file copy ${when(item.copiedAt)}`;
    return html`<li>
      <button class="open" @click=${() => this.#tell('open-notebook', item.id)}>${item.title}</button>
      <span class="links">
        <button class="link" aria-label="rename ${item.title}" @click=${() => this.#rename(item)}>
          rename
        </button>
        <button class="link" aria-label="duplicate ${item.title}" @click=${() => this.#duplicate(item)}>
          duplicate
        </button>
        <button class="link" aria-label="remove ${item.title}" @click=${() => this.#remove(item)}>
          remove
        </button>
      </span>
      <p class="second dates">changed ${when(item.changedAt)} · ${copy}</p>
    </li>`;
  }

  #aside(items: readonly ShelfItem[]): TemplateResult {
    return html`<details>
      <summary>Removed (${items.length})</summary>
      <ul>
        ${items.map(
          (item) =>
            html`<li>
              <span class="title">${item.title}</span>
              <span class="links">
                <button
                  class="link"
                  aria-label="bring back ${item.title}"
                  @click=${() => this.#carryOut((shelf) => shelf.bringBack(item.id))}
                >
                  bring back
                </button>
                <button class="link" aria-label="erase ${item.title}" @click=${() => this.#erase(item)}>
                  erase
                </button>
              </span>
              <p class="second dates">
                removed ${when(item.removedAt ?? 0)} · kept at least until
                ${when((item.removedAt ?? 0) + (this.world?.shelf.keptAside ?? 0))}
              </p>
            </li>`,
        )}
      </ul>
    </details>`;
  }

  /** Words that come back say why not. */
  async #carryOut(act: (shelf: Shelf) => Promise<unknown>): Promise<void> {
    const { world } = this;
    if (!world) return;
    const answer = await act(world.shelf).catch((reason: unknown) => String(reason));
    this.problem = typeof answer === 'string' ? answer : '';
    await this.refresh();
  }

  #rename(item: ShelfItem): void {
    this.#tell('ask-text', {
      title: 'Title of the notebook',
      words: '',
      value: item.title,
      done: (title: string) => title && this.#carryOut((shelf) => shelf.rename(item.id, title)),
    });
  }

  #duplicate({ id, title }: ShelfItem): void {
    const { world } = this;
    if (world)
      void this.#carryOut((shelf) =>
        shelf.duplicate(id, world.clock.newId(), `${title.slice(0, LONGEST - COPY.length)}${COPY}`),
      );
  }

  #remove(item: ShelfItem): void {
    void this.#carryOut((shelf) => shelf.remove(item.id));
  }

  #erase(item: ShelfItem): void {
    this.#tell('ask-consent', {
      title: `Erase ${item.title} for good?`,
      words:
        item.copiedAt === undefined
          ? 'There is no file copy of it: it can not be brought back.'
          : 'It can be brought back from its file copy, as it was then.',
      action: 'Erase',
      done: () =>
        this.#carryOut(async (shelf) =>
          (await shelf.erase(item.id)) ? undefined : 'It is open in another tab: close it there first.',
        ),
    });
  }
}
customElements.define('start-view', StartView);
