/** Functions by family, found by the trade's words; each with its own page and a worked example that can be put on the worksheet. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import type { Example, FunctionDefinition } from '../../definition/index.ts';
import { insertLinesOfText, startDraft } from '../editing.ts';
import { equation } from '../elements/equation.ts';
import { searchFunctions, FAMILY_TITLES } from '../function-search.ts';
import type { FoundFunction } from '../function-search.ts';
import { editedText, inWords } from '../number-locale.ts';
import type { BuiltinPage } from '../ports.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { parameterDetail, signatureText } from '../signature.ts';
import { Watching } from '../watching.ts';
import { definitionEquation, stepEquations } from '../working.ts';

export class MarginFunctions extends LitElement {
  static override properties = {
    session: { attribute: false },
    wanted: { state: true },
    family: { state: true },
  };
  declare session: Session | undefined;
  declare wanted: string;
  declare family: string;

  static override styles = [
    shared,
    css`
      .search {
        inline-size: 100%;
        margin-block-end: 10px;
      }
      ul {
        margin: 0 0 14px;
        padding: 0;
        list-style: none;
      }
      li button {
        display: block;
        inline-size: 100%;
        padding: 5px 6px;
        border: 0;
        border-block-end: 1px solid var(--ruling);
        border-radius: 0;
        background: none;
        font-weight: 400;
        text-align: start;
      }
      li button:hover {
        background: var(--wash);
      }
      li .mono {
        display: block;
        color: var(--accent);
        font-size: 14px;
      }
      h2.title {
        margin: 10px 0 2px;
        color: var(--accent);
        font-family: var(--mono);
        font-size: 16px;
        overflow-wrap: anywhere;
      }
      math {
        margin: 10px 0;
        overflow-x: auto;
        overflow-y: hidden;
        font-size: 16px;
      }
      dl {
        margin: 6px 0 12px;
      }
      dt {
        margin-block-start: 6px;
      }
      dd {
        margin: 0 0 0 12px;
        color: var(--ink-2);
        font-size: 13.5px;
      }
      p {
        margin: 6px 0;
      }
      .example {
        margin: 8px 0;
        padding: 8px 10px;
        border-inline-start: 3px solid var(--line);
        background: var(--paper-edge);
      }
      .example .mono {
        font-size: 13.5px;
        overflow-wrap: anywhere;
      }
    `,
  ];

  constructor() {
    super();
    this.wanted = '';
    this.family = '';
    new Watching(this);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    if (!session.catalogue) return html`<p class="second">The functions are being loaded…</p>`;
    const name = session.functionPage;
    const definition = session.catalogue.domain.find((each) => each.name === name);
    if (definition) return this.#page(session, definition);
    const builtin = session.catalogue.builtins.find((each) => each.name === name);
    return builtin ? this.#builtinPage(session, builtin) : this.#list(session);
  }

  #list(session: Session): TemplateResult {
    const groups = searchFunctions(session.catalogue, this.wanted);
    const searching = this.wanted.trim() !== '';
    return html`
      <input
        class="search"
        type="search"
        aria-label="search functions in the words of the trade"
        placeholder="chip thickness, tool life, tap drill…"
        .value=${this.wanted}
        @input=${(event: Event) => {
          this.wanted = event.target instanceof HTMLInputElement ? event.target.value : '';
        }}
      />
      ${groups.length === 0 ? html`<p class="second">Nothing under these words. Try another word of the trade.</p>` : nothing}
      ${groups.map(
        ({ family, found }) =>
          html`<details
            ?open=${searching || this.family === family}
            @toggle=${(event: Event) => {
              if (event.target instanceof HTMLDetailsElement && event.target.open && !searching)
                this.family = family;
            }}
          >
            <summary>
              <b>${FAMILY_TITLES.get(family) ?? family}</b> <span class="second">${found.length}</span>
            </summary>
            ${
              searching || this.family === family
                ? html`<ul>
                    ${found.map((each) => this.#row(session, each))}
                  </ul>`
                : nothing
            }
          </details>`,
      )}
    `;
  }

  #row(session: Session, { name, summary }: FoundFunction): TemplateResult {
    return html`<li>
      <button @click=${() => session.openFunction(name)}>
        <span class="mono">${name}</span><span class="second">${summary}</span>
      </button>
    </li>`;
  }

  #back(session: Session): TemplateResult {
    return html`<button class="link" @click=${() => session.openFunction(undefined)}>all functions</button>`;
  }

  #page(session: Session, definition: FunctionDefinition): TemplateResult {
    const math = [...stepEquations(definition), definitionEquation(definition) ?? ''].filter(Boolean);
    const { parameters, result, remarks, refuses, cautions, sources, examples } = definition;
    void import('../figures/function-sketch.ts');
    return html`
      ${this.#back(session)}
      <h2 class="title">${definition.name}</h2>
      <p>${definition.summary}</p>
      ${math.map((text) => equation(text, (markup) => session.world.trustedMarkup(markup)) ?? nothing)}
      ${'reading' in definition ? html`<p class="second">${definition.reading}</p>` : nothing}
      <function-sketch .session=${session} .definition=${definition}></function-sketch>
      <p class="mono second">${signatureText(definition)}</p>
      <dl>
        ${parameters.map(
          (each) =>
            html`<dt><i>${each.symbol}</i> ${each.name.replaceAll('_', ' ')}</dt>
              <dd>
                ${parameterDetail(each, session.notebook.reading)}${each.usual ? ` · usual ${inWords(each.usual.from)} to ${inWords(each.usual.to)}` : ''}
              </dd>`,
        )}
        <dt><i>${result.symbol}</i> result</dt>
        <dd>${result.meaning} · ${result.kind}</dd>
      </dl>
      ${(remarks ?? []).map((each) => html`<p class="second">${each}</p>`)}
      ${(cautions ?? []).map((each) => html`<p class="second">▲ ${each.text} <span class="mono">(${each.when})</span></p>`)}
      ${(refuses ?? []).map((each) => html`<p class="second">Refused: ${each.text} <span class="mono">(${each.when})</span></p>`)}
      <p>
        <button
          class="primary"
          ?disabled=${session.readOnly}
          @click=${() => this.#begin(session, definition.name)}
        >
          Use it in the selected cell
        </button>
      </p>
      ${examples.map((each) => this.#example(session, definition, each))}
      ${sources.map((key) => html`<p class="second">Source: ${session.catalogue?.sources.get(key) ?? key}</p>`)}
    `;
  }

  #example(session: Session, definition: FunctionDefinition, example: Example): TemplateResult {
    const gives = inWords(typeof example.gives === 'string' ? example.gives : example.gives.join('; '));
    const call = `=${definition.name}(${example.given.join('; ')})`;
    return html`<div class="example">
      <div class="mono">${editedText(call, session.notebook.currency)}</div>
      <div>gives <b>${gives}</b></div>
      <div class="second">${example.how}</div>
      <button
        class="link"
        ?disabled=${session.readOnly}
        @click=${() => insertLinesOfText(session, exampleLines(session, definition, example))}
      >
        put it on the worksheet
      </button>
    </div>`;
  }

  #builtinPage(session: Session, page: BuiltinPage): TemplateResult {
    return html`
      ${this.#back(session)}
      <h2 class="title">${page.name}</h2>
      <p>${page.summary}</p>
      <p class="mono second">${page.name}(${page.parameters})</p>
      <p>
        <button class="primary" ?disabled=${session.readOnly} @click=${() => this.#begin(session, page.name)}>
          Use it in the selected cell
        </button>
      </p>
      ${page.examples.map((each) => html`<div class="example"><span class="mono">${editedText(each.given, session.notebook.currency)}</span> gives <b>${inWords(each.gives)}</b></div>`)}
      <p class="second">OpenFormula 1.3, ${page.section}</p>
    `;
  }

  #begin(session: Session, name: string): void {
    const { draft } = session;
    if (draft?.text.startsWith('=')) {
      const text = `${draft.text.slice(0, draft.from)}${name}(${draft.text.slice(draft.to)}`;
      const at = draft.from + name.length + 1;
      session.setDraft({ ...draft, text, from: at, to: at, typedOver: false, where: 'cell' });
    } else if (!draft || session.leaveDraft?.()) startDraft(session, `=${name}(`, false, 'cell');
    this.dispatchEvent(new CustomEvent('to-page', { bubbles: true, composed: true }));
  }
}

/** Labels, values and the formula over them, in three columns from the active cell on. */
function exampleLines(session: Session, definition: FunctionDefinition, example: Example): string[][] {
  const { row, column } = session.selection;
  const address = (r: number): string => `${letters(column + 2)}${row + r + 1}`;
  const lines: string[][] = [];
  const args: string[] = [];
  definition.parameters.forEach((parameter, k) => {
    const given = example.given[k];
    if (given === undefined) return;
    const plain = given !== '' && !given.startsWith('{');
    args.push(plain ? address(lines.length) : given);
    if (plain) lines.push([parameter.name.replaceAll('_', ' '), parameter.symbol, unquoted(given)]);
  });
  const { meaning, symbol } = definition.result;
  lines.push([meaning, symbol, `=${definition.name}(${args.join('; ')})`]);
  return lines;
}

const unquoted = (text: string): string => (/^".*"$/.test(text) ? text.slice(1, -1) : text);
const letters = (column: number): string =>
  (column >= 26 ? letters(Math.floor(column / 26) - 1) : '') + String.fromCharCode(65 + (column % 26));

customElements.define('margin-functions', MarginFunctions);
