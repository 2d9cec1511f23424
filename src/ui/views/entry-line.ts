/** The line under the page: address, label, text with its colours, result while typing, unit, role, completion and hints. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { ROLES, labelOf, roleOf } from '../../document/index.ts';
import type { Role } from '../../document/index.ts';
import { addressText, parse, titleText, tokenize } from '../../expression/index.ts';
import { openActions } from '../actions-place.ts';
import { draftKey, pick, pickChoice, shownCompletion } from '../draft-keys.ts';
import {
  commitDraft,
  contentHere,
  setRole,
  setUnit,
  startDraft,
  nameSelection,
  unitChoices,
} from '../editing.ts';
import { editedText, inWords, markedDigits, typing } from '../number-locale.ts';
import { isAway } from '../in-sight.ts';
import { ListPlace } from '../list-place.ts';
import { isOwnKeypad, isSystemKeyboard, isTouched, setSystemKeyboard } from '../own-keypad.ts';
import { barOf } from '../page-bar.ts';
import { referenceMarks } from '../reference-marks.ts';
import type { Draft, Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { hintAt } from '../signature.ts';
import type { Hint } from '../signature.ts';
import { resultText, unitText } from '../value-text.ts';
import { Watching } from '../watching.ts';
import { entryLineStyles } from './entry-line.styles.ts';

export class EntryLine extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  static override styles = [shared, entryLineStyles];

  constructor() {
    super();
    new Watching(this);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const { row, column, toRow, toColumn } = session.selection;
    const { draft, result } = session;
    const text = draft?.text ?? contentHere(session);
    const block = row === toRow && column === toColumn ? '' : `:${addressText(toColumn, toRow)}`;
    const offered = shownCompletion(session);
    // The choices of a cell stand at the cell while the hands are there.
    const isAtCell = draft?.where === 'cell' && offered?.choices[0]?.type === 'choice';
    const completion = isAtCell ? undefined : offered;
    const label = labelOf(session.worksheet, row, column) ?? '';
    const name = session.worksheet.names.find(({ target }) => target.row === row && target.column === column);
    return html`
      ${
        completion
          ? html`<ul class="choices" role="listbox" id="choices" aria-label="what may stand here">
              ${completion.choices.map(
                (choice, k) =>
                  html`<li
                    role="option"
                    id="choice-${k}"
                    aria-selected=${k === completion.at ? 'true' : 'false'}
                    @mousedown=${(event: Event) => event.preventDefault()}
                    @click=${() => {
                      if (choice.type === 'choice') pickChoice(session, k);
                      else pick(session, completion, k);
                    }}
                  >
                    <span class="mono">${choice.label}</span><span class="second">${choice.detail}</span>
                  </li>`,
              )}
            </ul>`
          : nothing
      }
      <div class="row">
        <span class="place">${this.#home(session)}${addressText(column, row)}${block}</span>
        <span class="label" title=${label}>${label}</span>
        <button
          class="link name"
          ?disabled=${session.readOnly}
          title="give this cell a name for use in formulas"
          @click=${() => this.#askName(session, name?.name)}
        >
          ${name ? name.name : 'name…'}
        </button>
        <div class="field">
          <div class="ink" aria-hidden="true">${this.#ink(session, text)}</div>
          <input
            type="text"
            aria-label="content of ${addressText(column, row)}"
            aria-autocomplete="list"
            aria-controls="choices"
            aria-expanded=${completion ? 'true' : 'false'}
            aria-activedescendant=${completion ? `choice-${completion.at}` : ''}
            role="combobox"
            autocomplete="off"
            autocapitalize="off"
            spellcheck="false"
            enterkeyhint="enter"
            inputmode=${isOwnKeypad(session) ? 'none' : 'text'}
            ?readonly=${session.readOnly}
            .value=${live(text)}
            @focus=${() => this.#begin(session)}
            @input=${this.#onInput}
            @keyup=${this.#onCaret}
            @pointerup=${this.#onCaret}
            @scroll=${this.#onScroll}
            @keydown=${(event: KeyboardEvent) => {
              // Nothing was typed: Tab goes on to what stands beside the line, as everywhere.
              if (event.key === 'Tab' && session.draft?.text === contentHere(session))
                return session.setDraft(undefined);
              if (session.draft && !event.isComposing && draftKey(session, event)) {
                event.preventDefault();
                if (!session.draft)
                  this.dispatchEvent(new CustomEvent('to-page', { bubbles: true, composed: true }));
              }
            }}
          />
        </div>
        ${draft && isTouched() ? this.#keyboard(session) : this.#tools(session)}
      </div>
      <div class="hint ${draft ? 'typing' : ''}">
        ${this.#under(session, hintAt(text, draft?.from ?? 0, session.catalogue, session.notebook.reading))}
      </div>
      <div class="unseen" role="status" aria-live="polite">
        ${session.notice?.words ?? (draft ? '' : inWords(result?.error?.message ?? ''))}
      </div>
      ${this.#keypad(session)}
    `;
  }

  /** While another worksheet is in sight: where the cell lies that is being edited. */
  #home(session: Session): string {
    return isAway(session) ? `${titleText(session.worksheet.title)}.` : '';
  }

  /** Beside the text: choice, unit, role, and the actions for what is selected. */
  #tools(session: Session): TemplateResult {
    const { cell } = session;
    return html`${this.#choices(session)} ${this.#unit(session)}
      <select
        aria-label="role"
        ?disabled=${!cell || session.readOnly}
        @change=${(event: Event) => setRole(session, valueOf(event) as Role)}
      >
        ${ROLES.map(
          (role) =>
            html`<option value=${role} .selected=${cell ? roleOf(cell) === role : role === 'note'}>
              ${role}
            </option>`,
        )}
      </select>
      <button
        class="more"
        aria-haspopup="menu"
        title="Shift+F10: cut, copy, paste, fill, sort, insert, delete, move"
        @click=${(event: Event) => this.#more(session, event)}
      >
        More…
      </button>`;
  }

  /** On touch while something is typed: the way from the keypad to the system's keyboard and back. */
  #keyboard(session: Session): TemplateResult | typeof nothing {
    if (session.cell?.choices) return nothing;
    const system = isSystemKeyboard();
    if (!system && !isOwnKeypad(session)) return nothing;
    return html`<button
      @pointerdown=${(event: Event) => event.preventDefault()}
      @mousedown=${(event: Event) => event.preventDefault()}
      @click=${() => this.#turn(session, !system)}
    >
      ${system ? 'keypad' : 'letters'}
    </button>`;
  }

  /** The system brings its keyboard up or takes it away when the field gets the focus anew. */
  #turn(session: Session, system: boolean): void {
    setSystemKeyboard(session, system);
    const { draft } = session;
    if (!draft) return;
    const field = this.renderRoot.querySelector<HTMLInputElement>('.field input');
    void this.updateComplete.then(() => {
      if (draft.where === 'line') {
        field?.blur();
        field?.focus();
      } else this.dispatchEvent(new CustomEvent('to-page', { bubbles: true, composed: true }));
    });
  }

  /** On touch: the keypad while a value or a formula is typed. */
  #keypad(session: Session): TemplateResult | typeof nothing {
    if (!isOwnKeypad(session) || this.#isGoing(session)) return nothing;
    if (!this.#loaded) {
      void import('./desk-keypad.ts').then(() => {
        this.#loaded = true;
        this.requestUpdate();
      });
      return nothing;
    }
    return html`<desk-keypad .session=${session}></desk-keypad>`;
  }
  #loaded = false;

  /** The hands are in the bar over the page, which puts a place into the formula. */
  #isGoing(session: Session): boolean {
    return barOf(session) === 'go' && session.draft?.where === 'line' && !this.shadowRoot?.activeElement;
  }

  #shown: Draft | undefined;
  readonly #place = new ListPlace(this);

  /** Where the caret should stand after a change that came from elsewhere; a key may have moved it and not been let go yet. */
  override updated(): void {
    this.#place.show(this.renderRoot.querySelector<HTMLElement>('.choices') ?? undefined);
    const { draft } = this.session ?? {};
    const isNew = draft !== this.#shown;
    this.#shown = draft;
    const input = this.renderRoot.querySelector<HTMLInputElement>('.field input');
    if (!input || !isNew || draft?.where !== 'line' || this.shadowRoot?.activeElement !== input) return;
    if (input.selectionStart !== draft.from || input.selectionEnd !== draft.to)
      input.setSelectionRange(draft.from, draft.to);
  }

  #ink(session: Session, text: string): unknown {
    if (!text.startsWith('=')) return html`<span>${text}</span>`;
    const marks = session.draft ? referenceMarks(session.notebook, session.worksheet.id, text) : [];
    const parts: unknown[] = [];
    let at = 0;
    for (const token of tokenize(text, typing())) {
      if (token.from > at) parts.push(text.slice(at, token.from));
      const mark = marks.find(({ from, to }) => token.from >= from && token.to <= to);
      const look = mark ? `ref-${mark.colour}` : `t-${token.type}`;
      parts.push(html`<span class=${look}>${text.slice(token.from, token.to)}</span>`);
      at = token.to;
    }
    parts.push(text.slice(at));
    return parts;
  }

  #more(session: Session, event: Event): void {
    if (!(event.currentTarget instanceof HTMLElement)) return;
    const { left, top } = event.currentTarget.getBoundingClientRect();
    if (session.draft && !commitDraft(session, undefined)) return;
    openActions(session, { x: left, y: top });
  }

  #choices(session: Session): TemplateResult | typeof nothing {
    const { cell } = session;
    if (!cell?.choices) return nothing;
    const now = cell.content.replace(/^'/, '');
    return html`<select
      aria-label="choice"
      ?disabled=${session.readOnly}
      @change=${(event: Event) => {
        startDraft(session, editedText(valueOf(event), session.notebook.currency), false, 'line');
        commitDraft(session, undefined);
      }}
    >
      ${cell.choices.map((each) => html`<option value=${each} .selected=${each === now}>${editedText(each, session.notebook.currency)}</option>`)}
    </select>`;
  }

  #unit(session: Session): TemplateResult | typeof nothing {
    const { cell, result } = session;
    const choices = unitChoices(session);
    if (!cell || choices.length === 0) return nothing;
    const now = result?.unit ?? '';
    return html`<select
      aria-label="unit in which it is shown"
      ?disabled=${session.readOnly}
      @change=${(event: Event) => setUnit(session, valueOf(event))}
    >
      ${choices.map((unit) => html`<option value=${unit} .selected=${unit === now}>${unitText(unit) || 'plain'}</option>`)}
    </select>`;
  }

  #under(session: Session, hint: Hint | undefined): unknown {
    const { draft, preview, result, notice } = session;
    if (notice) return html`<span class=${notice.refused ? 'refused' : ''}>${notice.words}</span>`;
    const shown = draft ? preview : result;
    const unfinished =
      draft?.text.startsWith('=') && parse(draft.text, typing()).problem?.unfinished === true;
    const gives =
      !shown || !draft || unfinished
        ? nothing
        : shown.error
          ? html`<span class="refused">→ ${shown.error.code} ${inWords(shown.error.message)}</span>`
          : html`<span class="gives">→ ${resultText(shown, session.notebook)}</span>
              ${kindWords(shown.kind)}`;
    const assumed = (shown?.cautions ?? []).filter((caution) => caution.type === 'assumed');
    const ghost = assumed.map((each) => html` · <span>${inWords(each.text)}</span>`);
    if (draft && hint) {
      const here = hint.parameters[hint.at];
      return html`<b>${hint.name}</b>(${hint.parameters.map(
          (each, k) =>
            html`${k > 0 ? '; ' : ''}<span class=${k === hint.at ? 'here' : ''}>${each.text}</span>`,
        )})
        ${gives}${ghost}${here?.detail ? html`<br />${here.text}: ${here.detail}` : nothing}`;
    }
    if (draft && gives === nothing && isAway(session))
      return 'Press a cell here to put it into the formula, which is taken into the cell where it began.';
    if (draft) return html`${gives}${ghost}`;
    if (shown?.error)
      return html`<span class="refused">${shown.error.code} ${inWords(shown.error.message)}</span>`;
    const marks = [...new Set((result?.cautions ?? []).map((each) => inWords(each.text)))];
    if (marks.length > 0)
      return html`${marks[0]}${marks.length > 1 ? html` <button class="link" @click=${() => session.showMargin('working')}>and ${marks.length - 1} more</button>` : nothing}`;
    if (!session.cell)
      return `Type a value with its unit (${markedDigits('12.5')} mm), a formula (=…) or a text. Enter takes it, Escape leaves it.`;
    return kindWords(result?.kind ?? '');
  }

  #begin(session: Session): void {
    const input = this.renderRoot.querySelector<HTMLInputElement>('.field input');
    if (session.readOnly || !input) return;
    if (session.draft) session.setDraft({ ...session.draft, where: 'line' });
    else startDraft(session, contentHere(session), false, 'line');
  }

  #onInput(event: Event): void {
    const input = event.target;
    if (!(input instanceof HTMLInputElement) || !this.session) return;
    const end = input.value.length;
    this.session.setDraft({
      ...this.session.draft,
      text: input.value,
      from: input.selectionStart ?? end,
      to: input.selectionEnd ?? end,
      typedOver: false,
      where: 'line',
    });
    this.#onScroll(event);
  }

  #onCaret(event: Event): void {
    const input = event.target;
    const draft = this.session?.draft;
    if (!(input instanceof HTMLInputElement) || !draft || draft.text !== input.value) return;
    const [from, to] = [input.selectionStart ?? 0, input.selectionEnd ?? 0];
    if (from !== draft.from || to !== draft.to) this.session?.setDraft({ ...draft, from, to, where: 'line' });
  }

  #onScroll(event: Event): void {
    const ink = this.renderRoot.querySelector('.ink');
    if (ink && event.target instanceof HTMLElement) ink.scrollLeft = event.target.scrollLeft;
  }

  #askName(session: Session, now: string | undefined): void {
    this.dispatchEvent(
      new CustomEvent('ask-text', {
        bubbles: true,
        composed: true,
        detail: {
          title: `Name for ${addressText(session.selection.column, session.selection.row)}`,
          words: 'Letters, digits and _; used in formulas on this worksheet. Empty takes the name away.',
          value: now ?? '',
          done: (text: string) => nameSelection(session, text, now),
        },
      }),
    );
  }
}

/** The kind of a quantity; nothing for texts and plain numbers. */
const kindWords = (kind: string): string =>
  ['text', 'blank', 'logical', 'number', 'error'].includes(kind) ? '' : kind;

const valueOf = (event: Event): string =>
  event.target instanceof HTMLSelectElement ? event.target.value : '';

customElements.define('entry-line', EntryLine);
