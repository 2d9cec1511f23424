/** The notebook's figures in the margin: seeing, making, changing, removing them. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { freshPartId, partsOf, removeParts } from '../../document/index.ts';
import type { Figure } from '../../document/index.ts';
import { proposedCells, proposedPlot, selectedCall, sketchContent } from '../figures/propose.ts';
import '../figures/notebook-figure.ts';
import { SKETCHES, sketchOf } from '../figures/sketches.ts';
import { openLeaf } from '../open-leaf.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';
import { FigureEditor } from './figure-editor.ts';

export class MarginFigures extends LitElement {
  static override properties = {
    session: { attribute: false },
    editing: { state: true },
    made: { state: true },
  };
  declare session: Session | undefined;
  /** Id of the figure whose fields are open. */
  declare editing: string | undefined;
  /** A new figure that is not in the notebook yet. */
  declare made: Figure | undefined;

  static override styles = [
    shared,
    css`
      .make {
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        gap: 8px 12px;
        margin-block-end: 14px;
        padding-block-end: 12px;
        border-block-end: 1px solid var(--ruling-strong);
      }
      .make label {
        flex: 1 1 200px;
        font-size: 13px;
      }
      .make select {
        display: block;
        inline-size: 100%;
      }
      ol {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        margin-block-end: 22px;
      }
      button.link {
        min-block-size: 26px;
      }
      @media (pointer: coarse) {
        button.link {
          min-block-size: 44px;
        }
      }
      .tools {
        display: flex;
        flex-wrap: wrap;
        gap: 4px 16px;
        margin-block-start: 4px;
      }
    `,
  ];

  constructor() {
    super();
    new Watching(this);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const figures = partsOf(session.notebook, 'figures');
    return html`
      ${this.#making(session)}
      ${
        this.made
          ? html`<figure-editor
              .session=${session}
              .figure=${this.made}
              fresh
              @figure-done=${() => this.#close()}
            ></figure-editor>`
          : nothing
      }
      ${
        figures.length === 0 && !this.made
          ? html`<p class="second">
              No figures yet. Select columns of values and plot them, or take a sketch: it is drawn to scale
              from cells and follows them.
            </p>`
          : nothing
      }
      <ol aria-label="figures of this notebook">
        ${figures.map((figure) => this.#figure(session, figure))}
      </ol>
    `;
  }

  #making(session: Session): TemplateResult {
    const call = selectedCall(session);
    return html`<div class="make">
      <button
        ?disabled=${session.readOnly || proposedPlot(session) === undefined}
        title="first column along x, the others as series"
        @click=${() => this.#plot(session)}
      >
        Plot the selection
      </button>
      <label
        >New sketch
        <select ?disabled=${session.readOnly} @change=${(event: Event) => this.#sketch(session, event)}>
          <option value="">choose what it shows…</option>
          ${
            call
              ? html`<option value=${call.sketch.key}>${call.sketch.title} (from the selected cell)</option>`
              : nothing
          }
          ${SKETCHES.filter(({ key }) => key !== call?.sketch.key).map(
            ({ key, title }) => html`<option value=${key}>${title}</option>`,
          )}
        </select>
      </label>
    </div>`;
  }

  #figure(session: Session, figure: Figure): TemplateResult {
    if (this.editing === figure.id)
      return html`<li>
        <figure-editor
          .session=${session}
          .figure=${figure}
          @figure-done=${() => this.#close()}
        ></figure-editor>
      </li>`;
    return html`<li id="figure-${figure.id}">
      <notebook-figure .session=${session} .figure=${figure}></notebook-figure>
      <div class="tools">
        <button class="link" @click=${() => openLeaf(this, 'figure', figure.id)}>larger</button>
        <button class="link" ?disabled=${session.readOnly} @click=${() => this.#edit(figure.id)}>
          change…
        </button>
        <button class="link" ?disabled=${session.readOnly} @click=${() => this.#remove(session, figure)}>
          remove
        </button>
      </div>
    </li>`;
  }

  #plot(session: Session): void {
    const proposal = proposedPlot(session);
    if (proposal) this.#begin({ id: freshPartId(session.notebook, 'figures'), ...proposal });
  }

  #sketch(session: Session, event: Event): void {
    const select = event.target;
    const sketch = select instanceof HTMLSelectElement ? sketchOf(select.value) : undefined;
    if (!sketch || !(select instanceof HTMLSelectElement)) return;
    select.value = '';
    const content = sketchContent(sketch, proposedCells(session, sketch, selectedCall(session)));
    this.#begin({ id: freshPartId(session.notebook, 'figures'), title: sketch.title, content });
  }

  #begin(figure: Figure): void {
    this.editing = undefined;
    this.made = figure;
    this.#focusFields();
  }

  #edit(id: string): void {
    this.made = undefined;
    this.editing = id;
    this.#focusFields();
  }

  #focusFields(): void {
    void this.updateComplete.then(async () => {
      const editor = this.renderRoot.querySelector('figure-editor');
      if (!(editor instanceof FigureEditor)) return;
      await editor.updateComplete;
      editor.start();
    });
  }

  #close(): void {
    this.editing = undefined;
    this.made = undefined;
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('.make select')?.focus());
  }

  #remove(session: Session, { id, title }: Figure): void {
    const description = `remove the figure ${title}`;
    if (session.run(removeParts(session.notebook, { part: 'figures', ids: [id], description })))
      session.say(`${title} is removed; undo brings it back`);
  }

  /** Brings a figure into sight. */
  show(id: string): void {
    this.renderRoot.querySelector(`#figure-${CSS.escape(id)}`)?.scrollIntoView({ block: 'start' });
  }
}
customElements.define('margin-figures', MarginFigures);
