/** What a trial tells: how the lives compare, the wear curves, every edge and variant, and what the better one is worth. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { partsOf } from '../../document/index.ts';
import type { Trial } from '../../document/index.ts';
import { fromSI, unitLabel } from '../../quantity/index.ts';
import type { Unit } from '../../quantity/index.ts';
import { rateWords, readTrial } from '../../trial/index.ts';
import type { EdgeReading, TrialReading, VariantReading } from '../../trial/index.ts';
import '../elements/plain-plot.ts';
import { inWords } from '../number-locale.ts';
import { openLeaf } from '../open-leaf.ts';
import type { Session } from '../session.ts';
import { whole, wholeSelectStyles } from '../elements/whole-select.ts';
import { shared } from '../shared.styles.ts';
import { wearPlot } from '../trial-plots.ts';
import { Watching } from '../watching.ts';
import './trial-decision.ts';
import { readingStyles } from './trial-reading.styles.ts';

export class TrialReadingLeaf extends LitElement {
  static override styles = [shared, readingStyles, wholeSelectStyles];
  static override properties = { session: { attribute: false }, trial: { attribute: false } };
  declare session: Session | undefined;
  /** Id of the trial that is read; undefined: the last one. */
  declare trial: string | undefined;
  #read: { readonly trial: Trial; readonly reading: TrialReading } | undefined;

  constructor() {
    super();
    new Watching(this);
  }

  #reading(session: Session, trial: Trial): TrialReading {
    if (this.#read?.trial !== trial)
      this.#read = { trial, reading: readTrial(trial, { currency: session.notebook.currency }) };
    return this.#read.reading;
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const trials = partsOf(session.notebook, 'trials');
    const trial = trials.find(({ id }) => id === this.trial) ?? trials.at(-1);
    if (!trial)
      return html`<p>No trial is planned in this notebook.</p>
        <button class="primary" @click=${() => openLeaf(this, 'trial-plan')}>Plan a trial</button>`;
    const reading = this.#reading(session, trial);
    return html`${
      trials.length < 2
        ? html`<b>${trial.title}</b>`
        : whole(
            trial.title,
            html`<select aria-label="trial" @change=${(event: Event) => this.#turnTo(event)}>
              ${trials.map((each) => html`<option value=${each.id} .selected=${each === trial}>${each.title}</option>`)}
            </select>`,
          )
    }
    ${
      reading.edges.length === 0
        ? html`<p>No pass is recorded yet: nothing can be read.</p>
            <button class="primary" @click=${() => openLeaf(this, 'trial-record', trial.id)}>
              To the record
            </button>`
        : this.#whole(session, trial, reading)
    }`;
  }

  #whole(session: Session, trial: Trial, reading: TrialReading): TemplateResult {
    const plots = trial.measurands.flatMap((each) => wearPlot(reading, each, session.notebook) ?? []);
    return html`${reading.comparisons.map(
        ({ sentence, proven }) => html`<p class="sentence ${proven ? '' : 'open'}">${inWords(sentence)}</p>`,
      )}
      ${reading.cautions.map((words) => html`<p class="caution">▲ ${inWords(words)}</p>`)}
      <h3>Wear curves</h3>
      <div class="plots">${plots.map((data) => html`<plain-plot .data=${data}></plain-plot>`)}</div>
      <h3>Life of the variants</h3>
      <div class="scroll">
        <table>
          <thead>
            <tr>
              <th>variant</th>
              <th>edges</th>
              <th>half of the edges last longer than</th>
            </tr>
          </thead>
          <tbody>
            ${reading.variants.map((each) => this.#variant(each, reading))}
          </tbody>
        </table>
      </div>
      ${reading.taylor.length === 0 ? nothing : this.#taylor(reading)} ${this.#edges(session, trial, reading)}
      <h3>What it is worth</h3>
      <trial-decision .session=${session} .trial=${trial} .reading=${reading}></trial-decision>`;
  }

  #variant({ title, edges, life }: VariantReading, { cutUnit }: TrialReading): TemplateResult {
    const { weibull } = life;
    return html`<tr>
      <td>${inWords(title)}</td>
      <td>${edges.length}</td>
      <td>
        ${inWords(life.words)}
        ${
          weibull
            ? html`<br />Weibull: shape ${three(weibull.shape)}; one edge in ten has ended by
                ${lifeWords(weibull.tenPercent.life, cutUnit)} (${lifeWords(weibull.tenPercent.low, cutUnit)}
                to ${lifeWords(weibull.tenPercent.high, cutUnit)}, 95 %)`
            : nothing
        }
      </td>
    </tr>`;
  }

  #taylor({ taylor }: TrialReading): TemplateResult {
    return html`<h3>Speed and life (Taylor, v T^n = C)</h3>
      ${taylor.map(({ title, words }) => html`<p><b>${inWords(title)}:</b> ${inWords(words)}</p>`)}`;
  }

  #edges(session: Session, trial: Trial, reading: TrialReading): TemplateResult {
    return html`<h3>Every edge</h3>
      <div class="scroll">
        <table>
          <thead>
            <tr>
              <th>edge</th>
              <th>variant</th>
              <th>what it did</th>
              <th>steady wear</th>
            </tr>
          </thead>
          <tbody>
            ${reading.edges.map((edge) => this.#edge(session, trial, reading, edge))}
          </tbody>
        </table>
      </div>`;
  }

  #edge({ notebook }: Session, trial: Trial, reading: TrialReading, edge: EdgeReading): TemplateResult {
    const rates = edge.curves.flatMap(({ measurand, rate }) => {
      const unit = trial.measurands.find(({ name }) => name === measurand)?.unit ?? '';
      return rate ? [`${measurand} ${rateWords(rate, unit, reading.cutUnit, notebook.currency)}`] : [];
    });
    return html`<tr>
      <td>${edge.edge}</td>
      <td>${inWords(reading.variants[edge.variant]?.title ?? '')}</td>
      <td>
        ${inWords(edge.words)}
        ${edge.cautions.map((words) => html`<div class="caution">▲ ${inWords(words)}</div>`)}
      </td>
      <td>
        ${rates.length === 0 ? html`<span class="second">too few readings</span>` : inWords(rates.join('; '))}
      </td>
    </tr>`;
  }

  #turnTo({ target }: Event): void {
    if (target instanceof HTMLSelectElement) this.trial = target.value;
  }
}
const three = (value: number): string => inWords(String(Number(value.toPrecision(3))));
const lifeWords = (life: number, unit: Unit): string => `${three(fromSI(life, unit))} ${unitLabel(unit)}`;

customElements.define('trial-reading', TrialReadingLeaf);
