/** The whole screen: head, contents, page, entry line, margin, foot; the start view while no notebook is open. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { readNotebook, writeNotebook } from '../../exchange/index.ts';
import { emptyNotebook, isRefusal } from '../../document/index.ts';
import type { Notebook, UnitSystem } from '../../document/index.ts';
import './contents-rail.ts';
import './desk-head.ts';
import './entry-line.ts';
import './margin-view.ts';
import './page-grid.ts';
import './print-view.ts';
import './start-view.ts';
import { openLeaf } from '../leaves.ts';
import { LeafDialog } from './leaf-dialog.ts';
import { QuestionDialog } from './question-dialog.ts';
import { wasAtMachine } from './machine-page.ts';
import { PageGrid } from './page-grid.ts';
import type { Template, World } from '../ports.ts';
import { commandFor, isPossible } from '../program-commands.ts';
import { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { CAUTION_LINE } from '../usual-cautions.ts';
import { bands } from './bands.ts';
import { resultsFor } from '../export-results.ts';
import { appStyles } from './app-view.styles.ts';

export class AppView extends LitElement {
  static override styles = [shared, appStyles];
  static override properties = { world: { attribute: false } };
  declare world: World | undefined;

  #session: Session | undefined;
  #atMachine = false;
  #unsubscribe: (() => void) | undefined;
  #sheet: 'contents' | 'margin' | undefined;
  #notices: readonly string[] = [];
  #problem = '';

  override connectedCallback(): void {
    super.connectedCallback();
    this.addEventListener('ask-text', (event) => this.#asking?.ask(event));
    this.addEventListener('ask-consent', (event) => this.#asking?.ask(event));
    this.addEventListener('to-page', () => this.#page?.focusCell());
    this.addEventListener('save-file', () => void this.#saveFile());
    this.addEventListener('open-file', () => void this.#openFile());
    this.addEventListener('all-notebooks', () => (location.hash = ''));
    this.addEventListener('open-leaf', (event) => void this.#leaf?.open(event));
    this.addEventListener('keydown', (event) => this.#onKey(event));
    this.addEventListener('dragover', (event) => event.preventDefault());
    this.addEventListener('drop', (event) => void this.#onDrop(event));
    window.addEventListener('hashchange', () => void this.#follow());
  }

  override firstUpdated(): void {
    this.world?.installation.onChange(() => {
      this.requestUpdate();
      this.#session?.changed();
    });
    this.world?.shelf.onLost(() => {
      if (this.#session) this.#session.readOnly = true;
      this.#session?.say('another tab has taken this notebook over; here it is read only', true);
    });
    void this.#follow();
  }

  get #asking(): QuestionDialog | null {
    return this.renderRoot.querySelector('question-dialog');
  }

  get #leaf(): LeafDialog | null {
    return this.renderRoot.querySelector('leaf-dialog');
  }

  get #page(): PageGrid | null {
    return this.renderRoot.querySelector('page-grid');
  }

  /** Opens what the address names: #id of a notebook, nothing for the start view. */
  async #follow(): Promise<void> {
    const { world } = this;
    const id = decodeURIComponent(location.hash.slice(1));
    if (!world || id === (this.#session?.notebook.id ?? '')) return this.requestUpdate();
    await this.#leave();
    if (id === '') return this.requestUpdate();
    const opened = await world.shelf.open(id).catch((reason: unknown) => {
      this.#problem = `this notebook could not be read from the device: ${String(reason)}`;
      return undefined;
    });
    if (!opened) {
      this.#problem ||= 'This device has no such notebook.';
      history.replaceState(null, '', location.pathname + location.search);
      return this.requestUpdate();
    }
    this.#enter(opened.notebook, opened.notices, opened.readOnly);
  }

  #enter(notebook: Notebook, notices: readonly string[], readOnly: boolean): void {
    const { world } = this;
    if (!world) return;
    this.#problem = '';
    this.#notices = notices;
    const session = new Session(world, notebook);
    session.readOnly = readOnly;
    this.#atMachine = wasAtMachine(session);
    this.#session = session;
    let title = '';
    const seen = (): void => {
      if (title !== session.notebook.title)
        document.title = `${(title = session.notebook.title)} · Swarfbook`;
      this.requestUpdate();
    };
    this.#unsubscribe = session.subscribe(seen);
    seen();
    void world.shelf.list().then((items) => {
      const item = items.find((each) => each.id === notebook.id);
      session.copiedAt = item?.copiedAt;
      if (item && session.version === 0) session.saving.state = { type: 'saved', at: item.changedAt };
      this.requestUpdate();
    });
    void this.updateComplete.then(() => setTimeout(() => this.#page?.focusCell()));
  }

  async #leave(): Promise<void> {
    this.#unsubscribe?.();
    const session = this.#session;
    this.#session = undefined;
    document.title = 'Swarfbook';
    await session?.close();
  }

  async #begin(notebook: Notebook): Promise<void> {
    const { world } = this;
    if (!world) return;
    await this.#leave();
    await world.shelf.add(notebook);
    void world.installation.askToKeep();
    location.hash = encodeURIComponent(notebook.id);
  }

  async #openText(text: string, fresh: boolean): Promise<void> {
    const { world } = this;
    const read = readNotebook(text);
    if (!world) return;
    if (isRefusal(read)) return this.#tellProblem(read.message);
    if (read.newer) {
      await this.#leave();
      this.#enter(
        read.notebook,
        ['This file was written by a newer version of the program: it can be read here, not changed.'],
        true,
      );
      return;
    }
    const known = (await world.shelf.list()).some((item) => item.id === read.notebook.id);
    await this.#begin(fresh || known ? { ...read.notebook, id: world.clock.newId() } : read.notebook);
  }

  #tellProblem(words: string): void {
    this.#problem = words;
    this.#session?.say(words, true);
    this.requestUpdate();
  }

  /** A file dropped anywhere on the page is opened. */
  async #onDrop(event: DragEvent): Promise<void> {
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    event.preventDefault();
    await this.#openText(await file.text(), false);
  }

  async #openFile(): Promise<void> {
    try {
      const picked = await this.world?.files.pick('.json,application/json');
      if (picked) await this.#openText(picked.text, false);
    } catch (reason) {
      this.#tellProblem(reason instanceof Error ? reason.message : String(reason));
    }
  }

  async #saveFile(): Promise<void> {
    const session = this.#session;
    const { world } = this;
    if (!session || !world) return;
    await world.files.save(
      `${fileName(session.notebook.title)}.json`,
      writeNotebook(session.notebook, resultsFor(session)),
      'application/json',
    );
    await world.shelf.markCopied(session.notebook.id);
    session.copiedAt = world.clock.now();
    session.changed();
  }

  #onKey(event: KeyboardEvent): void {
    if (event.key === 'F1') {
      event.preventDefault();
      return openLeaf(this, 'help');
    }
    const session = this.#session;
    if (!session || session.draft || event.defaultPrevented || !(event.ctrlKey || event.metaKey)) return;
    const key = event.key.toLowerCase();
    const command = commandFor(event);
    if (key === 'z' && !event.shiftKey) session.undo();
    else if (key === 'y' || (key === 'z' && event.shiftKey)) session.redo();
    else if (command && isPossible(command, session)) void command.run(session, this);
    else return;
    event.preventDefault();
  }

  override render(): TemplateResult {
    const session = this.#session;
    return html`${bands({
        installation: this.world?.installation,
        session,
        notices: this.#notices,
        save: () => void this.#saveFile(),
        takeOver: (held) => void this.#takeOver(held),
        dismiss: (words) => this.#dismiss(words),
      })}
      ${session ? (this.#atMachine ? this.#machine(session) : this.#desk(session)) : this.#start()}
      <print-view .session=${session}></print-view><question-dialog></question-dialog>
      <leaf-dialog .world=${this.world} .session=${session}></leaf-dialog>`;
  }

  #dismiss(words: string): void {
    this.#notices = this.#notices.filter((each) => each !== words);
    this.requestUpdate();
  }

  async #takeOver(session: Session): Promise<void> {
    const { id } = session.notebook;
    await this.world?.shelf.takeOver(id);
    await this.#leave();
    await this.#follow();
  }

  #start(): TemplateResult {
    return html`<start-view
        .world=${this.world}
        .problem=${this.#problem}
        @open-notebook=${(event: CustomEvent<string>) => (location.hash = encodeURIComponent(event.detail))}
        @open-template=${async (event: CustomEvent<Template>) => this.#openText(await event.detail.load(), true)}
        @new-notebook=${(event: CustomEvent<UnitSystem>) => this.#new(event.detail)}
      ></start-view>
      ${this.#foot()}`;
  }

  #new(reading: UnitSystem): void {
    const { world } = this;
    if (world) void this.#begin(emptyNotebook({ id: world.clock.newId(), title: 'New notebook', reading }));
  }

  #machine(session: Session): TemplateResult {
    return html`<machine-page .session=${session} @to-desk=${() => this.#turn(false)}></machine-page>`;
  }

  #turn(atMachine: boolean): void {
    this.#atMachine = atMachine;
    this.requestUpdate();
    void this.updateComplete.then(() => this.#page?.focusCell());
  }

  #desk(session: Session): TemplateResult {
    return html`
      <desk-head
        .session=${session}
        .sheet=${this.#sheet}
        @toggle-sheet=${(event: CustomEvent<'contents' | 'margin'>) => this.#toggle(event.detail)}
        @to-machine=${() => this.#turn(true)}
      ></desk-head>
      <div class="desk ${this.#sheet ? `show-${this.#sheet}` : ''}">
        <contents-rail .session=${session} @click=${() => this.#toggle(undefined)}></contents-rail>
        <main aria-label="worksheet">
          <page-grid .session=${session}></page-grid>
          <entry-line .session=${session}></entry-line>
        </main>
        <margin-view .session=${session}></margin-view>
        ${this.#sheet ? html`<div class="shade" @click=${() => this.#toggle(undefined)}></div>` : nothing}
      </div>
      ${this.#foot()}
    `;
  }

  #toggle(sheet: 'contents' | 'margin' | undefined): void {
    this.#sheet = this.#sheet === sheet ? undefined : sheet;
    this.requestUpdate();
  }

  #foot(): TemplateResult {
    return html`<footer><span aria-hidden="true">▲</span> ${CAUTION_LINE}</footer>`;
  }
}

const fileName = (title: string): string => title.replaceAll(/[^\p{L}\p{N}\-_ ]+/gu, '').trim() || 'notebook';

customElements.define('swarf-book', AppView);
