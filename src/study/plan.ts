/** The way from moved givens to asked results: the cells between them, in order, computed for all samples at once. */

import {
  ColumnPool,
  compileColumns,
  compileSample,
  doublesOf,
  giveBack,
  isFailure,
  isGrid,
  MISSING,
  numberIn,
  packed,
  PIECE,
  singleValue,
  valueAt,
} from '../expression/index.ts';
import type {
  Column,
  ColumnFrame,
  ColumnOperand,
  ColumnsScope,
  CompiledColumns,
  Failure,
  Scalar,
  Value,
} from '../expression/index.ts';
import { dependencyOrder, dependentsOf, givesSeveral, isCell, referenceTo } from '../workbook/index.ts';
import type { CellState, Formula, RangeState } from '../workbook/index.ts';
import type { StudyBook } from './study-book.ts';

/** One cell of the way: how its column is made of those before it. */
interface Stage {
  readonly state: CellState;
  readonly run: CompiledColumns;
  /** The value of one sample with the words of a failure. */
  readonly sample: (frame: ColumnFrame, sample: number) => Value;
}

/** Looks at the columns of the results for `length` samples from the one numbered `from`; `why` tells the words of a failure. */
type Take = (
  columns: readonly Column[],
  from: number,
  length: number,
  why: (result: number, sample: number) => Scalar,
) => void;

/** Samples that are computed one by one between two breaths. */
const ONE_BY_ONE = 64;
/** A piece begins so small, and grows as long as it takes less than this (ms): between two pieces a cancel is heard. */
const [FIRST_PIECE, LONG] = [16, 40];

const MOST_WHOLE = 64;

export class Plan {
  readonly givens: readonly CellState[];
  readonly results: readonly CellState[];
  readonly #book: StudyBook;
  readonly #slots = new Map<CellState, number>();
  readonly #stages: Stage[] = [];
  readonly #pool = new ColumnPool();
  /** Givens whose number took part in an inference, and the formulas for which it did. */
  readonly #deciding = new Set<CellState>();
  readonly #decided: Formula[] = [];
  /** Samples can not be computed together: a number decides what a formula is, or how many cells values fill. */
  #isOneByOne = false;
  #piece = FIRST_PIECE;

  constructor(book: StudyBook, givens: readonly CellState[], results: readonly CellState[]) {
    this.#book = book;
    this.givens = givens;
    this.results = results;
    const { cells } = book.workbook;
    const affected = dependentsOf(cells, givens);
    for (const given of givens) this.#slots.set(given, this.#slots.size);
    const needed = this.#needed(affected);
    const { order } = dependencyOrder(cells, needed);
    for (const state of order) this.#add(state);
    for (const { formula } of needed) {
      const deciding = formula?.constants.filter((each) => affected.has(each)) ?? [];
      for (const given of deciding) this.#deciding.add(given);
      if (formula && deciding.length > 0) this.#decided.push(formula);
    }
  }

  /** True where the samples share no columns. */
  get isOneByOne(): boolean {
    return this.#isOneByOne;
  }

