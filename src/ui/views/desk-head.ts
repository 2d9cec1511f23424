/** Head of the desk: title, what is saved, units shown, undo and redo, the way to the machine, the menu. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { changeSettings, shownVariant } from '../../document/index.ts';
import { saveWords } from '../save-words.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';
import { headStyles } from './desk-head.styles.ts';
import './notebook-menu.ts';

type Side = 'contents' | 'margin';

export class DeskHead extends LitElement {
  static override styles = [shared, headStyles];
  static override properties = { session: { attribute: false }, sheet: { attribute: false } };
  declare session: Session | undefined;
  /** Which side column slides over the page. */
  declare sheet: Side | undefined;

  constructor() {
    super();
    new Watching(this);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const shown = shownVariant(session.notebook);
    return html`<header>
      ${this.#side('contents', 'Contents', 'quiet narrow')}
      <h1>
        <button
          class="quiet"
          title="rename"
          ?disabled=${session.readOnly}
          @click=${() => this.#rename(session)}
        >
          ${session.notebook.title}
        </button>
      </h1>
      <span class="status" role="status">${saveWords(session)}</span>
      ${shown ? html`<span class="variant">shows ${shown.title}</span>` : nothing}
      <span class="spring"></span>
      ${this.#computing(session)}
      <span class="switch" role="group" aria-label="units in which results are shown">
        ${(['metric', 'inch'] as const).map(
          (system) =>
            html`<button
              aria-pressed=${session.notebook.display === system ? 'true' : 'false'}
              @click=${() => session.run(changeSettings(session.notebook, { display: system }))}
            >
              ${system}
            </button>`,
        )}
      </span>
      <button ?disabled=${!session.canUndo} title="Ctrl+Z" @click=${() => session.undo()}>Undo</button>
      <button ?disabled=${!session.canRedo} title="Ctrl+Y" @click=${() => session.redo()}>Redo</button>
      <button @click=${() => this.#tell('to-machine')}>At the machine</button>
      <notebook-menu .session=${session}></notebook-menu>
      ${this.#side('margin', 'Margin', 'quiet narrow last')}
    </header>`;
  }

  #side(side: Side, words: string, looks: string): TemplateResult {
    return html`<button
      class=${looks}
      aria-expanded=${this.sheet === side}
      @click=${() => this.#tell('toggle-sheet', side)}
    >
      ${words}
    </button>`;
  }

  #computing(session: Session): TemplateResult | typeof nothing {
    const { state, words } = session.computing;
    if (session.results.fromLastTime && state !== 'restarted')
      return html`<span class="busy" role="status">values from last time, ${words || 'computing'}…</span>`;
    if (state === 'slow')
      return html`<span class="busy" role="status"
        >${words} <button @click=${() => session.stopComputing()}>Stop</button></span
      >`;
    return state === 'restarted' ? html`<span class="busy" role="alert">▲ ${words}</span>` : nothing;
  }

  #rename(session: Session): void {
    this.#tell('ask-text', {
      title: 'Title of the notebook',
      words: '',
      value: session.notebook.title,
      done: (title: string) => title && session.run(changeSettings(session.notebook, { title })),
    });
  }

  #tell(what: string, detail?: unknown): void {
    this.dispatchEvent(new CustomEvent(what, { bubbles: true, composed: true, detail }));
  }
}
customElements.define('desk-head', DeskHead);
