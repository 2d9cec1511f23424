/** What may be picked in a choice cell: one text a line. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { isRefusal, setChoices } from '../../document/index.ts';
import { selectedBlock } from '../editing.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';

export class ChoicesLeaf extends LitElement {
  static override properties = { session: { attribute: false }, refused: { state: true } };
  declare session: Session | undefined;
  declare close: () => void;
  declare refused: string;

  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      textarea {
        inline-size: 100%;
        min-block-size: 220px;
        line-height: 1.6;
        resize: vertical;
      }
      .answers {
        display: flex;
        flex-wrap: wrap;
        justify-content: flex-end;
        gap: 10px;
        margin-block-start: 12px;
      }
    `,
  ];

  constructor() {
    super();
    this.refused = '';
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const { cell } = session;
    return html`<p id="how">
        One choice a line: a text, a number or a quantity. In the cell only these can be picked; empty, and
        anything can be typed again.
      </p>
      <textarea
        aria-labelledby="how"
        spellcheck="false"
        .value=${(cell?.choices ?? []).join('\n')}
      ></textarea>
      ${this.refused ? html`<p class="error" role="alert">${this.refused}</p>` : nothing}
      <div class="answers">
        <button ?disabled=${!session.catalogue} @click=${() => this.#materials(session)}>
          All work materials of the library
        </button>
        <button @click=${() => this.close()}>Leave it</button>
        <button class="primary" ?disabled=${session.readOnly} @click=${() => this.#take(session)}>
          Take them
        </button>
      </div>`;
  }

  get #area(): HTMLTextAreaElement | null {
    return this.renderRoot.querySelector('textarea');
  }

  #materials(session: Session): void {
    const area = this.#area;
    if (area) area.value = (session.catalogue?.materials ?? []).join('\n');
  }

  #take(session: Session): void {
    const choices = (this.#area?.value ?? '').split('\n').filter((line) => line.trim() !== '');
    const answer = setChoices(session.notebook, {
      worksheet: session.worksheet.id,
      block: selectedBlock(session),
      ...(choices.length > 0 && { choices }),
    });
    if (isRefusal(answer)) this.refused = answer.message;
    else if (session.run(answer)) this.close();
  }
}
customElements.define('choices-leaf', ChoicesLeaf);
