/** The cells as the engine holds them: what stands in each, what is known of it, and its value; found by place, never by text. */

import type { CellResult } from '../calculation/index.ts';
import type { Block, Cell } from '../document/index.ts';
import type { Caution, Failure, Grid, Scalar, ScalarType } from '../expression/index.ts';
import type { Formula } from './formula.ts';
import type { RecordedColumn } from './recorded-column.ts';
import type { Place, PlaceBlock } from './schedule.ts';

export const COLUMNS = 64;
export const ROWS = 2000;
/** Where recorded columns stand: on no sheet. */
const NO_SHEET = -1;

/** One cell. It is made when it is filled or first referred to, and stays the same object until the engine is built anew. */
export interface CellState extends PlaceBlock {
  readonly page: Sheet;
  /** Absent: empty. */
  cell: Cell | undefined;
  /** Present where the content is a formula. */
  formula: Formula | undefined;
  /** What references to the cell give; a failure names this cell as its root if it began here. */
  value: Scalar;
  type: ScalarType;
  /** Unit as typed, for a given quantity. */
  typedUnit: string | undefined;
  /** Cautions of the last evaluation, and those known before it. */
  cautions: readonly Caution[];
  staticCautions: readonly Caution[];
  assumed: readonly Caution[];
  /** Cells whose formula refers to this one alone; made when there is one. */
  users: CellState[] | undefined;
  /** All values of a formula that gives several. */
  items: Grid | undefined;
  /** The cells of a cycle that it is part of. */
  cycle: readonly CellState[] | undefined;
  /** The formula cell whose further value this cell shows (F26). */
  origin: CellState | undefined;
  /** What was last told to the outside. */
  sent: Sent | undefined;
  /** True while it stands in the list of cells that may have something new to tell. */
  isListed: boolean;
  /** Number of the last ordering that has placed the cell. */
  placedIn: number;
}

/** Adds a formula cell to those that refer to an operand; each is added once. */
export function addUser(operand: CellState | RangeState, user: CellState): void {
  if (operand.users) operand.users.push(user);
  else operand.users = [user];
}

export function removeUser({ users }: CellState | RangeState, user: CellState): void {
  const index = users?.indexOf(user) ?? -1;
  const last = users?.pop();
  if (users && last && index < users.length && index >= 0) users[index] = last;
  else if (users && last && index < 0) users.push(last);
}

/** What was told of a cell, and whether it was nothing but a number of a type: then the number alone may follow. */
export interface Sent {
  readonly result: CellResult;
  readonly plainOf: ScalarType | undefined;
  readonly cell: Cell | undefined;
}

/** A block that formulas refer to. */
export interface RangeState extends PlaceBlock {
  users: CellState[] | undefined;
  grid: Grid | undefined;
  gridVersion: number;
  /** A column of a recording, which stands on no sheet and never changes while the workbook lives. */
  readonly recorded?: RecordedColumn;
}

/** The rows of all blocks with the same columns, so that blocks share them: a row is made again after a value in it changed. */
interface Strip {
  readonly column: number;
  readonly columns: number;
  readonly rows: (readonly Scalar[] | undefined)[];
}

export const isCell = (operand: CellState | RangeState): operand is CellState => 'formula' in operand;

export interface Sheet {
  readonly id: string;
  readonly title: string;
  readonly states: (CellState | undefined)[];
  /** Grows with every value written into the column. */
  readonly versions: Float64Array;
  /** Grows with every change of a type in the column. */
  readonly typeVersions: Float64Array;
  readonly ranges: Map<string, RangeState>;
  readonly strips: Strip[];
}

export function makeSheet(id: string, title: string): Sheet {
  return {
    id,
    title,
    states: [],
    versions: new Float64Array(COLUMNS),
    typeVersions: new Float64Array(COLUMNS),
    ranges: new Map(),
    strips: [],
  };
}

const EMPTY: readonly Caution[] = Object.freeze([]);
const UNUSED: ScalarType = Object.freeze({ type: 'blank' });

/** All cells of a notebook by sheet number, row and column. */
export class Cells {
  readonly sheets: readonly Sheet[];
  readonly #numberById = new Map<string, number>();
  readonly #recorded = new Map<RecordedColumn, RangeState>();

