/** A worksheet at the machine: the values that may be changed there, the results that matter, the cautions; nothing else. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { cautionBand, nothingMarked, savedWords, stepWords } from '../elements/machine-words.ts';
import { MachineAsk, reasonQuestion, whoQuestion } from '../elements/machine-ask.ts';
import { machineBar } from '../elements/machine-bar.ts';
import { machineField } from '../elements/machine-field.ts';
import type { FieldHands } from '../elements/machine-field.ts';
import { hasRecord, machineRecord } from '../elements/machine-record.ts';
import { machinePad } from '../elements/machine-pad.ts';
import type { OpenField } from '../elements/machine-pad.ts';
import { decisionsFirst, machineResult } from '../elements/machine-result.ts';
import { caretIn, pressed, chosenWhole, type EditedText, type KeypadPress } from '../keypad-press.ts';
import { NOBODY } from '../not-taken.ts';
import { isNumberField, machineCells } from '../machine-cells.ts';
import type { MachineCell, MachineCells } from '../machine-cells.ts';
import { addFields, removeFields } from '../finished.ts';
import { changedAtMachine } from '../machine-change.ts';
import { entryAt, textInField } from '../machine-entry.ts';
import { changedSince, keepReceived, keptReceived, receivedNow, restored } from '../received-values.ts';
import type { Received } from '../received-values.ts';
import { editedText, markedDigits } from '../number-locale.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { shownNumber, stepOfCell, stepped } from '../stepping.ts';
import { knownNames, rememberName, whoNow } from '../who.ts';
import { WakeLock } from '../wake-lock.ts';
import { Watching } from '../watching.ts';
import { machineStyles } from './machine-page.styles.ts';

export class MachinePage extends LitElement {
  static override styles = [shared, machineStyles];
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  #received: Received | undefined;
  /** The last step of the history when the page was opened: undo ends there. */
  #undoEnd: unknown;
  #open: OpenField | undefined;
  /** Texts that were refused in fields the hands have left: they stand there still, with the words why. */
  readonly #refused = new Map<string, OpenField>();
  /** What stood in the open field when it was taken in hand. */
  #began = '';
  readonly #holds = (): boolean =>
    this.#refused.size > 0 || (this.#open?.edited.text ?? this.#began) !== this.#began;
  #select = false;
  #stopped: { readonly address: string; readonly side: 'low' | 'high' } | undefined;
  #keypad = matchMedia('(pointer: coarse)').matches;
  #allCautions = false;
  #announced = '';
  readonly #wake = new WakeLock(() => this.requestUpdate());

  constructor() {
    super();
    new Watching(this);
    this.addEventListener('keypad', (event) => {
      if (event instanceof CustomEvent) this.#press(event.detail as KeypadPress);
    });
    this.addEventListener('keydown', (event) => {
      if (!(event.ctrlKey || event.metaKey) || !['z', 'y'].includes(event.key.toLowerCase())) return;
      event.stopPropagation();
      if (this.#open || event.key.toLowerCase() === 'y') return;
      event.preventDefault();
      if (this.session) this.#undo(this.session);
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    void this.#wake.keep(false);
    if (this.session) removeFields(this.session, this.#holds);
  }

  override willUpdate(): void {
    const { session } = this;
    if (!session || this.#received?.notebook === session.notebook.id) return;
    const { worksheet, notebook } = session;
    addFields(session, this.#holds);
    const kept = keptReceived(notebook);
    const { changed } = machineCells(session, worksheet);
    this.#received = kept?.worksheet === worksheet.id ? kept : receivedNow(notebook, worksheet.id, changed);
    this.#undoEnd = session.history.past.at(-1);
    keepReceived(this.#received);
  }

  override updated(): void {
    const input = this.#input;
    if (!input || !this.#open || !this.#select) return;
    this.#select = false;
    input.setSelectionRange(this.#open.edited.from, this.#open.edited.to);
  }

  get #input(): HTMLInputElement | null {
    return this.#fieldAt(this.#open?.address);
  }

  #fieldAt(address: string | undefined): HTMLInputElement | null {
    return this.renderRoot.querySelector(`[data-field="${address}"]`);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const { notebook, worksheet } = session;
    const cells = machineCells(session, worksheet);
    const empty = cells.changed.length + cells.shown.length === 0 && !hasRecord(session);
    const open = cells.changed.find(({ address }) => address === this.#open?.address);
    const typing = open && this.#keypad && isNumberField(open, session.notebook);
    return html`
      <header>
        <div>
          <h1>${worksheet.title}</h1>
          <p>${notebook.title} · at the machine · ${savedWords(session)}</p>
        </div>
        <button @click=${() => this.#leave()}>Back to the desk</button>
      </header>
      ${
        empty
          ? nothing
          : cautionBand(session, cells, this.#allCautions, () => {
              this.#allCautions = !this.#allCautions;
              this.requestUpdate();
            })
      }
      <div class="work ${typing ? 'typing-now' : ''}">
        ${empty ? nothingMarked(session, (id) => this.#turnTo(session, id)) : this.#main(session, cells)}
        ${typing ? machinePad(session, open, this.#open, cells.changed.at(-1) === open) : nothing}
      </div>
      ${empty || typing ? nothing : this.#bar(session)}
      <div class="unseen" role="status" aria-live="polite">${this.#announced}</div>
      <machine-ask></machine-ask>
    `;
  }

  #main(session: Session, { changed, shown }: MachineCells): TemplateResult {
    const { fromLastTime } = session.results;
    const sound =
      !fromLastTime &&
      ![...changed, ...shown].some(
        ({ result }) => result?.error || result?.cautions.some(({ type }) => type === 'breach'),
      );
    return html`<main class=${changed.length > 0 && shown.length > 0 ? 'two' : ''}>
      ${
        changed.length === 0
          ? nothing
          : html`<section aria-labelledby="changed">
              <h2 id="changed">May be changed here</h2>
              <div class="fields">${changed.map((one) => this.#field(session, one))}</div>
            </section>`
      }
      ${
        shown.length === 0
          ? nothing
          : html`<section aria-labelledby="shown">
              <h2 id="shown">
                Worked out from these${fromLastTime ? ' · values from last time, computing…' : nothing}
              </h2>
              <div class="results" aria-live="off">
                ${decisionsFirst(shown).map((one) => machineResult(one, session.notebook, sound))}
              </div>
            </section>`
      }
      ${machineRecord(session)}
    </main>`;
  }

  #field(session: Session, one: MachineCell): TemplateResult {
    const open = this.#open?.address === one.address ? this.#open : this.#refused.get(one.address);
    const was = this.#received && changedSince(this.#received, one.row, one.column, one.cell);
    const state = {
      notebook: session.notebook,
      readOnly: session.readOnly,
      edited: open?.edited,
      refusal: open?.refusal,
      stoppedAt: this.#stopped?.address === one.address ? this.#stopped.side : undefined,
      received: was?.content,
      now: session.world.clock.now(),
      keypad: this.#keypad,
    };
    const hands: FieldHands = {
      begin: () => this.#begin(session, one),
      type: (edited) => this.#type(one, edited),
      key: (event) => this.#key(session, one, event),
      leave: (event) => this.#left(session, one, event),
      step: (direction) => this.#step(session, one, direction),
      choose: (text) => this.#enter(session, one, editedText(text, session.notebook.currency)),
    };
    return machineField(one, state, hands);
  }

  #begin(session: Session, one: MachineCell): void {
    const refused = this.#refused.get(one.address);
    if ((session.readOnly && !refused) || this.#open?.address === one.address) return;
    if (this.#open && !this.#commit(session)) this.#refused.set(this.#open.address, this.#open);
    const text = refused?.edited.text ?? textInField(one.cell, session.notebook);
    this.#refused.delete(one.address);
    this.#open = { ...refused, address: one.address, edited: chosenWhole(text) };
    this.#began = text;
    this.#select = true;
    if (this.#stopped?.address !== one.address) this.#stopped = undefined;
    this.requestUpdate();
    // A tap puts the caret after the focus: the whole value is to be selected, and to be seen above the keypad.
    void this.updateComplete.then(() =>
      setTimeout(() => {
        const input = this.#input;
        if (this.#open?.edited.text !== text || !input) return;
        input.setSelectionRange(0, text.length);
        input.closest('.field')?.scrollIntoView({ block: 'nearest' });
      }, 60),
    );
  }

  #type({ address }: MachineCell, edited: EditedText): void {
    this.#open = { address, edited };
    this.#stopped = undefined;
    this.requestUpdate();
  }

  #key(session: Session, one: MachineCell, event: KeyboardEvent): void {
    if (event.isComposing) return;
    if (event.key === 'Enter') this.#commit(session);
    else if (event.key === 'Escape') this.#drop();
    else if (event.key === 'ArrowUp') this.#stepByKey(session, one, 1);
    else if (event.key === 'ArrowDown') this.#stepByKey(session, one, -1);
    else return;
    event.preventDefault();
  }

  /** The field stays in hand: the next key steps again, a digit begins the value anew. */
  #stepByKey(session: Session, one: MachineCell, direction: 1 | -1): void {
    this.#step(session, one, direction);
    void this.updateComplete.then(() => this.#fieldAt(one.address)?.focus());
  }

  #left(session: Session, { address }: MachineCell, { relatedTarget }: FocusEvent): void {
    const toKeypad = relatedTarget instanceof Element && relatedTarget.localName === 'on-screen-keypad';
    if (toKeypad || !document.hasFocus() || this.#open?.address !== address) return;
    this.#commit(session);
  }

  #press(press: KeypadPress): void {
    const { session } = this;
    const open = this.#open;
    if (!session || !open) return;
    if (press.type === 'leave') return this.#drop();
    if (press.type === 'done') return void this.#commit(session);
    if (press.type === 'next') return this.#next(session, open.address);
    this.#open = { address: open.address, edited: pressed(caretIn(this.#input, open.edited), press) };
    this.#select = true;
    this.requestUpdate();
  }

  #next(session: Session, address: string): void {
    const { changed } = machineCells(session, session.worksheet);
    const after = changed[changed.findIndex((one) => one.address === address) + 1];
    if (!this.#commit(session) || !after) return;
    this.renderRoot
      .querySelector<HTMLElement>(`[data-field="${after.address}"], [data-cell="${after.address}"] select`)
      ?.focus();
  }

  /** False where what was typed is refused: then it stays open with the words why. */
  #commit(session: Session): boolean {
    const open = this.#open;
    const one = machineCells(session, session.worksheet).changed.find(
      ({ address }) => address === open?.address,
    );
    if (!open || !one) return true;
    const entry = entryAt(one, open.edited.text, session.notebook);
    if (entry.type === 'refused') {
      this.#open = { ...open, refusal: entry.words };
      this.#announced = entry.words;
      this.requestUpdate();
      return false;
    }
    this.#drop();
    if (entry.type !== 'taken') return true;
    this.#announced = `${one.label} ${editedText(entry.content, session.notebook.currency)}${entry.breach === undefined ? '' : `, ${entry.breach}`}`;
    if (entry.breach !== undefined) void this.#pass(session, one, open.edited.text, entry.breach);
    else this.#enter(session, one, open.edited.text);
    return true;
  }

  #drop(): void {
    const input = this.#input;
    this.#open = undefined;
    input?.blur();
    this.requestUpdate();
  }

  /** A limit is passed only with a reason; without one the value stays. */
  async #pass(session: Session, one: MachineCell, typed: string, breach: string): Promise<void> {
    const reason = await this.#ask?.ask(reasonQuestion(one.label, breach));
    if (reason !== undefined) this.#enter(session, one, typed, reason);
    else this.#announced = `${one.label} stays as it was`;
    this.requestUpdate();
  }

  async #askWho(): Promise<boolean> {
    const name = await this.#ask?.ask(whoQuestion(knownNames()));
    if (name !== undefined) rememberName(name);
    this.requestUpdate();
    return name !== undefined;
  }

  #enter(session: Session, one: MachineCell, typed: string, reason = one.cell.changed?.reason): void {
    const by = whoNow();
    if (by === undefined)
      return void this.#askWho().then((said) =>
        said ? this.#enter(session, one, typed, reason) : this.#keep(one, typed, NOBODY),
      );
    const { row, column } = one;
    const at = new Date(session.world.clock.now()).toISOString();
    const passes = 'breach' in entryAt(one, typed, session.notebook);
    const why = passes && reason !== undefined ? { reason } : {};
    const place = { worksheet: session.worksheet.id, row, column };
    this.#stopped = undefined;
    this.#refused.delete(one.address);
    if (!session.run(changedAtMachine(session.notebook, { ...place, typed, by, at, ...why })))
      this.#keep(one, typed, session.notice?.words ?? '');
    this.requestUpdate();
  }

  /** What could not go into its cell stays in its field. */
  #keep({ address, cell }: MachineCell, typed: string, refusal: string): void {
    this.#announced = refusal;
    if (!cell.choices) this.#refused.set(address, { address, refusal, edited: chosenWhole(typed) });
  }

  get #ask(): MachineAsk | null {
    return this.renderRoot.querySelector('machine-ask');
  }

  #step(session: Session, { address }: MachineCell, direction: 1 | -1): void {
    if (session.readOnly) return;
    if (this.#open && !this.#commit(session) && this.#open.address === address) return;
    const one = machineCells(session, session.worksheet).changed.find((each) => each.address === address);
    const { currency } = session.notebook;
    const shown = one && shownNumber(one.cell, currency);
    if (!one || !shown) return;
    const step = stepOfCell(one.cell, shown, currency);
    const { text, stoppedAt } = stepped(shown, direction, step, one.cell.limits, currency);
    if (text !== undefined) this.#enter(session, one, markedDigits(text));
    this.#stopped = stoppedAt && { address, side: stoppedAt };
    this.#announced = stepWords(one, text ?? shown.text, shown, stoppedAt);
    this.requestUpdate();
  }

  #bar(session: Session): TemplateResult {
    const back = this.#received && restored(session.notebook, this.#received);
    return machineBar({
      canUndo: this.#canUndo(session),
      undo: () => this.#undo(session),
      canRestore: back !== undefined && back.changes.length > 0 && !session.readOnly,
      restore: () => {
        this.#stopped = undefined;
        if (back && session.run(back)) this.#announced = 'the values are as received';
      },
      wake: this.#wake.state,
      keepOn: (wanted) => void this.#wake.keep(wanted),
      keypad: this.#keypad,
      useKeypad: (wanted) => {
        this.#keypad = wanted;
        this.requestUpdate();
      },
      askWho: () => void this.#askWho(),
    });
  }

  /** What is recorded is corrected or withdrawn, never taken back by a press. */
  #canUndo(session: Session): boolean {
    const last = session.history.past.at(-1);
    return session.canUndo && last !== this.#undoEnd && !last?.changes.some(({ type }) => type === 'part');
  }

  #undo(session: Session): void {
    if (!this.#canUndo(session)) return;
    this.#stopped = undefined;
    session.undo();
    this.#announced = 'undone';
  }

  #turnTo(session: Session, worksheet: string): void {
    this.#received = undefined;
    keepReceived(undefined);
    session.select(0, 0, false, worksheet);
  }

  #leave(): void {
    const { session } = this;
    const open = session && !this.#commit(session) ? this.#open?.address : undefined;
    // What was refused would be gone with the page: it is put right or dropped first.
    const refused = [open, ...this.#refused.keys()].map((each) => this.#fieldAt(each)).find((each) => each);
    if (refused) return refused.focus();
    keepReceived(undefined);
    this.dispatchEvent(new CustomEvent('to-desk', { bubbles: true, composed: true }));
  }
}

customElements.define('machine-page', MachinePage);
