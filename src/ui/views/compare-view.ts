/** One's own notebook beside the one that came back: cell by cell or all at once, take the received one or keep this one. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { isRefusal } from '../../document/index.ts';
import type { Notebook, Refusal, Transaction } from '../../document/index.ts';
import { mergeNotebooks, readAnyNotebook, readNotebook, writeNotebook } from '../../exchange/index.ts';
import type { Merged, ReadNotebook } from '../../exchange/index.ts';
import { ancestorOf, comparedPlaces, comparison, differingResults, taking } from '../comparing.ts';
import type { Author, ComparedPlace, Comparison, Side } from '../comparing.ts';
import { momentText } from '../machine-change.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';
import { compareStyles } from './compare-view.styles.ts';

const AUTHORS: Record<Author, string> = {
  there: 'changed there',
  here: 'changed here',
  both: '▲ changed on both sides',
  unknown: '',
};
/** More than these are not listed at once. */
const MOST_LISTED = 300;

export class CompareView extends LitElement {
  static override styles = [shared, compareStyles];
  static override properties = {
    session: { attribute: false },
    received: { attribute: false },
    close: { attribute: false },
    base: { state: true },
    kept: { state: true },
    problem: { state: true },
  };
  declare session: Session | undefined;
  declare received: ReadNotebook | undefined;
  declare close: (() => void) | undefined;
  /** The state that both sides had. */
  declare base: { readonly at: number; readonly notebook: Notebook } | undefined;
  /** Keys of what was decided to stay. */
  declare kept: ReadonlySet<string>;
  declare problem: string;
  #prepared: ReadNotebook | undefined;
  #taken = 0;
  #last:
    | {
        readonly notebook: Notebook;
        readonly received: ReadNotebook;
        readonly base: Notebook | undefined;
        readonly compared: Comparison | Refusal;
        readonly merged: Merged | undefined;
      }
    | undefined;

  constructor() {
    super();
    this.kept = new Set();
    this.problem = '';
    new Watching(this);
  }

  override willUpdate(): void {
    const { session, received } = this;
    if (!session || !received || received === this.#prepared) return;
    this.#prepared = received;
    this.#taken = 0;
    this.kept = new Set();
    this.base = undefined;
    void this.#findBase(session, received);
  }

  async #findBase({ world }: Session, received: ReadNotebook): Promise<void> {
    const { id } = received.notebook;
    const states = (await world.handed.of(id)).flatMap(({ at, text }) => {
      const read = readNotebook(text);
      return isRefusal(read) ? [] : [{ at, notebook: read.notebook }];
    });
    if (this.received === received) this.base = ancestorOf(received.notebook, states);
    await world.handed.remember(id, { at: world.clock.now(), text: writeNotebook(received.notebook) });
  }

  override render(): TemplateResult | typeof nothing {
    const { session, received } = this;
    if (!session) return nothing;
    const choose = html`<button class=${received ? '' : 'primary'} @click=${() => void this.#choose(session)}>
      ${received ? 'Another file…' : 'Choose the received file…'}
    </button>`;
    const problem = this.problem === '' ? nothing : html`<p class="error" role="alert">${this.problem}</p>`;
    if (!received)
      return html`<p>
          The file or report that came back is laid beside <b>${session.notebook.title}</b>. Nothing changes
          until you take something over.
        </p>
        ${problem}
        <p>${choose}</p>`;
    const compared = this.#compared(session, received);
    if (isRefusal(compared))
      return html`<p class="error" role="alert">${compared.message}</p>
        <p>${choose}</p>`;
    const places = comparedPlaces(session, compared);
    const open = places.filter(({ key }) => !this.kept.has(key));
    return html`${problem}
      <div class="top">
        <p>
          Received: <b>${received.notebook.title}</b>.
          ${places.length === 0 ? 'Nothing differs any more.' : `${count(places.length, 'place')} differ.`}
          ${this.#ancestor(session, places)}
        </p>
        ${choose}
        <button @click=${() => this.#apart(received)}>Open it as a notebook of its own</button>
      </div>
      ${open.length === 0 && this.#taken === 0 ? nothing : this.#actions(session, compared, open)}
      ${places.length === 0 ? nothing : this.#table(session, compared, places)}
      ${this.#results(session, compared)}`;
  }