  constructor(sheets: readonly Sheet[]) {
    this.sheets = sheets;
    sheets.forEach((sheet, index) => this.#numberById.set(sheet.id, index));
  }

  sheetNumber(id: string): number | undefined {
    return this.#numberById.get(id);
  }

  sheet(index: number): Sheet {
    const sheet = this.sheets[index];
    if (!sheet) throw new RangeError(`sheet ${index} of ${this.sheets.length}`);
    return sheet;
  }

  /** The cell if it is filled or referred to. */
  find(sheet: number, row: number, column: number): CellState | undefined {
    return this.sheets[sheet]?.states[row * COLUMNS + column];
  }

  at(sheet: number, row: number, column: number): CellState {
    const page = this.sheet(sheet);
    return (page.states[row * COLUMNS + column] ??= {
      page,
      sheet,
      row,
      column,
      rows: 1,
      columns: 1,
      cell: undefined,
      formula: undefined,
      value: null,
      type: UNUSED,
      typedUnit: undefined,
      cautions: EMPTY,
      staticCautions: EMPTY,
      assumed: EMPTY,
      users: undefined,
      items: undefined,
      cycle: undefined,
      origin: undefined,
      sent: undefined,
      isListed: false,
      placedIn: 0,
    });
  }

  range(sheet: number, { row, column, rows, columns }: Block): RangeState {
    const { ranges } = this.sheet(sheet);
    const key = `${row},${column},${rows},${columns}`;
    let range = ranges.get(key);
    if (!range) {
      range = { sheet, row, column, rows, columns, users: undefined, grid: undefined, gridVersion: -1 };
      ranges.set(key, range);
    }
    return range;
  }

  /** The operand that a recorded column is to every formula that reads it. */
  recorded(recorded: RecordedColumn): RangeState {
    let range = this.#recorded.get(recorded);
    if (!range) {
      const rows = recorded.grid.grid.length;
      range = {
        sheet: NO_SHEET,
        row: 0,
        column: 0,
        rows,
        columns: 1,
        users: undefined,
        grid: undefined,
        gridVersion: -1,
        recorded,
      };
      this.#recorded.set(recorded, range);
    }
    return range;
  }

  /** The filled cells of a block and those that show a further value, row by row. */
  *within({ sheet, row, column, rows, columns }: PlaceBlock): Generator<CellState> {
    const { states } = this.sheet(sheet);
    for (let r = row; r < row + rows; r++) {
      for (let c = column; c < column + columns; c++) {
        const state = states[r * COLUMNS + c];
        if (state && isFilled(state)) yield state;
      }
    }
  }

  /** The values of a block. One that several formulas read is the same object until one of them changes. */
  gridOf(range: RangeState): Grid {
    if (range.recorded) return range.recorded.grid;
    const { versions } = this.sheet(range.sheet);
    let version = 0;
    for (let c = range.column; c < range.column + range.columns; c++) version += versions[c] ?? 0;
    if (range.grid && range.gridVersion === version) return range.grid;
    const strip = this.#strip(range);
    const grid: (readonly Scalar[])[] = [];
    for (let r = range.row; r < range.row + range.rows; r++) {
      grid.push((strip.rows[r] ??= this.#row(range, r)));
    }
    const made = { grid };
    if ((range.users?.length ?? 0) > 1) {
      range.gridVersion = version;
      range.grid = made;
    }
    return made;
  }

  #strip({ sheet, column, columns }: RangeState): Strip {
    const { strips } = this.sheet(sheet);
    let strip = strips.find((each) => each.column === column && each.columns === columns);
    if (!strip) {
      strip = { column, columns, rows: [] };
      strips.push(strip);
    }
    return strip;
  }

  #row({ sheet, column, columns }: RangeState, row: number): readonly Scalar[] {
    const { states } = this.sheet(sheet);
    const first = row * COLUMNS + column;
    return Array.from({ length: columns }, (_, index) => states[first + index]?.value ?? null);
  }

  write(state: CellState, value: Scalar): void {
    state.value = value;
    const { page, row, column } = state;
    const { versions, strips } = page;
    versions[column] = (versions[column] ?? 0) + 1;
    for (const strip of strips) {
      if (column >= strip.column && column < strip.column + strip.columns) strip.rows[row] = undefined;
    }
  }

  /** Every formula cell that refers to this cell, alone or within a block. */
  usersOf(state: CellState): Set<CellState> {
    const users = new Set(state.users ?? []);
    for (const range of this.sheet(state.sheet).ranges.values()) {
      if (!contains(range, state)) continue;
      for (const user of range.users ?? []) users.add(user);
    }
    return users;
  }

  /** Filled cells of all sheets. */
  *filled(): Generator<CellState> {
    for (const { states } of this.sheets) {
      for (const state of states) if (state && isFilled(state)) yield state;
    }
  }
}

export const isFilled = (state: CellState): boolean => state.cell !== undefined || state.origin !== undefined;

/** True where something stands in the cell that further values of a formula must not cover. */
export const isTaken = (state: CellState): boolean => state.cell !== undefined && state.cell.content !== '';

export const contains = (block: PlaceBlock, place: Place): boolean =>
  block.sheet === place.sheet &&
  place.row >= block.row &&
  place.row < block.row + block.rows &&
  place.column >= block.column &&
  place.column < block.column + block.columns;

/** The failure as references see it: with the cell in which it began. */
export const rooted = (failure: Failure, root: string): Failure =>
  failure.root === undefined ? { ...failure, root } : failure;
