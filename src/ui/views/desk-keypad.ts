/** The keypad under the entry line, for fingers: digits, units that fit, what formulas need, and the way to the system's keyboard. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { pick, shownCompletion } from '../draft-keys.ts';
import { USUAL_UNITS, kindHere, pressKey } from '../desk-keys.ts';
import '../elements/keypad.ts';
import type { KeypadPress } from '../keypad-press.ts';
import { decimalMark } from '../number-locale.ts';
import { PLAIN, readQuantity } from '../../quantity/index.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { unitText } from '../value-text.ts';
import { Watching } from '../watching.ts';

const FORMULA_KEYS = [
  ['=', 'equals'],
  ['+', 'plus'],
  ['-', 'minus'],
  ['*', 'times'],
  ['^', 'to the power of'],
  ['(', 'bracket opens'],
  [')', 'bracket closes'],
  [';', 'next argument'],
] as const;

export class DeskKeypad extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  static override styles = [
    shared,
    css`
      :host {
        display: block;
        margin: 6px -14px -8px -12px;
      }
      @media (max-height: 900px) {
        :host {
          --key: 50px;
        }
      }
      .more {
        display: flex;
        gap: 6px;
        max-inline-size: 640px;
        margin: 0 auto 6px;
        overflow-x: auto;
      }
      .more button {
        flex: 1 0 auto;
        min-block-size: 52px;
        min-inline-size: 52px;
        padding: 2px 6px;
        background: var(--paper);
        font: 600 19px/1 var(--mono);
      }
      .more button.word {
        background: var(--button);
        font: 600 15px/1.1 var(--face);
      }
    `,
  ];

  constructor() {
    super();
    new Watching(this);
    // A press leaves focus and caret where they are.
    this.addEventListener('pointerdown', (event) => event.preventDefault());
    this.addEventListener('mousedown', (event) => event.preventDefault());
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    const draft = session?.draft;
    if (!session || !draft) return nothing;
    const { currency, reading } = session.notebook;
    const kind = kindHere(session);
    const read = readQuantity(draft.text, { currency, decimalMark: decimalMark() });
    const unit = read && 'unit' in read ? (read.unit?.symbol ?? '') : '';
    const isFormula = draft.text.startsWith('=');
    const usual = kind === PLAIN ? USUAL_UNITS[reading] : [];
    return html`<on-screen-keypad
      .kind=${kind.name}
      .currency=${currency}
      .unit=${unit}
      .for=${'the cell'}
      .withoutUnits=${usual.length > 0}
      .decimalMark=${decimalMark()}
      @keypad=${(event: CustomEvent<KeypadPress>) => pressKey(session, event.detail)}
    >
      ${
        isFormula || draft.text === ''
          ? html`<div class="more" role="group" aria-label="for formulas">
              ${FORMULA_KEYS.map(([key, words]) => this.#key(session, key, words))}
              ${isFormula ? this.#caret(session) : nothing}
            </div>`
          : nothing
      }
      ${
        usual.length === 0
          ? nothing
          : html`<div class="more" role="group" aria-label="usual units">
              ${usual.map(
                (each) =>
                  html`<button
                    class="word"
                    aria-pressed=${each === unit ? 'true' : 'false'}
                    @click=${() => pressKey(session, { type: 'unit', unit: each })}
                  >
                    ${unitText(each)}
                  </button>`,
              )}
            </div>`
      }
    </on-screen-keypad>`;
  }

  #key(session: Session, text: string, words: string): TemplateResult {
    return html`<button aria-label=${words} @click=${() => pressKey(session, { type: 'insert', text })}>
      ${text}
    </button>`;
  }

  /** One place to the left or right, and taking what is offered. */
  #caret(session: Session): TemplateResult {
    const move = (by: number): void => {
      const { draft } = session;
      if (!draft) return;
      const at = Math.min(Math.max(draft.from + by, 0), draft.text.length);
      session.setDraft({ ...draft, from: at, to: at });
    };
    const offered = shownCompletion(session);
    return html`<button aria-label="caret to the left" @click=${() => move(-1)}>←</button>
      <button aria-label="caret to the right" @click=${() => move(1)}>→</button>
      ${offered ? html`<button class="word" @click=${() => pick(session, offered, offered.at)}>take</button>` : nothing}`;
  }
}
customElements.define('desk-keypad', DeskKeypad);
