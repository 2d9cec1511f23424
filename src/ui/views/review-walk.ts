/** The review: formula by formula, the page in sight; N goes on, T ticks, Enter does both. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { cellLink } from '../cell-links.ts';
import { equation } from '../elements/equation.ts';
import { momentText } from '../machine-change.ts';
import { editedText, inWords } from '../number-locale.ts';
import { distinct } from '../open-cautions.ts';
import { cellInReview, nextInReview, reviewedCells, tickFormula, turnTo } from '../review.ts';
import type { ReviewedCell } from '../review.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { resultText } from '../value-text.ts';
import { Watching } from '../watching.ts';
import { rememberName, whoNow } from '../who.ts';
import { workingOf } from '../working.ts';

/** More rows than these are not listed. */
const MOST_LISTED = 300;
const MARKS = { ticked: '✓', fallen: '▲', open: '' } as const;
const WORDS = { ticked: 'reviewed', fallen: 'changed since it was ticked', open: 'not reviewed' } as const;

export class ReviewWalk extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      .walk {
        margin: -6px;
        padding: 6px;
        border-radius: 4px;
      }
      .walk:focus-visible {
        outline-offset: -3px;
      }
      .so {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        justify-content: space-between;
        gap: 4px 12px;
      }
      .so b {
        font: 600 22px/1.2 var(--mono);
      }
      progress {
        inline-size: 100%;
        block-size: 8px;
        accent-color: var(--accent);
      }
      .formula {
        margin: 8px 0;
        padding: 6px 10px;
        border-inline-start: 4px solid var(--line);
        background: var(--paper-edge);
        font: 15px/1.4 var(--mono);
        overflow-wrap: anywhere;
      }
      math {
        margin: 8px 0;
        overflow-x: auto;
        overflow-y: hidden;
        font-size: 16px;
      }
      .result {
        font: 600 22px/1.25 var(--mono);
        overflow-wrap: anywhere;
      }
      .steps {
        display: grid;
        grid-template-columns: repeat(2, minmax(0, 1fr));
        gap: 6px;
        margin: 12px 0;
      }
      .steps .primary {
        grid-column: 1 / -1;
        min-block-size: 44px;
      }
      kbd {
        font: 600 12px/1 var(--mono);
        opacity: 0.85;
      }
      .ticked {
        color: var(--good);
        font-weight: 600;
      }
      label {
        display: flex;
        align-items: center;
        gap: 8px;
        color: var(--ink-2);
        font-size: 13px;
      }
      label input {
        inline-size: 10ch;
        color: var(--ink);
      }
      table {
        inline-size: 100%;
        border-collapse: collapse;
        font-size: 14px;
      }
      td {
        padding: 3px 4px 3px 0;
        border-block-end: 1px solid var(--ruling);
        vertical-align: baseline;
        overflow-wrap: anywhere;
      }
      td:last-child {
        text-align: end;
      }
      tr.fallen td:last-child {
        color: var(--caution);
      }
      tr.here {
        background: var(--wash);
      }
      section {
        margin-block-start: 14px;
      }
    `,
  ];

  constructor() {
    super();
    new Watching(this);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const list = reviewedCells(session);
    if (list.length === 0) return html`<p>This notebook has no formula.</p>`;
    const done = list.filter(({ state }) => state === 'ticked').length;
    const fallen = list.filter(({ state }) => state === 'fallen').length;
    const here = cellInReview(session);
    return html`<div
      class="walk"
      tabindex="0"
      role="group"
      aria-label="review"
      aria-keyshortcuts="N P T Enter"
      @keydown=${(event: KeyboardEvent) => this.#key(session, event)}
    >
      <div class="so">
        <span><b>${done}</b> of ${list.length} formulas reviewed</span>
        ${fallen > 0 ? html`<span class="second">▲ ${fallen} changed since</span>` : nothing}
      </div>
      <progress max=${list.length} value=${done} aria-label="formulas reviewed"></progress>
      <label
        >Initials<input
          maxlength="20"
          autocomplete="off"
          .value=${whoNow() ?? ''}
          @change=${(event: Event) => this.#name(event)}
          @keydown=${(event: Event) => event.stopPropagation()}
      /></label>
      ${this.#steps(session, here)}
      ${here ? this.#cell(session, here) : html`<p>Go to the first formula that nobody has looked through.</p>`}
      <p class="second">
        Looking at every formula by itself finds errors that reading the page does not. N: next, P: back, T:
        tick, Enter: tick and next.
      </p>
      ${this.#list(session, list, here)}
    </div>`;
  }

  #cell(session: Session, here: ReviewedCell): TemplateResult {
    const { notebook } = session;
    const { result, state, label } = here;
    const working = workingOf(session);
    const operands = session.explanation?.operands ?? [];
    const math = (text: string | undefined): unknown =>
      text === undefined
        ? nothing
        : (equation(text, (markup) => session.world.trustedMarkup(markup)) ?? nothing);
    return html`<section aria-live="polite" aria-label="formula in sight">
      <div class="so">
        <span>${cellLink(session, here.place)} ${label}</span>
        ${this.#mark(session, here)}
      </div>
      <div class="formula">${editedText(here.content, notebook.currency)}</div>
      ${math(working?.equation)} ${math(working?.substituted)}
      ${
        result
          ? html`<div class=${result.error ? 'error' : 'result'}>
              ${inWords(resultText(result, notebook, session.cell?.format))}
            </div>`
          : nothing
      }
      ${distinct(result?.cautions ?? []).map(
        (each) =>
          html`<div class=${each.type === 'assumed' ? 'second' : 'caution'}>${inWords(each.text)}</div>`,
      )}
      ${
        operands.length === 0
          ? nothing
          : html`<table>
              ${operands.slice(0, 20).map(
                (each) =>
                  html`<tr>
                    <td class="mono">${each.text}</td>
                    <td>${resultText(each, notebook)}</td>
                  </tr>`,
              )}
            </table>`
      }
      ${
        state === 'fallen' && here.tick
          ? html`<p class="caution">
              ▲ Ticked by ${here.tick.initials}, ${momentText(here.tick.at, session.world.clock.now())}, when
              it was ${editedText(here.tick.content, notebook.currency)} in ${here.tick.unit || 'no unit'}.
            </p>`
          : nothing
      }
    </section>`;
  }

  #mark(session: Session, { state, tick: made }: ReviewedCell): TemplateResult {
    return state === 'ticked' && made
      ? html`<span class="ticked"
          >✓ ${made.initials}, ${momentText(made.at, session.world.clock.now())}</span
        >`
      : html`<span class="second">${WORDS[state]}</span>`;
  }

  #steps(session: Session, here: ReviewedCell | undefined): TemplateResult {
    const can = here !== undefined && !session.readOnly;
    return html`<div class="steps">
      <button class="primary" ?disabled=${!can} @click=${() => this.#tick(session, true)}>
        Tick and next <kbd>Enter</kbd>
      </button>
      <button @click=${() => this.#go(session, 1)}>Next <kbd>N</kbd></button>
      <button ?disabled=${!can} @click=${() => this.#tick(session, false)}>Tick <kbd>T</kbd></button>
    </div>`;
  }

  #list(session: Session, list: readonly ReviewedCell[], here: ReviewedCell | undefined): TemplateResult {
    return html`<details>
      <summary>All formulas</summary>
      <table>
        ${list.slice(0, MOST_LISTED).map(
          (each) =>
            html`<tr class="${each.state} ${each === here ? 'here' : ''}">
              <td>${cellLink(session, each.place)} ${each.label}</td>
              <td>
                <span class="unseen">${WORDS[each.state]}</span>${MARKS[each.state]}
                ${each.state === 'ticked' ? each.tick?.initials : ''}
              </td>
            </tr>`,
        )}
      </table>
      ${list.length > MOST_LISTED ? html`<p class="second">and ${list.length - MOST_LISTED} more</p>` : nothing}
    </details>`;
  }

  #go(session: Session, way: 1 | -1): void {
    const next = nextInReview(session, way);
    if (next) turnTo(session, next);
  }

  #tick(session: Session, goOn: boolean): void {
    const here = cellInReview(session);
    const initials = whoNow();
    if (!here) return this.#go(session, 1);
    if (initials === undefined) {
      this.renderRoot.querySelector('input')?.focus();
      return session.say('Say who reviews: initials will do.', true);
    }
    if (tickFormula(session, here, initials) && goOn) this.#go(session, 1);
  }

  #key(session: Session, event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const key = event.key.toLowerCase();
    const onButton = event.composedPath()[0] instanceof HTMLButtonElement;
    if (key === 'n' || key === 'arrowdown') this.#go(session, 1);
    else if (key === 'p' || key === 'arrowup') this.#go(session, -1);
    else if (key === 't') this.#tick(session, false);
    else if (key === 'enter' && !onButton) this.#tick(session, true);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  #name({ target }: Event): void {
    const name = target instanceof HTMLInputElement ? target.value.trim() : '';
    if (name !== '') rememberName(name);
    this.renderRoot.querySelector<HTMLElement>('.walk')?.focus();
    this.requestUpdate();
  }
}
customElements.define('review-walk', ReviewWalk);
