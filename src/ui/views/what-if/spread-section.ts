/** Spread: how the givens spread, and what that does to the results (JCGM 101, with JCGM 100 beside it). */

import { html, nothing, type TemplateResult } from 'lit';
import { freshPartId, partsOf, putPart, removeParts } from '../../../document/index.ts';
import type { Distribution, Spread } from '../../../document/index.ts';
import { blockText } from '../../../document/index.ts';
import { cellLink } from '../../cell-links.ts';
import { storedText } from '../../number-locale.ts';
import type { Session } from '../../session.ts';
import { keptQuestions } from '../../what-if/acting.ts';
import { candidateAt, cellWords, givensOf, keyOf, proposed } from '../../what-if/candidate-cells.ts';
import { askRow, choiceField, textField, valueOf } from '../../what-if/field.ts';
import { spreadQuestion } from '../../what-if/questions.ts';
import { firstDistribution, firstSpread, type SpreadForm, type WhatIf } from '../../what-if/what-if-state.ts';
import { resultsFields } from './results-fields.ts';
import { spreadAnswer } from './spread-answer.ts';

const DISTRIBUTIONS: readonly (readonly [Distribution['type'], string])[] = [
  ['uniform', 'tolerance ±'],
  ['triangular', 'tolerance ±, the middle likelier'],
  ['normal', 'standard uncertainty'],
  ['sample', 'measured values (the selection)'],
];

export function spreadSection(session: Session, state: WhatIf): TemplateResult {
  const form = (state.spread ??= firstSpread(session));
  const set = (change: Partial<SpreadForm>): void => {
    state.spread = { ...form, ...change };
    session.changed();
  };
  const { asking } = state;
  const spreads = partsOf(session.notebook, 'spreads');
  const taken = new Set(spreads.map(({ place }) => keyOf(place)));
  const free = givensOf(session).filter(({ key }) => !taken.has(key));
  const next = proposed(session, free);
  const { outcome } = asking.spread;
  return html`
    ${spreads.map((spread) => spreadFields(session, spread))}
    <p>
      <button
        ?disabled=${session.readOnly || !next}
        @click=${() => next && put(session, { id: freshPartId(session.notebook, 'spreads'), place: next.place, distribution: firstDistribution(session, next) })}
      >
        Let ${next ? next.words : 'another given'} spread
      </button>
    </p>
    ${resultsFields(session, form.results, (results) => set({ results }))}
    <div class="pair">
      ${textField('samples', String(form.samples), (text) => set({ samples: whole(text, 1000, 1_000_000, 10_000) }))}
      ${textField('seed', String(form.seed), (text) => set({ seed: whole(text, 0, 0xffffffff, 1) }))}
    </div>
    ${askRow(
      asking.spread,
      'Work the spread out',
      () => void asking.spread.ask(spreadQuestion(session.notebook, form)),
      spreads.length > 0 && form.results.length > 0,
    )}
    ${
      outcome?.type === 'answered' && outcome.answer.type === 'spread'
        ? spreadAnswer(session, outcome.answer)
        : nothing
    }
    ${keptQuestions(session, 'spread', form, (study) => set(study))}
  `;
}

function whole(text: string, least: number, most: number, otherwise: number): number {
  const number = Math.round(Number(text.replaceAll(/\s/g, '')));
  return Number.isFinite(number) && text !== '' ? Math.min(most, Math.max(least, number)) : otherwise;
}

const put = (session: Session, record: Spread): boolean =>
  session.run(
    putPart(session.notebook, {
      part: 'spreads',
      record,
      description: `spread of ${cellWords(session, record.place)}`,
    }),
  );

function spreadFields(session: Session, spread: Spread): TemplateResult {
  const { place, distribution } = spread;
  const candidate = candidateAt(session, place);
  const quantity = (text: string): string => storedText(text, session.notebook.currency);
  const change = (to: Distribution): boolean => put(session, { ...spread, distribution: to });
  return html`<fieldset>
    <legend>${cellLink(session, place)} ${candidate ? valueOf(session, candidate) : 'no number'}</legend>
    ${choiceField('spreads by', DISTRIBUTIONS, distribution.type, (type) => {
      const to = converted(session, spread, type);
      if (to) change(to);
    })}
    ${
      distribution.type === 'sample'
        ? html`<p class="second">
            ${blockText(distribution.from.block)}, each value as likely as the others
          </p>`
        : distribution.type === 'normal'
          ? html`${textField('u', distribution.uncertainty, (text) => change({ ...distribution, uncertainty: quantity(text) }))}
            ${textField(
              'degrees of freedom',
              distribution.degrees === undefined ? '' : String(distribution.degrees),
              (text) =>
                change({
                  type: 'normal',
                  uncertainty: distribution.uncertainty,
                  ...(Number(text) >= 1 && { degrees: Number(text) }),
                }),
              'unlimited',
            )}`
          : textField('±', distribution.halfWidth, (text) =>
              change({ ...distribution, halfWidth: quantity(text) }),
            )
    }
    <button
      class="link"
      ?disabled=${session.readOnly}
      @click=${() => session.run(removeParts(session.notebook, { part: 'spreads', ids: [spread.id], description: 'a given stands still' }))}
    >
      let it stand still
    </button>
  </fieldset>`;
}

/** The same width told another way; measured values are those that are selected. */
function converted(session: Session, spread: Spread, type: Distribution['type']): Distribution | undefined {
  const { distribution } = spread;
  const candidate = candidateAt(session, spread.place);
  const first = candidate && firstDistribution(session, candidate);
  const width =
    'halfWidth' in distribution
      ? distribution.halfWidth
      : 'uncertainty' in distribution
        ? distribution.uncertainty
        : first?.type === 'uniform'
          ? first.halfWidth
          : '1';
  if (type === 'normal') return { type, uncertainty: width };
  if (type !== 'sample') return { type, halfWidth: width };
  const { worksheet, row, column, toRow, toColumn } = session.selection;
  const block = {
    row: Math.min(row, toRow),
    column: Math.min(column, toColumn),
    rows: Math.abs(toRow - row) + 1,
    columns: Math.abs(toColumn - column) + 1,
  };
  if (block.rows * block.columns > 1) return { type, from: { worksheet, block } };
  session.say('select the measured values on the page first, then choose "measured values"', true);
  return undefined;
}
