/** The frame of a leaf: a dialog with a heading, a way out, and what the leaf shows. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { holdKeys, takeHeld } from '../held-keys.ts';
import { LEAVES, type Leaf } from '../leaves.ts';
import type { World } from '../ports.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';

export class LeafDialog extends LitElement {
  static override properties = {
    world: { attribute: false },
    session: { attribute: false },
    leaf: { state: true },
  };
  declare world: World | undefined;
  declare session: Session | undefined;
  declare leaf: { readonly row: Leaf; readonly detail: unknown } | undefined;

  static override styles = [
    shared,
    css`
      dialog {
        inline-size: min(1040px, 96vw);
        max-block-size: 94dvh;
        padding: 0;
        overflow: hidden;
        border: 1px solid var(--button-edge);
        border-radius: 4px;
        background: var(--paper);
        color: var(--ink);
        box-shadow: var(--shadow);
      }
      dialog[open] {
        display: flex;
        flex-direction: column;
      }
      dialog::backdrop {
        background: rgb(15 24 34 / 0.4);
      }
      .head {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 12px;
        padding: 10px 18px;
        border-block-end: 1px solid var(--ruling-strong);
        background: var(--paper-edge);
      }
      h2 {
        color: var(--ink);
        font-size: 17px;
      }
      .body {
        min-block-size: 0;
        padding: 14px 18px 20px;
        overflow: auto;
      }
      .ways {
        display: flex;
        gap: 8px;
      }
      @media print {
        dialog[open] {
          position: static;
          display: block;
          inline-size: auto;
          max-inline-size: none;
          max-block-size: none;
          margin: 0;
          overflow: visible;
          border: 0;
          box-shadow: none;
        }
        .body {
          overflow: visible;
        }
        .ways {
          display: none;
        }
      }
    `,
  ];

  override firstUpdated(): void {
    this.world?.installation.onChange(() => this.leaf && this.requestUpdate());
  }

  /** Opens the leaf an `open-leaf` event names. */
  async open(event: Event): Promise<void> {
    if (!(event instanceof CustomEvent)) return;
    const { key, detail } = event.detail as { readonly key: string; readonly detail: unknown };
    const row = LEAVES.find((each) => each.key === key);
    if (!row) throw new RangeError(`no leaf ${key}`);
    if (this.session) holdKeys(this.session);
    try {
      await row.load();
      await this.#show(row, detail);
    } finally {
      if (this.session) takeHeld(this.session);
    }
  }

  async #show(row: Leaf, detail: unknown): Promise<void> {
    const swapped = this.leaf !== undefined;
    this.leaf = { row, detail };
    await this.updateComplete;
    const dialog = this.renderRoot.querySelector('dialog');
    if (dialog && !dialog.open) dialog.showModal();
    const body = this.renderRoot.querySelector<HTMLElement>('.body');
    body?.scrollTo(0, 0);
    if (swapped) body?.focus();
  }

  override render(): TemplateResult | typeof nothing {
    const { leaf, world, session } = this;
    if (!leaf || !world) return nothing;
    const { row, detail } = leaf;
    const close = (): void => this.close();
    return html`<dialog aria-labelledby="title" @close=${() => this.#closed()}>
      <div class="head">
        <h2 id="title">${row.title}</h2>
        <span class="ways">
          ${row.printed ? html`<button @click=${() => this.#print()}>Print</button>` : nothing}
          <button @click=${close}>Close</button>
        </span>
      </div>
      <div class="body" tabindex="0" role="group" aria-labelledby="title">
        ${row.view({ world, session, detail, close })}
      </div>
    </dialog>`;
  }

  /** Prints the leaf in place of the notebook. */
  #print(): void {
    this.dispatchEvent(new CustomEvent('print-leaf', { bubbles: true, composed: true }));
  }

  close(): void {
    this.renderRoot.querySelector('dialog')?.close();
  }

  #closed(): void {
    this.leaf = undefined;
    this.dispatchEvent(new CustomEvent('to-page', { bubbles: true, composed: true }));
  }
}
customElements.define('leaf-dialog', LeafDialog);
