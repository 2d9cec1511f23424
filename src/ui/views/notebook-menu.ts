/** What can be done with the notebook as a whole: files, lists, print, look. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { isPossible, keyWords, type ProgramCommand } from '../program-command.ts';
import { PROGRAM_COMMANDS } from '../program-commands.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';

const GROUPS = ['File', 'Page', 'Notebook', 'Program'] as const;

export class NotebookMenu extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  static override styles = [
    shared,
    css`
      :host {
        position: relative;
      }
      .list {
        position: fixed;
        inset: auto;
        inset-block-start: 50px;
        inset-inline-end: 16px;
        inline-size: 290px;
        max-block-size: calc(100dvh - 70px);
        margin: 0;
        padding: 6px 0 10px;
        overflow: auto;
        border: 1px solid var(--button-edge);
        border-radius: 4px;
        background: var(--paper);
        color: var(--ink);
        box-shadow: var(--shadow);
      }
      @media (min-width: 700px) {
        .list {
          inline-size: 640px;
          columns: 2;
          column-gap: 0;
        }
      }
      section {
        break-inside: avoid;
      }
      @media (pointer: coarse) {
        kbd {
          display: none;
        }
      }
      .list h3 {
        padding: 8px 16px 2px;
      }
      .list button {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 12px;
        inline-size: 100%;
        padding: 4px 16px;
        border: 0;
        border-radius: 0;
        background: none;
        font-weight: 400;
        text-align: start;
      }
      kbd {
        color: var(--ink-2);
        font: 12px/1 var(--face);
        white-space: nowrap;
      }
      .list button:hover:not(:disabled),
      .list button:focus-visible {
        background: var(--wash);
      }
      .list button:focus-visible {
        outline-offset: -3px;
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
    return html`
      <button class="primary" popovertarget="list" aria-haspopup="menu">Notebook</button>
      <div class="list" id="list" popover>
        ${GROUPS.map((group) => {
          const commands = PROGRAM_COMMANDS.filter((command) => command.group === group);
          return commands.length === 0
            ? nothing
            : html`<section>
                <h3>${group}</h3>
                ${commands.map((command) => this.#item(command, session))}
              </section>`;
        })}
      </div>
    `;
  }

  #item(command: ProgramCommand, session: Session): TemplateResult {
    const { words } = command;
    const keys = keyWords(command);
    return html`<button
      ?disabled=${!isPossible(command, session)}
      @click=${() => {
        this.renderRoot.querySelector<HTMLElement>('#list')?.hidePopover();
        void command.run(session, this);
        this.requestUpdate();
      }}
    >
      ${typeof words === 'string' ? words : words(session)} ${keys ? html`<kbd>${keys}</kbd>` : nothing}
    </button>`;
  }
}
customElements.define('notebook-menu', NotebookMenu);