  #ancestor({ world }: Session, places: readonly ComparedPlace[]): TemplateResult {
    const { base } = this;
    if (!base)
      return html`<span class="second"
        >No state that both sides had is known on this device: who changed what can not be told.</span
      >`;
    const of = (author: Author): number => places.filter((each) => each.author === author).length;
    return html`<span class="second"
      >Since the state of ${momentText(new Date(base.at).toISOString(), world.clock.now())}: ${of('there')}
      changed there, ${of('here')} here, ${of('both')} on both sides.</span
    >`;
  }

  #actions(session: Session, compared: Comparison, open: readonly ComparedPlace[]): TemplateResult {
    const off = session.readOnly;
    const merged = this.#last?.merged;
    const there = merged?.taken.length ?? 0;
    return html`<div class="actions">
      ${
        !merged || there === 0
          ? nothing
          : html`<button
              class="primary"
              ?disabled=${off}
              @click=${() => this.#run(session, merged.transaction)}
            >
              Take what only they changed (${there})
            </button>`
      }
      ${
        open.length === 0
          ? nothing
          : html`<button
                ?disabled=${off}
                @click=${() => this.#run(session, taking(session.notebook, compared, open))}
              >
                Take everything received (${open.length})
              </button>
              <button @click=${() => this.#keep(open)}>Keep all of mine</button>`
      }
      ${this.#taken > 0 ? html`<button ?disabled=${!session.canUndo} @click=${() => this.#undo(session)}>Undo</button>` : nothing}
    </div>`;
  }

  #table(session: Session, compared: Comparison, places: readonly ComparedPlace[]): TemplateResult {
    return html`<table>
        <thead>
          <tr>
            <th>where</th>
            <th>this one</th>
            <th>received</th>
            <th><span class="unseen">decision</span></th>
          </tr>
        </thead>
        <tbody>
          ${places.slice(0, MOST_LISTED).map((each) => this.#row(session, compared, each))}
        </tbody>
      </table>
      ${places.length > MOST_LISTED ? html`<p class="second">and ${places.length - MOST_LISTED} more</p>` : nothing}`;
  }

  #row(session: Session, compared: Comparison, each: ComparedPlace): TemplateResult {
    const { place, where, author, ours, theirs } = each;
    const kept = this.kept.has(each.key);
    const go = (): void => {
      if (place) session.select(place.row, place.column, false, place.worksheet);
      this.close?.();
    };
    const what =
      ours.value === '' && ours.lines.length === 0
        ? 'added'
        : theirs.value === '' && theirs.lines.length === 0
          ? 'removed'
          : 'changed';
    return html`<tr class="${author} ${kept ? 'kept' : ''}">
      <td>
        ${place ? html`<button class="link" @click=${go}>${where}</button>` : where}
        <span class="author">${AUTHORS[author] || `${what} in the received one`}</span>
      </td>
      ${this.#side(ours)} ${this.#side(theirs)}
      <td>
        <div class="decide">
          <button
            ?disabled=${session.readOnly}
            aria-label="take the received one: ${where}"
            @click=${() => this.#run(session, taking(session.notebook, compared, [each]))}
          >
            Take
          </button>
          <button
            aria-pressed=${kept ? 'true' : 'false'}
            aria-label="${kept ? 'Kept' : 'Keep'}, this one: ${where}"
            @click=${() => this.#keep([each])}
          >
            ${kept ? html`Kept<span aria-hidden="true"> ✓</span>` : 'Keep'}
          </button>
        </div>
      </td>
    </tr>`;
  }

  #side({ value, lines }: Side): TemplateResult {
    return html`<td>
      ${value === '' && lines.length === 0 ? html`<span class="second">nothing</span>` : html`<b>${value}</b>`}
      ${lines.map((line) => html`<span class="line">${line}</span>`)}
    </td>`;
  }

  #results(session: Session, compared: Comparison): TemplateResult | typeof nothing {
    const list = differingResults(session, compared);
    if (list.length === 0)
      return html`<p class="second">Formulas that stand on both sides alike give the same results.</p>`;
    return html`<h3>Results that come out differently (${list.length})</h3>
      <table aria-live="polite">
        <thead>
          <tr>
            <th>where</th>
            <th>this one</th>
            <th>received</th>
          </tr>
        </thead>
        <tbody>
          ${list.slice(0, MOST_LISTED).map(
            ({ where, ours, theirs }) =>
              html`<tr>
                <td>${where}</td>
                <td><b>${ours}</b></td>
                <td><b>${theirs}</b></td>
              </tr>`,
          )}
        </tbody>
      </table>`;
  }

  #run(session: Session, answer: Transaction | Refusal): void {
    if (isRefusal(answer)) this.problem = answer.message;
    else if (session.run(answer)) {
      this.problem = '';
      this.#taken += 1;
    }
    this.requestUpdate();
  }

  /** Laying one upon the other is work: done again only when one of them has changed. */
  #compared({ notebook }: Session, received: ReadNotebook): Comparison | Refusal {
    const base = this.base?.notebook;
    const before = this.#last;
    if (before?.notebook === notebook && before.received === received && before.base === base)
      return before.compared;
    const compared = comparison(notebook, received, base);
    const merged = base && mergeNotebooks(base, notebook, received.notebook);
    this.#last = { notebook, received, base, compared, merged };
    return compared;
  }

  #keep(places: readonly ComparedPlace[]): void {
    const keys = places.map(({ key }) => key);
    const all = keys.every((key) => this.kept.has(key));
    const kept = new Set(this.kept);
    for (const key of keys)
      if (all) kept.delete(key);
      else kept.add(key);
    this.kept = kept;
  }

  #undo(session: Session): void {
    this.#taken -= 1;
    session.undo();
  }

  #apart(received: ReadNotebook): void {
    this.close?.();
    this.dispatchEvent(new CustomEvent('open-apart', { bubbles: true, composed: true, detail: received }));
  }

  async #choose({ world }: Session): Promise<void> {
    this.problem = '';
    try {
      const picked = await world.files.pick('.json,application/json,.html,.htm,text/html');
      if (!picked) return;
      const read = readAnyNotebook(picked.text);
      if (isRefusal(read)) this.problem = read.message;
      else if (read.newer)
        this.problem = 'This file was written by a newer version of the program: update it first.';
      else this.received = read;
    } catch (reason) {
      this.problem = reason instanceof Error ? reason.message : String(reason);
    }
  }
}

const count = (many: number, word: string): string => `${many} ${word}${many === 1 ? '' : 's'}`;

customElements.define('compare-view', CompareView);
