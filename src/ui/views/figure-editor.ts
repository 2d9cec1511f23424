/** The fields of one figure: title, cells of a sketch or ranges of a plot, with the figure above as it would be. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { putPart } from '../../document/index.ts';
import type { Figure } from '../../document/index.ts';
import { blockText } from '../../document/index.ts';
import {
  draftOf,
  EMPTY_SERIES,
  figureOf,
  isDraftRefused,
  type FigureDraft,
  type SeriesDraft,
} from '../figures/figure-draft.ts';
import '../figures/notebook-figure.ts';
import { sketchOf } from '../figures/sketches.ts';
import { symbolParts } from '../faces.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';

const MARKS = [
  ['line', 'line'],
  ['points', 'points'],
  ['bars', 'bars'],
  ['band', 'band'],
] as const;

type Of<Type extends FigureDraft['type']> = Extract<FigureDraft, { readonly type: Type }>;

const textOf = (event: Event): string =>
  event.target instanceof HTMLInputElement || event.target instanceof HTMLSelectElement
    ? event.target.value
    : '';

export class FigureEditor extends LitElement {
  static override properties = {
    session: { attribute: false },
    figure: { attribute: false },
    fresh: { type: Boolean },
    draft: { state: true },
  };
  declare session: Session | undefined;
  declare figure: Figure | undefined;
  /** Not yet in the notebook. */
  declare fresh: boolean;
  declare draft: FigureDraft | undefined;
  #last: Figure | undefined;

  static override styles = [
    shared,
    css`
      :host {
        display: block;
        margin-block: 8px;
        padding: 10px 12px 12px;
        border: 1px solid var(--ruling-strong);
        border-inline-start: 4px solid var(--accent);
        background: var(--paper-edge);
      }
      label {
        display: block;
        margin-block-start: 8px;
        font-size: 13px;
      }
      label input,
      label select {
        display: block;
        inline-size: 100%;
        font-size: 15px;
      }
      .cells {
        display: grid;
        grid-template-columns: 1fr auto;
        align-items: end;
        gap: 0 8px;
      }
      fieldset {
        margin: 12px 0 0;
        padding: 0 10px 10px;
        border: 1px solid var(--ruling-strong);
        border-radius: 3px;
      }
      legend {
        padding: 0 6px;
        font-size: 13px;
        font-weight: 600;
      }
      .two {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: 0 10px;
      }
      .tick {
        display: flex;
        align-items: center;
        gap: 8px;
      }
      .tick input {
        display: inline;
        inline-size: auto;
        min-block-size: 24px;
      }
      .answers {
        display: flex;
        flex-wrap: wrap;
        gap: 10px;
        margin-block-start: 14px;
      }
      button.link {
        min-block-size: 26px;
      }
      @media (pointer: coarse) {
        button.link {
          min-block-size: 44px;
        }
      }
      i {
        font-size: 15px;
      }
    `,
  ];

  constructor() {
    super();
    this.fresh = false;
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    const { session, figure } = this;
    if (!changed.has('figure') || !session || !figure) return;
    this.draft = draftOf(session.notebook, session.worksheet.id, figure);
    this.#last = figure;
  }

  /** Puts the cursor into the first field. */
  start(): void {
    this.renderRoot.querySelector<HTMLElement>('input, select')?.focus();
  }

  override render(): TemplateResult | typeof nothing {
    const { session, draft } = this;
    if (!session || !draft) return nothing;
    const made = figureOf(session.notebook, session.worksheet.id, draft);
    const refused = isDraftRefused(made);
    if (!refused) this.#last = made;
    return html`
      ${this.#last ? html`<notebook-figure plain .session=${session} .figure=${this.#last}></notebook-figure>` : nothing}
      ${refused ? html`<div class="error" role="alert">${made.refused}</div>` : nothing}
      <label
        >Title
        <input
          .value=${draft.title}
          maxlength="100"
          @change=${(event: Event) => {
            this.draft = { ...draft, title: textOf(event) };
          }}
        />
      </label>
      ${draft.type === 'sketch' ? this.#sketch(session, draft) : this.#plot(session, draft)}
      <div class="answers">
        <button
          class="primary"
          ?disabled=${refused || session.readOnly}
          @click=${() => {
            if (!refused) this.#keep(session, made);
          }}
        >
          ${this.fresh ? 'Add the figure' : 'Keep the changes'}
        </button>
        <button @click=${() => this.#done(undefined)}>Discard</button>
      </div>
    `;
  }

  /** A field for cells, and a button that puts what is selected on the page into it. */
  #cells(
    session: Session,
    words: unknown,
    value: string,
    set: (text: string) => void,
    single: boolean,
    hint = '',
  ): TemplateResult {
    return html`<div class="cells">
      <label
        >${words}
        <input
          class="mono"
          .value=${value}
          placeholder=${hint}
          autocapitalize="off"
          spellcheck="false"
          @change=${(event: Event) => set(textOf(event).trim())}
        />
      </label>
      <button title="take the selection on the page" @click=${() => set(selectionText(session, single))}>
        selected
      </button>
    </div>`;
  }

  #sketch(session: Session, draft: Of<'sketch'>): TemplateResult {
    const sketch = sketchOf(draft.sketch);
    return html`
      <p class="second">${sketch?.purpose}</p>
      ${(sketch?.parameters ?? []).map(({ key, symbol, words, optional, list }) => {
        const [letter, index] = symbolParts(symbol);
        const more = [optional ? 'may be left out' : '', list ? 'several, with ; or a range' : ''].filter(
          Boolean,
        );
        return this.#cells(
          session,
          html`<i>${letter}</i>${index ? html`<sub>${index}</sub>` : nothing} ${words}
            ${more.length > 0 ? html`<span class="second">· ${more.join(', ')}</span>` : nothing}`,
          draft.cells.get(key) ?? '',
          (text) => {
            this.draft = { ...draft, cells: new Map([...draft.cells, [key, text]]) };
          },
          !list,
        );
      })}
    `;
  }

  #plot(session: Session, draft: Of<'plot'>): TemplateResult {
    const change = (to: Partial<Of<'plot'>>): void => {
      this.draft = { ...draft, ...to };
    };
    return html`
      ${this.#cells(session, 'Along x', draft.x, (x) => change({ x }), false, 'counted 1, 2, 3')}
      ${draft.series.map((each, k) =>
        this.#series(session, each, k, (to) =>
          change({ series: to ? draft.series.with(k, { ...each, ...to }) : draft.series.toSpliced(k, 1) }),
        ),
      )}
      <p>
        <button class="link" @click=${() => change({ series: [...draft.series, EMPTY_SERIES] })}>
          add a series
        </button>
        ·
        <button class="link" @click=${() => change({ levels: [...draft.levels, { cell: '', words: '' }] })}>
          add a level, such as a wear limit
        </button>
      </p>
      ${draft.levels.map((level, k) => {
        const set = (to: Partial<typeof level>): void =>
          change({ levels: draft.levels.with(k, { ...level, ...to }) });
        return html`<fieldset>
          <legend>Level ${k + 1}</legend>
          ${this.#cells(session, 'Cell', level.cell, (cell) => set({ cell }), true)}
          <label
            >Words
            <input
              .value=${level.words}
              placeholder="the cell’s own label"
              @change=${(event: Event) => set({ words: textOf(event) })}
            />
          </label>
          <button class="link" @click=${() => change({ levels: draft.levels.toSpliced(k, 1) })}>
            take it out
          </button>
        </fieldset>`;
      })}
      ${this.#tick('logarithmic along x', draft.logarithmicX, (logarithmicX) => change({ logarithmicX }))}
      ${this.#tick('logarithmic upwards', draft.logarithmicY, (logarithmicY) => change({ logarithmicY }))}
    `;
  }

  #tick(words: string, on: boolean, set: (on: boolean) => void): TemplateResult {
    return html`<label class="tick"
      ><input
        type="checkbox"
        .checked=${on}
        @change=${(event: Event) => set(event.target instanceof HTMLInputElement && event.target.checked)}
      />
      ${words}</label
    >`;
  }

  #series(
    session: Session,
    each: SeriesDraft,
    k: number,
    set: (to: Partial<SeriesDraft> | undefined) => void,
  ): TemplateResult {
    return html`<fieldset>
      <legend>Series ${k + 1}</legend>
      <div class="two">
        <label
          >Drawn as
          <select
            @change=${(event: Event) => {
              const mark = MARKS.find(([key]) => key === textOf(event))?.[0];
              if (mark) set({ mark });
            }}
          >
            ${MARKS.map(([key, words]) => html`<option value=${key} ?selected=${key === each.mark}>${words}</option>`)}
          </select>
        </label>
        <label
          >Words
          <input
            .value=${each.label}
            placeholder="heading of its column"
            @change=${(event: Event) => set({ label: textOf(event) })}
          />
        </label>
      </div>
      ${this.#cells(session, each.mark === 'band' ? 'Lower edge' : 'Values', each.y, (y) => set({ y }), false)}
      ${each.mark === 'band' ? this.#cells(session, 'Upper edge', each.to, (to) => set({ to }), false) : nothing}
      ${this.#cells(session, 'Own x, where it has one', each.x, (x) => set({ x }), false, 'as above')}
      <button class="link" @click=${() => set(undefined)}>take it out</button>
    </fieldset>`;
  }

  #keep(session: Session, figure: Figure): void {
    const description = `${this.fresh ? 'add' : 'change'} the figure ${figure.title}`;
    if (session.run(putPart(session.notebook, { part: 'figures', record: figure, description })))
      this.#done(figure);
  }

  #done(figure: Figure | undefined): void {
    this.dispatchEvent(new CustomEvent('figure-done', { bubbles: true, composed: true, detail: figure?.id }));
  }
}

/** The selection as it stands in formulas; `single` takes its first cell. */
function selectionText({ selection }: Session, single: boolean): string {
  const { row, column, toRow, toColumn } = selection;
  return blockText({
    row: Math.min(row, toRow),
    column: Math.min(column, toColumn),
    rows: single ? 1 : Math.abs(toRow - row) + 1,
    columns: single ? 1 : Math.abs(toColumn - column) + 1,
  });
}

customElements.define('figure-editor', FigureEditor);
