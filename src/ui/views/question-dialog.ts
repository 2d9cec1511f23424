/** One question at a time: a text to be given, or consent to something that can not be seen at once. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { shared } from '../shared.styles.ts';

export interface Question {
  readonly title: string;
  readonly words: string;
  /** Present: a text is asked for. */
  readonly value?: string;
  /** Words of the button that agrees. */
  readonly action?: string;
  /** Absent: there is nothing to decide, only to read. */
  readonly done?: (text: string) => unknown;
}

export class QuestionDialog extends LitElement {
  static override properties = { question: { state: true } };
  declare question: Question | undefined;

  static override styles = [
    shared,
    css`
      dialog {
        inline-size: min(440px, 92vw);
        padding: 18px 20px;
        border: 1px solid var(--button-edge);
        border-radius: 4px;
        background: var(--paper);
        color: var(--ink);
        box-shadow: var(--shadow);
      }
      dialog::backdrop {
        background: rgb(15 24 34 / 0.4);
      }
      dialog h2 {
        overflow-wrap: anywhere;
        color: var(--ink);
        font-size: 17px;
      }
      dialog p {
        margin: 6px 0;
      }
      dialog input {
        inline-size: 100%;
        margin-block-start: 8px;
      }
      .answers {
        display: flex;
        justify-content: flex-end;
        gap: 10px;
        margin-block-start: 16px;
      }
    `,
  ];

  /** Takes the question from an event and shows it. */
  ask(event: Event): void {
    if (!(event instanceof CustomEvent)) return;
    this.question = event.detail as Question;
    void this.updateComplete.then(() => {
      const dialog = this.renderRoot.querySelector('dialog');
      dialog?.showModal();
      dialog?.querySelector('input')?.select();
    });
  }

  override render(): TemplateResult | typeof nothing {
    const { question } = this;
    if (!question) return nothing;
    return html`<dialog @cancel=${() => this.#close()} aria-labelledby="question">
      <form @submit=${(event: Event) => this.#answer(event)}>
        <h2 id="question">${question.title}</h2>
        ${question.words.split('\n').map((words) => (words ? html`<p>${words}</p>` : nothing))}
        ${question.value === undefined ? nothing : html`<input aria-labelledby="question" .value=${question.value} />`}
        <div class="answers">
          ${question.done ? html`<button type="button" @click=${() => this.#close()}>Leave it</button>` : nothing}
          <button class="primary">${question.action ?? (question.done ? 'Take it' : 'Close')}</button>
        </div>
      </form>
    </dialog>`;
  }

  #answer(event: Event): void {
    event.preventDefault();
    const text = this.renderRoot.querySelector('input')?.value ?? '';
    const { question } = this;
    this.#close();
    question?.done?.(text.trim());
  }

  #close(): void {
    this.renderRoot.querySelector('dialog')?.close();
    this.question = undefined;
    this.dispatchEvent(new CustomEvent('to-page', { bubbles: true, composed: true }));
  }
}
customElements.define('question-dialog', QuestionDialog);
