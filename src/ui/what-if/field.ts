/** Fields the sections share: a cell to pick, a quantity to type, how far a question has come. */

import { html, nothing, type TemplateResult } from 'lit';
import { whole } from '../elements/whole-select.ts';
import type { Session } from '../session.ts';
import { resultText } from '../value-text.ts';
import type { Asking } from './asking.ts';
import type { Candidate } from './candidate-cells.ts';

/** A list of cells by worksheet; `chosen` is a candidate's key. */
export function cellField(
  words: string,
  list: readonly Candidate[],
  chosen: string,
  take: (key: string) => void,
): TemplateResult {
  const sheets = [...new Set(list.map(({ worksheet }) => worksheet))];
  const options = (each: readonly Candidate[]): readonly TemplateResult[] =>
    each.map(
      ({ key, words: text }) => html`<option value=${key} ?selected=${key === chosen}>${text}</option>`,
    );
  const none = 'none in this notebook';
  const shown = list.find(({ key }) => key === chosen) ?? list[0];
  const select = html`<select @change=${(event: Event) => take((event.target as HTMLSelectElement).value)}>
    ${list.length === 0 ? html`<option>${none}</option>` : nothing}
    ${
      sheets.length < 2
        ? options(list)
        : sheets.map(
            (sheet) =>
              html`<optgroup label=${sheet}>
                ${options(list.filter(({ worksheet }) => worksheet === sheet))}
              </optgroup>`,
          )
    }
  </select>`;
  return html`<label class="field"><span>${words}</span>${whole(shown?.words ?? none, select)}</label>`;
}

export function textField(
  words: string,
  value: string,
  take: (text: string) => void,
  hint = '',
): TemplateResult {
  return html`<label class="field"
    ><span>${words}</span
    ><input
      .value=${value}
      placeholder=${hint}
      autocomplete="off"
      spellcheck="false"
      @change=${(event: Event) => take((event.target as HTMLInputElement).value.trim())}
  /></label>`;
}

export function choiceField<Value extends string>(
  words: string,
  list: readonly (readonly [Value, string])[],
  chosen: Value,
  take: (value: Value) => void,
): TemplateResult {
  const shown = list.find(([value]) => value === chosen) ?? list[0];
  const select = html`<select
    @change=${(event: Event) => {
      const found = list[(event.target as HTMLSelectElement).selectedIndex];
      if (found) take(found[0]);
    }}
  >
    ${list.map(([value, text]) => html`<option ?selected=${value === chosen}>${text}</option>`)}
  </select>`;
  return html`<label class="field"><span>${words}</span>${whole(shown?.[1] ?? '', select)}</label>`;
}

/** The button that asks, how far it is, and why there is no answer. */
export function askRow(asking: Asking, words: string, ask: () => void, ready = true): TemplateResult {
  const { outcome } = asking;
  return html`<p class="ask">
      <button class="primary" ?disabled=${!ready || asking.running} @click=${ask}>${words}</button>
      ${
        asking.running
          ? html`<progress max="1" .value=${asking.done ?? 0} aria-label="how far it is"></progress>
              <button @click=${() => asking.cancel()}>Stop</button>`
          : nothing
      }
    </p>
    <div role="status">
      ${outcome?.type === 'refused' ? html`<p class="error">▲ ${outcome.message}</p>` : nothing}
      ${outcome?.type === 'cancelled' ? html`<p class="second">Stopped before there was an answer.</p>` : nothing}
      ${
        asking.stale && outcome?.type === 'answered'
          ? html`<p class="second">The notebook has changed since; ask again.</p>`
          : nothing
      }
    </div>`;
}

/** What a candidate shows now. */
export const valueOf = (session: Session, candidate: Candidate | undefined): string =>
  candidate ? resultText(candidate.result, session.notebook) : '';
