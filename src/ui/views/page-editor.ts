/** The text field of the page: always over the active cell, so that no first character is lost. */

import type { GridAction } from '../keymap.ts';
import { gridAction } from '../keymap.ts';
import { copyText, startDraft } from '../editing.ts';
import { pasteFrom } from '../pasting.ts';
import { describeCell } from '../describe-cell.ts';
import { heldKeys, holdMore } from '../held-keys.ts';
import { isAway } from '../in-sight.ts';
import { closeBar } from '../page-bar.ts';
import { draftKey, shownCompletion } from '../draft-keys.ts';
import { isOwnKeypad, isTouched } from '../own-keypad.ts';
import type { Draft, Session } from '../session.ts';

export interface EditedPage {
  readonly session: Session | undefined;
  readonly root: ShadowRoot;
  act(session: Session, action: GridAction): void;
}

const isAt = (input: HTMLInputElement, { from, to }: Draft): boolean =>
  input.selectionStart === from && input.selectionEnd === to;

export class PageEditor {
  /** The field and a spare one: the focus goes from one to the other, so that the browser lays the page out once, not twice. */
  #fields: readonly [HTMLInputElement, HTMLInputElement];
  #shown: Draft | undefined;

  constructor(private readonly page: EditedPage) {
    this.#fields = [this.#makeField(), this.#makeField()];
  }

  get input(): HTMLInputElement {
    return this.#fields[0];
  }

