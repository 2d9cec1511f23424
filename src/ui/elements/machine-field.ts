/** A value that may be changed at the machine: label, limits, and the value large between its step buttons. */

import { html, nothing, svg, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { contentOf, roleOf } from '../../document/index.ts';
import type { Notebook } from '../../document/index.ts';
import { ONE_UNIT, decimalText, speakUnit } from '../../quantity/index.ts';
import type { EditedText } from '../keypad-press.ts';
import { groupedDigits, limitsText, quantityText } from '../machine-cells.ts';
import type { MachineCell } from '../machine-cells.ts';
import { momentText } from '../machine-change.ts';
import { editedText, inWords, markedDigits } from '../number-locale.ts';
import { limitIn, shownNumber, stepOfCell } from '../stepping.ts';
import type { ShownNumber } from '../stepping.ts';
import { unitText } from '../value-text.ts';
import { symbolOf } from './machine-result.ts';

export interface FieldState {
  readonly notebook: Notebook;
  readonly readOnly: boolean;
  /** The text while it is being typed. */
  readonly edited: EditedText | undefined;
  readonly refusal: string | undefined;
  /** The limit at which the last step ended. */
  readonly stoppedAt: 'low' | 'high' | undefined;
  /** The value as received, where it was another. */
  readonly received: string | undefined;
  /** Milliseconds since 1970. */
  readonly now: number;
  /** The keypad on the screen is in use: the system's own stays away. */
  readonly keypad: boolean;
}

export interface FieldHands {
  begin(): void;
  type(edited: EditedText): void;
  key(event: KeyboardEvent): void;
  leave(event: FocusEvent): void;
  step(direction: 1 | -1): void;
  choose(text: string): void;
}

const SIGNS = { '-1': svg`<path d="M3 15h24" />`, '1': svg`<path d="M3 15h24M15 3v24" />` };
const DIGITS = 15;
const number = (shown: ShownNumber): number => Number(decimalText(shown.exact, DIGITS));

export function machineField(one: MachineCell, state: FieldState, hands: FieldHands): TemplateResult {
  const { cell } = one;
  const { currency } = state.notebook;
  const shown = shownNumber(cell, currency);
  const passed = (one.result?.cautions ?? []).some(({ type }) => type === 'breach');
  const steps = shown !== undefined && !cell.choices;
  const look = `value ${steps ? '' : 'whole'} ${passed ? 'passed' : ''} ${roleOf(cell) === 'measured' ? 'measured' : ''}`;
  return html`<div class="field" data-cell=${one.address} role="group" aria-label=${one.label}>
    <div class="title">
      <div class="name">${one.label}${symbolOf(one)}</div>
      <div class="about">${about(one, state)}</div>
    </div>
    ${steps ? stepButton(one, shown, -1, state, hands) : nothing}
    ${
      cell.choices
        ? html`<div class=${look}>${choice(one, state, hands)}</div>`
        : html`<label class=${look}>${input(one, shown, state, hands)}</label>`
    }
    ${steps ? stepButton(one, shown, 1, state, hands) : nothing} ${message(one, state)}
  </div>`;
}

function about({ cell }: MachineCell, { notebook, received }: FieldState): string {
  const was = received === undefined ? undefined : quantityText(received, notebook.currency);
  const parts = [
    limitsText(cell, notebook.currency),
    ...(was ? [`received ${was.number} ${was.unit}`.trimEnd()] : []),
  ];
  return parts.filter((part) => part !== '').join(' · ');
}

/** What is wrong with the value, or where the steps end; and who has set it here. */
function message(one: MachineCell, state: FieldState): TemplateResult {
  const { cell, result } = one;
  const { refusal, stoppedAt } = state;
  const breach = (result?.cautions ?? []).find(({ type }) => type === 'breach')?.text;
  const said = result?.error?.message ?? breach;
  const wrong = refusal ?? (said === undefined ? undefined : inWords(said));
  const limit = stoppedAt && cell.limits?.[`${stoppedAt}Text`];
  const end = stoppedAt === 'high' ? 'highest value' : 'lowest value';
  const words = wrong ?? (stoppedAt ? `${end}${limit ? `: ${limit}` : ''}` : '');
  return html`<div class="message ${wrong === undefined ? 'stopped' : ''}">
    ${words === '' ? nothing : html`<span>▲ ${words}</span>`}${setHere(one, state)}
  </div>`;
}

/** "✎ JK 14:20, desk 260 m/min". */
function setHere({ cell }: MachineCell, { notebook, now }: FieldState): TemplateResult | typeof nothing {
  if (!cell.changed) return nothing;
  const { by, at, from, reason } = cell.changed;
  const was = quantityText(from, notebook.currency);
  return html`<span class="set"
    >✎ ${by} ${momentText(at, now)} · desk ${was.number}
    ${was.unit}${reason === undefined ? '' : ` · ${reason}`}</span
  >`;
}

function stepButton(
  { cell, label }: MachineCell,
  shown: ShownNumber,
  direction: 1 | -1,
  { notebook, readOnly }: FieldState,
  hands: FieldHands,
): TemplateResult {
  const step = stepOfCell(cell, shown, notebook.currency);
  const limit = limitIn(cell.limits?.[direction > 0 ? 'high' : 'low'], shown.unit, notebook.currency);
  const atEnd =
    limit !== undefined &&
    (shown.exact.numerator * limit.denominator - limit.numerator * shown.exact.denominator) *
      BigInt(direction) >=
      0n;
  const size = markedDigits(decimalText(step, 6));
  const unit = unitText(shown.unit === ONE_UNIT ? '' : shown.unit.symbol);
  return html`<button
    type="button"
    class="step"
    tabindex="-1"
    aria-label="${label}: ${size} ${unit} ${direction > 0 ? 'more' : 'less'}"
    aria-disabled=${atEnd || readOnly ? 'true' : 'false'}
    @click=${() => hands.step(direction)}
  >
    <svg viewBox="0 0 30 30" aria-hidden="true">${SIGNS[direction]}</svg><small>${size}</small>
  </button>`;
}

function input(
  { cell, label, address }: MachineCell,
  shown: ShownNumber | undefined,
  state: FieldState,
  hands: FieldHands,
): TemplateResult {
  const { notebook, edited, keypad } = state;
  const content = contentOf(cell, notebook.currency);
  const isText = !shown && content.type !== 'empty';
  const text =
    edited?.text ??
    (shown ? groupedDigits(shown.text) : editedText(cell.content, notebook.currency).replace(/^'/, ''));
  const unit = shown && shown.unit !== ONE_UNIT ? shown.unit : undefined;
  const typesUnit = edited !== undefined && /[^\d\s.,/eE+-]/.test(edited.text);
  const now = shown && number(shown);
  const bound = (side: 'low' | 'high'): string | typeof nothing => {
    const limit = shown && limitIn(cell.limits?.[side], shown.unit, notebook.currency);
    return limit ? decimalText(limit, DIGITS) : nothing;
  };
  const read = (event: Event): EditedText | undefined => {
    const target = event.target;
    if (!(target instanceof HTMLInputElement)) return undefined;
    const end = target.value.length;
    return { text: target.value, from: target.selectionStart ?? end, to: target.selectionEnd ?? end };
  };
  return html`<input
      class=${isText ? 'text' : ''}
      data-field=${address}
      role=${shown ? 'spinbutton' : nothing}
      aria-label="${label}, ${address}"
      aria-valuenow=${now ?? nothing}
      aria-valuemin=${bound('low')}
      aria-valuemax=${bound('high')}
      aria-valuetext=${shown ? `${markedDigits(shown.text)} ${unit ? speakUnit(unit, now ?? 2) : ''}`.trim() : nothing}
      aria-invalid=${state.refusal ? 'true' : 'false'}
      inputmode=${keypad && !isText ? 'none' : 'text'}
      autocomplete="off"
      autocapitalize="off"
      spellcheck="false"
      enterkeyhint="done"
      ?readonly=${state.readOnly}
      .value=${live(text)}
      @focus=${() => hands.begin()}
      @input=${(event: Event) => {
        const typed = read(event);
        if (typed) hands.type(typed);
      }}
      @keydown=${(event: KeyboardEvent) => hands.key(event)}
      @focusout=${(event: FocusEvent) => hands.leave(event)}
    />${unit && !typesUnit ? html`<span class="unit">${unitText(unit.symbol)}</span>` : nothing}`;
}

function choice(
  { cell, label }: MachineCell,
  { readOnly, notebook }: FieldState,
  hands: FieldHands,
): TemplateResult {
  return html`<select
    aria-label=${label}
    ?disabled=${readOnly}
    @change=${(event: Event) => event.target instanceof HTMLSelectElement && hands.choose(event.target.value)}
  >
    ${(cell.choices ?? []).map(
      (text) =>
        html`<option value=${text} .selected=${text === cell.content}>
          ${editedText(text, notebook.currency)}
        </option>`,
    )}
  </select>`;
}
