/** Contents of the notebook: its worksheets and the names of the one in sight. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import {
  addWorksheet,
  deleteWorksheet,
  partsOf,
  renameWorksheet,
  setCommon,
  usersOf,
} from '../../document/index.ts';
import type { DefinedName, Worksheet } from '../../document/index.ts';
import { addressText } from '../../expression/index.ts';
import { symbolParts } from '../faces.ts';
import { isAway } from '../in-sight.ts';
import { decimalMark } from '../number-locale.ts';
import { openLeaf } from '../open-leaf.ts';
import { point, showWorksheet } from '../pointing.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { resultText } from '../value-text.ts';
import { Watching } from '../watching.ts';

export class ContentsRail extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  static override styles = [
    shared,
    css`
      :host {
        display: block;
        overflow: auto;
        padding: 4px 0 8px;
      }
      nav {
        margin-block-end: 18px;
      }
      h2 {
        display: flex;
        align-items: center;
        justify-content: space-between;
        padding: 0 8px 4px 16px;
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      .sheet {
        display: flex;
        align-items: stretch;
        border-inline-start: 4px solid transparent;
      }
      .sheet.here {
        border-inline-start-color: var(--accent);
        border-radius: 0 3px 3px 0;
        background: var(--paper);
        box-shadow: var(--shadow);
      }
      .sheet > button:first-child {
        flex: 1;
        overflow: hidden;
        padding: 5px 8px 5px 12px;
        border: 0;
        background: none;
        font-weight: 400;
        text-align: start;
        text-overflow: ellipsis;
      }
      .sheet.here > button:first-child {
        font-weight: 600;
      }
      .tools {
        display: none;
        flex-wrap: wrap;
        gap: 0 10px;
        padding: 2px 8px 6px 16px;
        font-size: 13px;
      }
      .here + .tools {
        display: flex;
      }
      button.link {
        min-block-size: 26px;
      }
      .names button {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 0 8px;
        inline-size: 100%;
        min-block-size: 28px;
        padding: 2px 8px 2px 16px;
        border: 0;
        border-radius: 0;
        background: none;
        font-weight: 400;
        text-align: start;
      }
      .names button:hover {
        background: var(--paper);
      }
      @media (pointer: coarse) {
        .names button {
          align-items: center;
          min-block-size: 44px;
        }
      }
      i {
        font-size: 16px;
      }
      sub {
        font-size: 0.72em;
        line-height: 0;
      }
      p {
        margin: 0;
        padding: 0 12px 0 16px;
      }
    `,
  ];

  constructor() {
    super();
    new Watching(this);
  }

  #drawn: readonly unknown[] = [];

  /** Only where what it shows has changed: keys and selections leave it as it is. */
  override shouldUpdate(): boolean {
    const { session } = this;
    const now = [
      session,
      session?.version,
      session?.readOnly,
      session?.inSight.id,
      Boolean(session?.draft),
      decimalMark(),
    ];
    const differs = now.some((each, k) => each !== this.#drawn[k]);
    this.#drawn = now;
    return differs;
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const { notebook, inSight: worksheet } = session;
    return html`
      <nav aria-label="worksheets">
        <h2>
          Worksheets
          <button class="link" ?disabled=${session.readOnly} @click=${() => this.#add(session)}>add</button>
        </h2>
        <ul>
          ${notebook.worksheets.map((each) => this.#sheet(session, each, each.id === worksheet.id))}
        </ul>
      </nav>
      ${this.#figures(session)}
      <nav class="names" aria-label="names">
        <h2>Names on this worksheet</h2>
        ${
          worksheet.names.length === 0
            ? html`<p class="second">None yet. Select a cell and press “name…” on the entry line.</p>`
            : html`<ul>
                ${worksheet.names.map((name) => this.#name(session, worksheet, name))}
              </ul>`
        }
      </nav>
    `;
  }

  #figures(session: Session): TemplateResult | typeof nothing {
    const figures = partsOf(session.notebook, 'figures');
    if (figures.length === 0) return nothing;
    return html`<nav class="names" aria-label="figures">
      <h2>Figures</h2>
      <ul>
        ${figures.map(
          ({ id, title }) =>
            html`<li><button @click=${() => openLeaf(this, 'figure', id)}>${title}</button></li>`,
        )}
      </ul>
    </nav>`;
  }

  #sheet(session: Session, each: Worksheet, here: boolean): TemplateResult {
    return html`<li>
      <div class="sheet ${here ? 'here' : ''}">
        <button
          aria-current=${here ? 'page' : 'false'}
          @mousedown=${(event: Event) => keepFocus(session, event)}
          @click=${() => showWorksheet(session, each.id)}
        >
          ${each.title}${this.#edited(session, each)}
        </button>
      </div>
      <div class="tools" ?hidden=${isAway(session)}>
        <button class="link" ?disabled=${session.readOnly} @click=${() => this.#rename(session, each)}>
          rename
        </button>
        <button
          class="link"
          title="its names are found from every worksheet"
          aria-pressed=${each.common ? 'true' : 'false'}
          ?disabled=${session.readOnly}
          @click=${() => session.run(setCommon(session.notebook, { worksheet: each.id, common: !each.common }))}
        >
          ${each.common ? 'common ✓' : 'common'}
        </button>
        <button
          class="link"
          ?disabled=${session.readOnly || session.notebook.worksheets.length < 2}
          @click=${() => this.#delete(session, each)}
        >
          delete
        </button>
      </div>
    </li>`;
  }

  /** While the page shows another worksheet to point into: which one the formula is on. */
  #edited(session: Session, each: Worksheet): TemplateResult | typeof nothing {
    if (each.id !== session.worksheet.id || !isAway(session)) return nothing;
    return html` <span class="second">being edited</span>`;
  }

  #name(session: Session, worksheet: Worksheet, defined: DefinedName): TemplateResult {
    const { row, column, rows, columns } = defined.target;
    const result = session.results.at(worksheet.id, row, column);
    const [letter, index] = symbolParts(defined.symbol ?? defined.name);
    const single = rows === 1 && columns === 1;
    const value = single && result ? resultText(result, session.notebook) : addressText(column, row);
    return html`<li>
      <button
        @mousedown=${(event: Event) => keepFocus(session, event)}
        @click=${() => {
          const block = { row, column, toRow: row + rows - 1, toColumn: column + columns - 1 };
          if (!point(session, block)) session.selectBlock({ worksheet: worksheet.id, ...block });
        }}
      >
        <i>${letter}${index ? html`<sub>${index}</sub>` : nothing}</i><span class="second">${value}</span>
      </button>
    </li>`;
  }

  #ask(title: string, value: string, done: (text: string) => void, words = ''): void {
    this.dispatchEvent(
      new CustomEvent('ask-text', { bubbles: true, composed: true, detail: { title, value, words, done } }),
    );
  }

  #add(session: Session): void {
    const proposal = `Worksheet ${session.notebook.worksheets.length + 1}`;
    this.#ask('New worksheet', proposal, (title) => {
      if (!session.run(addWorksheet(session.notebook, { title }))) return;
      const added = session.notebook.worksheets.at(-1);
      if (added) session.select(0, 0, false, added.id);
    });
  }

  #rename(session: Session, { id, title }: Worksheet): void {
    this.#ask('Rename worksheet', title, (text) =>
      session.run(renameWorksheet(session.notebook, { worksheet: id, title: text })),
    );
  }

  #delete(session: Session, { id, title }: Worksheet): void {
    if (session.draft && !session.leaveDraft?.()) return;
    const users = usersOf(session.notebook, { worksheet: id });
    this.dispatchEvent(
      new CustomEvent('ask-consent', {
        bubbles: true,
        composed: true,
        detail: {
          title: `Delete ${title}?`,
          words:
            users.length > 0
              ? `${users.length} cells on other worksheets use it and would read #REF!. Undo brings it back.`
              : 'No other worksheet uses it. Undo brings it back.',
          action: 'Delete',
          done: () => session.run(deleteWorksheet(session.notebook, { worksheet: id })),
        },
      }),
    );
  }
}
/** A press while a formula is typed leaves the focus where the hands are. */
function keepFocus({ draft }: Session, event: Event): void {
  if (draft?.text.startsWith('=')) event.preventDefault();
}

customElements.define('contents-rail', ContentsRail);
