/** A notebook being computed: cells, schedule and the further values of formulas, kept in step with the document. */

import { forEachCell } from '../document/index.ts';
import type { CellChange, Notebook, UnitSystem, Worksheet } from '../document/index.ts';
import { compileScalar, failure, isFailure, isGrid, singleValue } from '../expression/index.ts';
import type {
  CallNotes,
  Caution,
  CompiledScalar,
  Failure,
  FunctionTable,
  Scalar,
  Value,
} from '../expression/index.ts';
import { addUser, Cells, makeSheet, removeUser, rooted } from './cells.ts';
import type { CellState } from './cells.ts';
import { readGiven } from './content.ts';
import { unitOfCell } from './display-unit.ts';
import { givesSeveral, inputsOf, precedentOf, readFormula, referenceTo } from './formula.ts';
import type { Formula } from './formula.ts';
import { inferAll, rootName, setType } from './inference.ts';
import type { Surroundings } from './surroundings.ts';
import { fixedBlock } from './schedule.ts';
import type { Schedule, StartSchedule } from './schedule.ts';
import { Spills } from './spills.ts';

/** Rounds after which values that fill cells which they depend on are given up. */
const MOST_ROUNDS = 8;

const NONE: readonly never[] = Object.freeze([]);

/** What has to be looked at again. */
interface Work {
  /** Formulas to infer in any case. */
  readonly fresh: Set<CellState>;
  /** Cells whose type changed. */
  readonly moved: Set<CellState>;
  /** Cells whose given value changed or that became empty. */
  readonly values: Set<CellState>;
  /** Formulas to compute again. */
  readonly again: Set<CellState>;
}

const noWork = (): Work => ({ fresh: new Set(), moved: new Set(), values: new Set(), again: new Set() });

export class Workbook implements Surroundings {
  readonly cells: Cells;
  readonly functions: FunctionTable;
  notebook: Notebook;
  /** The cell that is being computed. */
  running: CellState | undefined;
  readonly #spills: Spills;
  readonly #aside: Set<string>;
  readonly #startSchedule: StartSchedule;
  #schedule: Schedule;
  #tokens = 0;
  #changed: CellState[] = [];
  #noted: Caution[] = [];
  readonly #notes: CallNotes & { reading: UnitSystem } = {
    reading: 'metric',
    caution: (caution) => {
      if (!this.#noted.some(({ key }) => key === caution.key)) this.#noted.push(caution);
    },
  };

  /** Computes the whole notebook. `aside` holds keys of cells that are not computed; editing one takes it out. */
  constructor(
    notebook: Notebook,
    functions: FunctionTable,
    startSchedule: StartSchedule,
    aside: Set<string> = new Set(),
  ) {
    this.#startSchedule = startSchedule;
    this.notebook = notebook;
    this.#notes.reading = notebook.reading;
    this.functions = functions;
    this.#aside = aside;
    this.cells = new Cells(notebook.worksheets.map(({ id, title }) => makeSheet(id, title)));
    this.#spills = new Spills(this.cells);
    this.#schedule = this.#newSchedule();
    const work = noWork();
    notebook.worksheets.forEach((worksheet, sheet) => {
      forEachCell(worksheet, (cell, row, column) => {
        const state = this.cells.at(sheet, row, column);
        state.cell = cell;
        this.#take(state, work);
      });
    });
    this.#settle(work, work.fresh);
  }

  static asideKey(worksheet: string, row: number, column: number): string {
    return `${worksheet} ${row} ${column}`;
  }

  unitOf(state: CellState): string {
    return unitOfCell(state, this.notebook);
  }

  /** Takes cells over from the notebook as it is after the changes. */
  apply(notebook: Notebook, changes: readonly CellChange[]): void {
    const work = noWork();
    if (notebook.worksheets.some((each, index) => isResized(each, this.notebook.worksheets[index]))) {
      this.#spills.retryAll(work.again);
    }
    this.notebook = notebook;
    for (const { worksheet, row, column, to } of changes) {
      const sheet = this.cells.sheetNumber(worksheet);
      if (sheet === undefined)
        throw new RangeError(`a change names the worksheet ${worksheet}, which is not open`);
      const state = this.cells.at(sheet, row, column);
      const before = state.cell?.content;
      state.cell = to;
      this.list(state);
      if (before === to?.content) continue;
      this.#aside.delete(Workbook.asideKey(worksheet, row, column));
      this.#take(state, work);
    }
    this.#settle(work);
    if (this.#schedule.isWorn) this.#renewSchedule();
  }

  /** Gives cells that hold a number others of the same kind, without a change of their contents. */
  move(numbers: Iterable<readonly [CellState, number]>): void {
    const work = noWork();
    for (const [state, value] of numbers) {
      const { type } = state;
      if (state.formula || type.type !== 'number')
        throw new TypeError(`${rootName(this.cells, state)} holds no given number`);
      for (const user of state.users ?? []) if (user.formula?.constants.includes(state)) work.fresh.add(user);
      if (type.literal !== undefined) state.type = { ...type, literal: value };
      this.cells.write(state, value);
      this.list(state);
      work.values.add(state);
    }
    this.#settle(work);
  }

  /** Notes that the cell may have something new to tell. */
  list(state: CellState): void {
    if (state.isListed) return;
    state.isListed = true;
    this.#changed.push(state);
  }

  /** Cells that may have something new to tell since this was last asked. */
  takeChanged(): readonly CellState[] {
    const changed = this.#changed;
    this.#changed = [];
    for (const state of changed) state.isListed = false;
    return changed;
  }

  destroy(): void {
    this.#schedule.destroy();
  }

  /** A compiled form of the formula, from what was inferred. */
  compile(formula: Formula, functions: FunctionTable = this.functions): CompiledScalar {
    const { inference } = formula;
    if (!inference) throw new Error(`the formula ${formula.text} was not inferred`);
    return compileScalar(inference.tree, {
      functions,
      currency: this.notebook.currency,
      slot: (node) => referenceTo(formula, node)?.slot ?? -1,
    });
  }

  #newSchedule(): Schedule {
    return this.#startSchedule(this.cells, (sheet, row, column) => this.#evaluate(sheet, row, column));
  }

