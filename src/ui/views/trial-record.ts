/** The record of the notebook's trials: the passes so far, and the way to the next one. At the machine and at the desk. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { partsOf } from '../../document/index.ts';
import type { Trial, TrialPass } from '../../document/index.ts';
import { cutUnitOf, firstValue, passValue } from '../../trial/index.ts';
import { openLeaf } from '../open-leaf.ts';
import { groupedDigits } from '../machine-cells.ts';
import { momentText } from '../machine-change.ts';
import { editedText } from '../number-locale.ts';
import { CUT } from '../pass-saving.ts';
import { pictureSource } from '../photograph.ts';
import type { Session } from '../session.ts';
import { whole, wholeSelectStyles } from '../elements/whole-select.ts';
import { shared } from '../shared.styles.ts';
import { passesLimit, runOf, runWords, runsBegun } from '../trial-passes.ts';
import { unitText } from '../value-text.ts';
import { Watching } from '../watching.ts';
import { PassForm } from './pass-form.ts';
import { recordStyles } from './trial-record.styles.ts';

/** So many passes are listed at once. */
const LAST = 10;

export class TrialRecord extends LitElement {
  static override styles = [shared, recordStyles, wholeSelectStyles];
  static override properties = {
    session: { attribute: false },
    trial: { attribute: false },
    all: { state: true },
  };
  declare session: Session | undefined;
  /** Id of the trial in sight; undefined: the last one. */
  declare trial: string | undefined;
  /** Every pass is listed; otherwise the last ones, so that the next one stays near the thumb. */
  declare all: boolean;

  constructor() {
    super();
    this.all = false;
    new Watching(this);
  }

  get #form(): PassForm | null {
    return this.renderRoot.querySelector('pass-form');
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const trials = partsOf(session.notebook, 'trials');
    const trial = trials.find(({ id }) => id === this.trial) ?? trials.at(-1);
    if (!trial)
      return html`<h2>Record</h2>
        <p class="empty">
          No trial is planned in this notebook. A trial needs a plan: what is compared, what is measured, when
          an edge is stopped.
        </p>
        <div class="others"><button @click=${() => openLeaf(this, 'trial-plan')}>Plan a trial</button></div>`;
    const { passes, measurands } = trial;
    const hidden = this.all ? 0 : Math.max(0, passes.length - LAST);
    return html`<div class="top">
        <h2>Record</h2>
        ${
          trials.length < 2
            ? html`<b>${trial.title}</b>`
            : whole(
                trial.title,
                html`<select aria-label="trial" @change=${(event: Event) => this.#turnTo(event)}>
                  ${trials.map((each) => html`<option value=${each.id} .selected=${each === trial}>${each.title}</option>`)}
                </select>`,
              )
        }
        <p>${this.#state(trial)}</p>
      </div>
      <div class="passes" tabindex="0" role="region" aria-label="passes recorded">
        ${
          passes.length === 0
            ? html`<p class="empty">No pass yet. ${this.#first(trial)}</p>`
            : html`<table>
                <thead>
                  <tr>
                    <th>pass</th>
                    <th>run, edge</th>
                    <th class="number">cut</th>
                    ${measurands.map(({ name }) => html`<th class="number">${name}</th>`)}
                    <th>note</th>
                  </tr>
                </thead>
                <tbody>
                  ${passes.map((pass, k) => (k < hidden ? nothing : this.#row(session, trial, pass, k)))}
                </tbody>
              </table>`
        }
      </div>
      <button class="primary record" ?disabled=${session.readOnly} @click=${() => this.#form?.open(trial)}>
        Record pass ${passes.length + 1}
      </button>
      <div class="others">
        ${
          passes.length <= LAST
            ? nothing
            : html`<button aria-pressed=${this.all ? 'true' : 'false'} @click=${() => (this.all = !this.all)}>
                ${this.all ? `The last ${LAST} only` : `All ${passes.length} passes`}
              </button>`
        }
        <button @click=${() => openLeaf(this, 'trial-reading', trial.id)}>Read the trial</button>
        <button @click=${() => openLeaf(this, 'trial-plan')}>Plan</button>
      </div>
      <pass-form .session=${session}></pass-form>`;
  }

  #state(trial: Trial): string {
    const { currency } = this.session?.notebook ?? { currency: '' };
    const begun = runsBegun(trial);
    const stops = trial.measurands.flatMap(({ name, limit }) =>
      limit === undefined ? [] : [`${name} ${editedText(limit, currency)}`],
    );
    const stop = stops.length === 0 ? '' : ` · stop at ${stops.join(', ')}`;
    return `${begun} of ${trial.runs.length} runs begun${stop}`;
  }

  #first(trial: Trial): string {
    const [run] = trial.runs;
    return run ? `The order begins with ${runWords(trial, run)}.` : '';
  }

  #row(session: Session, trial: Trial, pass: TrialPass, k: number): TemplateResult {
    const { notebook, world } = session;
    const run = runOf(trial, pass.run);
    const over = trial.measurands.filter((each) => passesLimit(each, pass, notebook.currency));
    const look = pass.withdrawn !== undefined ? 'withdrawn' : over.length > 0 ? 'reached' : '';
    const picture = partsOf(notebook, 'photographs').find(({ id }) => id === pass.photograph);
    return html`<tr class=${look}>
      <td class="at">
        <button @click=${() => this.#form?.open(trial, pass)}>
          <span class="unseen">Correct pass </span>${k + 1}
          <span class="who">${momentText(pass.at, world.clock.now())} ${pass.by}</span>
        </button>
      </td>
      <td class="run">
        <span class="levels">${run ? runWords(trial, run) : pass.run}</span> edge ${pass.edge}
      </td>
      ${this.#value(session, pass, CUT, cutUnitOf(trial), false)}
      ${trial.measurands.map((each) => this.#value(session, pass, each.name, each.unit, over.includes(each)))}
      <td>
        ${pass.withdrawn === undefined ? nothing : html`<b>does not count: ${pass.withdrawn}</b> `}${pass.note ?? ''}
        ${picture ? html`<img src=${pictureSource(picture)} alt=${picture.words} />` : nothing}
      </td>
    </tr>`;
  }

  #value({ notebook }: Session, pass: TrialPass, what: string, unit: string, over: boolean): TemplateResult {
    const content = passValue(pass, what);
    if (content === '') return html`<td class="number"><span class="unseen">not measured</span></td>`;
    const text = editedText(content, notebook.currency);
    const own = /([^\d\s.,/eE+-].*)$/.exec(text)?.[1] ?? '';
    const number = groupedDigits(text.slice(0, text.length - own.length).trim());
    const first = firstValue(pass, what);
    return html`<td class="number">
      <span class=${over ? 'over' : ''}
        >${over ? '▲ ' : ''}${number} <small>${unitText(own || unit)}</small></span
      >
      ${first === undefined ? nothing : html`<s aria-label="first value">${editedText(first, notebook.currency) || 'empty'}</s>`}
    </td>`;
  }

  #turnTo({ target }: Event): void {
    if (target instanceof HTMLSelectElement) this.trial = target.value;
  }
}
customElements.define('trial-record', TrialRecord);
