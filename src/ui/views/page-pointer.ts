/** Mouse, pen and finger on the page: selecting, pulling a selection or a fill on, pointing into a formula, column widths. */

import { commitDraft, contentHere, resizeColumn, selectedBlock, startDraft } from '../editing.ts';
import { destinations } from '../destinations.ts';
import { heldKeys } from '../held-keys.ts';
import { fillTo, pulledBlock } from '../line-editing.ts';
import { closeBar } from '../page-bar.ts';
import { pointAt, pointTo, pullFrom } from '../pointing.ts';
import type { Block } from '../../document/index.ts';
import { isTouched } from '../own-keypad.ts';
import type { Session } from '../session.ts';

/** A place on the page; row or column -1 is the head. */
export interface PagePlace {
  readonly row: number;
  readonly column: number;
}

export interface PointedPage {
  readonly session: Session | undefined;
  readonly root: ShadowRoot;
  /** The text field over the active cell. */
  readonly editor: HTMLElement | undefined;
  readonly scroller: HTMLElement | null;
  focusCell(): void;
  width(column: number): number;
  col(column: number): HTMLElement | undefined;
  /** Shows where a pulled fill would reach. */
  showPulled(block: Block | undefined): void;
  /** The list of a choice cell, or its text, opened by a second tap or click. */
  open(session: Session): void;
  actions(at: { readonly x: number; readonly y: number }): void;
}

type Drag = 'cells' | 'rows' | 'columns' | 'reference' | 'fill' | 'start' | 'end';

/** How near to the edge a drag scrolls, and how far in one step. */
const EDGE = 28;
const SCROLL = 24;

export class PagePointer {
  #drag:
    | {
        readonly pointer: number;
        readonly what: Drag;
        readonly block: Block;
        readonly x: number;
        readonly y: number;
      }
    | undefined;
  #pulled: ReturnType<typeof pulledBlock>;
  #touched: string | undefined;

  constructor(private readonly page: PointedPage) {}

