/** One figure, large. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { partsOf } from '../../document/index.ts';
import '../figures/notebook-figure.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';

export class FigureLeaf extends LitElement {
  static override properties = { session: { attribute: false }, figure: { attribute: false } };
  declare session: Session | undefined;
  /** Its id. */
  declare figure: unknown;

  static override styles = [
    shared,
    css`
      :host {
        display: block;
        inline-size: min(980px, 88vw);
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
    const figure = partsOf(session.notebook, 'figures').find(({ id }) => id === this.figure);
    if (!figure) return html`<p>This figure is no longer in the notebook.</p>`;
    return html`<notebook-figure .session=${session} .figure=${figure}></notebook-figure>`;
  }
}
customElements.define('figure-leaf', FigureLeaf);
