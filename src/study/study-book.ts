/** A notebook under study: its cells as they stand, found by address, and what is said of them. */

import type { CellAddress, StudyCell } from '../calculation/index.ts';
import type { Notebook } from '../document/index.ts';
import type { FunctionTable, NumberType } from '../expression/index.ts';
import { isFailure } from '../expression/index.ts';
import {
  DIMENSIONLESS,
  fromSI,
  isUnknownUnit,
  ONE_UNIT,
  parseUnit,
  readQuantity,
  toSI,
} from '../quantity/index.ts';
import type { Kind, Unit } from '../quantity/index.ts';
import { addressOf, guarded, resultOf, rootName, Workbook } from '../workbook/index.ts';
import type { CellState } from '../workbook/index.ts';
import { DirectSchedule } from './direct-schedule.ts';
import { Refused } from './refused.ts';

/** A given cell that holds a number. */
export interface GivenNumber {
  readonly state: CellState;
  readonly cell: CellAddress;
  readonly value: number;
  readonly kind: Kind;
  readonly unit: Unit;
  /** Only whole numbers make sense. */
  readonly whole: boolean;
}

/** Digits that give the same double back to 1e-12 and are still readable. */
const CONTENT_DIGITS = 12;

/** Milliseconds, for the length of pieces alone. */
export type Clock = () => number;

export class StudyBook {
  readonly workbook: Workbook;
  readonly notebook: Notebook;
  readonly now: Clock;

  constructor(notebook: Notebook, functions: FunctionTable, now: Clock = () => 0) {
    this.notebook = notebook;
    this.now = now;
    this.workbook = new Workbook(
      notebook,
      guarded(functions, new Set(), () => undefined),
      (cells, evaluate) => new DirectSchedule(cells, evaluate),
    );
  }

  /** The cell at an address; refuses one on a worksheet that is not there. */
  state(cell: CellAddress): CellState {
    const sheet = this.workbook.cells.sheetNumber(cell.worksheet);
    if (sheet === undefined) throw new Refused('The worksheet of a cell is no longer there.', cell);
    return this.workbook.cells.at(sheet, cell.row, cell.column);
  }

  name(state: CellState): string {
    return rootName(this.workbook.cells, state);
  }

  /** A given that can be moved. */
  given(cell: CellAddress): GivenNumber {
    const state = this.state(cell);
    const { type, value } = state;
    if (state.formula || state.origin)
      throw new Refused(`${this.name(state)} is computed: only given numbers can be moved.`, cell);
    if (type.type !== 'number' || typeof value !== 'number')
      throw new Refused(`${this.name(state)} holds no number.`, cell);
    return { state, cell, value, kind: type.kind, unit: this.unitOf(state), whole: isWhole(type, value) };
  }

  /** A number cell: given or computed; without a number now it is still one if its kind is known. */
  result(cell: CellAddress): CellState {
    const state = this.state(cell);
    const { type } = state;
    if (type.type === 'failed')
      throw new Refused(`${this.name(state)} has no number: ${type.failure.message}`, cell);
    if (type.type !== 'number') throw new Refused(`${this.name(state)} holds no number.`, cell);
    return state;
  }

  kindOf({ type, value }: CellState): string {
    if (type.type === 'number') return type.kind.name;
    if (typeof value === 'string') return 'text';
    if (typeof value === 'boolean') return 'logical';
    return isFailure(value) ? 'error' : 'blank';
  }

  unitOf(state: CellState): Unit {
    const symbol = this.workbook.unitOf(state);
    const unit = symbol === '' ? ONE_UNIT : parseUnit(symbol, this.notebook.currency);
    return isUnknownUnit(unit) ? ONE_UNIT : unit;
  }

  described(state: CellState): StudyCell {
    return {
      cell: addressOf(this.workbook.cells, state),
      kind: this.kindOf(state),
      unit: this.workbook.unitOf(state),
    };
  }

  /** A quantity as typed for a cell, in coherent SI: one without a unit is read in the unit the cell shows. */
  quantity(text: string, state: CellState, what: string): number {
    return this.#typed(text, state, what).si;
  }

  /**
   * A deviation as typed for a given ("0.2 degC" is a difference): without the shift of a scale with an offset. In
   * percent it is a share of the given's value, unless that is a plain number or a share itself.
   */
  deviation(text: string, { state, value, kind }: GivenNumber, what: string): number {
    const percent = /%\s*$/.test(text) && kind.dimension !== DIMENSIONLESS;
    if (percent) {
      const read = readQuantity(text.trim());
      const share = read && 'percent' in read && read.unit ? toSI(read.digits, read.unit) : NaN;
      return this.#size(share * Math.abs(value), text, state, what);
    }
    const { unit, si } = this.#typed(text, state, what);
    return this.#size(si - (unit.shift === 0 ? 0 : toSI('0', unit)), text, state, what);
  }

  #size(size: number, text: string, state: CellState, what: string): number {
    if (size >= 0 && Number.isFinite(size)) return size;
    const cell = addressOf(this.workbook.cells, state);
    throw new Refused(
      `${what} of ${this.name(state)} must be a quantity of at least 0, not "${text}".`,
      cell,
    );
  }

  #typed(text: string, state: CellState, what: string) {
    const { currency } = this.notebook;
    const cell = addressOf(this.workbook.cells, state);
    const read = readQuantity(text.trim(), { currency });
    if (!read || 'refused' in read || 'unknown' in read)
      throw new Refused(`${what} of ${this.name(state)} is no quantity: "${text}".`, cell);
    const own = this.unitOf(state);
    const unit = read.unit ?? own;
    if (state.type.type === 'number' && unit.kind.dimension !== state.type.kind.dimension)
      throw new Refused(`${what} of ${this.name(state)}: ${text} is not in ${own.symbol}.`, cell);
    const si = toSI(read.digits, unit);
    if (!Number.isFinite(si)) throw new Refused(`${what} of ${this.name(state)} is too large.`, cell);
    return { unit, si };
  }

  /** Text that, typed into the cell, means the value; in the unit it shows. */
  content({ unit }: GivenNumber, value: number): string {
    const shown = fromSI(value, unit);
    const digits = plainDigits(shown);
    return unit === ONE_UNIT ? digits : `${digits} ${unit.symbol}`;
  }

  /** The words of a cell's failure with these numbers in the givens; undefined where it has a value. */
  failureWords(numbers: readonly (readonly [CellState, number])[], result: CellState): string | undefined {
    return this.tried(numbers, () => {
      const { value } = result;
      return isFailure(value) ? value.message : undefined;
    });
  }

  /** Looks at the notebook with other numbers in some givens, then puts back what stood there. */
  tried<T>(numbers: readonly (readonly [CellState, number])[], look: () => T): T {
    const before = numbers.map(([state]) => [state, state.value as number] as const);
    this.workbook.move(numbers);
    try {
      return look();
    } finally {
      this.workbook.move(before);
    }
  }

  resultOf(state: CellState) {
    return resultOf(this.workbook.cells, state, this.notebook);
  }
}

/** Counts are whole; a plain number may be one where it is written so, and is then left to the asker's bounds. */
function isWhole({ kind }: NumberType, value: number): boolean {
  return kind.name === 'count' && Number.isInteger(value);
}

/** Decimal digits without an exponent. */
export function plainDigits(value: number, precision = CONTENT_DIGITS): string {
  const rounded = Number(value.toPrecision(precision));
  const text = String(rounded);
  return text.includes('e') ? rounded.toFixed(20).replace(/0+$/, '').replace(/\.$/, '') : text;
}
