/** Handing a notebook over: file, report, paper, link, QR code; and laying beside it what comes back. */

import { LitElement, css, html, nothing, svg, type TemplateResult } from 'lit';
import { forEachCell, labelOf, partsOf } from '../../document/index.ts';
import { addressText } from '../../expression/index.ts';
import { linkOf, rememberHandedOver, reportName, reportOf } from '../handing-over.ts';
import { editedText } from '../number-locale.ts';
import { openLeaf } from '../open-leaf.ts';
import { QR_CAPACITY, qrDrawing } from '../qr-code.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';

interface Link {
  readonly version: number;
  readonly text?: string;
  readonly refused?: string;
}

export class HandOver extends LitElement {
  static override properties = {
    session: { attribute: false },
    close: { attribute: false },
    link: { state: true },
    said: { state: true },
    busy: { state: true },
  };
  declare session: Session | undefined;
  declare close: (() => void) | undefined;
  declare link: Link | undefined;
  declare said: string;
  declare busy: boolean;

  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      .ways {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 300px), 1fr));
        gap: 14px;
      }
      section {
        display: flex;
        flex-direction: column;
        align-items: start;
        gap: 8px;
        padding: 12px 16px 14px;
        border: 1px solid var(--ruling-strong);
        border-radius: 4px;
      }
      h3 {
        color: var(--ink);
        font-size: 16px;
      }
      p {
        flex: 1;
        margin: 0;
      }
      section button {
        min-block-size: 44px;
      }
      .both {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
      }
      .wide {
        grid-column: 1 / -1;
      }
      input {
        inline-size: 100%;
        font-family: var(--mono);
        font-size: 13px;
      }
      .qr {
        inline-size: min(100%, 460px);
        background: #fff;
      }
      .qr path {
        fill: #000;
      }
      .said {
        min-block-size: 24px;
        color: var(--good);
        font-weight: 600;
      }
    `,
  ];

  constructor() {
    super();
    this.said = '';
    this.busy = false;
    new Watching(this);
  }

  override willUpdate(): void {
    const { session } = this;
    if (!session || this.link?.version === session.version) return;
    const { version } = session;
    this.link = { version };
    void linkOf(session).then((answer) => {
      if (this.link?.version !== version) return;
      this.link =
        typeof answer === 'string' ? { version, text: answer } : { version, refused: answer.message };
    });
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const photographs = partsOf(session.notebook, 'photographs').length;
    return html`<p class="said" role="status">${this.said}</p>
      <div class="ways">
        <section>
          <h3>File</h3>
          <p>
            The notebook with all formulas, results and the version of the program. Who opens it sees every
            result that comes out
            differently.${photographs > 0 ? ` ${photographs} photographs go along.` : ''}
          </p>
          <button class="primary" @click=${() => this.#tell('save-file')}>Save or share the file</button>
        </section>
        <section>
          <h3>Report</h3>
          <p>
            One page that any browser opens from a mail: values, workings, cautions, figures. Nothing in it
            runs; the program opens it again as a notebook.
          </p>
          <button class="primary" ?disabled=${this.busy} @click=${() => void this.#report(session)}>
            ${this.busy ? 'being written…' : 'Save or share the report'}
          </button>
        </section>
        <section>
          <h3>Paper</h3>
          <p>Given values with their sources, worksheets, workings, cautions, what was reviewed.</p>
          <button @click=${() => this.#print()}>Print…</button>
        </section>
        <section>
          <h3>What came back</h3>
          <p>Lay a received notebook beside this one: take over its changes cell by cell, or keep yours.</p>
          <button @click=${() => openLeaf(this, 'compare')}>Compare with a received one…</button>
        </section>
        ${this.#link(session)} ${this.#setAtMachine(session)}
      </div>`;
  }

  #setAtMachine({ notebook }: Session): TemplateResult | typeof nothing {
    const lines: string[] = [];
    for (const worksheet of notebook.worksheets)
      forEachCell(worksheet, ({ content, changed }, row, column) => {
        if (!changed) return;
        const [now, before] = [content, changed.from].map((text) => editedText(text, notebook.currency));
        const label = labelOf(worksheet, row, column);
        lines.push(
          `${worksheet.title} ${addressText(column, row)} ${label}: ${now}, before ${before} (${changed.by}, ${changed.at.slice(0, 10)})`,
        );
      });
    if (lines.length === 0) return nothing;
    return html`<section class="wide">
      <h3>Values set at the machine: they go along with their marks</h3>
      <ul>
        ${lines.map((line) => html`<li>${line}</li>`)}
      </ul>
    </section>`;
  }

  #link(session: Session): TemplateResult {
    const { link } = this;
    if (!link?.text)
      return html`<section class="wide">
        <h3>Link</h3>
        <p>${link?.refused === undefined ? 'being packed…' : `▲ ${link.refused}`}</p>
      </section>`;
    const { text } = link;
    const drawing = qrDrawing(text);
    const share = (navigator as { readonly share?: Navigator['share'] }).share !== undefined;
    return html`<section>
        <h3>Link</h3>
        <p>
          It carries the whole notebook behind its #; no server sees it. Who has the link can read everything
          in it.
        </p>
        <input readonly aria-label="link" .value=${text} @focus=${(event: Event) => selectAll(event)} />
        <div class="both">
          <button @click=${() => void this.#copy(session, text)}>Copy the link</button>
          ${share ? html`<button @click=${() => void this.#share(session, text)}>Share…</button>` : nothing}
        </div>
      </section>
      <section>
        <h3>QR code of the link</h3>
        ${
          drawing
            ? html`<svg
                class="qr"
                viewBox="0 0 ${drawing.size} ${drawing.size}"
                role="img"
                aria-label="QR code of the link"
                shape-rendering="crispEdges"
              >
                ${svg`<path d=${drawing.path} />`}
              </svg>`
            : html`<p>
                ▲ It does not fit: the link has ${text.length} characters, a QR code takes ${QR_CAPACITY}.
                Send the link or the file.
              </p>`
        }
      </section>`;
  }

  #tell(what: string): void {
    this.dispatchEvent(new CustomEvent(what, { bubbles: true, composed: true }));
  }

  #print(): void {
    this.close?.();
    this.#tell('print-notebook');
  }

  async #report(session: Session): Promise<void> {
    this.busy = true;
    try {
      const text = await reportOf(session);
      const name = reportName(session);
      const how = await session.world.files.save(name, text, 'text/html');
      if (how === 'text') return openLeaf(this, 'text', { name, text });
      if (how === 'cancelled') return;
      rememberHandedOver(session);
      this.said = `The report is ${how}: ${name}`;
    } catch (reason) {
      session.say(
        `The report could not be written: ${reason instanceof Error ? reason.message : String(reason)}`,
        true,
      );
    } finally {
      this.busy = false;
    }
  }

  async #copy(session: Session, text: string): Promise<void> {
    try {
      await navigator.clipboard.writeText(text);
      rememberHandedOver(session);
      this.said = 'The link is copied.';
    } catch {
      const input = this.renderRoot.querySelector('input');
      input?.focus();
      input?.select();
      this.said = 'This browser does not copy by itself: the link is selected, copy it by key.';
    }
  }

  async #share(session: Session, url: string): Promise<void> {
    try {
      await navigator.share({ title: session.notebook.title, url });
      rememberHandedOver(session);
      this.said = 'The link is shared.';
    } catch {
      this.said = '';
    }
  }
}

const selectAll = ({ target }: Event): void => {
  if (target instanceof HTMLInputElement) target.select();
};

customElements.define('hand-over', HandOver);
