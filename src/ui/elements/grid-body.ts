/** The rows of a squared page: real table rows, painted cell by cell; beyond 100 rows only those in sight exist. Knows no notebook. */

import { element, paintFace, type Face } from './cell-face.ts';

/** A block outlined in one of the reference colours. */
export interface Outline extends BlockOf {
  readonly colour: number;
}

export interface GridModel {
  readonly rows: number;
  readonly columns: number;
  readonly widths: readonly number[];
  /** The first row stays in sight while the rest scrolls; it is always in the document. */
  readonly headRow: boolean;
  columnName(column: number): string;
  /** The same object as long as the cell looks the same. */
  face(row: number, column: number): Face;
  /** The same object as long as no cell of the row looks otherwise. */
  rowMark(row: number): object;
}

export interface BlockOf {
  readonly row: number;
  readonly column: number;
  readonly toRow: number;
  readonly toColumn: number;
}

/** Up to this many rows are all in the document. */
export const REAL_ROWS = 100;
const MARGIN_ROWS = 4;

interface Corners {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}
const cornersOf = ({ row, column, toRow, toColumn }: BlockOf): Corners => ({
  top: Math.min(row, toRow),
  bottom: Math.max(row, toRow),
  left: Math.min(column, toColumn),
  right: Math.max(column, toColumn),
});

export class GridBody {
  readonly #rows = new Map<number, HTMLTableRowElement>();
  readonly #painted = new WeakMap<HTMLElement, Face>();
  readonly #paintedRows = new WeakMap<HTMLElement, object>();
  readonly #spacers: HTMLTableRowElement[] = [];
  #columns = -1;
  #model: GridModel | undefined;
  #marked: BlockOf | undefined;
  #outlined = new Set<HTMLElement>();

  /** What of the page is in sight and how high a row is: asked for once, because asking makes the browser lay out the page. */
  #view: { top: number; readonly height: number; readonly row: number } | undefined;

