/** Finding in contents and replacing, over the page: Enter goes on, Shift+Enter back, Escape leaves. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import type { CellAddress } from '../../calculation/index.ts';
import type { LeftAsItWas } from '../../document/index.ts';
import { cellLink } from '../cell-links.ts';
import { goToNext } from '../find-next.ts';
import { find, replace, type Query } from '../finding.ts';
import { takeHeld, type Held } from '../held-keys.ts';
import { closeBar, keepQuery, latestQuery, timesAsked } from '../page-bar.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';
import { barStyles } from './page-bar.styles.ts';

type Way = Pick<Query, 'matchCase' | 'whole' | 'formulas'>;

export class FindBar extends LitElement {
  static override styles = [shared, barStyles];
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  #text = '';
  #by = '';
  #way: Way = { matchCase: false, whole: false, formulas: true };
  #here = false;
  #left: readonly LeftAsItWas[] = [];
  #said = '';
  #found: { readonly key: string; readonly places: readonly CellAddress[] } = { key: '', places: [] };
  #asked = 0;
  /** What was typed while the bar was still on its way. */
  #held: Held | undefined;

  constructor() {
    super();
    new Watching(this);
    this.addEventListener('keydown', (event) => this.#onKey(event));
  }

  /** All places, looked for once for each state of the notebook and the question. */
  #places(session: Session): readonly CellAddress[] {
    const query = this.#query(session);
    const key = `${session.version} ${JSON.stringify(query)}`;
    if (this.#found.key !== key) this.#found = { key, places: find(session.notebook, query) };
    return this.#found.places;
  }

  #query(session: Session): Query {
    const query = {
      ...this.#way,
      text: this.#text,
      ...(this.#here && { worksheet: session.worksheet.id }),
    };
    if (this.#text !== '') keepQuery(session, query);
    return query;
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    const query = changed.has('session') && this.session ? latestQuery(this.session) : undefined;
    if (query) {
      const { text, worksheet, ...way } = query;
      this.#text = text;
      this.#way = way;
      this.#here = worksheet !== undefined;
    }
    this.#held = this.session && this.#asked !== timesAsked() ? takeHeld(this.session) : undefined;
    if (this.#held?.text) this.#text = this.#held.text;
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const places = this.#places(session);
    const { worksheet, row, column } = session.address;
    const at = places.findIndex(
      (each) => each.worksheet === worksheet && each.row === row && each.column === column,
    );
    const none = places.length === 0;
    return html`<div role="search" aria-label="find and replace">
      <div class="line">
        <input
          type="text"
          aria-label="find"
          placeholder="find"
          spellcheck="false"
          autocapitalize="off"
          .value=${this.#text}
          @input=${(event: Event) => this.#ask(() => (this.#text = valueOf(event)))}
        />
        <span class="count" role="status">
          ${this.#text === '' ? '' : none ? 'not found' : at < 0 ? `${places.length} found` : `${at + 1} of ${places.length}`}
        </span>
        <button ?disabled=${none} title="Shift+Enter" @click=${() => this.#go(session, -1)}>Previous</button>
        <button ?disabled=${none} title="Enter" @click=${() => this.#go(session, 1)}>Next</button>
        <span class="spring"></span>
        <button class="quiet" title="Escape" @click=${() => this.#leave(session)}>Close</button>
      </div>
      <div class="line">
        <input
          type="text"
          aria-label="replace by"
          placeholder="replace by"
          spellcheck="false"
          autocapitalize="off"
          .value=${this.#by}
          @input=${(event: Event) => (this.#by = valueOf(event))}
        />
        <button ?disabled=${at < 0 || session.readOnly} @click=${() => this.#replace(session, [at])}>
          Replace
        </button>
        <button ?disabled=${none || session.readOnly} @click=${() => this.#replace(session)}>
          Replace all
        </button>
        ${this.#check('this worksheet', this.#here, (on) => (this.#here = on))}
        ${this.#check('formulas too', this.#way.formulas, (on) => (this.#way = { ...this.#way, formulas: on }))}
        ${this.#check('same case', this.#way.matchCase, (on) => (this.#way = { ...this.#way, matchCase: on }))}
        ${this.#check('whole content', this.#way.whole, (on) => (this.#way = { ...this.#way, whole: on }))}
      </div>
      <div role="status">
        ${this.#said}
        ${
          this.#left.length === 0
            ? nothing
            : html`<ul class="left">
                ${this.#left.slice(0, 50).map((each) => html`<li>▲ ${cellLink(session, each)} left as it was: ${each.why}</li>`)}
              </ul>`
        }
      </div>
    </div>`;
  }

  override updated(): void {
    const { session } = this;
    if (!session || this.#asked === timesAsked()) return;
    this.#asked = timesAsked();
    const input = this.renderRoot.querySelector('input');
    input?.focus();
    if (this.#held?.text) input?.setSelectionRange(this.#text.length, this.#text.length);
    else input?.select();
    if (this.#held?.entered) this.#go(session, 1);
  }

  #check(words: string, on: boolean, set: (on: boolean) => void): TemplateResult {
    return html`<label class="check"
      ><input
        type="checkbox"
        .checked=${on}
        @change=${(event: Event) =>
          this.#ask(() => set(event.target instanceof HTMLInputElement && event.target.checked))}
      />${words}</label
    >`;
  }

  #ask(set: () => void): void {
    set();
    this.#said = '';
    this.#left = [];
    this.requestUpdate();
  }

  #go(session: Session, step: 1 | -1): void {
    if (this.#text !== '') goToNext(session, this.#query(session), step);
  }

  /** Replaces at one of the places and goes on, or at all of them. */
  #replace(session: Session, only?: readonly number[]): void {
    const all = this.#places(session);
    const places = only ? only.flatMap((k) => all[k] ?? []) : all;
    const { transaction, left } = replace(session.notebook, this.#query(session), this.#by, places);
    if (!session.run(transaction)) return;
    this.#left = left;
    const count = places.length - left.length;
    this.#said = `${count === 1 ? '1 cell' : `${count} cells`} changed; undo takes it back.`;
    if (only && left.length === 0) this.#go(session, 1);
    this.requestUpdate();
  }

  #onKey(event: KeyboardEvent): void {
    const { session } = this;
    if (!session || event.isComposing) return;
    const inField = event.composedPath()[0] instanceof HTMLInputElement;
    if (event.key === 'Escape') this.#leave(session);
    else if (event.key === 'F3' || (event.key === 'Enter' && inField))
      this.#go(session, event.shiftKey ? -1 : 1);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  #leave(session: Session): void {
    closeBar(session);
    this.dispatchEvent(new CustomEvent('to-page', { bubbles: true, composed: true }));
  }
}

const valueOf = (event: Event): string =>
  event.target instanceof HTMLInputElement ? event.target.value : '';

customElements.define('find-bar', FindBar);
