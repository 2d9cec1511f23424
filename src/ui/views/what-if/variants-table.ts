/** All variants side by side: rows are watched givens and results, columns the base and the variants. */

import { LitElement, css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { StudyAnswer, VariantRow, VariantValue } from '../../../calculation/index.ts';
import {
  cellAt,
  findWorksheet,
  freshPartId,
  ownValues,
  partsOf,
  putPart,
  putParts,
  removeParts,
  setVariantValue,
  variantsOf,
} from '../../../document/index.ts';
import type { Cell, CellPlace, Notebook, Variant, WatchedCell } from '../../../document/index.ts';
import { editedText, typing } from '../../number-locale.ts';
import type { Session } from '../../session.ts';
import { wholeSelectStyles } from '../../elements/whole-select.ts';
import { shared } from '../../shared.styles.ts';
import { resultText } from '../../value-text.ts';
import { Watching } from '../../watching.ts';
import { candidateCells, cellWords, keyOf, type Candidate } from '../../what-if/candidate-cells.ts';
import { differenceUnit } from '../../what-if/difference-unit.ts';
import { askRow, cellField } from '../../what-if/field.ts';
import { variantsQuestion } from '../../what-if/questions.ts';
import { whatIfOf } from '../../what-if/what-if-state.ts';
import { bestOf } from '../../what-if/best-of.ts';
import { whatIfStyles } from './what-if.styles.ts';

type Compared = Extract<StudyAnswer, { readonly type: 'variants' }>;

export class VariantsTable extends LitElement {
  static override properties = { session: { attribute: false }, adding: { state: true } };
  declare session: Session | undefined;
  /** Key of the cell that would be added as a row. */
  declare adding: string;
  #asked: Notebook | undefined;

  static override styles = [
    shared,
    whatIfStyles,
    wholeSelectStyles,
    css`
      .add {
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        gap: 10px;
        margin-block-start: 14px;
      }
      .add .field {
        flex: 1 1 260px;
        margin: 0;
      }
      select.best {
        min-inline-size: 118px;
        min-block-size: 28px;
        font-size: 13px;
      }
    `,
  ];

  constructor() {
    super();
    this.adding = '';
    new Watching(this);
  }

  override willUpdate(_: PropertyValues): void {
    const { session } = this;
    if (!session || this.#asked === session.notebook) return;
    this.#asked = session.notebook;
    if (partsOf(session.notebook, 'watched').length > 0)
      void whatIfOf(session).asking.variants.ask(variantsQuestion(session.notebook));
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const { asking } = whatIfOf(session);
    const { outcome } = asking.variants;
    const watched = partsOf(session.notebook, 'watched');
    const shown = new Set(watched.map(({ place }) => keyOf(place)));
    const free = candidateCells(session).filter(({ key }) => !shown.has(key));
    const adding = free.some(({ key }) => key === this.adding) ? this.adding : (free[0]?.key ?? '');
    return html`
      ${
        watched.length === 0
          ? html`<p>Choose the given values and results to compare; each becomes a row.</p>`
          : outcome?.type === 'answered' && outcome.answer.type === 'variants'
            ? this.#table(session, outcome.answer, watched)
            : html`<p class="second" role="status">working it out…</p>`
      }
      ${
        outcome?.type === 'refused'
          ? askRow(
              asking.variants,
              'Ask again',
              () => void asking.variants.ask(variantsQuestion(session.notebook)),
            )
          : nothing
      }
      <div class="add">
        ${cellField('another row', free, adding, (key) => (this.adding = key))}
        <button
          ?disabled=${session.readOnly || adding === ''}
          @click=${() =>
            add(
              session,
              free.filter(({ key }) => key === adding),
            )}
        >
          Add the row
        </button>
        <button
          ?disabled=${session.readOnly}
          @click=${() => add(session, free.filter(({ key, given }) => !given || differs(session, key)).slice(0, 12))}
        >
          Add what differs, and results
        </button>
      </div>
    `;
  }

  #table(session: Session, answer: Compared, watched: readonly WatchedCell[]): TemplateResult {
    const variants = variantsOf(session.notebook);
    return html`<div class="scroll" tabindex="0" role="region" aria-label="variants side by side">
      <table>
        <caption>
          Difference and share against the base. ▲ passes a limit of its cell; ★ is the best of its row.
        </caption>
        <thead>
          <tr>
            <th scope="col">cell</th>
            <th scope="col">better is</th>
            <th scope="col">Base</th>
            ${variants.map(({ title }) => html`<th scope="col">${title}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${watched.map((row, at) => this.#row(session, row, answer.rows[at], variants))}
        </tbody>
      </table>
    </div>`;
  }

  #row(
    session: Session,
    row: WatchedCell,
    answer: VariantRow | undefined,
    variants: readonly Variant[],
  ): TemplateResult {
    const { place, best } = row;
    const winners = bestOf(answer?.values ?? [], best);
    const worked = cellOf(session, place)?.content.startsWith('=');
    const values = answer && keyOf(answer.cell) === keyOf(place) ? answer.values : [];
    return html`<tr>
      <th scope="row">
        ${cellWords(session, place)}
        <button
          class="link"
          ?disabled=${session.readOnly}
          @click=${() => session.run(removeParts(session.notebook, { part: 'watched', ids: [row.id], description: 'take a row away' }))}
        >
          take away
        </button>
      </th>
      <td class="words">
        <select
          class="best"
          aria-label="which direction is better for ${cellWords(session, place)}"
          ?disabled=${session.readOnly}
          @change=${(event: Event) => setBest(session, row, (event.target as HTMLSelectElement).selectedIndex)}
        >
          <option ?selected=${best === undefined}>neither</option>
          <option ?selected=${best === 'largest'}>the largest</option>
          <option ?selected=${best === 'smallest'}>the smallest</option>
        </select>
      </td>
      ${[undefined, ...variants].map((variant, at) =>
        variant && !worked
          ? givenCell(session, variant, place, values[at], winners.has(at))
          : valueCell(session, place, values[at], winners.has(at)),
      )}
    </tr>`;
  }
}

function cellOf(session: Session, { worksheet, row, column }: CellPlace): Cell | undefined {
  const sheet = findWorksheet(session.notebook, worksheet);
  return sheet && cellAt(sheet, row, column);
}

const differs = (session: Session, key: string): boolean =>
  variantsOf(session.notebook).some(({ values }) => values.some(({ place }) => keyOf(place) === key));

function add(session: Session, rows: readonly Candidate[]): void {
  const fresh = Number(freshPartId(session.notebook, 'watched').slice(1));
  const records = rows.map(({ place }, at) => ({ id: `w${fresh + at}`, place }));
  session.run(putParts(session.notebook, { part: 'watched', records, description: 'add rows to compare' }));
}

function setBest(session: Session, { best: _before, ...row }: WatchedCell, at: number): void {
  const best = ([undefined, 'largest', 'smallest'] as const)[at];
  const record = best ? { ...row, best } : row;
  session.run(putPart(session.notebook, { part: 'watched', record, description: 'say which is better' }));
}

function valueCell(
  session: Session,
  place: CellPlace,
  value: VariantValue | undefined,
  best: boolean,
): TemplateResult {
  return html`<td class="${value && value.breaches.length > 0 ? 'breach' : ''} ${best ? 'best' : ''}">
    ${value ? valueWords(session, place, value) : '…'} ${value ? marks(session, value, best) : nothing}
  </td>`;
}

function givenCell(
  session: Session,
  variant: Variant,
  place: CellPlace,
  value: VariantValue | undefined,
  best: boolean,
): TemplateResult {
  const { notebook } = session;
  const own = ownValues(notebook, variant).find((each) => keyOf(each.place) === keyOf(place));
  return html`<td class="${own ? 'own' : ''} ${best ? 'best' : ''}">
    <input
      aria-label="${cellWords(session, place)} in ${variant.title}; empty is the base's"
      ?disabled=${session.readOnly}
      placeholder=${value ? valueWords(session, place, value) : ''}
      .value=${own ? editedText(own.content, notebook.currency) : ''}
      @change=${(event: Event) =>
        session.run(
          setVariantValue(session.notebook, {
            id: variant.id,
            place,
            typed: (event.target as HTMLInputElement).value.trim(),
            ...typing(),
          }),
        )}
    />
    ${value ? marks(session, value, best) : nothing}
  </td>`;
}

/** With the digits of its cell. */
const valueWords = (session: Session, place: CellPlace, value: VariantValue): string =>
  resultText(value, session.notebook, cellOf(session, place)?.format);

function marks(session: Session, value: VariantValue, best: boolean): TemplateResult {
  const { difference, relative, unit, breaches } = value;
  const sign = (number: number): string => (number > 0 ? '+' : '');
  const text = (number: number): string =>
    `${sign(number)}${resultText({ value: number, unit: differenceUnit(unit) }, session.notebook, { type: 'significant', digits: 3 })}`;
  return html`${
    difference
      ? html`<span class="change"
          >${text(difference)}${relative === undefined ? '' : `, ${sign(relative)}${(relative * 100).toFixed(1).replace('-', '−')} %`}</span
        >`
      : nothing
  }
  ${breaches.map((words) => html`<span class="mark">▲ ${words}</span>`)}
  ${best ? html`<span class="mark">★ best</span>` : nothing}`;
}

customElements.define('variants-table', VariantsTable);
