/** A plot of plain data that stands in no cells: the picture, what it says in words, and the table behind it. */

import { LitElement, css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { figureStyles, tableOf } from '../figures/notebook-figure.ts';
import { axisValue, plotWords } from '../figures/plot-data.ts';
import type { PlotAxis, PlotData } from '../figures/plot-data.ts';
import { plotPicture } from '../figures/plot-picture.ts';

const NARROWEST = 280;
const WIDEST = 900;
let count = 0;

export class PlainPlot extends LitElement {
  static override properties = { data: { attribute: false }, width: { state: true } };
  declare data: PlotData | undefined;
  declare width: number;
  readonly #id = `plain-${(count += 1)}`;
  readonly #watch = new ResizeObserver(([entry]) => {
    const width = Math.round(Math.min(WIDEST, Math.max(NARROWEST, entry?.contentRect.width ?? 0)));
    if (Math.abs(width - this.width) > 4) this.width = width;
  });

  static override styles = [
    ...figureStyles,
    css`
      :host {
        display: block;
        min-inline-size: 0;
      }
    `,
  ];

  constructor() {
    super();
    this.width = 0;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watch.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch.disconnect();
  }

  override updated(changed: PropertyValues): void {
    const place = this.renderRoot.querySelector('.picture');
    if (!place || !this.data || this.width === 0 || !(changed.has('data') || changed.has('width'))) return;
    const picture = plotPicture(this.data, { width: this.width, id: this.#id });
    picture.setAttribute('aria-hidden', 'true');
    place.replaceChildren(picture);
  }

  override render(): TemplateResult | typeof nothing {
    const { data } = this;
    if (!data) return nothing;
    return html`<div class="picture" role="img" aria-label=${plotWords(data)}></div>
      <details>
        <summary>The numbers as a table</summary>
        ${tableOf({ head: ['series', title(data.x), title(data.y)], rows: rowsOf(data) })}
      </details>`;
  }
}

const title = ({ label, unit }: PlotAxis): string => (unit === '' ? label : `${label} (${unit})`);

const rowsOf = ({ x, y, series }: PlotData): readonly (readonly string[])[] =>
  series.flatMap(({ label, points }) =>
    points.map((point) => {
      const value = axisValue(point.y, { ...y, unit: '' });
      const high = point.to === undefined ? '' : ` to ${axisValue(point.to, { ...y, unit: '' })}`;
      return [label, axisValue(point.x, { ...x, unit: '' }), `${value}${high}`];
    }),
  );

customElements.define('plain-plot', PlainPlot);
