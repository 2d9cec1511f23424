/** Planning a trial: factors and levels, stock, what is measured and when it stops; the order of chance and whether the stock lasts. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { isRefusal, partsOf } from '../../document/index.ts';
import type { Trial } from '../../document/index.ts';
import { addTrial, changeTrial, removeTrial } from '../../trial/index.ts';
import type { TrialPlan } from '../../trial/index.ts';
import { openLeaf } from '../open-leaf.ts';
import { editedText } from '../number-locale.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import {
  CUT_UNITS,
  NO_FACTOR,
  NO_MEASURAND,
  draftOf,
  freshDraft,
  isPlan,
  planArgs,
  planOf,
} from '../trial-draft.ts';
import type { FactorDraft, PlanDraft } from '../trial-draft.ts';
import { runWords } from '../trial-passes.ts';
import { Watching } from '../watching.ts';
import { planStyles } from './trial-plan.styles.ts';

type MeasurandDraft = PlanDraft['measurands'][number];

export class TrialPlanLeaf extends LitElement {
  static override styles = [shared, planStyles];
  static override properties = {
    session: { attribute: false },
    close: { attribute: false },
    draft: { state: true },
    changes: { state: true },
  };
  declare session: Session | undefined;
  declare close: (() => void) | undefined;
  declare draft: PlanDraft | undefined;
  /** Id of the trial that is planned anew; undefined: a new one. */
  declare changes: string | undefined;

  constructor() {
    super();
    new Watching(this);
  }

  override willUpdate(): void {
    if (this.session) this.draft ??= freshDraft(this.session.world.clock.now());
  }

  override render(): TemplateResult | typeof nothing {
    const { session, draft } = this;
    if (!session || !draft) return nothing;
    const plan = planOf(draft, session.notebook);
    return html`${partsOf(session.notebook, 'trials').map((trial) => this.#known(session, trial))}
      <div class="two">
        <form @submit=${(event: Event) => event.preventDefault()}>
          <label>Title<input .value=${draft.title} @input=${this.#text('title')} /></label>
          ${this.#factors(draft)} ${this.#chance(draft)} ${this.#measurands(draft)} ${this.#stock(draft)}
        </form>
        ${isPlan(plan) ? this.#follows(session, plan) : html`<div class="follows"><p class="caution">▲ ${plan.message}</p></div>`}
      </div>`;
  }

  #known(session: Session, trial: Trial): TemplateResult {
    const count = trial.passes.length;
    const remove = (): void => {
      const detail = {
        title: `Remove ${trial.title}?`,
        words:
          count === 0
            ? 'Nothing is recorded in it.'
            : `Its ${count} recorded passes go with it; undo brings them back.`,
        action: 'Remove it',
        done: () => session.run(removeTrial(session.notebook, { trial: trial.id })),
      };
      this.dispatchEvent(new CustomEvent('ask-consent', { bubbles: true, composed: true, detail }));
    };
    return html`<div class="known">
      <b>${trial.title}</b>
      <span>${trial.runs.length} runs, ${count} passes recorded</span>
      <button @click=${() => openLeaf(this, 'trial-record', trial.id)}>Record</button>
      <button @click=${() => openLeaf(this, 'trial-reading', trial.id)}>Read</button>
      ${
        count > 0
          ? nothing
          : html`<button
              aria-pressed=${this.changes === trial.id ? 'true' : 'false'}
              @click=${() => {
                this.changes = trial.id;
                this.draft = draftOf(trial, session.notebook.currency);
              }}
            >
              Plan anew
            </button>`
      }
      <button ?disabled=${session.readOnly} @click=${remove}>Remove…</button>
    </div>`;
  }

  #set(part: Partial<PlanDraft>): void {
    if (this.draft) this.draft = { ...this.draft, ...part };
  }

  #text(key: 'title' | 'repeats' | 'seed' | 'cutUnit' | 'atHand' | 'perRun'): (event: Event) => void {
    return (event) => this.#set({ [key]: valueOf(event) });
  }

  #factors({ factors }: PlanDraft): TemplateResult {
    const put = (k: number, part: Partial<FactorDraft>): void =>
      this.#set({ factors: factors.map((each, at) => (at === k ? { ...each, ...part } : each)) });
    return html`<fieldset>
      <legend>What is compared</legend>
      ${factors.map(
        ({ name, levels }, k) =>
          html`<div class="row factor">
            <label
              >factor<input .value=${name} @input=${(event: Event) => put(k, { name: valueOf(event) })}
            /></label>
            <label
              >levels, parted by ;<input
                .value=${levels}
                placeholder="220 m/min; 260 m/min"
                @input=${(event: Event) => put(k, { levels: valueOf(event) })}
            /></label>
            <button
              aria-label="take the factor ${name} away"
              @click=${() => this.#set({ factors: factors.toSpliced(k, 1) })}
            >
              ×
            </button>
          </div>`,
      )}
      <button @click=${() => this.#set({ factors: [...factors, NO_FACTOR] })}>Another factor</button>
    </fieldset>`;
  }

  #chance({ repeats, seed, cutUnit }: PlanDraft): TemplateResult {
    return html`<fieldset>
      <legend>How often, in which order</legend>
      <div class="row three">
        <label
          >edges for each combination<input
            inputmode="numeric"
            .value=${repeats}
            @input=${this.#text('repeats')}
        /></label>
        <label
          >seed of the random order<input inputmode="numeric" .value=${seed} @input=${this.#text('seed')}
        /></label>
        <label
          >cut is noted in<select @change=${this.#text('cutUnit')}>
            ${[...new Set([...CUT_UNITS, cutUnit])].map((unit) => html`<option .selected=${unit === cutUnit}>${unit}</option>`)}
          </select></label
        >
      </div>
    </fieldset>`;
  }

  #measurands({ measurands }: PlanDraft): TemplateResult {
    const put = (k: number, part: Partial<MeasurandDraft>): void =>
      this.#set({ measurands: measurands.map((each, at) => (at === k ? { ...each, ...part } : each)) });
    const field = (k: number, key: keyof MeasurandDraft, label: string, look = ''): TemplateResult =>
      html`<label class=${look}
        >${label}<input
          .value=${measurands[k]?.[key] ?? ''}
          @input=${(event: Event) => put(k, { [key]: valueOf(event) })}
      /></label>`;
    return html`<fieldset>
      <legend>What is measured, and when an edge stops</legend>
      ${measurands.map(
        ({ name }, k) =>
          html`<div class="row measurand">
            ${field(k, 'name', 'name')} ${field(k, 'unit', 'unit')} ${field(k, 'limit', 'stop at')}
            ${field(k, 'when', 'measured when', 'when')}
            <button
              aria-label="no longer measure ${name}"
              @click=${() => this.#set({ measurands: measurands.toSpliced(k, 1) })}
            >
              ×
            </button>
          </div>`,
      )}
      <button @click=${() => this.#set({ measurands: [...measurands, NO_MEASURAND] })}>
        Measure something else too
      </button>
    </fieldset>`;
  }

  #stock({ atHand, perRun }: PlanDraft): TemplateResult {
    return html`<fieldset>
      <legend>Stock, if it is scarce</legend>
      <div class="row stock">
        <label>at hand<input placeholder="5.6 dm3" .value=${atHand} @input=${this.#text('atHand')} /></label>
        <label
          >what one run takes<input placeholder="0.9 dm3" .value=${perRun} @input=${this.#text('perRun')}
        /></label>
      </div>
    </fieldset>`;
  }

  #follows(session: Session, plan: TrialPlan): TemplateResult {
    const { trial, stock } = plan;
    const whole: Trial = { id: '', ...trial };
    return html`<section class="follows" aria-label="what follows from it">
      <p class="count">${plan.runs} runs</p>
      <p>
        ${plan.combinations} ${plan.combinations === 1 ? 'combination' : 'combinations'}, ${trial.repeats}
        ${trial.repeats === 1 ? 'edge' : 'edges'} each
      </p>
      ${stock ? html`<p class=${stock.fits ? 'fits' : 'caution'}>${stock.fits ? '✓' : '▲'} ${editedText(stock.words, '')}</p>` : nothing}
      ${plan.cautions.filter((words) => words !== stock?.words).map((words) => html`<p class="caution">▲ ${words}</p>`)}
      <h3>Cut in this order</h3>
      <ol tabindex="0" aria-label="order of the runs">
        ${trial.runs.map((run) => html`<li>${runWords(whole, run).replace(/^Run \d+ ?·? ?/, '') || 'the one variant'}</li>`)}
      </ol>
      <h3>At the machine</h3>
      <ul>
        ${[...plan.measured, ...plan.stops].map((words) => html`<li>${words}</li>`)}
      </ul>
      <button class="primary" ?disabled=${session.readOnly} @click=${() => this.#make(session)}>
        ${this.changes === undefined ? 'Make it the trial record' : 'Plan it anew'}
      </button>
    </section>`;
  }

  #make(session: Session): void {
    const { draft } = this;
    if (!draft) return;
    const { currency: _currency, ...args } = planArgs(draft, session.notebook);
    const answer =
      this.changes === undefined
        ? addTrial(session.notebook, args)
        : changeTrial(session.notebook, { ...args, trial: this.changes });
    if (!session.run(answer) || isRefusal(answer)) return;
    const id = this.changes ?? partsOf(session.notebook, 'trials').at(-1)?.id;
    this.changes = undefined;
    openLeaf(this, 'trial-record', id);
  }
}

const valueOf = ({ target }: Event): string =>
  target instanceof HTMLInputElement || target instanceof HTMLSelectElement ? target.value : '';

customElements.define('trial-plan', TrialPlanLeaf);
