/** Going to a cell, a name or a worksheet by typing it; what may be meant stands below (W3C APG combobox). */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { destinations, type Destination } from '../destinations.ts';
import { takeHeld, type Held } from '../held-keys.ts';
import { closeBar, timesAsked } from '../page-bar.ts';
import { isFormulaOpen, point, showWorksheet } from '../pointing.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';
import { barStyles } from './page-bar.styles.ts';

export class GoBar extends LitElement {
  static override styles = [shared, barStyles];
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  #text = '';
  #at = 0;
  #said = '';
  #asked = 0;

  constructor() {
    super();
    new Watching(this);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const choices = destinations(session.notebook, session.worksheet.id, this.#text);
    const at = Math.min(this.#at, choices.length - 1);
    return html`<div class="line" role="search" aria-label="go to">
        <input
          type="text"
          role="combobox"
          aria-label="go to a cell, a name or a worksheet"
          placeholder="B7, a name, a worksheet"
          aria-autocomplete="list"
          aria-controls="places"
          aria-expanded=${choices.length > 0 ? 'true' : 'false'}
          aria-activedescendant=${at < 0 ? '' : `place-${at}`}
          spellcheck="false"
          autocapitalize="off"
          autocomplete="off"
          enterkeyhint="go"
          .value=${this.#text}
          @input=${(event: Event) => {
            this.#text = event.target instanceof HTMLInputElement ? event.target.value : '';
            this.#at = 0;
            this.#said = '';
            this.requestUpdate();
          }}
          @keydown=${(event: KeyboardEvent) => this.#onKey(event, session, choices)}
        />
        <button ?disabled=${at < 0} @click=${() => this.#go(session, choices[at])}>
          ${isFormulaOpen(session) && !choices[at]?.whole ? 'Put it in' : 'Go'}
        </button>
        <span class="count" role="status">
          ${choices.length === 0 ? 'no such cell, name or worksheet' : this.#said}
        </span>
        <span class="spring"></span>
        <button class="quiet" title="Escape" @click=${() => this.#leave(session)}>Close</button>
      </div>
      ${
        choices.length === 0
          ? nothing
          : html`<ul class="list" role="listbox" id="places" aria-label="places">
              ${choices.map(
                (choice, k) =>
                  html`<li
                    role="option"
                    id="place-${k}"
                    aria-selected=${k === at ? 'true' : 'false'}
                    @click=${() => this.#go(session, choice)}
                  >
                    <span>${choice.label}</span><span class="second">${choice.detail}</span>
                  </li>`,
              )}
            </ul>`
      }`;
  }

  /** What was typed while the bar was still on its way. */
  #held: Held | undefined;

  override willUpdate(): void {
    this.#held = this.session && this.#asked !== timesAsked() ? takeHeld(this.session) : undefined;
    if (!this.#held?.text) return;
    this.#text = this.#held.text;
    this.#at = 0;
  }

  override updated(): void {
    const { session } = this;
    if (!session || this.#asked === timesAsked()) return;
    this.#asked = timesAsked();
    const input = this.renderRoot.querySelector('input');
    input?.focus();
    if (this.#held?.text) input?.setSelectionRange(this.#text.length, this.#text.length);
    else input?.select();
    if (this.#held?.entered)
      this.#go(session, destinations(session.notebook, session.worksheet.id, this.#text)[0]);
  }

  #onKey(event: KeyboardEvent, session: Session, choices: readonly Destination[]): void {
    if (event.isComposing) return;
    const count = choices.length;
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (event.key === 'Escape') this.#leave(session);
    else if (event.key === 'Enter') this.#go(session, choices[Math.min(this.#at, count - 1)]);
    else if (step !== 0 && count > 0) {
      this.#at = (Math.min(this.#at, count - 1) + step + count) % count;
      this.requestUpdate();
    } else return;
    event.preventDefault();
    event.stopPropagation();
  }

  #go(session: Session, place: Destination | undefined): void {
    if (!place) return;
    const { row, column, rows, columns } = place.block;
    if (isFormulaOpen(session)) {
      if (!this.#putIn(session, place)) return;
    } else {
      session.select(row, column, false, place.worksheet);
      session.select(row + rows - 1, column + columns - 1, true);
    }
    this.#leave(session);
  }

  /** Points at the place for the formula that is open; false where no cell may stand at its caret. */
  #putIn(session: Session, { worksheet, whole, block }: Destination): boolean {
    const { draft } = session;
    if (worksheet !== session.inSight.id || whole) showWorksheet(session, worksheet);
    const { row, column, rows, columns } = block;
    if (whole || point(session, { row, column, toRow: row + rows - 1, toColumn: column + columns - 1 }))
      return true;
    session.setDraft(draft);
    this.#said = 'no cell can stand at this place of the formula';
    this.requestUpdate();
    return false;
  }

  #leave(session: Session): void {
    closeBar(session);
    if (session.draft) session.setDraft({ ...session.draft, where: 'cell' });
    this.dispatchEvent(new CustomEvent('to-page', { bubbles: true, composed: true }));
  }
}

customElements.define('go-bar', GoBar);
