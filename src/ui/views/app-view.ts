/** The whole screen: head, contents, page, entry line, margin, foot; the start view while no notebook is open. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { emptyNotebook } from '../../document/index.ts';
import type { UnitSystem } from '../../document/index.ts';
import { carriesNotebook } from '../../exchange/index.ts';
import './contents-rail.ts';
import './desk-head.ts';
import './entry-line.ts';
import './margin-view.ts';
import './page-grid.ts';
import { StartView } from './start-view.ts';
import { openLeaf } from '../open-leaf.ts';
import { LeafDialog } from './leaf-dialog.ts';
import { QuestionDialog } from './question-dialog.ts';
import { PageGrid } from './page-grid.ts';
import { fetchMachinePage, wasAtMachine } from '../at-machine.ts';
import { copyReminder } from '../copy-reminder.ts';
import { fetchLater } from '../fetched-later.ts';
import { finished } from '../finished.ts';
import { bringDraftBack } from '../kept-draft.ts';
import { applyMachineOnly, isMachineOnly } from '../machine-only.ts';
import {
  openApart,
  consentToOpen,
  openGivenFile,
  openLink,
  openPickedFile,
  openText,
  saveCopy,
  type Doors,
} from '../notebook-doors.ts';
import { watchPage } from '../page-life.ts';
import type { Opened, Template, World } from '../ports.ts';
import { commandFor, isPossible } from '../program-commands.ts';
import { printNotebook } from '../printing.ts';
import { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { CAUTION_LINE } from '../usual-cautions.ts';
import { bands } from './bands.ts';
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
  /** The user agreed to leave a notebook that is not saved. */
  #mayLose = false;
  #reminded = false;

  override connectedCallback(): void {
    super.connectedCallback();
    this.addEventListener('ask-text', (event) => this.#asking?.ask(event));
    this.addEventListener('ask-consent', (event) => this.#asking?.ask(event));
    this.addEventListener('to-page', () => this.#page?.focusCell());
    this.addEventListener('save-file', () => this.#saveFile());
    this.addEventListener('print-notebook', () => void printNotebook(this.renderRoot));
    this.addEventListener('open-file', () => this.world && void openPickedFile(this.world, this.#doors));
    this.addEventListener('all-notebooks', () => (location.hash = ''));
    this.addEventListener('open-apart', (event) => void openApart(this.world, this.#doors, event));
    this.addEventListener('print-leaf', () => {
      this.toggleAttribute('print-leaf', true);
      window.print();
      this.toggleAttribute('print-leaf', false);
    });
    this.addEventListener('open-margin', () => {
      if (this.#sheet !== 'margin' && matchMedia('(max-width: 1099px)').matches) this.#toggle('margin');
    });
    this.addEventListener('open-leaf', (event) => void this.#leaf?.open(event));
    this.addEventListener('keydown', (event) => this.#onKey(event));
    this.addEventListener('dragover', (event) => event.preventDefault());
    this.addEventListener('drop', (event) => this.#onDrop(event));
    // Nothing may have the focus yet, or no longer.
    window.addEventListener('keydown', (event) => {
      if (event.key !== 'F1') return;
      event.preventDefault();
      openLeaf(this, 'help');
    });
    window.addEventListener('hashchange', () => void this.#follow());
  }

  override firstUpdated(): void {
    this.world?.installation.onChange(() => {
      this.requestUpdate();
      this.#session?.changed();
    });
    const { world } = this;
    if (world) this.#listen(world);
    fetchLater();
    void this.#follow();
  }

  get #asking(): QuestionDialog | null {
    return this.renderRoot.querySelector('question-dialog');
  }

  get #leaf(): LeafDialog | null {
    return this.renderRoot.querySelector('leaf-dialog');
  }

  get #startView(): StartView | null {
    return this.renderRoot.querySelector('start-view');
  }

  get #page(): PageGrid | null {
    return this.renderRoot.querySelector('page-grid');
  }

  readonly #doors: Doors = {
    begin: async (notebook, results, program) => {
      const { world } = this;
      if (!world || !(await this.#mayLeave())) return;
      await this.#leave();
      await world.shelf.add(notebook, results, program);
      location.hash = encodeURIComponent(notebook.id);
    },
    show: async (opened) => {
      if (!(await this.#mayLeave())) return;
      await this.#leave();
      this.#enter(opened);
    },
    tell: (words) => {
      this.#problem = words;
      this.#session?.say(words, true);
      this.requestUpdate();
    },
    cameBack: (received) => {
      if (received.notebook.id !== this.#session?.notebook.id) return false;
      openLeaf(this, 'compare', received);
      return true;
    },
  };

  /** What other tabs, the browser and the system do to this page. */
  #listen(world: World): void {
    const { shelf, installation, files } = world;
    shelf.listen({
      lost: () => {
        if (!this.#session) return;
        this.#session.readOnly = true;
        this.#session.say('another tab has taken this notebook over; here it is read only', true);
      },
      wanted: async () => void (await finished(this.#session, false)),
      edited: (notebook, transaction) => this.#session?.follow(notebook, transaction),
      reloaded: (opened) => this.#session?.restart(opened),
      listed: (id) => void this.#listed(id),
    });
    installation.beforeReload((patient) => {
      if (patient && this.#session?.draft)
        this.#say(
          'Another tab has changed to a new version: this one follows when the open edit is finished.',
        );
      return finished(this.#session, patient);
    });
    files.onLaunch((file) => void openGivenFile(world, this.#doors, file));
    void files.onReceived((file) => this.#asking?.ask(consentToOpen(world, this.#doors, file)));
    watchPage(world, () => this.#session);
  }

  #say(notice: string): void {
    if (!this.#notices.includes(notice)) this.#notices = [...this.#notices, notice];
    this.requestUpdate();
  }

  /** The list has changed: in another tab, or because a file copy went out. */
  async #listed(id: string): Promise<void> {
    void this.#startView?.refresh();
    const session = this.#session;
    if (!session || session.notebook.id !== id) return;
    const item = await this.world?.shelf.item(id).catch(() => undefined);
    if (!item || session !== this.#session) return;
    session.copiedAt = item.copiedAt;
    session.madeAt = item.madeAt;
    session.saving.lastChanged(item.changedAt);
    if (item.removedAt !== undefined)
      this.#say(
        'This notebook was removed from this device and is kept aside. The next edit brings it back.',
      );
    session.changed();
  }

  /** Opens what the address names: #id of a notebook, nothing for the start view. */
  async #follow(): Promise<void> {
    const { world } = this;
    const here = this.#session?.notebook.id ?? '';
    const { hash, pathname, search } = location;
    if (world && carriesNotebook(hash)) {
      history.replaceState(null, '', here === '' ? pathname + search : `#${encodeURIComponent(here)}`);
      return openLink(world, this.#doors, hash);
    }
    const id = decodeURIComponent(hash.slice(1));
    if (!world || id === here) return this.requestUpdate();
    if (!(await this.#mayLeave(id))) {
      history.replaceState(null, '', `#${encodeURIComponent(here)}`);
      return;
    }
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
    this.#enter(opened);
  }

  /** Whether the open notebook can be left without a loss; otherwise asks, and goes to the other one if the user wants it. */
  async #mayLeave(to?: string): Promise<boolean> {
    const session = this.#session;
    if (this.#mayLose || !session || (await finished(session, false))) return true;
    if (session.draft || to === undefined) return false;
    const detail = {
      title: 'Leave this notebook although it is not saved?',
      words: 'What this device could not keep is lost then. A file copy keeps it.',
      action: 'Leave and lose it',
      done: () => {
        this.#mayLose = true;
        location.hash = encodeURIComponent(to);
      },
    };
    this.#asking?.ask(new CustomEvent('ask-consent', { detail }));
    return false;
  }

  #enter(opened: Opened): void {
    const { world } = this;
    if (!world) return;
    this.#problem = '';
    this.#notices = opened.notices;
    this.#mayLose = false;
    this.#reminded = false;
    const session = new Session(world, opened);
    applyMachineOnly(session);
    this.#atMachine = wasAtMachine(session) || isMachineOnly(session);
    this.#session = session;
    bringDraftBack(session);
    let title = '';
    const seen = (): void => {
      if (title !== session.notebook.title)
        document.title = `${(title = session.notebook.title)} · Swarfbook`;
      this.requestUpdate();
    };
    this.#unsubscribe = session.subscribe(seen);
    seen();
    void this.#listed(session.notebook.id);
    void world.shelf.check().then((words) => words.forEach((each) => this.#say(each)));
    void this.updateComplete.then(() => setTimeout(() => this.#page?.focusCell()));
  }

  async #leave(): Promise<void> {
    this.#unsubscribe?.();
    const session = this.#session;
    this.#session = undefined;
    document.title = 'Swarfbook';
    await session?.close();
  }

  /** A file dropped anywhere on the page is opened. */
  #onDrop(event: DragEvent): void {
    const file = event.dataTransfer?.files[0];
    if (!file || !this.world) return;
    event.preventDefault();
    void openGivenFile(this.world, this.#doors, file);
  }

  #saveFile(): void {
    if (this.world && this.#session) void saveCopy(this.world, this.#session, this);
  }

  #onKey(event: KeyboardEvent): void {
    const session = this.#session;
    const key = event.ctrlKey || event.metaKey ? event.key.toLowerCase() : '';
    // While a text is open its keys are its own; going to a place is for it, too.
    if (!session || key === '' || (session.draft && key !== 'g') || event.defaultPrevented) return;
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
        reminder: session && !this.#reminded ? copyReminder(session) : undefined,
        save: () => this.#saveFile(),
        later: () => this.#later(),
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

  #later(): void {
    this.#reminded = true;
    this.requestUpdate();
  }

  async #takeOver(session: Session): Promise<void> {
    const { shelf } = this.world ?? {};
    await shelf?.takeOver(session.notebook.id);
    const opened = await shelf?.open(session.notebook.id);
    if (!opened || session !== this.#session) return;
    session.readOnly = opened.readOnly;
    for (const notice of opened.notices) this.#say(notice);
    session.notice = undefined;
    session.restart(opened);
    this.#page?.focusCell();
  }

  #start(): TemplateResult {
    return html`<start-view
        .world=${this.world}
        .problem=${this.#problem}
        .readiness=${this.world?.installation.readiness}
        .persisted=${this.world?.installation.persisted}
        .risk=${this.world?.installation.risk}
        @open-notebook=${(event: CustomEvent<string>) => (location.hash = encodeURIComponent(event.detail))}
        @open-template=${(event: CustomEvent<Template>) => this.#open(event.detail)}
        @new-notebook=${(event: CustomEvent<UnitSystem>) => this.#new(event.detail)}
      ></start-view>
      ${this.#foot()}`;
  }

  async #open(template: Template): Promise<void> {
    if (this.world) await openText(this.world, this.#doors, await template.load(), true);
  }

  #new(reading: UnitSystem): void {
    const { world } = this;
    if (world)
      void this.#doors.begin(emptyNotebook({ id: world.clock.newId(), title: 'New notebook', reading }));
  }

  #machine(session: Session): TemplateResult {
    void fetchMachinePage();
    return html`<machine-page .session=${session} @to-desk=${() => this.#turn(false)}></machine-page>`;
  }

  #turn(atMachine: boolean): void {
    if (this.#session?.draft && !this.#session.leaveDraft?.()) return;
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

customElements.define('swarf-book', AppView);
