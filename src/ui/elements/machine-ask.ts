/** A question at the machine: ready answers as large buttons, or words of one's own. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { shared } from '../shared.styles.ts';

export interface MachineQuestion {
  readonly title: string;
  readonly words: string;
  /** Answers that take one press. */
  readonly choices: readonly string[];
  /** What the own words are. */
  readonly label: string;
  readonly action: string;
}

export class MachineAsk extends LitElement {
  static override properties = { question: { state: true } };
  declare question: MachineQuestion | undefined;
  #answer: ((text: string | undefined) => void) | undefined;

  static override styles = [
    shared,
    css`
      dialog {
        inline-size: min(560px, 94vw);
        max-block-size: 92dvh;
        padding: 18px 20px;
        overflow: auto;
        border: 1px solid var(--button-edge);
        border-radius: 4px;
        background: var(--paper);
        color: var(--ink);
        box-shadow: var(--shadow);
        font-size: 18px;
      }
      dialog::backdrop {
        background: rgb(15 24 34 / 0.5);
      }
      h2 {
        color: var(--ink);
        font-size: 22px;
      }
      p {
        margin: 8px 0 12px;
      }
      .choices {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin-block-end: 14px;
      }
      button:not(.link),
      input {
        min-block-size: 64px;
        font-size: 18px;
      }
      .choices button {
        flex: 1 0 auto;
        max-inline-size: 100%;
        min-inline-size: 96px;
        text-align: start;
      }
      label {
        display: block;
      }
      input {
        display: block;
        inline-size: 100%;
        margin-block-start: 4px;
        font-size: 22px;
      }
      .answers {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: 10px;
        margin-block-start: 14px;
      }
    `,
  ];

  /** The answer; undefined where it was left. */
  async ask(question: MachineQuestion): Promise<string | undefined> {
    this.#answer?.(undefined);
    this.question = question;
    await this.updateComplete;
    const dialog = this.renderRoot.querySelector('dialog');
    if (dialog && !dialog.open) dialog.showModal();
    const input = dialog?.querySelector('input');
    if (input) input.value = '';
    // A key that is still held must not give a reason.
    if (question.choices.length > 0) dialog?.querySelector<HTMLElement>('.leave')?.focus();
    else input?.focus();
    return new Promise((resolve) => (this.#answer = resolve));
  }

  override render(): TemplateResult | typeof nothing {
    const { question } = this;
    if (!question) return nothing;
    const { title, words, choices, label, action } = question;
    return html`<dialog aria-labelledby="title" @close=${() => this.#done(undefined)}>
      <form @submit=${(event: Event) => this.#submit(event)}>
        <h2 id="title">${title}</h2>
        <p>${words}</p>
        ${
          choices.length === 0
            ? nothing
            : html`<div class="choices">
                ${choices.map((text) => html`<button type="button" @click=${() => this.#done(text)}>${text}</button>`)}
              </div>`
        }
        <label>${label}<input autocomplete="off" maxlength="120" /></label>
        <div class="answers">
          <button type="button" class="leave" @click=${() => this.#done(undefined)}>Leave it</button>
          <button class="primary">${action}</button>
        </div>
      </form>
    </dialog>`;
  }

  #submit(event: Event): void {
    event.preventDefault();
    const text = this.renderRoot.querySelector('input')?.value.trim() ?? '';
    if (text === '') this.renderRoot.querySelector('input')?.focus();
    else this.#done(text);
  }

  #done(text: string | undefined): void {
    const answer = this.#answer;
    this.#answer = undefined;
    this.renderRoot.querySelector('dialog')?.close();
    answer?.(text);
  }
}
customElements.define('machine-ask', MachineAsk);

/** Who is at the machine. */
export const whoQuestion = (names: readonly string[]): MachineQuestion => ({
  title: 'Who is at the machine?',
  words: 'Every value changed or measured here carries a name and the time. It is remembered on this device.',
  choices: names,
  label: 'Name or initials',
  action: 'This is me',
});

/** Why a limit is to be passed. Common practice of the trade, no source. */
export const reasonQuestion = (what: string, breach: string): MachineQuestion => ({
  title: `${what}: ${breach}`,
  words:
    'This passes the limit set for it. Never pass the speed marked on the tool, the holder or the machine. Without a reason the value stays as it was.',
  choices: [
    'Allowed by the documents of tool and machine',
    'Agreed with a qualified person',
    'Trial: watched, guards closed, ready to stop',
  ],
  label: 'Or another reason',
  action: 'Take it',
});

/** Why a pass does not count. Common practice of the trade, no source. */
export const withdrawQuestion: MachineQuestion = {
  title: 'Why does this pass not count?',
  words: 'It stays in the record, struck through, with this reason.',
  choices: ['Wrong insert or edge', 'Wrong speed or feed', 'Measured wrongly', 'Chip jam or broken edge'],
  label: 'Or another reason',
  action: 'Withdraw it',
};
