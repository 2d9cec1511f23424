/** How the selected cell was worked out: equation, values put in, steps, source, range, cautions, where from and where to. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import type { FunctionDefinition } from '../../definition/index.ts';
import { labelOf, roleOf } from '../../document/index.ts';
import { addressText } from '../../expression/index.ts';
import { canWriteUnit, writeUnit } from '../assumed-unit.ts';
import { cellLink } from '../cell-links.ts';
import { equation } from '../elements/equation.ts';
import { materialGroup, materialGroupStyles } from '../elements/material-group.ts';
import { distinct } from '../open-cautions.ts';
import { otherReading } from '../other-reading.ts';
import { inWords } from '../number-locale.ts';
import { operandWords } from '../put-in.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { parameterDetail } from '../signature.ts';
import { resultText } from '../value-text.ts';
import './cell-properties.ts';
import { Watching } from '../watching.ts';
import { workingOf } from '../working.ts';
import type { Working } from '../working.ts';

export class MarginWorking extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  static override styles = [
    shared,
    materialGroupStyles,
    css`
      :host {
        display: block;
      }
      math {
        margin: 10px 0;
        overflow-x: auto;
        overflow-y: hidden;
        font-size: 17px;
        /* A shade at the side on which an equation goes on. */
        background:
          linear-gradient(to right, var(--paper) 40%, transparent) 0 0 / 28px 100% local,
          linear-gradient(to left, var(--paper) 40%, transparent) 100% 0 / 28px 100% local,
          linear-gradient(to right, var(--button-edge), transparent) 0 0 / 9px 100% scroll,
          linear-gradient(to left, var(--button-edge), transparent) 100% 0 / 9px 100% scroll;
        background-repeat: no-repeat;
      }
      .result {
        margin: 8px 0 12px;
        font-family: var(--mono);
        font-size: 24px;
        font-weight: 600;
        line-height: 1.25;
        overflow-wrap: anywhere;
      }
      .result small {
        color: var(--ink-2);
        font-family: var(--face);
        font-size: 15px;
        font-weight: 400;
      }
      section {
        margin-block-start: 14px;
      }
      table {
        inline-size: 100%;
        border-collapse: collapse;
        font-size: 14px;
      }
      td {
        padding: 3px 0;
        border-block-end: 1px solid var(--ruling);
        vertical-align: baseline;
      }
      td:last-child {
        padding-inline-start: 10px;
        text-align: end;
        white-space: nowrap;
      }
      td math {
        display: inline;
        margin: 0;
        font-size: 15px;
      }
      p {
        margin: 6px 0;
      }
    `,
  ];

  constructor() {
    super();
    new Watching(this, 'later');
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const { row, column } = session.selection;
    const { cell, result } = session;
    const label = labelOf(session.worksheet, row, column);
    if (!cell && !result)
      return html`<p class="second">
        ${addressText(column, row)} is empty. Type a value with its unit, a formula or a text; press
        <button class="link" @click=${() => session.showMargin('functions')}>Functions</button> to look for
        what the trade computes.
      </p>`;
    const working = workingOf(session);
    return html`
      <div class="second">
        ${addressText(column, row)}${label ? ` · ${label}` : ''} ·
        ${cell ? roleOf(cell) : 'filled from another cell'}
      </div>
      ${working?.equation ? this.#math(session, working.equation) : nothing}
      ${working?.substituted ? this.#math(session, working.substituted) : nothing} ${this.#result(session)}
      ${this.#cautions(session)} ${this.#sketch(session, working)} ${this.#steps(session)}
      ${working ? this.#functions(session, working) : nothing} ${this.#links(session)}
      <cell-properties .session=${session}></cell-properties>
    `;
  }

  /** The call drawn to scale, where a sketch illustrates its function. */
  #sketch(session: Session, working: Working | undefined): unknown {
    if (!working || working.definitions.length === 0) return nothing;
    void import('../figures/function-sketch.ts');
    return html`<function-sketch .session=${session}></function-sketch>`;
  }

  #math(session: Session, text: string): unknown {
    return equation(text, (markup) => session.world.trustedMarkup(markup)) ?? nothing;
  }

  #result(session: Session): TemplateResult | typeof nothing {
    const { result, cell, notebook } = session;
    if (!result) return nothing;
    if (result.error)
      return html`<div class="error" role="note">
        <b>${result.error.code}</b> ${inWords(result.error.message)}
        ${result.error.root ? html`<br />It begins at ${cellLink(session, result.error.root)}.` : nothing}
        ${result.error.path?.length ? html`<br />The circle: ${result.error.path.map((each) => html`${cellLink(session, each)} `)}` : nothing}
      </div>`;
    if (typeof result.value !== 'number') {
      const group = cell?.content.includes('MATERIAL.GROUP')
        ? materialGroup(String(result.value))
        : undefined;
      return html`<p>${group ?? resultText(result, notebook)}</p>`;
    }
    const text = resultText(result, notebook, cell?.format);
    const at = text.indexOf(' ');
    const kind = result.kind && result.kind !== 'number' ? result.kind : '';
    return html`<div class="result">
      ${at < 0 ? text : html`${text.slice(0, at)} <small>${text.slice(at + 1)}</small>`}
      ${kind ? html`<small>· ${kind}</small>` : nothing}
    </div>`;
  }

  #cautions(session: Session): unknown {
    return distinct(session.result?.cautions ?? []).map(
      (each) =>
        html`<div class=${each.type === 'assumed' ? 'second' : each.type === 'breach' ? 'error' : 'caution'}>
          ${each.type === 'assumed' ? '' : each.type === 'breach' ? '◆ ' : '▲ '}${inWords(each.text)}${each.type === 'assumed' && canWriteUnit(session, each.text) ? html` <button class="link" ?disabled=${session.readOnly} @click=${() => writeUnit(session, each.text)}>write it in</button>` : nothing}
          ${otherReading(session, session.address, each)}
          ${each.acknowledged === undefined ? nothing : html`<br /><span class="second">acknowledged: ${each.acknowledged}</span>`}
        </div>`,
    );
  }

  #steps(session: Session): TemplateResult | typeof nothing {
    const { explanation, notebook, cell } = session;
    const steps = (explanation?.calls ?? []).flatMap((call) => call.steps);
    const operands = explanation?.operands ?? [];
    if (!cell || (steps.length === 0 && operands.length === 0)) return nothing;
    return html`
      ${
        operands.length > 0
          ? html`<section>
              <h3>With</h3>
              <table>
                ${operands.slice(0, 40).map(
                  (each) =>
                    html`<tr>
                      <td class="mono">${each.text}</td>
                      <td>
                        ${each.value === null ? operandWords(session, cell, each.text) : resultText(each, notebook)}
                      </td>
                    </tr>`,
                )}
              </table>
            </section>`
          : nothing
      }
      ${
        steps.length > 0
          ? html`<section>
              <h3>On the way</h3>
              <table>
                ${steps.slice(0, 60).map(
                  (step) =>
                    html`<tr>
                      <td><i>${step.symbol}</i> ${step.meaning}</td>
                      <td>${resultText(step, notebook)}</td>
                    </tr>`,
                )}
              </table>
            </section>`
          : nothing
      }
    `;
  }

  #functions(session: Session, working: Working): unknown {
    return working.definitions.map(
      (definition) =>
        html`<section>
          <h3>
            <button class="link" @click=${() => session.openFunction(definition.name)}>
              ${definition.name}
            </button>
          </h3>
          <p class="second">${definition.summary}</p>
          ${this.#range(session, definition)}
          ${(definition.remarks ?? []).map((remark) => html`<p class="second">${remark}</p>`)}
          ${definition.sources.map(
            (key) => html`<p class="second">Source: ${session.catalogue?.sources.get(key) ?? key}</p>`,
          )}
        </section>`,
    );
  }

  #range(session: Session, definition: FunctionDefinition): TemplateResult | typeof nothing {
    const limited = definition.parameters.filter((each) => each.hard ?? each.usual);
    if (limited.length === 0) return nothing;
    return html`<details>
      <summary class="second">Range in which it holds</summary>
      ${limited.map(
        (each) =>
          html`<p class="second">
            <i>${each.symbol}</i>:
            ${parameterDetail({ ...each, meaning: '' }, session.notebook.reading)}${
              each.usual ? ` · usual ${inWords(each.usual.from)} to ${inWords(each.usual.to)}` : ''
            }
          </p>`,
      )}
    </details>`;
  }

  #links(session: Session): TemplateResult | typeof nothing {
    const { explanation } = session;
    if (!explanation) return nothing;
    const { precedents, dependents } = explanation;
    const list = (addresses: typeof precedents): unknown =>
      addresses.slice(0, 30).map((each, k) => html`${k > 0 ? ', ' : ''}${cellLink(session, each)}`);
    return html`<section class="second">
      ${precedents.length > 0 ? html`<p>Comes from ${list(precedents)}</p>` : nothing}
      ${dependents.length > 0 ? html`<p>Used by ${list(dependents)}</p>` : nothing}
    </section>`;
  }
}
customElements.define('margin-working', MarginWorking);
