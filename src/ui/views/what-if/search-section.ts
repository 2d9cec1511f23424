/** Search: the largest or smallest of a result over up to four givens, inside limits. */

import { html, nothing, type TemplateResult } from 'lit';
import type { ConstraintMet, StudyAnswer } from '../../../calculation/index.ts';
import { storedText } from '../../number-locale.ts';
import type { Session } from '../../session.ts';
import { resultText } from '../../value-text.ts';
import { keptQuestions, takeOver } from '../../what-if/acting.ts';
import {
  candidateAt,
  candidateCells,
  cellWords,
  givensOf,
  keyOf,
  placeOfKey,
  workedOf,
} from '../../what-if/candidate-cells.ts';
import { askRow, cellField, choiceField, textField } from '../../what-if/field.ts';
import { searchQuestion } from '../../what-if/questions.ts';
import { boundsOf, firstSearch, type SearchForm, type WhatIf } from '../../what-if/what-if-state.ts';
import { leaveOut, leaveOutOfMany } from './results-fields.ts';
import { foundWords } from './solve-section.ts';

const MOST_GIVENS = 4;

export function searchSection(session: Session, state: WhatIf): TemplateResult {
  const form = (state.search ??= firstSearch(session));
  const set = (change: Partial<SearchForm>): void => {
    state.search = { ...form, ...change };
    session.changed();
  };
  const { asking } = state;
  return html`
    ${choiceField(
      'find the',
      [
        ['largest', 'largest'],
        ['smallest', 'smallest'],
      ],
      form.aim,
      (aim) => set({ aim }),
    )}
    ${cellField('result', workedOf(session), keyOf(form.result), (key) => {
      const result = placeOfKey(key);
      if (result) set({ result });
    })}
    ${form.givens.map((_, at) => givenFields(session, form, at, set))}
    <p>
      <button
        ?disabled=${form.givens.length >= MOST_GIVENS || form.givens.length >= givensOf(session).length}
        @click=${() => set({ givens: withFreeGiven(session, form) })}
      >
        Move another given
      </button>
    </p>
    ${form.constraints.map((_, at) => limitFields(session, form, at, set))}
    <p><button @click=${() => set({ constraints: withLimit(session, form) })}>Keep another limit</button></p>
    ${askRow(asking.search, 'Search', () => void asking.search.ask(searchQuestion(form)), form.givens.length > 0)}
    ${answered(session, state)} ${keptQuestions(session, 'search', form, (study) => set(study))}
  `;
}

function withFreeGiven(session: Session, form: SearchForm): SearchForm['givens'] {
  const taken = new Set(form.givens.map(({ place }) => keyOf(place)));
  const free = givensOf(session).find(({ key }) => !taken.has(key));
  if (!free) return form.givens;
  const [low, high] = boundsOf(session, free);
  return [...form.givens, { place: free.place, low, high }];
}

function withLimit(session: Session, form: SearchForm): SearchForm['constraints'] {
  const [first] = workedOf(session);
  if (!first) return form.constraints;
  const [, limit] = boundsOf(session, first);
  return [...form.constraints, { place: first.place, relation: 'at most', limit }];
}

type Set = (change: Partial<SearchForm>) => void;

function givenFields(session: Session, form: SearchForm, at: number, set: Set): TemplateResult {
  const given = form.givens[at];
  if (!given) return html``;
  const change = (to: Partial<typeof given>): void =>
    set({ givens: form.givens.with(at, { ...given, ...to }) });
  const quantity = (text: string): string => storedText(text, session.notebook.currency);
  return html`<fieldset>
    <legend>moved${form.givens.length > 1 ? ` ${at + 1}` : ''}</legend>
    ${cellField('given', givensOf(session), keyOf(given.place), (key) => {
      const place = placeOfKey(key);
      const [low, high] = boundsOf(session, place && candidateAt(session, place));
      if (place) change({ place, low, high });
    })}
    <div class="pair">
      ${textField('from', given.low, (text) => change({ low: quantity(text) }))}
      ${textField('to', given.high, (text) => change({ high: quantity(text) }))}
    </div>
    ${leaveOutOfMany(form.givens, at, (givens) => set({ givens }))}
  </fieldset>`;
}

function limitFields(session: Session, form: SearchForm, at: number, set: Set): TemplateResult {
  const limit = form.constraints[at];
  if (!limit) return html``;
  const change = (to: Partial<typeof limit>): void =>
    set({ constraints: form.constraints.with(at, { ...limit, ...to }) });
  return html`<fieldset>
    <legend>limit ${at + 1}</legend>
    ${cellField('of', candidateCells(session), keyOf(limit.place), (key) => {
      const place = placeOfKey(key);
      if (place) change({ place });
    })}
    <div class="pair">
      ${choiceField(
        'is',
        [
          ['at most', 'at most'],
          ['at least', 'at least'],
        ],
        limit.relation,
        (relation) => change({ relation }),
      )}
      ${textField('limit', limit.limit, (text) => change({ limit: storedText(text, session.notebook.currency) }))}
    </div>
    ${leaveOut(form.constraints, at, (constraints) => set({ constraints }))}
  </fieldset>`;
}

function answered(session: Session, { asking }: WhatIf): TemplateResult | typeof nothing {
  const { outcome } = asking.search;
  if (outcome?.type !== 'answered' || outcome.answer.type !== 'search') return nothing;
  return searchWords(session, outcome.answer);
}

function searchWords(
  session: Session,
  { outcome, givens, result, constraints }: Extract<StudyAnswer, { readonly type: 'search' }>,
): TemplateResult {
  if (outcome === 'noNumber')
    return html`<p class="answer not">▲ The result has no number anywhere inside the bounds.</p>`;
  const text = resultText(result, session.notebook);
  const found = givens.map(({ cell, content }) => ({ place: cell, content }));
  const bounds = givens.filter(({ at }) => at);
  return html`<div class="answer ${outcome === 'found' ? '' : 'not'}">
    <p>
      ${
        outcome === 'found'
          ? html`<b>${cellWords(session, result.cell)} = ${text}</b> with`
          : html`▲ No point keeps all limits. The one that passes them least gives <b>${text}</b> with`
      }
    </p>
    <ul class="plain">
      ${givens.map((each) => html`<li>${foundWords(session, each)}</li>`)}
    </ul>
    ${
      constraints.length > 0
        ? html`<p>What holds it back:</p>
            <ul class="plain">
              ${constraints.map((each) => html`<li>${limitWords(session, each)}</li>`)}
            </ul>`
        : nothing
    }
    ${
      bounds.length > 0
        ? html`<p>
            At a bound you set:
            ${bounds.map(({ cell, at }) => `${cellWords(session, cell)} (${at === 'low' ? 'lowest' : 'highest'})`).join(', ')}.
          </p>`
        : nothing
    }
    ${takeOver(session, found, 'take the values that were searched')}
  </div>`;
}

function limitWords(
  session: Session,
  { cell, side, limit, value, unit, binding, violation }: ConstraintMet,
): string {
  const text = (number: number): string => resultText({ value: number, unit }, session.notebook);
  const what = `${cellWords(session, cell)}: ${text(value)}, ${side === 'atMost' ? 'at most' : 'at least'} ${text(limit)}`;
  if (violation > 0) return `▲ ${what} — passed by ${text(violation)}`;
  return binding ? `● ${what} — binding` : `○ ${what} — room left`;
}
