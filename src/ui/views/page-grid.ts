/** The worksheet as a squared page: W3C APG grid keys, one input always over the active cell, bars and menus over it. */

import { LitElement, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { takeActions } from '../actions-place.ts';
import { pickChoice, shownCompletion } from '../draft-keys.ts';
import { clearSelection, fillSelection, startDraft } from '../editing.ts';
import { ChoiceList } from '../elements/choice-list.ts';
import { GridBody, type Outline } from '../elements/grid-body.ts';
import { Faces } from '../faces.ts';
import { fetchActions, fetchFindBar, fetchFindNext, fetchGoBar } from '../fetched-later.ts';
import { holdKeys, takeHeld } from '../held-keys.ts';
import { chosenInSight, farCorner, fieldPlace, handledBlock } from '../in-sight.ts';
import type { GridAction } from '../keymap.ts';
import { carryLines, widenColumns } from '../line-editing.ts';
import { isTouched } from '../own-keypad.ts';
import { barOf, closeBar } from '../page-bar.ts';
import { showFile } from '../pasting.ts';
import { showNextWorksheet } from '../pointing.ts';
import { referenceMarks } from '../reference-marks.ts';
import type { Block } from '../../document/index.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';
import type { ActionsMenu } from './actions-menu.ts';
import { PageEditor } from './page-editor.ts';
import { gridStyles } from './page-grid.styles.ts';
import { pointingStyles } from './page-pointing.styles.ts';
import { PagePointer, editCell, selectAll, selectLines } from './page-pointer.ts';

const NOT_LOADED = 'This part of the program could not be fetched: try again, or load the page anew.';

const handle = (name: 'start' | 'end' | 'fill'): HTMLElement => {
  const made = document.createElement('span');
  made.className = `handle ${name}`;
  made.dataset['handle'] = name;
  return made;
};

export class PageGrid extends LitElement {
  static override styles = [shared, gridStyles, pointingStyles];
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  readonly #faces = new Faces();
  readonly #pointer: PagePointer;
  #body: GridBody | undefined;
  #editor: PageEditor | undefined;
  readonly #choices = new ChoiceList((at) => this.session && pickChoice(this.session, at));
  readonly #handles = { start: handle('start'), end: handle('end'), fill: handle('fill') };
  readonly #loaded = new Set<string>();
  #pulled: Block | undefined;
  #shownAt = '';
  #shownWorksheet = '';
  #shownWidths = '';
  #watcher: ResizeObserver | undefined;

  constructor() {
    super();
    new Watching(this, 'last');
    const grid = (): PageGrid => this;
    this.#pointer = new PagePointer({
      get session() {
        return grid().session;
      },
      get root() {
        return grid().#root;
      },
      get editor() {
        return grid().#editor?.input;
      },
      get scroller() {
        return grid().#scroller;
      },
      focusCell: () => this.focusCell(),
      width: (column) => this.#faces.width(column),
      col: (column) => this.#cols[column],
      showPulled: (block) => {
        this.#pulled = block;
        this.requestUpdate();
      },
      open: (session) => editCell(session),
      actions: (at) => void this.#openActions(at),
    });
    this.addEventListener('drop', (event) => void this.#onDrop(event));
  }

  get #root(): ShadowRoot {
    if (!this.shadowRoot) throw new Error('the page has not been drawn yet');
    return this.shadowRoot;
  }

  get #scroller(): HTMLElement | null {
    return this.renderRoot.querySelector<HTMLElement>('.scroller');
  }

  get #cols(): NodeListOf<HTMLElement> {
    return this.renderRoot.querySelectorAll<HTMLElement>('col:not(.head)');
  }

  override render(): TemplateResult {
    const session = this.session;
    if (!session) return html``;
    const worksheet = session.inSight;
    this.#faces.show(session.notebook, worksheet, session.results, session.showFormulas);
    const { widths } = this.#faces;
    const { column, toColumn } = chosenInSight(session);
    const [left, right] = [Math.min(column, toColumn), Math.max(column, toColumn)];
    const { down, click, doubleClick, context, grip } = this.#pointer;
    const kept = `${worksheet.headRow ? 'head-row' : ''} ${worksheet.headColumn ? 'head-column' : ''}`;
    return html`${this.#bar(session)}
      <div
        class="scroller ${kept}"
        @scroll=${this.#onScroll}
        @pointerdown=${down}
        @click=${click}
        @dblclick=${doubleClick}
        @contextmenu=${context}
      >
        <table
          role="grid"
          aria-label=${worksheet.title}
          aria-multiselectable="true"
          aria-readonly=${session.readOnly ? 'true' : 'false'}
          aria-rowcount=${worksheet.rowCount + 1}
          aria-colcount=${worksheet.columnCount + 1}
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
                    data-column=${k}
                    class=${k >= left && k <= right ? 'at' : ''}
                  >
                    ${this.#faces.columnName(k)}<span
                      class="grip"
                      data-column=${k}
                      @pointerdown=${grip}
                      @click=${(event: Event) => event.stopPropagation()}
                    ></span>
                  </th>`,
              )}
            </tr>
          </thead>
          <tbody></tbody>
        </table>
      </div>
      ${this.#loaded.has('actions') ? html`<actions-menu .session=${session}></actions-menu>` : nothing}`;
  }

  /** The bar that was asked for; its element is loaded then. */
  #bar(session: Session): TemplateResult | typeof nothing {
    const bar = barOf(session);
    if (!bar) return nothing;
    if (!this.#loaded.has(bar)) {
      (bar === 'find' ? fetchFindBar() : fetchGoBar()).then(
        () => {
          this.#loaded.add(bar);
          this.requestUpdate();
        },
        () => {
          closeBar(session);
          session.say(NOT_LOADED, true);
        },
      );
      return nothing;
    }
    return bar === 'find'
      ? html`<find-bar .session=${session}></find-bar>`
      : html`<go-bar .session=${session}></go-bar>`;
  }

  override updated(changed: PropertyValues<this>): void {
    const session = this.session;
    const scroller = this.#scroller;
    const body = this.renderRoot.querySelector('tbody');
    if (!session || !scroller || !body) return;
    this.#body ??= new GridBody(body, scroller);
    this.#editor ??= this.#makeEditor();
    if (!this.#watcher) this.#watch(scroller);
    const hadFocus = this.shadowRoot?.activeElement === this.#editor.input;
    const other = this.#shownWorksheet !== session.inSight.id || changed.has('session');
    this.#shownWorksheet = session.inSight.id;
    if (other) {
      this.#editor.input.remove();
      this.#body.clear();
      scroller.scrollTop = 0;
    }
    this.#setWidths(scroller);
    this.#body.paint(this.#faces, chosenInSight(session), fieldPlace(session).row, this.#outlines(session));
    this.#placeEditor(session, scroller);
    if (hadFocus && !this.#editor.hasFocus) this.focusCell();
    const at = takeActions(session);
    if (at) void this.#openActions(at === 'cell' ? undefined : at);
  }

  #setWidths(scroller: HTMLElement): void {
    const { widths } = this.#faces;
    const key = widths.join(' ');
    if (key === this.#shownWidths) return;
    this.#shownWidths = key;
    const cols = this.#cols;
    widths.forEach((width, k) => cols[k]?.style.setProperty('width', `${width}px`));
    scroller.style.setProperty('--first-column', `${widths[0] ?? 0}px`);
  }

  /** The references of the formula being typed, and how far a fill is pulled. */
  #outlines(session: Session): readonly Outline[] {
    const outline = ({ row, column, rows, columns }: Block, colour: number): Outline => ({
      row,
      column,
      toRow: row + rows - 1,
      toColumn: column + columns - 1,
      colour,
    });
    if (this.#pulled) return [outline(this.#pulled, 0)];
    return referenceMarks(session.notebook, session.worksheet.id, session.draft?.text ?? '')
      .filter(({ worksheet }) => worksheet === session.inSight.id)
      .map(({ block, colour }) => outline(block, colour));
  }

  /** When the page gets smaller (entry line, keyboard) the active cell stays in sight. */
  #watch(scroller: HTMLElement): void {
    this.#watcher = new ResizeObserver(() => {
      if (!this.session) return;
      const { row, column } = fieldPlace(this.session);
      this.#body?.window(row);
      if (scroller.contains(this.#editor?.input ?? null))
        this.#body?.cell(row, column)?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    });
    this.#watcher.observe(scroller);
  }

  /** Puts the focus on the active cell; where it has it already, anew, so that the right keyboard comes. */
  focusCell(): void {
    if (isTouched()) this.#editor?.input.blur();
    this.#editor?.focus();
  }

  #makeEditor(): PageEditor {
    const grid = (): PageGrid => this;
    return new PageEditor({
      get session() {
        return grid().session;
      },
      get root() {
        return grid().#root;
      },
      act: (session, action) => this.#act(session, action),
    });
  }

  #placeEditor(session: Session, scroller: HTMLElement): void {
    const { row, column } = fieldPlace(session);
    const td = this.#body?.cell(row, column);
    if (!this.#editor || !td) return;
    const { draft } = session;
    this.#placeHandles(session);
    const list = draft?.where === 'cell' ? shownCompletion(session) : undefined;
    const isChoice = list?.choices[0]?.type === 'choice';
    const choices = isChoice ? { labels: list.choices.map(({ label }) => label), at: list.at } : undefined;
    this.#editor.place(session, td);
    this.#choices.show(td, choices, scroller);
    const seen = farCorner(session);
    const place = `${session.inSight.id} ${row} ${column} ${seen.row} ${seen.column}`;
    if (place === this.#shownAt) return;
    this.#shownAt = place;
    const far = this.#body?.cell(seen.row, seen.column);
    if (far) far.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    else this.#reveal(seen.row);
  }

  /** Corner handles: to extend by touch, to fill on by mouse. They go where the corners of the selection are. */
  #placeHandles(session: Session): void {
    const { start, end, fill } = this.#handles;
    const block = handledBlock(session);
    const first = block && this.#body?.cell(block.row, block.column);
    const last = block && this.#body?.cell(block.row + block.rows - 1, block.column + block.columns - 1);
    for (const [each, td] of [
      [start, first],
      [end, last],
      [fill, session.readOnly || session.draft ? undefined : last],
    ] as const) {
      if (each.parentElement === (td ?? null)) continue;
      each.parentElement?.classList.remove('corner');
      if (td) td.append(each);
      else each.remove();
    }
    first?.classList.add('corner');
    last?.classList.add('corner');
  }

  /** Brings a row into sight that is not in the document yet. */
  #reveal(row: number): void {
    const scroller = this.#scroller;
    if (!scroller || !this.#body) return;
    const height = this.#body.rowHeight;
    const top = row * height;
    if (top < scroller.scrollTop) scroller.scrollTop = top;
    else if (top + height * 2 > scroller.scrollTop + scroller.clientHeight)
      scroller.scrollTop = top - scroller.clientHeight + height * 3;
    this.#body.window(row);
  }

  #onScroll(): void {
    const { session } = this;
    if (session)
      this.#body?.paint(
        this.#faces,
        chosenInSight(session),
        fieldPlace(session).row,
        this.#outlines(session),
      );
  }

  #act(session: Session, action: GridAction): void {
    const { row, toRow, column, toColumn } = session.selection;
    if (action.type === 'move') session.move(action.move, action.extend);
    else if (action.type === 'jump') session.jump(action.move, action.extend);
    else if (action.type === 'edit') editCell(session);
    else if (action.type === 'clear') clearSelection(session);
    else if (action.type === 'worksheet') showNextWorksheet(session, action.by);
    else if (action.type === 'fill') fillSelection(session, action.direction);
    else if (action.type === 'carry') carryLines(session, action.move);
    else if (action.type === 'widen') widenColumns(session, action.by, this.#faces.widths);
    else if (action.type === 'undo') session.undo();
    else if (action.type === 'redo') session.redo();
    else if (action.type === 'actions') void this.#openActions();
    else if (action.type === 'findNext') void this.#findOn(session, 1);
    else if (action.type === 'findBefore') void this.#findOn(session, -1);
    else if (action.type === 'save')
      this.dispatchEvent(new CustomEvent('save-file', { bubbles: true, composed: true }));
    else if (action.type === 'selectAll') selectAll(session);
    else if (action.type === 'selectRows') selectLines(session, 'rows', row, toRow);
    else selectLines(session, 'columns', column, toColumn);
  }

  /** To the next find; what is typed meanwhile goes into the cell that is found. */
  async #findOn(session: Session, step: 1 | -1): Promise<void> {
    holdKeys(session);
    const { findNext } = await fetchFindNext().catch(() => ({ findNext: undefined }));
    if (findNext) findNext(session, step);
    else session.say(NOT_LOADED, true);
    const { text } = takeHeld(session);
    if (text) startDraft(session, text, true, 'cell');
  }

  /** The menu of actions, at a place of the screen or below the active cell. */
  async #openActions(at?: { readonly x: number; readonly y: number }): Promise<void> {
    const { session } = this;
    if (!session) return;
    holdKeys(session);
    try {
      await fetchActions();
      await this.#showActions(at);
    } catch {
      session.say(NOT_LOADED, true);
    } finally {
      takeHeld(session);
    }
  }

  async #showActions(at?: { readonly x: number; readonly y: number }): Promise<void> {
    this.#loaded.add('actions');
    this.requestUpdate();
    await this.updateComplete;
    const cell = this.#editor?.input.getBoundingClientRect();
    const place = at ?? { x: cell?.left ?? 0, y: (cell?.bottom ?? 0) + 2 };
    await this.renderRoot.querySelector<ActionsMenu>('actions-menu')?.open(place);
  }

  /** A table dropped on the page is shown before it is taken; any other file is left to the program. */
  async #onDrop(event: DragEvent): Promise<void> {
    const file = event.dataTransfer?.files[0];
    if (!file || !/\.(?:csv|tsv|tab|txt)$/i.test(file.name)) return;
    event.preventDefault();
    event.stopPropagation();
    await showFile(this, file.name, await file.text());
  }
}
customElements.define('page-grid', PageGrid);
