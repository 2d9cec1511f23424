/** One pass of a trial: recorded, or corrected with the first values kept. One committed edit when it is saved. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { isRefusal, partsOf } from '../../document/index.ts';
import type { Refusal, Transaction, Trial, TrialPass } from '../../document/index.ts';
import { withdrawPass } from '../../trial/index.ts';
import { MachineAsk, whoQuestion, withdrawQuestion } from '../elements/machine-ask.ts';
import '../elements/keypad.ts';
import { cautionsInShort } from '../elements/machine-words.ts';
import { numberLine, ownUnit, photographLine, runLine, textLine } from '../elements/pass-lines.ts';
import type { PassHands } from '../elements/pass-lines.ts';
import { addFields, removeFields } from '../finished.ts';
import { caretIn, pressed } from '../keypad-press.ts';
import type { KeypadPress } from '../keypad-press.ts';
import { momentText } from '../machine-change.ts';
import { decimalMark, editedText } from '../number-locale.ts';
import { numberFields, passAnswer, passDraft, withText } from '../pass-saving.ts';
import type { NumberField, PassDraft } from '../pass-saving.ts';
import { scaledPhotograph } from '../photograph.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { kindNameOf, limitReached } from '../trial-passes.ts';
import { knownNames, rememberName, whoNow } from '../who.ts';
import { passFormStyles } from './pass-form.styles.ts';

export class PassForm extends LitElement {
  static override styles = [shared, passFormStyles];
  static override properties = {
    session: { attribute: false },
    draft: { state: true },
    busy: { state: true },
  };
  declare session: Session | undefined;
  declare draft: PassDraft | undefined;
  declare busy: string;
  readonly #keypad = matchMedia('(pointer: coarse)').matches;
  #select = false;
  /** What stood in the number field when it was taken in hand. */
  #before = '';
  /** Passes that were left unfinished, by trial and pass: each is there again when it is opened. */
  readonly #left = new Map<string, PassDraft>();
  readonly #holds = (): boolean => this.#left.size > 0 || (this.draft !== undefined && isTyped(this.draft));

  constructor() {
    super();
    this.busy = '';
    this.addEventListener('keypad', (event) => {
      event.stopPropagation();
      if (event instanceof CustomEvent) this.#press(event.detail as KeypadPress);
    });
    this.addEventListener('keydown', (event) => event.stopPropagation());
  }

  /** Opens it for the next pass, or for one that is to be corrected. */
  open(trial: Trial, pass?: TrialPass): void {
    const { session } = this;
    if (!session) return;
    addFields(session, this.#holds);
    const fresh = passDraft(trial, pass, session.notebook.currency);
    this.draft = this.#left.get(keyOf(fresh)) ?? fresh;
    this.#left.delete(keyOf(fresh));
    void this.updateComplete.then(() => {
      this.#dialog?.showModal();
      if (!pass) this.#field('cut')?.focus();
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (this.session) removeFields(this.session, this.#holds);
  }

  override updated(): void {
    const open = this.draft?.open;
    if (!open || !this.#select) return;
    this.#select = false;
    this.#field(open.key)?.setSelectionRange(open.edited.from, open.edited.to);
  }

  get #dialog(): HTMLDialogElement | null {
    return this.renderRoot.querySelector('dialog');
  }
  get #ask(): MachineAsk | null {
    return this.renderRoot.querySelector('machine-ask');
  }
  get #trial(): Trial | undefined {
    const { session, draft } = this;
    return session && partsOf(session.notebook, 'trials').find(({ id }) => id === draft?.trial);
  }
  #field(key: string): HTMLInputElement | null {
    return this.renderRoot.querySelector(`[data-key="${CSS.escape(key)}"]`);
  }

  override render(): TemplateResult | typeof nothing {
    const { draft, session } = this;
    const trial = this.#trial;
    if (!draft || !session || !trial) return nothing;
    const { notebook } = session;
    const fields = numberFields(trial, draft, notebook.currency);
    const typed = this.#keypad ? fields.find(({ key }) => key === draft.open?.key) : undefined;
    const at = draft.pass ? trial.passes.findIndex(({ id }) => id === draft.pass?.id) : trial.passes.length;
    const hands = this.#hands();
    const kept = partsOf(notebook, 'photographs').find(({ id }) => id === draft.pass?.photograph);
    return html`<dialog aria-labelledby="title" @close=${() => this.#closed()}>
        <header>
          <div>
            <h2 id="title">${draft.pass ? `Correct pass ${at + 1}` : `Pass ${at + 1}`}</h2>
            <p>${trial.title}</p>
          </div>
          <button @click=${() => void this.#askWho()} aria-label="Who records: ${whoNow() ?? 'not said yet'}">
            ${whoNow() ?? 'Who?'}
          </button>
        </header>
        ${cautionsInShort(session)} ${this.#stop(session, trial, draft)}
        <div class="body ${typed ? 'typing' : ''}">
          <div class="fields">
            ${runLine(trial, draft, hands)} ${textLine(draft, 'edge', 'Edge, as marked', hands)}
            ${fields.map((field) => numberLine(draft, field, hands))}
            ${textLine(draft, 'note', 'Note', hands)} ${photographLine(draft, kept, this.busy, hands)}
            ${draft.pass ? this.#corrections(session, draft.pass) : nothing}
          </div>
          ${typed ? this.#pad(session, draft, typed, fields.at(-1) === typed) : nothing}
        </div>
        ${typed ? nothing : this.#out(session, draft, at + 1)}
      </dialog>
      <machine-ask></machine-ask>`;
  }

  #stop({ notebook }: Session, trial: Trial, draft: PassDraft): TemplateResult {
    const edge = draft.texts.get('edge') ?? '';
    const reached = draft.pass
      ? undefined
      : (draft.ended ?? limitReached(trial, draft.run, edge, notebook.currency));
    return html`<p class="stop">
      ▲ Measure with the spindle stopped and locked; chips and edges cut.
      ${reached === undefined ? nothing : html`<b>${reached}.</b>`}
    </p>`;
  }

  #hands(): PassHands {
    return {
      keypad: this.#keypad,
      choose: (run) => this.#take({ run, ended: undefined }),
      type: (key, text) => this.draft && this.#take(withText(this.draft, key, text)),
      toText: () => this.#take({ open: undefined }),
      begin: (key) => this.#begin(key),
      typeNumber: (key, text) => {
        if (!this.draft) return;
        const edited = { text, from: text.length, to: text.length };
        this.#take({ ...withText(this.draft, key, text), open: { key, edited } });
      },
      key: (event) => this.#key(event),
      photographed: (file) => void this.#photographed(file),
    };
  }

  #corrections({ notebook, world }: Session, { corrections = [] }: TrialPass): unknown {
    return corrections.map(
      ({ at, by, what, was }) =>
        html`<p class="before">
          ${what}: was ${was === '' ? 'empty' : editedText(was, notebook.currency)} until
          ${momentText(at, world.clock.now())}, ${by}
        </p>`,
    );
  }

  #pad(
    { notebook }: Session,
    draft: PassDraft,
    { key, label, unit }: NumberField,
    last: boolean,
  ): TemplateResult {
    return html`<on-screen-keypad
      .kind=${kindNameOf(unit, notebook)}
      .currency=${notebook.currency}
      .unit=${ownUnit(draft.texts.get(key) ?? '') ?? unit}
      .decimalMark=${decimalMark()}
      .for=${label}
      .last=${last}
    ></on-screen-keypad>`;
  }

  #out({ readOnly }: Session, { pass }: PassDraft, number: number): TemplateResult {
    const words = pass?.withdrawn === undefined ? 'Withdraw…' : 'Count it again';
    return html`<div class="out ${pass ? 'three' : ''}">
      <button @click=${() => this.#dialog?.close()}>Leave it</button>
      ${pass ? html`<button ?disabled=${readOnly} @click=${() => void this.#withdraw(pass)}>${words}</button>` : nothing}
      <button class="primary" ?disabled=${readOnly} @click=${() => void this.#save()}>
        ${pass ? 'Save the correction' : `Save pass ${number}`}
      </button>
    </div>`;
  }

  #closed(): void {
    const { draft } = this;
    if (draft && isTyped(draft) && (!draft.pass || this.session?.readOnly))
      this.#left.set(keyOf(draft), { ...draft, open: undefined, refusal: undefined });
    this.draft = undefined;
  }

  #take(part: Partial<PassDraft>): void {
    if (this.draft) this.draft = { ...this.draft, ...part };
  }

  #begin(key: string): void {
    if (this.draft?.open?.key === key) return;
    const text = this.draft?.texts.get(key) ?? '';
    this.#before = text;
    this.#take({ open: { key, edited: { text, from: 0, to: text.length } } });
    this.#select = true;
    void this.updateComplete.then(() =>
      this.#field(key)?.closest('.line')?.scrollIntoView({ block: 'nearest' }),
    );
  }

  #key(event: KeyboardEvent): void {
    if (event.key !== 'Enter' || event.isComposing) return;
    event.preventDefault();
    const order = [...this.renderRoot.querySelectorAll<HTMLElement>('[data-key]')];
    const at = order.findIndex((each) => each === event.currentTarget);
    const after = order[at + 1] ?? this.renderRoot.querySelector<HTMLElement>('.out .primary');
    after?.focus();
  }

  #press(press: KeypadPress): void {
    const { draft, session } = this;
    const trial = this.#trial;
    if (!draft?.open || !trial || !session) return;
    const { key, edited } = draft.open;
    if (press.type === 'next') {
      const keys = numberFields(trial, draft, session.notebook.currency).map((field) => field.key);
      const after = keys[keys.indexOf(key) + 1];
      if (after !== undefined) return this.#field(after)?.focus();
    }
    const input = this.#field(key);
    if (press.type === 'leave' || press.type === 'done' || press.type === 'next') {
      input?.blur();
      const left = press.type === 'leave' ? withText(draft, key, this.#before) : draft;
      return this.#take({ ...left, open: undefined });
    }
    const next = pressed(caretIn(input, edited), press);
    this.#take({ ...withText(draft, key, next.text), open: { key, edited: next } });
    this.#select = true;
  }

  async #photographed(file: File): Promise<void> {
    const { session, draft } = this;
    if (!session || !draft) return;
    this.busy = 'being scaled down…';
    const words = `Edge ${draft.texts.get('edge') ?? ''}, ${this.#trial?.title ?? ''}`.slice(0, 200);
    try {
      this.#take({ photograph: await scaledPhotograph(file, words, nowIn(session)) });
    } catch (reason) {
      const why = reason instanceof Error ? reason.message : String(reason);
      this.#take({ refusal: { key: 'photograph', words: why } });
    }
    this.busy = '';
  }

  async #askWho(): Promise<string | undefined> {
    const name = await this.#ask?.ask(whoQuestion(knownNames()));
    if (name !== undefined) rememberName(name);
    this.requestUpdate();
    return name;
  }

  /** Carries the answer out; where it is refused the form stays open with the words why. */
  #carryOut(session: Session, answer: Transaction | Refusal, key: string): boolean {
    if (isRefusal(answer)) {
      this.#take({ refusal: { key, words: answer.message } });
      void this.updateComplete.then(() =>
        this.renderRoot.querySelector('.wrong')?.scrollIntoView({ block: 'nearest' }),
      );
      return false;
    }
    if (!session.run(answer)) {
      const { words = '' } = session.notice ?? {};
      this.#take({ refusal: { key, words: `${words} ${KEPT}` } });
      return false;
    }
    this.draft = undefined;
    // Closed, not only gone: the focus goes back to where it came from.
    this.#dialog?.close();
    return true;
  }

  async #save(): Promise<void> {
    const by = whoNow() ?? (await this.#askWho());
    const { session, draft } = this;
    const trial = this.#trial;
    if (!session || !draft || !trial || by === undefined) return;
    const { answer, key } = passAnswer(session.notebook, trial, draft, { by, at: nowIn(session) });
    this.#carryOut(session, answer, key);
  }

  async #withdraw(pass: TrialPass): Promise<void> {
    const { session, draft } = this;
    if (!session || !draft) return;
    const by = whoNow() ?? (await this.#askWho());
    if (by === undefined) return;
    const reason = pass.withdrawn === undefined ? await this.#ask?.ask(withdrawQuestion) : '';
    if (reason === undefined) return;
    const place = { trial: draft.trial, pass: pass.id };
    this.#carryOut(
      session,
      withdrawPass(session.notebook, { ...place, by, at: nowIn(session), reason }),
      'note',
    );
  }
}

const isTyped = ({ texts }: PassDraft): boolean =>
  [...texts].some(([key, text]) => key !== 'edge' && text.trim() !== '');

const keyOf = ({ trial, pass }: PassDraft): string => `${trial} ${pass?.id ?? ''}`;

const KEPT = 'Leave this form first: what was typed is there again when it is opened.';

const nowIn = ({ world }: Session): string => new Date(world.clock.now()).toISOString();

customElements.define('pass-form', PassForm);
