/** What can be done with the notebook as a whole: files, lists, print, look. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { writeCsvGrid, writeCsvList } from '../../exchange/index.ts';
import { fillSelection, deleteRows, insertRows, deleteColumns, insertColumns } from '../editing.ts';
import { resultsFor } from '../export-results.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';

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
      .list h3 {
        padding: 8px 16px 2px;
      }
      .list button {
        display: block;
        inline-size: 100%;
        padding: 4px 16px;
        border: 0;
        border-radius: 0;
        background: none;
        font-weight: 400;
        text-align: start;
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
    const fixed = session.readOnly;
    return html`
      <button class="primary" popovertarget="list" aria-haspopup="menu">Notebook</button>
      <div class="list" id="list" popover>
        <h3>File</h3>
        ${this.#item('Save a file copy', () => this.#tell('save-file'))}
        ${this.#item('Open a file…', () => this.#tell('open-file'))}
        ${this.#item('Save this page as a table (CSV)', () => this.#csv(session, 'grid'))}
        ${this.#item('Save all values as a list (CSV)', () => this.#csv(session, 'list'))}
        ${this.#item('Print…', () => window.print())}
        <h3>Page</h3>
        ${this.#item('Fill the selection down from its first row', () => fillSelection(session, 'down'), fixed)}
        ${this.#item('Fill it to the right from its first column', () => fillSelection(session, 'right'), fixed)}
        ${this.#item('Insert rows above', () => insertRows(session), fixed)}
        ${this.#item('Delete the selected rows', () => deleteRows(session), fixed)}
        ${this.#item('Insert columns before', () => insertColumns(session), fixed)}
        ${this.#item('Delete the selected columns', () => deleteColumns(session), fixed)}
        ${this.#item(session.showFormulas ? 'Show values' : 'Show formulas in place of values', () => {
          session.showFormulas = !session.showFormulas;
          session.changed();
        })}
        <h3>Program</h3>
        ${this.#item(dark() ? 'Light page' : 'Dark page', () => setTheme(dark() ? 'light' : 'dark'))}
        ${this.#item('Check for a new version', () => void session.world.installation.checkForUpdate())}
        ${this.#item('About, licences, cautions', () => this.#tell('about'))}
        ${this.#item('All notebooks on this device', () => this.#tell('all-notebooks'))}
      </div>
    `;
  }

  #item(words: string, act: () => unknown, disabled = false): TemplateResult {
    return html`<button
      ?disabled=${disabled}
      @click=${() => {
        this.renderRoot.querySelector<HTMLElement>('#list')?.hidePopover();
        act();
        this.requestUpdate();
      }}
    >
      ${words}
    </button>`;
  }

  #tell(what: string): void {
    this.dispatchEvent(new CustomEvent(what));
  }

  #csv(session: Session, form: 'grid' | 'list'): void {
    const { notebook, worksheet } = session;
    const results = resultsFor(session);
    const text =
      form === 'grid' ? writeCsvGrid(notebook, worksheet.id, results) : writeCsvList(notebook, results);
    const name = form === 'grid' ? worksheet.title : `${notebook.title} list`;
    void session.world.files.save(`${name}.csv`, text, 'text/csv');
  }
}

export const dark = (): boolean => document.documentElement.dataset['theme'] === 'dark';

/** Sets and keeps the look of the page on this device. */
export function setTheme(theme: 'light' | 'dark'): void {
  document.documentElement.dataset['theme'] = theme;
  try {
    localStorage.setItem('theme', theme);
  } catch {
    // A window without storage keeps the look until it is closed.
  }
}

customElements.define('notebook-menu', NotebookMenu);
