/** Sweep: one or two givens run through a range, any results beside them; the table becomes a worksheet. */

import { html, nothing, type TemplateResult } from 'lit';
import type { SweptRange } from '../../../document/index.ts';
import { storedText } from '../../number-locale.ts';
import type { Session } from '../../session.ts';
import { resultText } from '../../value-text.ts';
import { askTitle, keptQuestions } from '../../what-if/acting.ts';
import { candidateAt, cellWords, givensOf, keyOf, placeOfKey } from '../../what-if/candidate-cells.ts';
import { askRow, cellField, choiceField, textField } from '../../what-if/field.ts';
import { sweepQuestion } from '../../what-if/questions.ts';
import { sweepWorksheet, type Swept } from '../../what-if/sweep-worksheet.ts';
import { boundsOf, firstSweep, rangeOf, type SweepForm, type WhatIf } from '../../what-if/what-if-state.ts';
import { leaveOutOfMany, resultsFields } from './results-fields.ts';

const ROWS_SHOWN = 60;
type Set = (change: Partial<SweepForm>) => void;

export function sweepSection(session: Session, state: WhatIf): TemplateResult {
  const form = (state.sweep ??= firstSweep(session));
  const set: Set = (change) => {
    state.sweep = { ...form, ...change };
    session.changed();
  };
  const { asking } = state;
  return html`
    ${form.givens.map((_, at) => rangeFields(session, form, at, set))}
    ${
      form.givens.length < 2
        ? html`<p>
            <button @click=${() => set({ givens: withAnother(session, form) })}>Run a second given</button>
          </p>`
        : nothing
    }
    ${resultsFields(session, form.results, (results) => set({ results }))}
    ${askRow(
      asking.sweep,
      'Sweep',
      () => void asking.sweep.ask(sweepQuestion(form)),
      form.givens.length > 0 && form.results.length > 0,
    )}
    ${answered(session, state)} ${keptQuestions(session, 'sweep', form, (study) => set(study))}
  `;
}

function withAnother(session: Session, form: SweepForm): SweepForm['givens'] {
  const taken = new Set(form.givens.map(({ place }) => keyOf(place)));
  const free = givensOf(session).find(({ key }) => !taken.has(key));
  return free ? [...form.givens, { place: free.place, range: { ...rangeOf(session, free) } }] : form.givens;
}

function rangeFields(session: Session, form: SweepForm, at: number, set: Set): TemplateResult {
  const given = form.givens[at];
  if (!given) return html``;
  const change = (to: Partial<typeof given>): void =>
    set({ givens: form.givens.with(at, { ...given, ...to }) });
  const quantity = (text: string): string => storedText(text, session.notebook.currency);
  const { range } = given;
  return html`<fieldset>
    <legend>${form.givens.length > 1 && at === 0 ? 'given, the slower one' : 'given'}</legend>
    ${cellField('runs', givensOf(session), keyOf(given.place), (key) => {
      const place = placeOfKey(key);
      if (place) change({ place, range: rangeOf(session, candidateAt(session, place)) });
    })}
    ${choiceField<SweptRange['type']>(
      'spacing',
      [
        ['linear', 'even steps'],
        ['logarithmic', 'even ratios'],
        ['list', 'a list of values'],
      ],
      range.type,
      (type) => {
        const [from, to] = boundsOf(session, candidateAt(session, given.place));
        if (type === 'list') change({ range: { type, values: [from, to] } });
        else change({ range: { type, from, to, count: 'count' in range ? range.count : 11 } });
      },
    )}
    ${
      range.type === 'list'
        ? textField('values', range.values.join('; '), (text) =>
            change({
              range: {
                type: 'list',
                values: text
                  .split(';')
                  .map((each) => quantity(each.trim()))
                  .filter(Boolean),
              },
            }),
          )
        : html`<div class="pair">
              ${textField('from', range.from, (text) => change({ range: { ...range, from: quantity(text) } }))}
              ${textField('to', range.to, (text) => change({ range: { ...range, to: quantity(text) } }))}
            </div>
            ${textField('points', String(range.count), (text) => {
              const count = Math.min(1000, Math.max(2, Math.round(Number(text)) || 2));
              change({ range: { ...range, count } });
            })}`
    }
    ${leaveOutOfMany(form.givens, at, (givens) => set({ givens }))}
  </fieldset>`;
}

function answered(session: Session, { asking }: WhatIf): TemplateResult | typeof nothing {
  const { outcome } = asking.sweep;
  if (outcome?.type !== 'answered' || outcome.answer.type !== 'sweep') return nothing;
  const swept = outcome.answer;
  const words = swept.columns.map(({ cell }) => cellWords(session, cell));
  return html`<div class="scroll" tabindex="0" role="region" aria-label="table of the sweep">
      ${table(session, swept, words)}
    </div>
    <p>
      <button
        ?disabled=${session.readOnly}
        @click=${(event: Event) => event.target && intoWorksheet(session, event.target, swept, words)}
      >
        Put into a new worksheet, with a plot
      </button>
    </p>`;
}

function table(session: Session, { columns, rows }: Swept, words: readonly string[]): TemplateResult {
  const errorAt = new Map(
    columns.flatMap(({ errors }, at) =>
      errors.map(({ row, message }): [string, string] => [`${at} ${row}`, message]),
    ),
  );
  const indices = Array.from({ length: Math.min(rows, ROWS_SHOWN) }, (_, row) => row);
  return html`<table>
    <caption>
      ${rows} points${rows > ROWS_SHOWN ? `, the first ${ROWS_SHOWN} shown` : ''}
    </caption>
    <thead>
      <tr>
        ${words.map((text) => html`<th scope="col">${text}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${indices.map(
        (row) =>
          html`<tr>
            ${columns.map(({ values, unit, kind }, at) => {
              const error = errorAt.get(`${at} ${row}`);
              return error === undefined
                ? html`<td>${resultText({ value: values[row] ?? null, unit, kind }, session.notebook)}</td>`
                : html`<td class="breach" title=${error}>▲ no number</td>`;
            })}
          </tr>`,
      )}
    </tbody>
  </table>`;
}

function intoWorksheet(session: Session, from: EventTarget, swept: Swept, words: readonly string[]): void {
  const proposal = `Sweep ${session.notebook.worksheets.length}`;
  askTitle(from, 'Title of the worksheet', proposal, (title) => {
    if (!session.run(sweepWorksheet(session.notebook, swept, words, title))) return;
    const made = session.notebook.worksheets.at(-1);
    if (made) session.select(0, 0, false, made.id);
  });
}
