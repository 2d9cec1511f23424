/**
 * One figure of the notebook: `<notebook-figure .session=${session} .figure=${figure}></notebook-figure>` anywhere, the
 * print view included. Redraws once a frame, only while in sight and only when its cells have changed. On paper it is
 * drawn in every case, provided `prepareFigures(session)` has settled before the browser asks for the print.
 */

import { LitElement, css, html, nothing, unsafeCSS, type TemplateResult } from 'lit';
import type { Figure } from '../../document/index.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { FIGURE_RULES } from './figure.styles.ts';
import {
  figureKey,
  isPrepared,
  prepareFigure,
  shownFigure,
  type FigureTable,
  type ShownFigure,
} from './shown-figure.ts';
import { pngFile, svgFile } from './stand-alone.ts';

const PAPER_WIDTH = 640;
const LEAST_WIDTH = 280;
let count = 0;

/** Brings what the notebook's figures need, so that they can be drawn without waiting. */
export async function prepareFigures(session: Session): Promise<void> {
  await Promise.all(
    (session.notebook.parts?.figures ?? []).map(({ content }) => prepareFigure(content.type)),
  );
}

export const tableOf = ({ head, rows }: FigureTable): TemplateResult =>
  html`<table>
    <thead>
      <tr>
        ${head.map((each) => html`<th scope="col">${each}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (row) =>
          html`<tr>
            ${row.map((each, k) => (k === 0 ? html`<th scope="row">${each}</th>` : html`<td>${each}</td>`))}
          </tr>`,
      )}
    </tbody>
  </table>`;

/** Rules of the picture and the table behind it, for every element that shows figures. */
export const figureStyles = [
  shared,
  unsafeCSS(FIGURE_RULES),
  css`
    button.link {
      min-block-size: 26px;
    }
    .picture svg {
      display: block;
      max-inline-size: 100%;
      block-size: auto;
    }
    table {
      border-collapse: collapse;
      font-size: 13px;
    }
    th,
    td {
      padding: 2px 10px 2px 0;
      border-block-end: 1px solid var(--ruling);
      font-weight: 400;
      text-align: start;
      vertical-align: baseline;
    }
    thead th {
      color: var(--ink-2);
    }
    td {
      font-variant-numeric: tabular-nums;
    }
    .table {
      max-block-size: 260px;
      overflow: auto;
    }
    p {
      margin: 6px 0;
    }
    summary {
      min-block-size: 26px;
      color: var(--accent);
      font-size: 13px;
      cursor: pointer;
    }
    @media (pointer: coarse) {
      button.link,
      summary {
        min-block-size: 44px;
        align-content: center;
      }
    }
  `,
];

export class NotebookFigure extends LitElement {
  static override properties = {
    session: { attribute: false },
    figure: { attribute: false },
    plain: { type: Boolean },
    shown: { state: true },
  };
  declare session: Session | undefined;
  declare figure: Figure | undefined;
  /** Without the links that save it. */
  declare plain: boolean;
  declare shown: ShownFigure | undefined;

  static override styles = [
    ...figureStyles,
    css`
      :host {
        display: block;
      }
      figure {
        margin: 0;
      }
      figcaption {
        margin-block-end: 4px;
        font-weight: 600;
      }
      .files {
        display: flex;
        gap: 14px;
      }
      @media print {
        :host {
          break-inside: avoid;
          margin-block-end: 12pt;
        }
        .files,
        details {
          display: none;
        }
      }
    `,
  ];

  readonly #id = `figure${(count += 1)}`;
  #unsubscribe: (() => void) | undefined;
  #following: Session | undefined;
  #frame = 0;
  #inSight = false;
  #key = '';
  #width = 0;
  #watch: IntersectionObserver | undefined;
  #size: ResizeObserver | undefined;

  constructor() {
    super();
    this.plain = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watch = new IntersectionObserver((entries) => {
      this.#inSight = entries.some(({ isIntersecting }) => isIntersecting);
      if (this.#inSight) this.#later();
    });
    this.#watch.observe(this);
    this.#size = new ResizeObserver(() => this.#later());
    this.#size.observe(this);
    if (this.hasUpdated) this.requestUpdate('session');
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch?.disconnect();
    this.#size?.disconnect();
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
    this.#unsubscribe?.();
    this.#unsubscribe = undefined;
    this.#following = undefined;
  }

  override willUpdate(): void {
    const { session } = this;
    if (session !== this.#following) {
      this.#unsubscribe?.();
      this.#following = session;
      this.#unsubscribe = session?.subscribe(() => this.#later());
    }
    if (this.#onPaper()) this.#draw();
  }

  override updated(changed: Map<PropertyKey, unknown>): void {
    if (changed.has('session') || changed.has('figure')) this.#later();
    const place = this.renderRoot.querySelector('.picture');
    const picture = this.shown?.picture;
    if (place && picture && place.firstChild !== picture) place.replaceChildren(picture);
  }

  /** Inside the print view, which shows nothing on the screen. */
  #onPaper(): boolean {
    const root = this.getRootNode();
    return root instanceof ShadowRoot && root.host.localName === 'print-view';
  }

  #later(): void {
    if (this.#frame !== 0 || !this.#inSight) return;
    this.#frame = requestAnimationFrame(() => {
      this.#frame = 0;
      this.#draw();
    });
  }

  #draw(): void {
    const { session, figure } = this;
    if (!session || !figure) return;
    const { type } = figure.content;
    if (!isPrepared(type)) {
      void prepareFigure(type).then(() => this.#later());
      return;
    }
    const width = this.#onPaper() ? PAPER_WIDTH : Math.max(LEAST_WIDTH, Math.floor(this.clientWidth));
    const key = figureKey(session.notebook, session.results, figure);
    if (key === this.#key && width === this.#width) return;
    this.#key = key;
    this.#width = width;
    this.shown = shownFigure(session, figure, { width, id: this.#id });
  }

  override render(): TemplateResult | typeof nothing {
    const { figure, shown } = this;
    if (!figure) return nothing;
    return html`<figure>
      <figcaption>${figure.title}</figcaption>
      ${shown ? this.#content(figure, shown) : html`<p class="second">drawing…</p>`}
    </figure>`;
  }

  #content(figure: Figure, { refused, words, troubles, table }: ShownFigure): TemplateResult {
    return html`
      ${
        refused === undefined
          ? html`<div class="picture" role="img" aria-label="${figure.title}. ${words}"></div>`
          : html`<div class="caution" role="note">▲ Can not be drawn: ${refused}</div>`
      }
      ${troubles.map((each) => html`<div class="caution">▲ ${each}</div>`)}
      ${
        table === undefined
          ? nothing
          : html`<details>
                <summary>In words and numbers</summary>
                <p>${words}</p>
                <div class="table" tabindex="0" role="region" aria-label="numbers of ${figure.title}">
                  ${tableOf(table)}
                </div>
              </details>
              <div class="files" ?hidden=${this.plain}>
                <button class="link" @click=${() => void this.#save('svg')}>save as SVG</button>
                <button class="link" @click=${() => void this.#save('png')}>save as PNG</button>
              </div>`
      }
    `;
  }

  async #save(type: 'svg' | 'png'): Promise<void> {
    const { session, figure, shown } = this;
    if (!session || !figure || !shown?.picture) return;
    try {
      const svg = await svgFile(shown.picture, figure.title, shown.words);
      const name = figure.title.replaceAll(/[^\p{L}\p{N}\-_ ]+/gu, '').trim() || 'figure';
      if (type === 'svg') await session.world.files.save(`${name}.svg`, svg, 'image/svg+xml');
      else await session.world.files.save(`${name}.png`, await pngFile(svg), 'image/png');
    } catch (reason) {
      session.say(reason instanceof Error ? reason.message : String(reason), true);
    }
  }
}
customElements.define('notebook-figure', NotebookFigure);
