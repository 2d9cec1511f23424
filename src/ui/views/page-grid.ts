/** The worksheet as a squared page: W3C APG grid keys, one input always over the active cell, selection with mouse, touch and keys. */

import { LitElement, html, type PropertyValues, type TemplateResult } from 'lit';
import {
  commitDraft,
  clearSelection,
  contentHere,
  copyText,
  fillSelection,
  pasteText,
  resizeColumn,
  startDraft,
} from '../editing.ts';
import { pointAt } from '../pointing.ts';
import { GridBody } from '../elements/grid-body.ts';
import { Faces } from '../faces.ts';
import { gridAction } from '../keymap.ts';
import type { GridAction } from '../keymap.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { describeCell } from '../describe-cell.ts';
import { draftKey } from '../draft-keys.ts';
import { Watching } from '../watching.ts';
import { gridStyles } from './page-grid.styles.ts';

export class PageGrid extends LitElement {
  static override styles = [shared, gridStyles];
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  readonly #faces = new Faces();
  #body: GridBody | undefined;
  #editor: HTMLInputElement | undefined;
  #shownAt = '';
  #drag: { readonly pointer: number } | undefined;
  #touched: string | undefined;

  constructor() {
    super();
    new Watching(this);
  }

  override render(): TemplateResult {
    const session = this.session;
    if (!session) return html``;
    const { worksheet } = session;
    this.#faces.show(session.notebook, worksheet, session.results, session.showFormulas);
    const { widths } = this.#faces;
    const { column, toColumn } = session.selection;
    const [left, right] = [Math.min(column, toColumn), Math.max(column, toColumn)];
    return html`<div class="scroller" @scroll=${this.#onScroll}>
      <table
        role="grid"
        aria-label=${worksheet.title}
        aria-multiselectable="true"
        aria-readonly=${session.readOnly ? 'true' : 'false'}
        aria-rowcount=${worksheet.rowCount + 1}
        aria-colcount=${worksheet.columnCount + 1}
        @pointerdown=${this.#onPointerDown}
        @pointermove=${this.#onPointerMove}
        @pointerup=${this.#onPointerUp}
        @pointercancel=${this.#onPointerUp}
        @click=${this.#onClick}
        @dblclick=${this.#onDoubleClick}
      >
        <colgroup>
          <col class="head" />
          ${widths.map(() => html`<col />`)}
        </colgroup>
        <thead>
          <tr aria-rowindex="1">
            <th scope="col" aria-colindex="1"><span class="unseen">row</span></th>
            ${widths.map(
              (_, k) =>
                html`<th
                  scope="col"
                  aria-colindex=${k + 2}
                  @click=${() => this.#selectColumn(k)}
                  class=${k >= left && k <= right ? 'at' : ''}
                >
                  ${this.#faces.columnName(k)}<span
                    class="grip"
                    data-column=${k}
                    @pointerdown=${this.#onGrip}
                    @click=${(event: Event) => event.stopPropagation()}
                  ></span>
                </th>`,
            )}
          </tr>
        </thead>
        <tbody></tbody>
      </table>
    </div>`;
  }

  override updated(changed: PropertyValues<this>): void {
    const session = this.session;
    const scroller = this.renderRoot.querySelector<HTMLElement>('.scroller');
    const body = this.renderRoot.querySelector('tbody');
    if (!session || !scroller || !body) return;
    if (!this.#body) this.#body = new GridBody(body, scroller);
    if (!this.#editor) this.#editor = this.#makeEditor();
    if (!this.#watcher) this.#watch(scroller);
    const other = this.#shownWorksheet !== session.worksheet.id || changed.has('session');
    this.#shownWorksheet = session.worksheet.id;
    if (other) {
      this.#editor.remove();
      this.#body.clear();
      scroller.scrollTop = 0;
    }
    const cols = this.renderRoot.querySelectorAll<HTMLElement>('col:not(.head)');
    this.#faces.widths.forEach((width, k) => cols[k]?.style.setProperty('width', `${width}px`));
    this.#body.paint(this.#faces, session.selection, session.selection.row);
    this.#placeEditor(session);
  }
  #shownWorksheet = '';
  #watcher: ResizeObserver | undefined;

  /** When the page gets smaller (entry line, keyboard) the active cell stays in sight. */
  #watch(scroller: HTMLElement): void {
    this.#watcher = new ResizeObserver(() => {
      if (!this.session) return;
      const { row, column } = this.session.selection;
      this.#body?.window(row);
      if (scroller.contains(this.#editor ?? null))
        this.#body?.cell(row, column)?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    });
    this.#watcher.observe(scroller);
  }

  /** Puts the focus on the active cell. */
  focusCell(): void {
    this.#editor?.focus({ preventScroll: true });
  }

  #makeEditor(): HTMLInputElement {
    const editor = document.createElement('input');
    editor.className = 'editor';
    editor.type = 'text';
    editor.autocomplete = 'off';
    editor.spellcheck = false;
    editor.setAttribute('autocapitalize', 'off');
    editor.setAttribute('enterkeyhint', 'enter');
    editor.addEventListener('keydown', (event) => this.#onKey(event));
    editor.addEventListener('beforeinput', (event) => this.#onBeforeInput(event));
    editor.addEventListener('compositionstart', () => this.#begin());
    editor.addEventListener('input', () => this.#onInput());
    editor.addEventListener('select', () => this.#onCaret());
    editor.addEventListener('keyup', () => this.#onCaret());
    editor.addEventListener('copy', (event) => this.#onCopy(event, false));
    editor.addEventListener('cut', (event) => this.#onCopy(event, true));
    editor.addEventListener('paste', (event) => this.#onPaste(event));
    return editor;
  }

  #placeEditor(session: Session): void {
    const editor = this.#editor;
    const { row, column, toRow, toColumn } = session.selection;
    const td = this.#body?.cell(row, column);
    if (!editor || !td) return;
    if (editor.parentElement !== td) {
      const focused = this.shadowRoot?.activeElement === editor;
      td.append(editor);
      if (focused) editor.focus({ preventScroll: true });
    }
    const { draft } = session;
    editor.classList.toggle('open', draft !== undefined);
    editor.readOnly = session.readOnly;
    const text = draft?.text ?? '';
    if (editor.value !== text) editor.value = text;
    if (draft?.where === 'cell' && (editor.selectionStart !== draft.from || editor.selectionEnd !== draft.to))
      editor.setSelectionRange(draft.from, draft.to);
    editor.style.setProperty('--editor-width', `${text.length * 9.2 + 30}px`);
    editor.setAttribute('aria-label', describeCell(session));
    if (draft?.where === 'cell' && this.shadowRoot?.activeElement !== editor)
      editor.focus({ preventScroll: true });
    const place = `${session.worksheet.id} ${row} ${column} ${toRow} ${toColumn}`;
    if (place !== this.#shownAt) {
      this.#shownAt = place;
      const far = this.#body?.cell(toRow, toColumn);
      if (far) far.scrollIntoView({ block: 'nearest', inline: 'nearest' });
      else this.#reveal(toRow);
    }
  }

  /** Brings a row into sight that is not in the document yet. */
  #reveal(row: number): void {
    const scroller = this.renderRoot.querySelector<HTMLElement>('.scroller');
    if (!scroller || !this.#body) return;
    const height = this.#body.rowHeight;
    const top = row * height;
    if (top < scroller.scrollTop) scroller.scrollTop = top;
    else if (top + height * 2 > scroller.scrollTop + scroller.clientHeight)
      scroller.scrollTop = top - scroller.clientHeight + height * 3;
    this.#body.window(row);
  }

  #onScroll(): void {
    if (this.session) this.#body?.paint(this.#faces, this.session.selection, this.session.selection.row);
  }

  #begin(): void {
    const session = this.session;
    if (session && !session.draft && !session.readOnly) startDraft(session, '', true, 'cell');
  }

  #onBeforeInput(event: InputEvent): void {
    if (!this.session || this.session.draft) return;
    if (event.inputType.startsWith('delete') || event.inputType.startsWith('history')) event.preventDefault();
    else this.#begin();
  }

  #onInput(): void {
    const { session } = this;
    const editor = this.#editor;
    if (!session || !editor) return;
    session.setDraft({
      text: editor.value,
      from: editor.selectionStart ?? editor.value.length,
      to: editor.selectionEnd ?? editor.value.length,
      typedOver: session.draft?.typedOver ?? true,
      where: 'cell',
    });
  }

  #onCaret(): void {
    const { session } = this;
    const editor = this.#editor;
    if (!session?.draft || !editor || session.draft.text !== editor.value) return;
    const [from, to] = [editor.selectionStart ?? 0, editor.selectionEnd ?? 0];
    if (from !== session.draft.from || to !== session.draft.to)
      session.setDraft({ ...session.draft, from, to, where: 'cell' });
  }

  #onKey(event: KeyboardEvent): void {
    const { session } = this;
    if (!session || event.isComposing) return;
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
    this.#act(session, action);
  }

  #act(session: Session, action: GridAction): void {
    if (action.type === 'move') session.move(action.move, action.extend);
    else if (action.type === 'jump') session.jump(action.move, action.extend);
    else if (action.type === 'edit') startDraft(session, contentHere(session), false, 'cell');
    else if (action.type === 'clear') clearSelection(session);
    else if (action.type === 'fillDown') fillSelection(session, 'down');
    else if (action.type === 'undo') session.undo();
    else if (action.type === 'redo') session.redo();
    else if (action.type === 'save')
      this.dispatchEvent(new CustomEvent('save-file', { bubbles: true, composed: true }));
    else if (action.type === 'selectAll') {
      const { worksheet } = session;
      session.selectBlock({
        worksheet: worksheet.id,
        row: 0,
        column: 0,
        toRow: worksheet.rowCount - 1,
        toColumn: worksheet.columnCount - 1,
      });
    }
  }

  #at(event: Event): { readonly row: number; readonly column: number } | undefined {
    const td = event
      .composedPath()
      .find((each) => each instanceof HTMLElement && each.matches('td, tbody th'));
    if (!(td instanceof HTMLElement)) return undefined;
    const row = Number(td.parentElement?.dataset['row'] ?? Number.NaN);
    const column = Number(td.dataset['column'] ?? Number.NaN);
    return Number.isNaN(row) ? undefined : { row, column: Number.isNaN(column) ? -1 : column };
  }

  #onPointerDown(event: PointerEvent): void {
    const { session } = this;
    const place = this.#at(event);
    if (!session || !place || event.button !== 0 || event.pointerType === 'touch') return;
    if (session.draft && event.target === this.#editor) return;
    if (!session.draft || place.column < 0) event.preventDefault();
    if (place.column < 0) {
      this.#leaveDraft(session);
      session.selectBlock({
        worksheet: session.worksheet.id,
        row: place.row,
        column: 0,
        toRow: place.row,
        toColumn: session.worksheet.columnCount - 1,
      });
      this.focusCell();
      return;
    }
    if (session.draft && pointAt(session, place.row, place.column)) {
      event.preventDefault();
      return;
    }
    event.preventDefault();
    if (!this.#leaveDraft(session)) return;
    session.select(place.row, place.column, event.shiftKey);
    this.#drag = { pointer: event.pointerId };
    this.focusCell();
  }

  #selectColumn(column: number): void {
    const { session } = this;
    if (!session) return;
    const { id, rowCount } = session.worksheet;
    session.selectBlock({ worksheet: id, row: 0, column, toRow: rowCount - 1, toColumn: column });
    this.focusCell();
  }

  #onPointerMove(event: PointerEvent): void {
    const { session } = this;
    if (!session || this.#drag?.pointer !== event.pointerId) return;
    const place = this.#at(event);
    const { toRow, toColumn } = session.selection;
    if (place && place.column >= 0 && (place.row !== toRow || place.column !== toColumn))
      session.select(place.row, place.column, true);
  }

  #onPointerUp(): void {
    this.#drag = undefined;
  }

  /** Touch: the first tap selects, the second one edits; dragging scrolls. */
  #onClick(event: MouseEvent): void {
    const { session } = this;
    const place = this.#at(event);
    const touch = event instanceof PointerEvent && event.pointerType === 'touch';
    if (!session || !place || !touch || place.column < 0) return;
    if (session.draft && event.target === this.#editor) return;
    if (session.draft && pointAt(session, place.row, place.column)) return;
    if (!this.#leaveDraft(session)) return;
    const key = `${place.row} ${place.column}`;
    const again = key === this.#touched && session.selection.row === place.row;
    session.select(place.row, place.column);
    this.#touched = key;
    if (again) startDraft(session, contentHere(session), false, 'cell');
  }

  #onDoubleClick(event: MouseEvent): void {
    const { session } = this;
    const place = this.#at(event);
    if (!session || session.draft || !place || place.column < 0) return;
    startDraft(session, contentHere(session), false, 'cell');
  }

  /** Commits what is being edited; false where it was refused. */
  #leaveDraft(session: Session): boolean {
    return session.draft === undefined || commitDraft(session, undefined);
  }

  #onCopy(event: ClipboardEvent, cut: boolean): void {
    const { session } = this;
    if (!session || session.draft) return;
    event.preventDefault();
    event.clipboardData?.setData('text/plain', copyText(session, cut));
  }

  #onPaste(event: ClipboardEvent): void {
    const { session } = this;
    if (!session || session.draft) return;
    event.preventDefault();
    pasteText(session, event.clipboardData?.getData('text/plain') ?? '');
  }

  #onGrip(event: PointerEvent): void {
    const grip = event.currentTarget;
    const { session } = this;
    if (!(grip instanceof HTMLElement) || !session) return;
    event.preventDefault();
    event.stopPropagation();
    const column = Number(grip.dataset['column']);
    const start = event.clientX;
    const width = this.#faces.width(column);
    const col = this.renderRoot.querySelectorAll<HTMLElement>('col:not(.head)')[column];
    const at = (x: number): number => Math.max(36, Math.round(width + x - start));
    const move = (moved: PointerEvent): void => col?.style.setProperty('width', `${at(moved.clientX)}px`);
    grip.setPointerCapture(event.pointerId);
    grip.addEventListener('pointermove', move);
    grip.addEventListener(
      'pointerup',
      (up) => {
        grip.removeEventListener('pointermove', move);
        if (at(up.clientX) !== width) resizeColumn(session, column, at(up.clientX));
      },
      { once: true },
    );
  }
}
customElements.define('page-grid', PageGrid);
