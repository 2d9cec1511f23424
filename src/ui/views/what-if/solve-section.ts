/** Solve: a result, the value wanted, the given that is moved between bounds. */

import { html, nothing, type TemplateResult } from 'lit';
import type { FoundGiven, SolveAnswer, StudyAnswer } from '../../../calculation/index.ts';
import { storedText } from '../../number-locale.ts';
import type { Session } from '../../session.ts';
import { resultText } from '../../value-text.ts';
import { keptQuestions, takeOver } from '../../what-if/acting.ts';
import {
  candidateAt,
  cellWords,
  givensOf,
  keyOf,
  placeOfKey,
  workedOf,
} from '../../what-if/candidate-cells.ts';
import { askRow, cellField, textField, valueOf } from '../../what-if/field.ts';
import { solveQuestion } from '../../what-if/questions.ts';
import { boundsOf, firstSolve, type SolveForm, type WhatIf } from '../../what-if/what-if-state.ts';

export function solveSection(session: Session, state: WhatIf): TemplateResult {
  const form = (state.solve ??= firstSolve(session));
  const set = (change: Partial<SolveForm>): void => {
    state.solve = { ...form, ...change };
    session.changed();
  };
  const quantity = (text: string): string => storedText(text, session.notebook.currency);
  const given = candidateAt(session, form.given);
  const { asking } = state;
  return html`
    ${cellField('result', workedOf(session), keyOf(form.result), (key) => {
      const result = placeOfKey(key);
      if (result) set({ result, wanted: valueOf(session, candidateAt(session, result)) });
    })}
    ${textField('shall be', form.wanted, (text) => set({ wanted: quantity(text) }), '12 kW')}
    ${cellField('by moving', givensOf(session), keyOf(form.given), (key) => {
      const place = placeOfKey(key);
      const [low, high] = boundsOf(session, place && candidateAt(session, place));
      if (place) set({ given: place, low, high });
    })}
    <div class="pair">
      ${textField('from', form.low, (text) => set({ low: quantity(text) }))}
      ${textField('to', form.high, (text) => set({ high: quantity(text) }))}
    </div>
    ${given ? html`<p class="second">now ${valueOf(session, given)}</p>` : nothing}
    ${askRow(asking.solve, 'Solve', () => void asking.solve.ask(solveQuestion(form)), form.wanted !== '')}
    ${answered(session, state)} ${keptQuestions(session, 'solve', form, (study) => set(study))}
  `;
}

function answered(session: Session, { asking }: WhatIf): TemplateResult | typeof nothing {
  const { outcome } = asking.solve;
  if (outcome?.type !== 'answered' || outcome.answer.type !== 'solve') return nothing;
  return solveWords(session, outcome.answer);
}

type Solved = Extract<StudyAnswer, { readonly type: 'solve' }>;

/** A given as found: "B3 z · teeth = 0.183 mm". */
export const foundWords = (session: Session, { cell, value, unit }: FoundGiven): string =>
  `${cellWords(session, cell)} = ${resultText({ value, unit }, session.notebook)}`;

function solveWords(session: Session, answer: Solved): TemplateResult {
  const { outcome, answers, nearest, result, points, failures, failureWords } = answer;
  const text = (value: number): string => resultText({ value, unit: result.unit }, session.notebook);
  const line = (found: SolveAnswer, looks: string): TemplateResult =>
    html`<div class=${looks}>
      <p>
        <b>${foundWords(session, found.given)}</b> gives
        ${text(found.result)}${found.touching ? ' (it only touches the wanted value there)' : ''}
      </p>
      ${takeOver(session, [{ place: found.given.cell, content: found.given.content }], 'take the solved value')}
    </div>`;
  const skipped =
    failures > 0
      ? html`<p class="second">
          ${failures} of ${points} points have no number${failureWords ? `: ${failureWords}` : ''}.
        </p>`
      : nothing;
  if (outcome === 'notReached')
    return html`<p>
        ▲ ${text(answer.wanted)} can not be reached exactly inside the
        bounds${nearest ? '; nearest is:' : '.'}
      </p>
      ${nearest ? line(nearest, 'answer not') : nothing} ${skipped}`;
  return html`${
    outcome === 'several'
      ? html`<p>Several answers; more may lie between the ${points} points that were looked at.</p>`
      : html`<p>Reached.</p>`
  }
  ${answers.map((each) => line(each, 'answer'))} ${skipped}`;
}