  /** The place under an event's own target. */
  #at(event: Event): PagePlace | undefined {
    const cell = event.composedPath().find((each) => each instanceof HTMLElement && each.matches('td, th'));
    return cell instanceof HTMLElement ? placeOf(cell) : undefined;
  }

  /** The place under the pointer, whatever holds it. */
  #under(event: PointerEvent): PagePlace | undefined {
    const found = this.page.root.elementFromPoint(event.clientX, event.clientY)?.closest('td, th');
    return found instanceof HTMLElement ? placeOf(found) : undefined;
  }

  readonly down = (event: PointerEvent): void => {
    const { session } = this.page;
    if (!session || event.button !== 0) return;
    // Whoever goes on by hand waits no longer.
    if (heldKeys(session)) closeBar(session);
    const [target] = event.composedPath();
    const leads = target instanceof HTMLElement ? target.closest<HTMLElement>('.leads') : null;
    if (leads && (event.ctrlKey || event.metaKey)) {
      event.preventDefault();
      return follow(session, leads.dataset['leads'] ?? '');
    }
    const handle = target instanceof HTMLElement ? target.dataset['handle'] : undefined;
    if (handle === 'start' || handle === 'end' || handle === 'fill')
      return this.#hold(session, event, handle);
    const place = this.#at(event);
    if (!place || event.pointerType === 'touch') return;
    if (session.draft && event.target === this.page.editor) return;
    const row = place.row < 0 ? 0 : place.row;
    const column = place.column < 0 ? 0 : place.column;
    if (place.row >= 0 && place.column >= 0 && session.draft && this.#point(session, event, place)) return;
    event.preventDefault();
    if (!leave(session)) return;
    const what =
      place.row < 0 ? (place.column < 0 ? 'cells' : 'columns') : place.column < 0 ? 'rows' : 'cells';
    if (place.row < 0 && place.column < 0) selectAll(session);
    else if (event.shiftKey) this.#reach(session, what, place);
    else if (what === 'columns') selectLines(session, 'columns', column, column);
    else if (what === 'rows') selectLines(session, 'rows', row, row);
    else session.select(row, column);
    this.#start(event, what, selectedBlock(session));
    this.page.focusCell();
  };

  /** From here on the pointer is followed wherever it goes. */
  #start(event: PointerEvent, what: Drag, block: Block): void {
    this.#drag = { pointer: event.pointerId, what, block, x: event.clientX, y: event.clientY };
    window.addEventListener('pointermove', this.#move);
    window.addEventListener('pointerup', this.#up);
    window.addEventListener('pointercancel', this.#up);
  }

  /** A press while a formula is typed puts the cell into it, and dragging on makes it a range. */
  #point(session: Session, event: PointerEvent, { row, column }: PagePlace): boolean {
    const done = event.shiftKey ? pointTo(session, row, column) : pointAt(session, row, column);
    if (!done) return false;
    event.preventDefault();
    this.#start(event, 'reference', selectedBlock(session));
    return true;
  }

  /** A handle at a corner: the other corner becomes the one that stays. */
  #hold(session: Session, event: PointerEvent, what: 'start' | 'end' | 'fill'): void {
    event.preventDefault();
    event.stopPropagation();
    const points = what !== 'fill' && pullFrom(session, what);
    if (!points && !leave(session)) return;
    this.#start(event, points ? 'reference' : what, selectedBlock(session));
    // The handle goes from cell to cell meanwhile: the page holds the pointer.
    this.page.scroller?.setPointerCapture(event.pointerId);
  }

  readonly #move = (event: PointerEvent): void => {
    const { session } = this.page;
    const drag = this.#drag;
    if (!session || drag?.pointer !== event.pointerId) return;
    // A press with a shaking hand near the edge is no drag yet.
    if (Math.hypot(event.clientX - drag.x, event.clientY - drag.y) > EDGE) this.#scroll(event);
    const place = this.#under(event);
    if (!place) return;
    const row = Math.max(0, place.row);
    const column = Math.max(0, place.column);
    const { block, what } = drag;
    const [lastRow, lastColumn] = [block.row + block.rows - 1, block.column + block.columns - 1];
    if (what === 'reference') pointTo(session, row, column);
    else if (what === 'fill') {
      this.#pulled = pulledBlock(block, row, column);
      this.page.showPulled(this.#pulled?.block);
    } else if (what === 'start') stretch(session, lastRow, lastColumn, row, column);
    else if (what === 'end') stretch(session, block.row, block.column, row, column);
    else this.#reach(session, what, place);
  };

  #reach(session: Session, what: Drag, place: PagePlace): void {
    const { toRow, toColumn, row, column } = session.selection;
    if (what === 'rows') {
      if (place.row >= 0 && place.row !== toRow) selectLines(session, 'rows', row, place.row);
    } else if (what === 'columns') {
      if (place.column >= 0 && place.column !== toColumn)
        selectLines(session, 'columns', column, place.column);
    } else if (place.row >= 0 && place.column >= 0 && (place.row !== toRow || place.column !== toColumn))
      session.select(place.row, place.column, true);
  }

  /** Near an edge the page scrolls on under the pointer. */
  #scroll(event: PointerEvent): void {
    const { scroller } = this.page;
    if (!scroller) return;
    const { left, right, top, bottom } = scroller.getBoundingClientRect();
    const by = (at: number, low: number, high: number): number =>
      at < low + EDGE ? -SCROLL : at > high - EDGE ? SCROLL : 0;
    scroller.scrollBy(by(event.clientX, left, right), by(event.clientY, top, bottom));
  }

  readonly #up = (event: PointerEvent): void => {
    const { session } = this.page;
    if (this.#drag?.pointer !== event.pointerId) return;
    const { block, what } = this.#drag;
    this.#drag = undefined;
    window.removeEventListener('pointermove', this.#move);
    window.removeEventListener('pointerup', this.#up);
    window.removeEventListener('pointercancel', this.#up);
    if (session && what === 'fill' && this.#pulled && event.type === 'pointerup')
      fillTo(session, block, this.#pulled);
    this.#pulled = undefined;
    this.page.showPulled(undefined);
    if (session && !session.draft) this.page.focusCell();
  };

  /** Touch: the first tap selects, the second one edits; dragging scrolls. */
  readonly click = (event: MouseEvent): void => {
    const { session } = this.page;
    const touch = event instanceof PointerEvent && event.pointerType === 'touch';
    const [target] = event.composedPath();
    const place = this.#at(event);
    if (!session || !place || !touch) return;
    if (target instanceof HTMLElement && target.dataset['handle']) return;
    if (session.draft && event.target === this.page.editor) return;
    const { row, column } = place;
    if (row >= 0 && column >= 0 && session.draft && pointAt(session, row, column)) return;
    if (!leave(session)) return;
    if (row < 0 || column < 0) {
      if (row < 0 && column < 0) selectAll(session);
      else if (row < 0) selectLines(session, 'columns', column, column);
      else selectLines(session, 'rows', row, row);
      this.#touched = undefined;
      return;
    }
    const key = `${session.worksheet.id} ${row} ${column}`;
    const { selection } = session;
    const again = key === this.#touched && selection.row === row && selection.column === column;
    session.select(row, column);
    this.#touched = key;
    if (again) this.page.open(session);
  };

  readonly doubleClick = (event: Event): void => {
    const { session } = this.page;
    const place = this.#at(event);
    if (!session || session.draft || !place || place.column < 0 || place.row < 0) return;
    this.page.open(session);
  };

  /** The second button opens the actions for what is selected, or for the cell under it. */
  readonly context = (event: MouseEvent): void => {
    const { session } = this.page;
    const place = this.#at(event);
    if (!session || session.draft || !place) return;
    event.preventDefault();
    const { row, column, rows, columns } = selectedBlock(session);
    const inside =
      (place.row < 0 || (place.row >= row && place.row < row + rows)) &&
      (place.column < 0 || (place.column >= column && place.column < column + columns));
    if (!inside) session.select(Math.max(0, place.row), Math.max(0, place.column));
    this.page.actions({ x: event.clientX, y: event.clientY });
  };

  /** The edge of a column head pulls its width. */
  readonly grip = (event: PointerEvent): void => {
    const grip = event.currentTarget;
    const { session } = this.page;
    if (!(grip instanceof HTMLElement) || !session) return;
    event.preventDefault();
    event.stopPropagation();
    const column = Number(grip.dataset['column']);
    const start = event.clientX;
    const width = this.page.width(column);
    const col = this.page.col(column);
    const at = (x: number): number => Math.max(36, Math.round(width + x - start));
    const show = (pixels: number): void => col?.style.setProperty('width', `${pixels}px`);
    const following = new AbortController();
    const { signal } = following;
    const end = (wanted: number): void => {
      following.abort();
      show(width);
      if (wanted !== width) resizeColumn(session, column, wanted);
    };
    grip.setPointerCapture(event.pointerId);
    grip.addEventListener('pointermove', (moved) => show(at(moved.clientX)), { signal });
    grip.addEventListener('pointerup', (up) => end(at(up.clientX)), { signal });
    grip.addEventListener('pointercancel', () => end(width), { signal });
  };
}

/** Where a link in a note leads: out of the program, or to a place of the notebook. */
function follow(session: Session, to: string): void {
  if (!to.startsWith('#')) {
    window.open(to, '_blank', 'noopener,noreferrer');
    return;
  }
  const [target] = destinations(session.notebook, session.inSight.id, to.slice(1));
  if (target) session.select(target.block.row, target.block.column, false, target.worksheet);
}

function placeOf(cell: HTMLElement): PagePlace {
  const row = cell.closest('tr')?.dataset['row'];
  const { column } = cell.dataset;
  return { row: row === undefined ? -1 : Number(row), column: column === undefined ? -1 : Number(column) };
}

/** Commits what is being edited and stays on the worksheet in sight; false where it was refused. */
function leave(session: Session): boolean {
  if (!session.draft) return true;
  const { id } = session.inSight;
  if (!commitDraft(session, undefined)) return false;
  if (id !== session.worksheet.id) session.select(0, 0, false, id);
  return true;
}

function stretch(session: Session, row: number, column: number, toRow: number, toColumn: number): void {
  const { selection } = session;
  const same =
    selection.row === row &&
    selection.column === column &&
    selection.toRow === toRow &&
    selection.toColumn === toColumn;
  if (!same) session.selectBlock({ worksheet: session.worksheet.id, row, column, toRow, toColumn });
}

/** Whole rows or columns from one to another. */
export function selectLines(session: Session, what: 'rows' | 'columns', from: number, to: number): void {
  const { id, rowCount, columnCount } = session.worksheet;
  session.selectBlock(
    what === 'rows'
      ? { worksheet: id, row: from, column: 0, toRow: to, toColumn: columnCount - 1 }
      : { worksheet: id, row: 0, column: from, toRow: rowCount - 1, toColumn: to },
  );
}

export function selectAll(session: Session): void {
  const { id, rowCount, columnCount } = session.worksheet;
  session.selectBlock({ worksheet: id, row: 0, column: 0, toRow: rowCount - 1, toColumn: columnCount - 1 });
}

/** Opens the active cell's text for editing; for fingers a value is chosen whole, so that the first key replaces it. */
export function editCell(session: Session): void {
  startDraft(session, contentHere(session), false, 'cell');
  const { draft } = session;
  if (draft && !draft.text.startsWith('=') && isTouched()) session.setDraft({ ...draft, from: 0 });
}