  /**
   * Numbers of the results, one column each, of N samples of the givens (columns of length N). NaN where there is none;
   * logicals are 1 and 0. Yields the share that is done, from time to time.
   */
  *numbers(samples: readonly Float64Array[], count: number): Generator<number, Float64Array[]> {
    const found = this.results.map(() => new Float64Array(count));
    yield* this.#pieces(samples, count, (columns, from, length) => {
      columns.forEach((column, index) => {
        const out = found[index] as Float64Array;
        if ('doubles' in column && column.doubles.length > 1) {
          for (let i = 0; i < length; i++) {
            const x = column.doubles[i] as number;
            out[from + i] = x - x === 0 ? x : NaN;
          }
          return;
        }
        for (let i = 0; i < length; i++) {
          const number = numberIn(valueAt(column, i));
          out[from + i] = typeof number === 'number' ? number : NaN;
        }
      });
    });
    return found;
  }

  /** Values of the results as cells show them, failures with their words: by result, then by sample. */
  *values(samples: readonly Float64Array[], count: number): Generator<number, Scalar[][]> {
    const found = this.results.map((): Scalar[] => []);
    yield* this.#pieces(samples, count, (columns, _, length, why) => {
      columns.forEach((column, index) => {
        for (let i = 0; i < length; i++) {
          const value = singleValue(valueAt(column, i));
          found[index]?.push(value === MISSING ? why(index, i) : value);
        }
      });
    });
    return found;
  }

  *#pieces(samples: readonly Float64Array[], count: number, take: Take): Generator<number, void> {
    this.#isOneByOne ||= this.#isDecidedAnew(samples, count);
    let from = 0;
    while (from < count) {
      const length = Math.min(this.#piece, this.#isOneByOne ? ONE_BY_ONE : PIECE, count - from);
      const start = from;
      const begun = this.#book.now();
      const done = this.#isOneByOne
        ? this.#oneByOne(samples, start, length, take)
        : this.#together(samples, start, length, take);
      if (!done) continue;
      const taken = this.#book.now() - begun;
      if (length === this.#piece && taken < LONG) this.#piece = Math.min(PIECE, this.#piece * 2);
      else if (taken > 2 * LONG) this.#piece = Math.max(1, this.#piece >> 1);
      from += length;
      yield from / count;
    }
  }

  /** True where another number makes another formula: a power of another dimension, a column of another kind. */
  #isDecidedAnew(samples: readonly Float64Array[], count: number): boolean {
    if (this.#decided.length === 0) return false;
    const now = (): string =>
      JSON.stringify(this.#decided.map(({ inference }) => [inference?.tree, inference?.type]));
    const before = now();
    return this.givens.some((given, slot) => {
      if (!this.#deciding.has(given)) return false;
      const telling = tellingValues((samples[slot] as Float64Array).subarray(0, count));
      return telling.some((value) => this.#book.tried([[given, value]], now) !== before);
    });
  }

  /** False where the piece can not be computed together after all. */
  #together(samples: readonly Float64Array[], from: number, length: number, take: Take): boolean {
    const pool = this.#pool;
    const operands: Column[] = this.givens.map((_, slot) => {
      const doubles = pool.take();
      doubles.set((samples[slot] as Float64Array).subarray(from, from + length));
      return doublesOf(doubles, { isTemporary: false });
    });
    const frame: ColumnFrame = {
      samples: length,
      pool,
      operands,
      failureAt: (slot, sample) => this.#failureAt(frame, slot, sample),
    };
    try {
      for (const { run } of this.#stages) operands.push(run(frame));
    } catch (error) {
      if (!(error instanceof ShapeChanged)) throw error;
      this.#isOneByOne = true;
      return false;
    }
    const columns = this.results.map((state): Column => {
      const slot = this.#slots.get(state);
      return slot === undefined ? { same: state.value } : (operands[slot] ?? { same: state.value });
    });
    take(columns, from, length, (result, sample) => {
      const state = this.results[result] as CellState;
      return this.#failureAt(frame, this.#slots.get(state) ?? -1, sample);
    });
    for (const column of operands) if ('doubles' in column) pool.give(column.doubles);
    return true;
  }

  #oneByOne(samples: readonly Float64Array[], from: number, length: number, take: Take): true {
    const boxed = this.results.map((): Value[] => []);
    const numbers = (sample: number): (readonly [CellState, number])[] =>
      this.givens.map((state, slot) => [state, samples[slot]?.[sample] ?? NaN] as const);
    const { workbook } = this.#book;
    this.#book.tried(
      [...this.givens].map((state) => [state, state.value as number] as const),
      () => {
        for (let i = from; i < from + length; i++) {
          workbook.move(numbers(i));
          this.results.forEach((state, index) => boxed[index]?.push(state.value));
        }
      },
    );
    take(
      boxed.map((values) => ({ boxed: values })),
      from,
      length,
      () => MISSING,
    );
    return true;
  }

  #failureAt(frame: ColumnFrame, slot: number, sample: number): Failure {
    const stage = this.#stages[slot - this.givens.length];
    const value = stage ? singleValue(stage.sample(frame, sample)) : MISSING;
    return isFailure(value) ? value : MISSING;
  }

  /** Cells that the moved givens reach and the results need. */
  #needed(affected: ReadonlySet<CellState>): Set<CellState> {
    const { cells } = this.#book.workbook;
    const needed = new Set<CellState>();
    const waiting: (CellState | RangeState)[] = [...this.results];
    for (let next = waiting.pop(); next; next = waiting.pop()) {
      if (!isCell(next)) {
        for (const cell of cells.within(next)) waiting.push(cell);
        continue;
      }
      if (!affected.has(next) || needed.has(next) || this.#slots.has(next)) continue;
      needed.add(next);
      if (next.origin) waiting.push(next.origin);
      if (next.formula) waiting.push(...next.formula.cells, ...next.formula.ranges);
    }
    return needed;
  }

  #add(state: CellState): void {
    const { formula, origin, type } = state;
    if (origin) this.#addItem(state, origin);
    else if (formula?.inference && type.type !== 'failed') this.#addFormula(state, formula);
  }

  #push(state: CellState, stage: Omit<Stage, 'state'>): void {
    this.#slots.set(state, this.givens.length + this.#stages.length);
    this.#stages.push({ state, ...stage });
  }

  #addFormula(state: CellState, formula: Formula): void {
    const { workbook } = this.#book;
    const scope: ColumnsScope = {
      functions: workbook.functions,
      currency: workbook.notebook.currency,
      operand: (node) => this.#operandOf(formula, referenceTo(formula, node)?.slot ?? -1),
    };
    const tree = formula.inference?.tree;
    if (!tree) return;
    const compiled = compileColumns(tree, scope);
    const sample = compileSample(tree, scope);
    if (givesSeveral(formula, workbook.functions)) {
      this.#addSeveral(state, compiled, sample);
      return;
    }
    if (typeof compiled !== 'function') {
      const value = singleValue(compiled.same);
      this.#push(state, { run: () => ({ same: value }), sample: () => value });
      return;
    }
    this.#push(state, { run: (frame) => settled(compiled(frame), frame), sample });
  }

  /** A formula that gives several values: the cell shows the first, and the cells below show the others. */
  #addSeveral(state: CellState, compiled: ReturnType<typeof compileColumns>, sample: Stage['sample']): void {
    const shape = shapeOf(state.items ?? state.value);
    const blocked = isFailure(state.value) && state.items !== undefined;
    const run = (frame: ColumnFrame): Column => {
      const column = typeof compiled === 'function' ? compiled(frame) : compiled;
      const values = Array.from({ length: frame.samples }, (_, i) => valueAt(column, i));
      giveBack(column, frame.pool);
      if (blocked || values.some((value) => shapeOf(value) !== shape)) throw new ShapeChanged();
      this.#several.set(state, values);
      return settled(
        { boxed: values.map((value) => (isGrid(value) ? (value.grid[0]?.[0] ?? null) : value)) },
        frame,
      );
    };
    this.#push(state, { run, sample: (frame, at) => firstOf(sample(frame, at)) });
  }

  readonly #several = new Map<CellState, readonly Value[]>();

  #addItem(item: CellState, origin: CellState): void {
    const row = item.row - origin.row;
    const column = item.column - origin.column;
    const at = (value: Value | undefined): Scalar =>
      value !== undefined && isGrid(value) ? (value.grid[row]?.[column] ?? null) : null;
    this.#push(item, {
      run: (frame) => settled({ boxed: (this.#several.get(origin) ?? []).map(at) }, frame),
      sample: (_, sample) => at(this.#several.get(origin)?.[sample]),
    });
  }

  #operandOf({ operands }: Formula, slot: number): ColumnOperand | undefined {
    const operand = operands[slot];
    if (!operand) return undefined;
    if (isCell(operand)) {
      const place = this.#slots.get(operand);
      return place === undefined ? { same: operand.value } : { slot: place };
    }
    const { cells } = this.#book.workbook;
    const moves = !operand.recorded && [...cells.within(operand)].some((cell) => this.#slots.has(cell));
    if (!moves) return { same: cells.gridOf(operand) };
    const { sheet, row, column, rows, columns } = operand;
    return {
      block: Array.from({ length: rows }, (_, r) =>
        Array.from({ length: columns }, (__, c) => {
          const cell = cells.find(sheet, row + r, column + c);
          const place = cell && this.#slots.get(cell);
          return place === undefined ? { same: cell?.value ?? null } : { slot: place };
        }),
      ),
    };
  }
}

