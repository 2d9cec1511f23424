/** The actions for what is selected, as a menu at the pointer or at the active cell (W3C APG menu). */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import type { ActionsPlace } from '../actions-place.ts';
import { isPossible, keyWords, type ProgramCommand } from '../program-command.ts';
import { SELECTION_COMMANDS } from '../selection-commands.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';

const GROUPS = ['Clipboard', 'Cells', 'Rows', 'Columns'] as const;

export class ActionsMenu extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  static override styles = [
    shared,
    css`
      .menu {
        position: fixed;
        inset: auto;
        inset-block-start: var(--y, 80px);
        inset-inline-start: var(--x, 80px);
        inline-size: 336px;
        max-block-size: calc(100dvh - 16px);
        margin: 0;
        padding: 4px 0 8px;
        overflow: auto;
        border: 1px solid var(--button-edge);
        border-radius: 4px;
        background: var(--paper);
        color: var(--ink);
        box-shadow: var(--shadow);
      }
      h3 {
        padding: 6px 14px 1px;
      }
      button {
        display: flex;
        align-items: baseline;
        justify-content: space-between;
        gap: 12px;
        inline-size: 100%;
        min-block-size: 28px;
        padding: 2px 14px;
        border: 0;
        border-radius: 0;
        background: none;
        font-size: 14px;
        font-weight: 400;
        text-align: start;
      }
      button:hover:not(:disabled),
      button:focus-visible {
        background: var(--wash);
      }
      button:focus-visible {
        outline-offset: -3px;
      }
      kbd {
        color: var(--ink-2);
        font: 12px/1 var(--face);
        white-space: nowrap;
      }
      @media (pointer: coarse) {
        .menu {
          display: none;
          grid-template-columns: 1fr 1fr;
          inline-size: min(620px, calc(100vw - 16px));
        }
        .menu:popover-open {
          display: grid;
        }
        .menu button {
          align-items: center;
          min-block-size: 44px;
        }
        kbd {
          display: none;
        }
      }
    `,
  ];

  /** Opens it beside a place of the screen, all of it in sight, the first action focused. */
  async open(at: ActionsPlace): Promise<void> {
    this.requestUpdate();
    await this.updateComplete;
    const menu = this.renderRoot.querySelector<HTMLElement>('.menu');
    if (!menu) return;
    menu.showPopover();
    const { width, height } = menu.getBoundingClientRect();
    const inside = (value: number, size: number, room: number): number =>
      Math.max(8, Math.min(value, room - size - 8));
    menu.style.setProperty('--x', `${inside(at.x, width, innerWidth)}px`);
    menu.style.setProperty('--y', `${inside(at.y, height, innerHeight)}px`);
    this.#items()[0]?.focus();
  }

  #items(): readonly HTMLButtonElement[] {
    return [...this.renderRoot.querySelectorAll<HTMLButtonElement>('button:not(:disabled)')];
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    return html`<div
      class="menu"
      popover
      role="menu"
      aria-label="actions for the selection"
      @keydown=${this.#onKey}
    >
      ${GROUPS.map(
        (group) =>
          html`<div role="group" aria-label=${group}>
            <h3 aria-hidden="true">${group}</h3>
            ${SELECTION_COMMANDS.filter((command) => command.group === group).map((command) =>
              this.#item(command, session),
            )}
          </div>`,
      )}
    </div>`;
  }

  #item(command: ProgramCommand, session: Session): TemplateResult {
    const { words } = command;
    const keys = keyWords(command);
    return html`<button
      role="menuitem"
      tabindex="-1"
      ?disabled=${!isPossible(command, session)}
      @click=${() => {
        this.#close();
        void command.run(session, this);
      }}
    >
      ${typeof words === 'string' ? words : words(session)}${keys ? html`<kbd aria-hidden="true">${keys}</kbd>` : nothing}
    </button>`;
  }

  #close(): void {
    this.renderRoot.querySelector<HTMLElement>('.menu')?.hidePopover();
    this.dispatchEvent(new CustomEvent('to-page', { bubbles: true, composed: true }));
  }

  #onKey(event: KeyboardEvent): void {
    const items = this.#items();
    const at = items.findIndex((item) => item === this.shadowRoot?.activeElement);
    const last = items.length - 1;
    const next = new Map([
      ['ArrowDown', at >= last ? 0 : at + 1],
      ['ArrowUp', at <= 0 ? last : at - 1],
      ['Home', 0],
      ['End', last],
    ]).get(event.key);
    if (event.key === 'Escape' || event.key === 'Tab') this.#close();
    else if (next !== undefined) items[next]?.focus();
    else if (/^\p{L}$/u.test(event.key) && !event.ctrlKey && !event.metaKey) {
      const letter = event.key.toLowerCase();
      const order = [...items.slice(at + 1), ...items.slice(0, at + 1)];
      order.find((item) => item.textContent?.trim().toLowerCase().startsWith(letter))?.focus();
    } else return;
    event.preventDefault();
    event.stopPropagation();
  }
}
customElements.define('actions-menu', ActionsMenu);