  #makeField(): HTMLInputElement {
    const input = document.createElement('input');
    input.className = 'editor';
    input.type = 'text';
    input.autocomplete = 'off';
    input.spellcheck = false;
    input.setAttribute('autocapitalize', 'off');
    input.setAttribute('enterkeyhint', 'enter');
    input.addEventListener('keydown', (event) => this.#onKey(event));
    input.addEventListener('beforeinput', (event) => this.#onBeforeInput(event));
    input.addEventListener('compositionstart', () => this.#begin());
    input.addEventListener('input', () => this.#onInput());
    input.addEventListener('select', () => this.#onCaret());
    input.addEventListener('keyup', () => this.#onCaret());
    input.addEventListener('pointerup', () => this.#onCaret());
    input.addEventListener('copy', (event) => this.#onCopy(event, false));
    input.addEventListener('cut', (event) => this.#onCopy(event, true));
    input.addEventListener('paste', (event) => this.#onPaste(event));
    return input;
  }

  get hasFocus(): boolean {
    return this.page.root.activeElement === this.input;
  }

  focus(): void {
    this.input.focus({ preventScroll: true });
  }

  /** Puts the field over the active cell and shows what is being typed. */
  place(session: Session, td: HTMLElement): void {
    const { draft } = session;
    const focused = this.hasFocus;
    const [before, spare] = this.#fields;
    const moves = before.parentElement !== td;
    if (moves) this.#fields = [spare, before];
    const { input } = this;
    const away = isAway(session);
    input.classList.toggle('open', draft !== undefined && !away);
    input.classList.toggle('away', away);
    input.readOnly = session.readOnly && !heldKeys(session);
    const text = draft?.text ?? heldKeys(session)?.text ?? '';
    if (input.value !== text) input.value = text;
    input.style.setProperty('--editor-width', `${text.length * 9.2 + 30}px`);
    const described = describeCell(session);
    const from = away
      ? `${session.worksheet.title}, ${described}, pointing into ${session.inSight.title}`
      : described;
    input.setAttribute('aria-label', from);
    // On touch the system's keyboard comes only where letters are typed.
    const quiet = isTouched() && (!draft || isOwnKeypad(session) || session.cell?.choices !== undefined);
    input.inputMode = quiet ? 'none' : 'text';
    this.#nameList(session);
    // The focus makes the browser lay the page out: it comes last.
    if (moves) td.append(input);
    if (!this.hasFocus && (focused || draft?.where === 'cell')) this.focus();
    if (moves) before.remove();
    // Only a text that came from elsewhere says where the caret is: a key may have moved it and not been let go yet.
    if (draft?.where === 'cell' && draft !== this.#shown && !isAt(input, draft))
      input.setSelectionRange(draft.from, draft.to);
    this.#shown = draft;
  }

  /** A choice cell is a combobox while its list is open. */
  #nameList(session: Session): void {
    const { input } = this;
    const list = session.draft?.where === 'cell' ? shownCompletion(session) : undefined;
    const isChoice = list?.choices[0]?.type === 'choice';
    if (session.cell?.choices) {
      input.setAttribute('role', 'combobox');
      input.setAttribute('aria-haspopup', 'listbox');
      input.setAttribute('aria-expanded', isChoice ? 'true' : 'false');
    } else for (const name of ['role', 'aria-haspopup', 'aria-expanded']) input.removeAttribute(name);
    if (list && isChoice) {
      input.setAttribute('aria-controls', 'cell-choices');
      input.setAttribute('aria-activedescendant', `cell-choice-${list.at}`);
    } else for (const name of ['aria-controls', 'aria-activedescendant']) input.removeAttribute(name);
  }

  #begin(): void {
    const { session } = this.page;
    if (!session || session.draft || heldKeys(session) || session.readOnly) return;
    // What was held for a bar may stand here still.
    if (this.input.value !== '') this.input.value = '';
    startDraft(session, '', true, 'cell');
  }

  #onBeforeInput(event: InputEvent): void {
    const { session } = this.page;
    const held = session && heldKeys(session);
    if (held?.entered) event.preventDefault();
    if (!session || session.draft || held) return;
    if (event.inputType.startsWith('delete') || event.inputType.startsWith('history')) event.preventDefault();
    else this.#begin();
  }

  #onInput(): void {
    const { session } = this.page;
    const { input } = this;
    if (session && heldKeys(session)) return holdMore(session, { text: input.value });
    session?.setDraft({
      ...session.draft,
      text: input.value,
      from: input.selectionStart ?? input.value.length,
      to: input.selectionEnd ?? input.value.length,
      typedOver: session.draft?.typedOver ?? true,
      where: 'cell',
    });
  }

  #onCaret(): void {
    const { session } = this.page;
    const { input } = this;
    if (!session?.draft || session.draft.text !== input.value) return;
    const [from, to] = [input.selectionStart ?? 0, input.selectionEnd ?? 0];
    if (from !== session.draft.from || to !== session.draft.to)
      session.setDraft({ ...session.draft, from, to, where: 'cell' });
  }

  #onKey(event: KeyboardEvent): void {
    const { session } = this.page;
    if (!session || event.isComposing) return;
    if (heldKeys(session)) return this.#holdKey(session, event);
    if (session.draft) {
      if (draftKey(session, event)) event.preventDefault();
      return;
    }
    if (event.key === 'Escape') {
      session.select(session.selection.row, session.selection.column);
      return;
    }
    const action = gridAction(event);
    if (!action) return;
    event.preventDefault();
    this.page.act(session, action);
  }

  /** The field takes text on for what is awaited; no key of it means anything for the page. */
  #holdKey(session: Session, event: KeyboardEvent): void {
    const { key } = event;
    const command = event.ctrlKey || event.metaKey;
    if (key === 'Enter') holdMore(session, { entered: true });
    else if (key === 'Escape') closeBar(session);
    const isText = key.length === 1 || key === 'Backspace' || key === 'Delete';
    if (command ? !/^[acvx]$/i.test(key) : !isText) event.preventDefault();
    event.stopPropagation();
  }

  #onCopy(event: ClipboardEvent, cut: boolean): void {
    const { session } = this.page;
    if (!session || session.draft || heldKeys(session)) return;
    event.preventDefault();
    event.clipboardData?.setData('text/plain', copyText(session, cut));
  }

  #onPaste(event: ClipboardEvent): void {
    const { session } = this.page;
    if (!session || session.draft || heldKeys(session)) return;
    event.preventDefault();
    pasteFrom(session, event.clipboardData?.getData('text/plain') ?? '', this.input);
  }
}
