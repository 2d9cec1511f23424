/** Help on one page: what can be typed, what the marks mean, where things are. */

import { LitElement, css, html, type TemplateResult } from 'lit';
import { HELP_ENTRIES, HELP_MARKS, HELP_PARTS, type HelpEntry } from '../help-words.ts';
import { openLeaf } from '../open-leaf.ts';
import { editedText, inWords } from '../number-locale.ts';
import { shared } from '../shared.styles.ts';
import { CAUTION_LINE } from '../usual-cautions.ts';
import { leafStyles } from './leaf.styles.ts';

const SIGNS = {
  given: '50 mm',
  measured: '◷ 50 mm',
  worked: '50 mm',
  caution: '▲',
  breach: '◆',
  done: '△',
} as const;

export class HelpLeaf extends LitElement {
  static override styles = [
    shared,
    leafStyles,
    css`
      section {
        break-inside: auto;
      }
      dt,
      h3 {
        break-after: avoid;
      }
      dd,
      p {
        break-inside: avoid;
      }
      .mark {
        font-family: var(--mono);
      }
      .given {
        border-block-end: 1.5px solid var(--line);
      }
      .measured {
        border-block-end: 2px dotted var(--ink-2);
      }
      .caution-sign,
      .breach,
      .done {
        color: var(--caution);
      }
      .foot {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 8px 12px;
        padding-block-start: 8px;
        border-block-start: 1px solid var(--ruling-strong);
      }
      .usual {
        flex: 1 1 400px;
        margin: 0;
        color: var(--caution);
        font-size: 13px;
        line-height: 1.3;
      }
    `,
  ];

  override render(): TemplateResult {
    return html`<div class="columns">
        <section>
          <h3>What can be typed into a cell</h3>
          <p>With B1 = 50 mm and B2 = 260 m/min:</p>
          <dl class="entries">${HELP_ENTRIES.map((entry) => this.#entry(entry))}</dl>
        </section>
        <section>
          <h3>What the marks mean</h3>
          <dl>
            ${HELP_MARKS.map(
              ({ mark, words }) =>
                html`<dt>
                    <span class="mark ${mark === 'caution' ? 'caution-sign' : mark}">${SIGNS[mark]}</span>
                  </dt>
                  <dd>${words}</dd>`,
            )}
          </dl>
        </section>
        ${HELP_PARTS.map(
          ({ title, lines }) =>
            html`<section>
              <h3>${title}</h3>
              ${lines.map((line) => html`<p>${inWords(line)}</p>`)}
            </section>`,
        )}
      </div>
      <div class="foot">
        <button @click=${() => openLeaf(this, 'keys')}>All keys</button>
        <button @click=${() => openLeaf(this, 'about')}>About this program</button>
        <p class="usual">▲ ${CAUTION_LINE}</p>
      </div>`;
  }

  #entry({ typed, gives, words }: HelpEntry): TemplateResult {
    return html`<dt class="mono">${editedText(typed, '')}</dt>
      <dd>→ <b>${inWords(gives)}</b> · ${words}</dd>`;
  }
}
customElements.define('help-leaf', HelpLeaf);