  #renewSchedule(): void {
    this.#schedule.destroy();
    this.#schedule = this.#newSchedule();
    this.#schedule.run(() => {
      for (const state of this.cells.filled()) {
        if (state.origin) this.#schedule.setFormula(state, [fixedBlock(state.origin)]);
        else if (state.formula) this.#post(state, state.formula);
        else this.#postValue(state);
      }
    });
  }

  /** Reads the content of a cell anew and notes what follows from it. */
  #take(state: CellState, work: Work): void {
    const { cells, notebook } = this;
    const old = state.formula;
    if (old) for (const operand of old.operands) removeUser(operand, state);
    state.formula = undefined;
    state.cycle = undefined;
    state.cautions = NONE;
    state.staticCautions = NONE;
    state.assumed = NONE;
    this.#spills.contentChanged(state, work.again);
    if (state.origin) return;
    const given = readGiven(state.cell?.content ?? '', notebook.currency);
    if ('formula' in given) {
      const worksheet = cells.sheet(state.sheet).id;
      const formula = readFormula(given.formula, state.sheet, this);
      if (this.#aside.has(Workbook.asideKey(worksheet, state.row, state.column))) {
        formula.problem = failure('#LIMIT!', 'set aside because computing it took too long');
      }
      for (const operand of formula.operands) addUser(operand, state);
      state.formula = formula;
      state.typedUnit = undefined;
      work.fresh.add(state);
      return;
    }
    // A number inside an inference is more than its type: exponents, columns to look in.
    for (const user of state.users ?? []) if (user.formula?.constants.includes(state)) work.fresh.add(user);
    if (setType(cells, state, given.type)) work.moved.add(state);
    state.typedUnit = given.unit;
    cells.write(state, isFailure(given.value) ? rooted(given.value, rootName(cells, state)) : given.value);
    this.list(state);
    work.values.add(state);
  }

  /** Infers, computes, and lets further values fill or leave cells, until nothing moves any more. */
  #settle(first: Work, among?: ReadonlySet<CellState>): void {
    let work = first;
    for (let round = 1; ; round++) {
      const inferred =
        work.fresh.size + work.moved.size > 0 ? inferAll(this, work, round === 1 ? among : undefined) : [];
      this.#schedule.run(() => {
        for (const state of work.values) if (!state.origin) this.#postValue(state);
        for (const state of inferred) if (state.formula) this.#post(state, state.formula);
        for (const state of work.again) if (state.formula) this.#post(state, state.formula);
        for (const item of this.#spills.takeNewItems())
          if (item.origin) this.#schedule.setFormula(item, [fixedBlock(item.origin)]);
      });
      work = noWork();
      if (!this.#spills.settle(work)) return;
      for (const freed of work.values) this.list(freed);
      if (round >= MOST_ROUNDS) this.#spills.giveUp(work);
    }
  }

  #postValue(state: CellState): void {
    if (state.value === null) this.#schedule.setBlank(state);
    else this.#schedule.setValue(state, this.#token(state.value));
  }

  #post(state: CellState, formula: Formula): void {
    if (state.type.type !== 'failed') {
      this.#schedule.setFormula(
        state,
        formula.references.map((each) => precedentOf(formula, each)),
      );
      return;
    }
    state.cautions = NONE;
    this.#spills.noValues(state);
    this.cells.write(state, state.type.failure);
    this.list(state);
    this.#postValue(state);
  }

  #evaluate(sheet: number, row: number, column: number): number | string {
    const state = this.cells.find(sheet, row, column);
    if (!state) return 0;
    const found = state.origin ? this.#spills.valueOf(state, state.origin) : this.#valueOf(state);
    const value = isFailure(found) ? rooted(found, rootName(this.cells, state)) : found;
    this.cells.write(state, value);
    this.list(state);
    return state.items ? `g${++this.#tokens}` : this.#token(value);
  }

  #valueOf(state: CellState): Scalar {
    const { formula } = state;
    if (!formula?.inference) return state.value;
    if (this.#noted.length > 0) this.#noted = [];
    this.running = state;
    const value = this.#computed(formula);
    this.running = undefined;
    state.cautions = this.#noted.length > 0 ? this.#noted : NONE;
    if (isGrid(value) && givesSeveral(formula, this.functions)) {
      return this.#spills.take(state, value, this.notebook.worksheets[state.sheet]);
    }
    if (state.items) this.#spills.noValues(state);
    return typeof value === 'number' ? value : singleValue(value);
  }

  #computed(formula: Formula): Value {
    try {
      formula.run ??= this.compile(formula);
      return formula.run(inputsOf(formula, this.cells), this.#notes);
    } catch {
      return failure('#LIMIT!', 'the formula is too large to be computed');
    }
  }

  /** Differs whenever dependents have to be computed again. */
  #token(value: Scalar): number | string {
    if (typeof value === 'number') return value;
    if (typeof value === 'string') return `t${value}`;
    if (value === null) return 'n';
    return isFailure(value) ? failureToken(value) : `l${value}`;
  }
}

const isResized = (now: Worksheet, before: Worksheet | undefined): boolean =>
  now.rowCount !== before?.rowCount || now.columnCount !== before.columnCount;

const failureToken = ({ failure: code, message, root }: Failure): string =>
  `e${code}${root ?? ''} ${message}`;
