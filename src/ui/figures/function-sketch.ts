/** The sketch of a function beside its help, drawn from the numbers of an example, or live from the call in the selected cell. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import type { FunctionDefinition } from '../../definition/index.ts';
import type { Session } from '../session.ts';
import { Watching } from '../watching.ts';
import { callSketch, exampleSketch, type CallSketch } from './call-sketch.ts';
import { figureStyles } from './notebook-figure.ts';
import { shownSketch, type ShownFigure } from './shown-figure.ts';

const WIDTH = 340;
let count = 0;

/** The first example that can be drawn. */
function drawnExample(definition: FunctionDefinition): CallSketch | undefined {
  for (const example of definition.examples) {
    const made = exampleSketch(definition, example);
    if (made?.sketch.parameters.every(({ key, optional }) => optional || made.values.has(key))) return made;
  }
  return undefined;
}

export class FunctionSketchView extends LitElement {
  static override properties = { session: { attribute: false }, definition: { attribute: false } };
  declare session: Session | undefined;
  /** Present: its example is drawn; absent: the call in the selected cell. */
  declare definition: FunctionDefinition | undefined;

  static override styles = [
    ...figureStyles,
    css`
      :host {
        display: block;
      }
      figure {
        margin: 12px 0;
      }
      figcaption {
        margin-block-start: 4px;
      }
    `,
  ];

  readonly #id = `sketch${(count += 1)}`;
  #key = '';
  #shown: ShownFigure | undefined;

  constructor() {
    super();
    new Watching(this);
  }

  override render(): TemplateResult | typeof nothing {
    const { session, definition } = this;
    if (!session) return nothing;
    const made = definition ? drawnExample(definition) : callSketch(session, session.address);
    if (!made) return nothing;
    const key = JSON.stringify([made.sketch.key, [...made.values], session.notebook.display]);
    if (key !== this.#key) {
      this.#key = key;
      this.#shown = shownSketch(made.sketch, made.values, session.notebook, { width: WIDTH, id: this.#id });
    }
    const shown = this.#shown;
    // A call whose arguments are worked out in the formula has nothing to be drawn from.
    if (!shown?.picture) return nothing;
    return html`<figure>
      <div class="picture" role="img" aria-label="${made.sketch.title}. ${shown.words}">${shown.picture}</div>
      <figcaption class="second">
        ${definition ? 'Drawn from the numbers of the example. ' : ''}${shown.words}
      </figcaption>
    </figure>`;
  }
}
customElements.define('function-sketch', FunctionSketchView);
