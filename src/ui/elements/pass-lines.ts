/** The fields of a pass: run, edge, numbers with their units, note, photograph. */

import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Photograph, Trial } from '../../document/index.ts';
import type { NumberField, PassDraft } from '../pass-saving.ts';
import { pictureSource } from '../photograph.ts';
import { runOf, runWords } from '../trial-passes.ts';
import { unitText } from '../value-text.ts';

export interface PassHands {
  /** The keypad on the screen is in use: the system's own stays away. */
  readonly keypad: boolean;
  choose(run: string): void;
  type(key: string, text: string): void;
  /** A text field has the focus: no number field is in hand. */
  toText(): void;
  begin(key: string): void;
  typeNumber(key: string, text: string): void;
  key(event: KeyboardEvent): void;
  photographed(file: File): void;
}

const wrong = ({ refusal }: PassDraft, key: string): TemplateResult | typeof nothing =>
  refusal?.key === key ? html`<p class="wrong" role="alert">▲ ${refusal.words}</p>` : nothing;

const textOf = ({ target }: Event): string =>
  target instanceof HTMLInputElement || target instanceof HTMLSelectElement ? target.value : '';

/** A text holds a unit of its own. */
export const ownUnit = (text: string): string | undefined => /([^\d\s.,/eE+-].*)$/.exec(text)?.[1];

export function runLine(trial: Trial, draft: PassDraft, hands: PassHands): TemplateResult {
  const run = runOf(trial, draft.run);
  if (draft.pass || trial.runs.length < 2)
    return html`<div class="line"><span>Run</span><b>${run ? runWords(trial, run) : ''}</b></div>`;
  return html`<label class="line run"
    ><span>Run</span
    ><select @change=${(event: Event) => hands.choose(textOf(event))}>
      ${trial.runs.map((each) => html`<option value=${each.id} .selected=${each.id === draft.run}>${runWords(trial, each)}</option>`)}
    </select></label
  >`;
}

export function textLine(draft: PassDraft, key: string, label: string, hands: PassHands): TemplateResult {
  return html`<label class="line"
    ><span>${label}</span
    ><input
      class="wide"
      data-key=${key}
      maxlength="200"
      autocomplete="off"
      enterkeyhint="next"
      .value=${live(draft.texts.get(key) ?? '')}
      @focus=${() => hands.toText()}
      @input=${(event: Event) => hands.type(key, textOf(event))}
      @keydown=${(event: KeyboardEvent) => hands.key(event)}
    />${wrong(draft, key)}</label
  >`;
}

export function numberLine(
  draft: PassDraft,
  { key, label, about, unit }: NumberField,
  hands: PassHands,
): TemplateResult {
  const text = draft.texts.get(key) ?? '';
  return html`<div class="line">
    <span>${label}${about === '' ? nothing : html`<small>${about}</small>`}</span>
    <label class="value"
      ><input
        data-key=${key}
        aria-label="${label}, ${unit}"
        inputmode=${hands.keypad ? 'none' : 'text'}
        autocomplete="off"
        spellcheck="false"
        .value=${live(text)}
        @focus=${() => hands.begin(key)}
        @input=${(event: Event) => hands.typeNumber(key, textOf(event))}
        @keydown=${(event: KeyboardEvent) => hands.key(event)}
      />${ownUnit(text) === undefined ? html`<span class="unit">${unitText(unit)}</span>` : nothing}</label
    >
    ${wrong(draft, key)}
  </div>`;
}

export function photographLine(
  draft: PassDraft,
  kept: Photograph | undefined,
  busy: string,
  hands: PassHands,
): TemplateResult {
  const shown = draft.photograph ?? kept;
  const take = (event: Event): void => {
    const file = event.target instanceof HTMLInputElement ? event.target.files?.[0] : undefined;
    if (file) hands.photographed(file);
  };
  return html`<div class="line">
    <span>Photograph<small>${busy || 'if it helps: scaled down, kept in the file'}</small></span>
    <div class="picture">
      ${shown ? html`<img src=${pictureSource(shown)} alt=${shown.words} />` : nothing}
      ${
        kept
          ? nothing
          : html`<label class="take"
              >${shown ? 'Another' : 'Take one'}<input
                class="unseen"
                type="file"
                accept="image/*"
                capture="environment"
                @change=${take}
            /></label>`
      }
    </div>
    ${wrong(draft, 'photograph')}
  </div>`;
}
