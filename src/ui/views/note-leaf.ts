/** The note of a cell being written, with what it will look like beside it. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { isRefusal, setNote } from '../../document/index.ts';
import { addressText } from '../../expression/index.ts';
import { selectedBlock } from '../editing.ts';
import { noteView } from '../elements/note.ts';
import { readNote } from '../note-tree.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';

export class NoteLeaf extends LitElement {
  static override properties = {
    session: { attribute: false },
    text: { state: true },
    refused: { state: true },
  };
  declare session: Session | undefined;
  declare close: () => void;
  declare text: string;
  declare refused: string;

  static override styles = [
    shared,
    css`
      :host {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(260px, 1fr));
        gap: 14px 20px;
      }
      textarea {
        inline-size: 100%;
        min-block-size: 200px;
        font: 14px/1.5 var(--mono);
        resize: vertical;
      }
      .wide {
        grid-column: 1 / -1;
      }
      .answers {
        display: flex;
        justify-content: flex-end;
        gap: 10px;
      }
      code {
        padding: 0 3px;
        background: var(--paper-edge);
        font-family: var(--mono);
      }
      p {
        margin: 4px 0;
      }
    `,
  ];

  constructor() {
    super();
    this.text = '';
    this.refused = '';
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (changed.has('session')) this.text = this.session?.cell?.note ?? '';
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const address = addressText(session.selection.column, session.selection.row);
    return html`<div>
        <h3 id="writing">Note of ${address}</h3>
        <textarea
          aria-labelledby="writing"
          ?readonly=${session.readOnly}
          .value=${this.text}
          @input=${(event: Event) => {
            this.text = event.target instanceof HTMLTextAreaElement ? event.target.value : '';
            this.refused = '';
          }}
        ></textarea>
      </div>
      <div role="region" aria-label="what it looks like">
        <h3>What it looks like</h3>
        ${noteView(readNote(this.text), () => undefined)}
      </div>
      <p class="second wide">
        An empty line begins a new paragraph. <code>- one</code> or <code>1. one</code> makes a list,
        <code>*emphasis*</code> <em>emphasis</em>, <code>**strong**</code> <strong>strong</strong>,
        <code>\`code\`</code> code; <code>[words](#B7)</code> leads to a cell, a name or a worksheet,
        <code>[words](https://…)</code> out of the program.
      </p>
      ${this.refused ? html`<p class="error wide" role="alert">${this.refused}</p>` : nothing}
      <div class="answers wide">
        <button @click=${() => this.close()}>Leave it</button>
        <button class="primary" ?disabled=${session.readOnly} @click=${() => this.#take(session)}>
          Take it
        </button>
      </div>`;
  }

  #take(session: Session): void {
    const note = this.text.trim();
    const { row, column } = selectedBlock(session);
    const block = { row, column, rows: 1, columns: 1 };
    const answer = setNote(session.notebook, {
      worksheet: session.worksheet.id,
      block,
      ...(note && { note }),
    });
    if (isRefusal(answer)) this.refused = answer.message;
    else if (session.run(answer)) this.close();
    else this.refused = session.notice?.words ?? '';
  }
}
customElements.define('note-leaf', NoteLeaf);
