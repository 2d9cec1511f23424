/** Formulas that give several values (F26): the cells their further values fill, and what stands in the way. */

import type { Worksheet } from '../document/index.ts';
import { addressText, failure } from '../expression/index.ts';
import type { Failure, Grid, Scalar } from '../expression/index.ts';
import { contains, isTaken } from './cells.ts';
import type { Cells, CellState } from './cells.ts';
import { itemType, setType } from './inference.ts';
import type { PlaceBlock } from './schedule.ts';

/** What follows from cells being filled or freed. */
export interface Effects {
  readonly fresh: Set<CellState>;
  readonly moved: Set<CellState>;
  readonly values: Set<CellState>;
  readonly again: Set<CellState>;
}

/** Cells in the way that a message names. */
const NAMED = 5;

const NO_CELLS: ReadonlySet<CellState> = new Set();

const extent = ({ sheet, row, column }: CellState, { grid }: Grid): PlaceBlock => ({
  sheet,
  row,
  column,
  rows: grid.length,
  columns: grid[0]?.length ?? 0,
});

export class Spills {
  readonly #cells: Cells;
  /** Cells filled by each formula. */
  readonly #filledBy = new Map<CellState, Set<CellState>>();
  readonly #blocked = new Set<CellState>();
  /** Formulas whose values, or the room for them, changed. */
  readonly #unsettled = new Set<CellState>();
  #newItems: CellState[] = [];

  constructor(cells: Cells) {
    this.#cells = cells;
  }

  /** Takes the values of a formula; gives the first of them, or #OCCUPIED!. */
  take(origin: CellState, values: Grid, worksheet: Worksheet | undefined): Scalar {
    const obstacle = this.#obstacle(origin, extent(origin, values), worksheet);
    origin.items = values;
    this.#unsettled.add(origin);
    if (obstacle) this.#blocked.add(origin);
    else this.#blocked.delete(origin);
    return obstacle ?? values.grid[0]?.[0] ?? null;
  }

  /** The formula gives one value, or an error, or is gone. */
  noValues(origin: CellState): void {
    if (!origin.items) return;
    origin.items = undefined;
    this.#blocked.delete(origin);
    this.#unsettled.add(origin);
  }

  valueOf(item: CellState, origin: CellState): Scalar {
    return origin.items?.grid[item.row - origin.row]?.[item.column - origin.column] ?? null;
  }

  /** The content of a cell was typed over or cleared: formulas that fill it, or would, are computed again. */
  contentChanged(state: CellState, again: Set<CellState>): void {
    this.noValues(state);
    if (state.origin && isTaken(state)) {
      again.add(state.origin);
      this.#filledBy.get(state.origin)?.delete(state);
      state.origin = undefined;
    }
    this.#retry(state, again);
  }

  /** The room changed everywhere: a worksheet has another size. */
  retryAll(again: Set<CellState>): void {
    for (const origin of [...this.#blocked, ...this.#filledBy.keys()]) again.add(origin);
  }

  /** Fills and frees cells as the values now ask. False if there was nothing to do. */
  settle(effects: Effects): boolean {
    const origins = [...this.#unsettled];
    this.#unsettled.clear();
    for (const origin of origins) {
      const wanted = this.#blocked.has(origin) ? NO_CELLS : this.#wanted(origin);
      const filled = this.#filledBy.get(origin) ?? new Set();
      for (const item of filled) if (!wanted.has(item)) this.#free(item, effects);
      for (const item of wanted) if (!filled.has(item)) this.#fill(item, origin, effects);
      if (wanted.size > 0) this.#filledBy.set(origin, new Set(wanted));
      else this.#filledBy.delete(origin);
    }
    const { moved, values, again, fresh } = effects;
    return this.#newItems.length + moved.size + values.size + again.size + fresh.size > 0;
  }

  /** Cells that have come to show a further value, once each. */
  takeNewItems(): readonly CellState[] {
    const items = this.#newItems;
    this.#newItems = [];
    return items;
  }

  /** Formulas that still fill and free cells are refused: what they fill changes what they read. */
  giveUp({ fresh, again, moved }: Effects): void {
    for (const state of [...again, ...[...moved].flatMap(({ origin }) => origin ?? [])]) {
      if (!state.formula) continue;
      state.formula.problem = failure(
        '#CIRCLE!',
        'the values of this formula fill cells on which it depends',
      );
      fresh.add(state);
    }
    again.clear();
  }

  #wanted(origin: CellState): Set<CellState> {
    const wanted = new Set<CellState>();
    if (!origin.items) return wanted;
    const { sheet, row, column, rows, columns } = extent(origin, origin.items);
    for (let r = row; r < row + rows; r++) {
      for (let c = column; c < column + columns; c++) wanted.add(this.#cells.at(sheet, r, c));
    }
    wanted.delete(origin);
    return wanted;
  }

  #fill(item: CellState, origin: CellState, { moved }: Effects): void {
    item.origin = origin;
    setType(this.#cells, item, itemType(item, origin));
    moved.add(item);
    this.#newItems.push(item);
  }

  #free(item: CellState, { moved, values, again }: Effects): void {
    item.origin = undefined;
    this.#cells.write(item, null);
    setType(this.#cells, item, { type: 'blank' });
    moved.add(item);
    values.add(item);
    this.#retry(item, again);
  }

  /** Formulas that wait for room try again where the cell was in their way. */
  #retry(cell: CellState, again: Set<CellState>): void {
    for (const origin of this.#blocked) {
      if (origin.items && contains(extent(origin, origin.items), cell)) again.add(origin);
    }
    for (const [origin] of this.#filledBy) {
      if (origin.items && isTaken(cell) && contains(extent(origin, origin.items), cell)) again.add(origin);
    }
  }

  /** What is in the way of the values of a formula. */
  #obstacle(origin: CellState, block: PlaceBlock, worksheet: Worksheet | undefined): Failure | undefined {
    const { row, column, rows, columns } = block;
    const [lastRow, lastColumn] = [row + rows - 1, column + columns - 1];
    const area = `${addressText(column, row)}:${addressText(lastColumn, lastRow)}`;
    if (worksheet && (lastRow >= worksheet.rowCount || lastColumn >= worksheet.columnCount)) {
      return failure('#OCCUPIED!', `the values need ${area}, and the worksheet ends before it`);
    }
    const inTheWay: string[] = [];
    for (const state of this.#cells.within(block)) {
      if (state === origin || !(isTaken(state) || (state.origin && state.origin !== origin))) continue;
      inTheWay.push(addressText(state.column, state.row));
    }
    if (inTheWay.length === 0) return undefined;
    const more = inTheWay.length > NAMED ? ` and ${inTheWay.length - NAMED} more` : '';
    const names = inTheWay.slice(0, NAMED).join(', ') + more;
    return failure('#OCCUPIED!', `the values need ${area}; in the way: ${names}`);
  }
}