/** Values that an inference may tell apart: the ends, zero, and whole numbers where they are few. */
function tellingValues(samples: Float64Array): number[] {
  const whole = new Map<number, number>();
  let [low, high] = [Infinity, -Infinity];
  for (const value of samples) {
    low = Math.min(low, value);
    high = Math.max(high, value);
    if (whole.size <= MOST_WHOLE) whole.set(Math.trunc(value), value);
  }
  const zero = samples.includes(0) ? [0] : [];
  return [low, high, ...zero, ...(whole.size <= MOST_WHOLE ? whole.values() : [])];
}

/** The values of a piece do not fill the cells that they fill now. */
class ShapeChanged extends Error {}

const shapeOf = (value: Value): string =>
  isGrid(value) ? `${value.grid.length} ${value.grid[0]?.length ?? 0}` : 'one';

const firstOf = (value: Value): Value => (isGrid(value) ? (value.grid[0]?.[0] ?? null) : value);

/** The column as a cell holds it: one value a sample, borrowed by all who read it. */
function settled(column: Column, { pool, samples }: ColumnFrame): Column {
  if ('doubles' in column) {
    const { doubles, logical, mayOverflow, isTemporary } = column;
    if (isTemporary) return doublesOf(doubles, { logical, mayOverflow, isTemporary: false });
    const own = pool.take(doubles.length === 1);
    own.set(doubles);
    return doublesOf(own, { logical, mayOverflow, isTemporary: false });
  }
  if ('same' in column) return { same: singleValue(column.same) };
  const values = Array.from({ length: samples }, (_, sample) => singleValue(valueAt(column, sample)));
  const made = packed(values, pool);
  return 'doubles' in made ? { ...made, isTemporary: false } : made;
}