  constructor(
    private readonly body: HTMLTableSectionElement,
    private readonly scroller: HTMLElement,
  ) {
    const moved = (): void => {
      if (this.#view) this.#view.top = scroller.scrollTop;
    };
    scroller.addEventListener('scroll', moved, { capture: true, passive: true });
    new ResizeObserver(() => (this.#view = undefined)).observe(scroller);
  }

  /** Draws what changed; `keep` is the row that has the focus and never leaves the document. */
  paint(model: GridModel, selection: BlockOf, keep: number, outlines: readonly Outline[] = []): void {
    if (this.#columns !== model.columns) this.clear();
    this.#columns = model.columns;
    this.#model = model;
    this.#putRows(keep);
    for (const [row, tr] of this.#rows) this.#paintRow(model, row, tr);
    this.#mark(selection);
    this.#outline(outlines);
  }

  /** Draws the outlines of references anew; a cell in several shows the last. */
  #outline(outlines: readonly Outline[]): void {
    if (outlines.length === 0 && this.#outlined.size === 0) return;
    for (const td of this.#outlined) {
      td.classList.remove('ref', 'ref-t', 'ref-b', 'ref-l', 'ref-r');
      delete td.dataset['ref'];
    }
    this.#outlined = new Set();
    for (const block of outlines) {
      const { top, bottom, left, right } = cornersOf(block);
      for (const [row, tr] of this.#rows) {
        if (row < top || row > bottom) continue;
        for (let column = left; column <= right; column += 1) {
          const td = tr.cells[column + 1];
          if (!td) continue;
          td.classList.add('ref');
          td.classList.toggle('ref-t', row === top);
          td.classList.toggle('ref-b', row === bottom);
          td.classList.toggle('ref-l', column === left);
          td.classList.toggle('ref-r', column === right);
          td.dataset['ref'] = String(block.colour);
          this.#outlined.add(td);
        }
      }
    }
  }

  clear(): void {
    this.#view = undefined;
    this.#rows.clear();
    this.#spacers.length = 0;
    this.#marked = undefined;
    this.body.replaceChildren();
  }

  cell(row: number, column: number): HTMLTableCellElement | undefined {
    return this.#rows.get(row)?.cells[column + 1];
  }

  get rowHeight(): number {
    return this.#look().row;
  }

  #look(): { top: number; readonly height: number; readonly row: number } {
    const { scroller } = this;
    this.#view ??= {
      top: scroller.scrollTop,
      height: scroller.clientHeight,
      row: Number.parseFloat(getComputedStyle(scroller).getPropertyValue('--row')) || 30,
    };
    return this.#view;
  }

  /** Puts the rows in sight into the document and takes the others out. */
  window(keep: number): void {
    this.#view = undefined;
    this.#putRows(keep);
  }

  #putRows(keep: number): void {
    const model = this.#model;
    if (!model) return;
    const wanted = this.#wanted(model, keep);
    this.body.classList.toggle('virtual', model.rows > REAL_ROWS);
    let changed = this.body.childElementCount === 0;
    for (const row of this.#rows.keys())
      if (!wanted.has(row)) {
        this.#rows.get(row)?.remove();
        this.#rows.delete(row);
        changed = true;
      }
    for (const row of wanted)
      if (!this.#rows.has(row)) {
        const tr = this.#makeRow(model, row);
        this.#rows.set(row, tr);
        this.#paintRow(model, row, tr);
        changed = true;
      }
    if (changed)
      this.#arrange(
        model,
        [...wanted].sort((a, b) => a - b),
      );
  }

  #wanted(model: GridModel, keep: number): Set<number> {
    const wanted = new Set<number>();
    if (model.rows <= REAL_ROWS) {
      for (let row = 0; row < model.rows; row += 1) wanted.add(row);
      return wanted;
    }
    const { top, height, row: rowHeight } = this.#look();
    const first = Math.max(0, Math.floor(top / rowHeight) - MARGIN_ROWS);
    const last = Math.min(model.rows - 1, Math.ceil((top + height) / rowHeight) + MARGIN_ROWS);
    for (let row = first; row <= last; row += 1) wanted.add(row);
    if (keep >= 0 && keep < model.rows) wanted.add(keep);
    if (model.headRow) wanted.add(0);
    return wanted;
  }

  /** Rows in order with gaps of the right height; rows already in place are not moved, so that the focus stays. */
  #arrange(model: GridModel, order: readonly number[]): void {
    const height = this.rowHeight;
    for (const spacer of this.#spacers) spacer.remove();
    this.#spacers.length = 0;
    let cursor = this.body.firstElementChild;
    let next = 0;
    const gap = (to: number): void => {
      if (to <= next) return;
      const tr = document.createElement('tr');
      tr.className = 'gap';
      tr.setAttribute('role', 'presentation');
      const td = document.createElement('td');
      td.colSpan = model.columns + 1;
      td.style.setProperty('height', `${(to - next) * height}px`);
      td.setAttribute('role', 'presentation');
      tr.append(td);
      this.#spacers.push(tr);
      this.body.insertBefore(tr, cursor);
    };
    for (const row of order) {
      const tr = this.#rows.get(row);
      if (!tr) continue;
      gap(row);
      if (tr === cursor) cursor = cursor.nextElementSibling;
      else this.body.insertBefore(tr, cursor);
      next = row + 1;
    }
    gap(model.rows);
  }

  #makeRow(model: GridModel, row: number): HTMLTableRowElement {
    const tr = document.createElement('tr');
    tr.setAttribute('aria-rowindex', String(row + 2));
    tr.dataset['row'] = String(row);
    const head = document.createElement('th');
    head.scope = 'row';
    head.textContent = String(row + 1);
    tr.append(head);
    for (let column = 0; column < model.columns; column += 1) {
      const td = document.createElement('td');
      td.setAttribute('role', 'gridcell');
      td.setAttribute('aria-colindex', String(column + 2));
      td.dataset['column'] = String(column);
      td.append(element('div', 'face'));
      tr.append(td);
    }
    return tr;
  }

  #paintRow(model: GridModel, row: number, tr: HTMLTableRowElement): void {
    const mark = model.rowMark(row);
    if (this.#paintedRows.get(tr) === mark) return;
    this.#paintedRows.set(tr, mark);
    let covered = 0;
    for (let column = 0; column < model.columns; column += 1) {
      const td = tr.cells[column + 1];
      if (!td) continue;
      const face = model.face(row, column);
      td.classList.toggle('covered', covered > 0);
      covered = face.over ?? Math.max(0, covered - 1);
      const before = this.#painted.get(td);
      if (before === face) continue;
      this.#painted.set(td, face);
      paintFace(td, face, before);
    }
  }

  #mark(block: BlockOf): void {
    const before = this.#marked;
    const { top, bottom, left, right } = cornersOf(block);
    for (const [row, tr] of this.#rows) {
      const inRow = row >= top && row <= bottom;
      const wasIn =
        !before || (row >= Math.min(before.row, before.toRow) && row <= Math.max(before.row, before.toRow));
      if (!inRow && !wasIn && !tr.querySelector('.chosen, .active')) continue;
      for (let column = 0; column + 1 < tr.cells.length; column += 1) {
        const td = tr.cells[column + 1];
        if (!td) continue;
        const chosen = inRow && column >= left && column <= right;
        td.classList.toggle('chosen', chosen);
        td.classList.toggle('active', row === block.row && column === block.column);
        if (chosen) td.setAttribute('aria-selected', 'true');
        else td.removeAttribute('aria-selected');
      }
      tr.cells[0]?.classList.toggle('at', inRow);
      // What stands over the cell with the field, and over the corners, may reach beyond the row.
      tr.classList.toggle('lifted', row === block.row || row === bottom || row === top);
    }
    this.#marked = block;
  }
}
