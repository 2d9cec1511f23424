/** The decision figure of a trial: parts of an edge, whole shifts, cost of a part, what it saves a year and from how many parts on. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { isRefusal } from '../../document/index.ts';
import type { Trial } from '../../document/index.ts';
import { decide } from '../../trial/index.ts';
import type { Decision, TrialReading, VariantCost } from '../../trial/index.ts';
import { decisionArgs, decisionDraft, isEmpty, keepDecision } from '../decision-draft.ts';
import type { CostDraft, DecisionDraft } from '../decision-draft.ts';
import '../elements/plain-plot.ts';
import { groupedDigits } from '../machine-cells.ts';
import { inWords, markedDigits } from '../number-locale.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { costPlot } from '../trial-plots.ts';
import { readingStyles } from './trial-reading.styles.ts';

export class TrialDecision extends LitElement {
  static override styles = [shared, readingStyles];
  static override properties = {
    session: { attribute: false },
    trial: { attribute: false },
    reading: { attribute: false },
    draft: { state: true },
  };
  declare session: Session | undefined;
  declare trial: Trial | undefined;
  declare reading: TrialReading | undefined;
  declare draft: DecisionDraft | undefined;
  #of = '';

  override willUpdate(): void {
    const { session, trial, reading } = this;
    if (!session || !trial || !reading || this.#of === trial.id) return;
    this.#of = trial.id;
    this.draft = decisionDraft(session.notebook, trial.id, reading);
  }

  override render(): TemplateResult | typeof nothing {
    const { session, reading, draft } = this;
    if (!session || !reading || !draft) return nothing;
    const { variants } = reading;
    if (variants.length < 2)
      return html`<p class="second">One variant only: there is nothing to decide between.</p>`;
    const { currency } = session.notebook;
    const pick = (key: 'a' | 'b', label: string): TemplateResult =>
      html`<label
        >${label}<select @change=${this.#set(key)}>
          ${variants.map(({ title }, k) => html`<option value=${k} .selected=${String(k) === draft[key]}>${inWords(title)}</option>`)}
        </select></label
      >`;
    const field = (
      key: 'machineRate' | 'changeTime' | 'partsPerYear' | 'partsPerShift',
      label: string,
      hint = '',
    ): TemplateResult =>
      html`<label
        >${label}<input placeholder=${hint} .value=${draft[key]} @input=${this.#set(key)}
      /></label>`;
    const [a, b] = [variants[Number(draft.a)]?.title ?? '', variants[Number(draft.b)]?.title ?? ''];
    return html`<div class="asked">
        ${pick('a', 'what is used now')} ${pick('b', 'what is compared with it')}
        ${field('machineRate', 'machine and operator', `80 ${currency}/h`)}
        ${field('changeTime', 'one tool change', '1 min')} ${field('partsPerYear', 'parts a year', '12000')}
        ${field('partsPerShift', 'parts a shift, if edges are changed then only')}
      </div>
      ${this.#costs('costsA', a, currency, reading)} ${this.#costs('costsB', b, currency, reading)}
      ${
        isEmpty(draft)
          ? html`<p class="second">
              Prices and parts a year are missing: then it says what the better edge is worth.
            </p>`
          : this.#answer(session, reading, draft, { a, b })
      }`;
  }

  #costs(
    key: 'costsA' | 'costsB',
    title: string,
    currency: string,
    { cutUnit }: TrialReading,
  ): TemplateResult {
    const own = this.draft?.[key];
    const field = (name: keyof CostDraft, label: string, hint: string): TemplateResult =>
      html`<label
        >${label}<input
          placeholder=${hint}
          .value=${own?.[name] ?? ''}
          @input=${(event: Event) => own && this.#put({ [key]: { ...own, [name]: valueOf(event) } })}
      /></label>`;
    return html`<fieldset>
      <legend>${inWords(title)}</legend>
      <div class="asked">
        ${field('edgeSet', 'one set of edges', `12 ${currency}`)}
        ${field('cutPerPart', 'cut of one part', key === 'costsB' ? 'as above' : `1.2 ${cutUnit.symbol}`)}
        ${field('timePerPart', 'machine time of one part', 'as the cut')}
        ${field('once', 'paid once', `0 ${currency}`)}
      </div>
    </fieldset>`;
  }

  #answer(
    session: Session,
    reading: TrialReading,
    draft: DecisionDraft,
    titles: { readonly a: string; readonly b: string },
  ): TemplateResult {
    const { currency } = session.notebook;
    const decision = decide(reading, decisionArgs(draft, session.notebook));
    if (isRefusal(decision)) return html`<p class="caution">▲ ${inWords(decision.message)}</p>`;
    return html`<p class="sentence" role="status">${inWords(decision.sentence)}</p>
      ${decision.cautions.map((words) => html`<p class="caution">▲ ${inWords(words)}</p>`)}
      <div class="scroll">
        <table>
          <thead>
            <tr>
              <th></th>
              <th>parts of one edge</th>
              <th>whole shifts</th>
              <th>changed after</th>
              <th>cost of a part</th>
            </tr>
          </thead>
          <tbody>
            ${rows(decision, titles).map(([title, cost]) => this.#row(title, cost, currency))}
          </tbody>
        </table>
      </div>
      <plain-plot .data=${costPlot(decision, titles, currency)}></plain-plot>`;
  }

  #row(
    title: string,
    { partsPerEdge, shifts, changedAfter, perPart }: VariantCost,
    currency: string,
  ): TemplateResult {
    const whole = (count: number): string => groupedDigits(String(count));
    const price = Number.isFinite(perPart)
      ? `${markedDigits(perPart.toFixed(3))} ${currency}`
      : 'does not last one part';
    return html`<tr>
      <td>${inWords(title)}</td>
      <td class="value">${whole(partsPerEdge)}</td>
      <td class="value">${shifts ?? '–'}</td>
      <td class="value">${whole(changedAfter)} parts</td>
      <td class="value">${price}</td>
    </tr>`;
  }

  #put(part: Partial<DecisionDraft>): void {
    const { session, trial, draft } = this;
    if (!session || !trial || !draft) return;
    this.draft = { ...draft, ...part };
    keepDecision(session.notebook, trial.id, this.draft);
  }

  #set(key: Exclude<keyof DecisionDraft, 'costsA' | 'costsB'>): (event: Event) => void {
    return (event) => this.#put({ [key]: valueOf(event) });
  }
}

const valueOf = ({ target }: Event): string =>
  target instanceof HTMLInputElement || target instanceof HTMLSelectElement ? target.value : '';

function rows(
  { a, b, bLow, bHigh }: Decision,
  titles: { readonly a: string; readonly b: string },
): readonly (readonly [string, VariantCost])[] {
  return [
    [titles.a, a],
    [titles.b, b],
    ...(bLow ? [[`${titles.b}, low end of its life`, bLow] as const] : []),
    ...(bHigh ? [[`${titles.b}, high end`, bHigh] as const] : []),
  ];
}

customElements.define('trial-decision', TrialDecision);
